//! What is to say about heat, a ring's heat, cold cylinders and damp floors, in quick sums.

use quantity::{Answers, Unit};

use super::{Check, number};
use crate::families::moist_air::DRY_BULB;
use crate::families::{burning, heat_index, ring_heat};
use crate::finding::{Detail, Finding, Weight};
use crate::outcome::Outcome;

/// Its checks.
pub(super) static CHECKS: &[Check] = &[
    how_hard,
    moving_air_not_measured,
    index_of_other_birds,
    fan_blows_hot_air,
    cylinder_freezes,
    butane_in_the_cold,
    cover_saves,
    air_too_damp_to_dry,
];

/// Air near the heat of a body, °C: growers' practice, no source.
const NEAR_BODY_C: f64 = 38.0;
/// The youngest birds, days, that the bands were set for (common practice).
const THREE_WEEKS_D: f64 = 21.0;
/// A floor that loses less is as good as wet for days, g/m2h (our judgement).
const HARDLY_DRIES: f64 = 10.0;

fn how_hard(_: &Answers, outcome: &Outcome) -> Option<Finding> {
    let step = outcome.number("heat_index.step")?;
    let (name, weight) = match step as u8 {
        0 => ("heat-step-0", Weight::Note),
        1 => ("heat-step-1", Weight::Look),
        2 => ("heat-step-2", Weight::Problem),
        3 => ("heat-step-3", Weight::Problem),
        _ => ("heat-step-4", Weight::Problem),
    };
    let finding = Finding::new(name, weight)
        .with("wet", Detail::Figure("moist_air.wet_bulb"))
        .with("index", Detail::Figure("heat_index.moving"));
    let worst = [
        ("heat_index.step_of_wet_bulb", "heat-by-wet-bulb"),
        ("heat_index.step_of_dry_bulb", "heat-by-dry-bulb"),
        ("heat_index.step_of_index", "heat-by-index"),
    ];
    let of = worst.iter().filter(|(id, _)| step > 0.0 && outcome.number(id) == Some(step));
    Some(of.fold(finding, |finding, (_, way)| finding.out(way)))
}

/// The index was measured between 0.2 and 1.2 m/s.
fn moving_air_not_measured(answers: &Answers, outcome: &Outcome) -> Option<Finding> {
    outcome.get("heat_index.moving")?;
    let (low, high) = model::air::stress::MEASURED_SPEED;
    let speed = answers.number(heat_index::SPEED)?;
    (!(low..=high).contains(&speed)).then(|| {
        Finding::new("speed-not-measured", Weight::Note)
            .at(heat_index::SPEED)
            .with("low", number(low, Unit::MetrePerSecond, 1))
            .with("high", number(high, Unit::MetrePerSecond, 1))
    })
}

fn index_of_other_birds(answers: &Answers, outcome: &Outcome) -> Option<Finding> {
    outcome.get("heat_index.moving")?;
    (answers.number(heat_index::AGE)? < THREE_WEEKS_D)
        .then(|| Finding::new("index-of-other-birds", Weight::Note).at(heat_index::AGE))
}

fn fan_blows_hot_air(answers: &Answers, outcome: &Outcome) -> Option<Finding> {
    outcome.get("heat_index.moving")?;
    (answers.number(DRY_BULB)? >= NEAR_BODY_C)
        .then(|| Finding::new("fan-blows-hot-air", Weight::Problem).at(DRY_BULB))
}

fn cylinder_freezes(_: &Answers, outcome: &Outcome) -> Option<Finding> {
    let (asked, given) = (outcome.number("burning.gas_rate")?, outcome.number("burning.steady_gas")?);
    (asked > given && given > 0.0).then(|| {
        Finding::new("cylinder-freezes", Weight::Problem)
            .at(burning::JOINED)
            .with("asked", Detail::Figure("burning.gas_rate"))
            .with("given", Detail::Figure("burning.steady_gas"))
            .out("join-cylinders")
    })
}

/// No pressure at all: the night is as cold as the gas may get.
fn butane_in_the_cold(answers: &Answers, outcome: &Outcome) -> Option<Finding> {
    (outcome.number("burning.steady_gas")? <= 0.0).then(|| {
        let name = if burning::is_butane(answers) { "butane-in-the-cold" } else { "gas-in-the-cold" };
        Finding::new(name, Weight::Problem).at(burning::COLDEST)
    })
}

fn cover_saves(_: &Answers, outcome: &Outcome) -> Option<Finding> {
    let (open, covered) = (outcome.number("ring_heat.needed")?, outcome.number("ring_heat.if_covered")?);
    (covered < open).then(|| {
        Finding::new("cover-saves", Weight::Note)
            .at(ring_heat::TOP)
            .with("open", Detail::Figure("ring_heat.needed"))
            .with("covered", Detail::Figure("ring_heat.if_covered"))
    })
}

fn air_too_damp_to_dry(_: &Answers, outcome: &Outcome) -> Option<Finding> {
    (outcome.number("drying.rate")? < HARDLY_DRIES)
        .then(|| Finding::new("air-too-damp-to-dry", Weight::Problem))
}
