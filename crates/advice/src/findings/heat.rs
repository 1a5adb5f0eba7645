//! What is to say about heat and fuel.

use quantity::physical::round_up;
use quantity::{Answers, Given, Length, Unit, Value};

use super::{Check, number};
use crate::families::{self, fuel, heat, second_brooder, shell};
use crate::finding::{Detail, Finding, Weight};
use crate::outcome::Outcome;
use crate::standing::{self, OnFloor};

/// Its checks.
pub(super) static CHECKS: &[Check] = &[
    cover_over_fire,
    brooders_too_weak,
    brooder_power_not_told,
    charcoal_inside,
    fire_needs_air,
    fuel_not_of_brooder,
    second_kind_not_told,
    heat_for_nobody,
    spare_for_the_night,
    second_spare_for_the_night,
    rings_outside_the_heat,
    joined_rings_outside_the_heat,
];

/// Too little even for the coldest night, or enough for it with nothing to spare.
fn brooders_too_weak(answers: &Answers, outcome: &Outcome) -> Option<Finding> {
    let (need, short) = (outcome.number("brooding.heat")?, outcome.number("brooding.power_short")?);
    let have = outcome.number("brooding.heat_installed")?;
    let finding = match short > 0.0 {
        false => return None,
        true if have < need => Finding::new("brooders-too-weak", Weight::Problem),
        true => Finding::new("brooders-just-enough", Weight::Look),
    };
    let target = outcome.number("brooding.target_temperature").unwrap_or_default();
    // In whole degrees, as it is said: a fall of less is none.
    let coldest = outcome.number("brooding.coldest_air");
    let colder = coldest.map_or(0.0, |coldest| target.round() - coldest.round());
    let finding = finding
        .at("brooding.brooder_kw")
        .with("have", kilowatts(have))
        .with("need", Detail::Figure("brooding.heat"))
        .with("design", Detail::Figure("brooding.design"))
        .with("short", Detail::Figure("brooding.power_short"))
        .with("air", Detail::Figure("brooding.coldest_air"))
        .with("target", number(target, Unit::Celsius, 0))
        .with("colder", number(colder, Unit::Pieces, 0))
        .with("brooders", Detail::Figure("brooding.brooders_needed"));
    if !fuel::burns_inside(answers) {
        return Some(smaller_parts(finding.out("more-brooders"), answers, outcome));
    }
    // More fires are more of the gas that kills: whatever lets less heat out, or brings it in without the gas, comes first.
    let finding = less_let_out(smaller_parts(finding, answers, outcome), answers, outcome);
    let another = if fuel::any_charcoal(answers) { "heat-without-charcoal-gas" } else { "heat-with-flue" };
    Some(finding.out(another).out("more-fires-last"))
}

/// Offers a shorter heated end where the partition hangs farther off than the chicks need, and a second curtain.
fn less_let_out(finding: Finding, answers: &Answers, outcome: &Outcome) -> Finding {
    let design = outcome.number("brooding.design").unwrap_or_default();
    let mut finding = finding;
    if let Some((length, then)) = shorter_end(answers, outcome).filter(|(_, then)| *then < design) {
        finding = finding
            .with("shorter", number(length, Unit::Metre, 1))
            .with("shorter_design", kilowatts(then))
            .out("shorter-end");
    }
    if let Some(then) = with_double_curtain(answers).filter(|then| *then < design) {
        finding = finding.with("double_design", kilowatts(then)).out("double-curtain");
    }
    finding
}

/// A shorter end that still holds the chicks and their rings, and the heat it would need, kW.
fn shorter_end(answers: &Answers, outcome: &Outcome) -> Option<(f64, f64)> {
    let heated = outcome.number("brooding.heated_length").filter(|_| shell::heats_an_end(answers))?;
    let length = least_end(answers, outcome)?;
    let shorter =
        with(answers, "brooding.heated_length_m", Value::Number(length)).filter(|_| length < heated)?;
    Some((length, Outcome::of(&shorter, ["brooding.design"]).number("brooding.design")?))
}

/// The shortest end, in half metres, that holds the chicks through the brooding weeks, and their rings before any are joined;
/// `None` where rings are described and do not stand across the house.
fn least_end(answers: &Answers, outcome: &Outcome) -> Option<f64> {
    let chicks = answers.number("batch.chicks")? / CHICKS_PER_M2_OF_END / answers.number("house.width_m")?;
    let rings = match outcome.number("guard.ring_diameter") {
        Some(_) => outcome.number("guard.length_for_rings")?,
        None => 0.0,
    };
    Some(round_up(2.0 * chicks).max(2.0 * rings) / 2.0)
}

/// The heat to plan for with a second sheet on the curtains; `None` where it hangs already.
fn with_double_curtain(answers: &Answers) -> Option<f64> {
    if answers.choice("house.curtain") == Some("double") {
        return None;
    }
    let doubled = with(answers, "house.curtain", Value::Choice("double"))?;
    Outcome::of(&doubled, ["brooding.design"]).number("brooding.design")
}

/// Offers a partition and covers, each with the heat that would then be needed, where they are not there yet and help.
fn smaller_parts(finding: Finding, answers: &Answers, outcome: &Outcome) -> Finding {
    let design = outcome.number("brooding.design").unwrap_or_default();
    let mut finding = finding;
    if let Some(end) = with_partition(answers, outcome).filter(|end| end.design < design) {
        finding = end.told_in(finding);
    }
    if let Some(then) = with_cover(answers).filter(|then| *then < design) {
        finding = finding.with("cover_design", kilowatts(then)).out("cover");
    }
    finding
}

/// Chicks for each square metre of a heated end through the brooding weeks; common practice.
const CHICKS_PER_M2_OF_END: f64 = 20.0;

/// What a partition would change.
struct End {
    /// A length of house that holds the chicks and their rings, half metres.
    length: f64,
    /// The heat to have brooders for, kW.
    design: f64,
    /// Fuel saved over all days, kg, where the fuel is known.
    saving: Option<f64>,
}

impl End {
    /// The same as a way out of a finding, with its numbers.
    fn told_in(&self, finding: Finding) -> Finding {
        let finding = finding
            .with("end", number(self.length, Unit::Metre, 1))
            .with("end_design", kilowatts(self.design));
        match self.saving {
            Some(saving) => finding.with("saving", number(saving, Unit::Kilogram, 0)).out("partition-saves"),
            None => finding.out("partition"),
        }
    }
}

/// The end that a partition could close off; `None` where something smaller than the house is heated already.
fn with_partition(answers: &Answers, outcome: &Outcome) -> Option<End> {
    if shell::heats_an_end(answers) || shell::is_covered(answers) {
        return None;
    }
    let length = least_end(answers, outcome)?;
    let whole = outcome.number("brooding.heated_length")?;
    let partitioned = with(answers, "brooding.partition", Value::Choice("yes"))?;
    let answers = with(&partitioned, "brooding.heated_length_m", Value::Number(length))?;
    let then = Outcome::of(&answers, ["brooding.design", "brooding.saving"]);
    let design = then.number("brooding.design")?;
    (length < whole).then_some(End { length, design, saving: then.number("brooding.saving") })
}

/// The heat to plan for with the rings covered. A cover is offered only where it is told that nothing burns under it.
fn with_cover(answers: &Answers) -> Option<f64> {
    if shell::is_covered(answers) || !is_all_electric(answers) {
        return None;
    }
    let covered = with(answers, "brooding.cover", Value::Choice("yes"))?;
    Outcome::of(&covered, ["brooding.design"]).number("brooding.design")
}

fn is_all_electric(answers: &Answers) -> bool {
    let is_electric = fuel::fuel(answers) == Some("electricity");
    is_electric && fuel::all_fuels(answers).all(|fuel| fuel == "electricity")
}

fn with(answers: &Answers, key: &str, value: Value) -> Option<Answers> {
    let mut answers = answers.clone();
    answers.set(families::field(key)?, Given { typed: String::new(), value, line: None, usual: None });
    Some(answers)
}

/// A cover beside a flame burns, and keeps the gas with the chicks and whoever bends down to them.
fn cover_over_fire(answers: &Answers, outcome: &Outcome) -> Option<Finding> {
    let counted = outcome.get("brooding.heat").is_some();
    (shell::wants_covers(answers) && !shell::is_covered(answers) && counted)
        .then(|| Finding::new("cover-over-fire", Weight::Problem).at("brooding.cover"))
}

/// A fire uses up more air than chicks do, often more than leaks in.
fn fire_needs_air(answers: &Answers, outcome: &Outcome) -> Option<Finding> {
    let get = |id| outcome.number(id);
    let leaks = answers.number("house.air_changes_per_h")? * get("brooding.air_volume")?;
    get("brooding.fuel_rate").filter(|rate| *rate > 0.0)?;
    let more = get("brooding.air_for_fire")? - leaks;
    let warmer = get("brooding.target_temperature")? - answers.number("weather.coldest_night_c")?;
    let heat = more * get("brooding.air_heat")? * warmer / 1000.0;
    // By the hour the heat for that air is in the heat needed already.
    let name = if outcome.drawn().heat().is_some() { "fire-has-air" } else { "fire-needs-air" };
    (more > 0.0).then(|| {
        Finding::new(name, Weight::Look)
            .at("brooding.fuel")
            .with("air", Detail::Figure("brooding.air_for_fire"))
            .with("leaks", number(leaks, Unit::CubicMetrePerHour, 0))
            .with("heat", kilowatts(heat))
    })
}

fn brooder_power_not_told(_: &Answers, outcome: &Outcome) -> Option<Finding> {
    let design = outcome.number("brooding.design").filter(|design| *design > 0.0)?;
    let known = outcome.get("brooding.brooder_power").is_some();
    let of = |kind| heat::useful_kw(kind).map(|kw| number((design / kw).ceil(), Unit::Pieces, 0));
    let (pots, hovers) = (of("charcoal-pot")?, of("gas-hover")?);
    (!known).then(|| {
        Finding::new("brooder-power-not-told", Weight::Look)
            .at("brooding.brooder_kw")
            .with("design", Detail::Figure("brooding.design"))
            .with("pots", pots)
            .with("hovers", hovers)
    })
}

fn charcoal_inside(answers: &Answers, outcome: &Outcome) -> Option<Finding> {
    let told = fuel::any_charcoal(answers) && outcome.get("brooding.heat").is_some();
    told.then(|| match outcome.get("brooding.carbon_monoxide").and_then(|worked| worked.figure.band) {
        Some(band) => Finding::new("charcoal-gas-estimated", Weight::Look)
            .at("brooding.fuel")
            .with("low", number(two_figures(band.low), Unit::PartsPerMillion, 0))
            .with("high", number(two_figures(band.high), Unit::PartsPerMillion, 0)),
        None => Finding::new("charcoal-inside", Weight::Look).at("brooding.fuel"),
    })
}

/// A rough estimate is said roughly.
fn two_figures(ppm: f64) -> f64 {
    let scale = 10f64.powf((ppm.max(1.0).log10().floor() - 1.0).max(0.0));
    (ppm / scale).round() * scale
}

/// A slip of the pen that would change cylinders into sacks.
fn fuel_not_of_brooder(answers: &Answers, outcome: &Outcome) -> Option<Finding> {
    let differs = |key, of_brooder: Option<&'static str>| {
        Some(answers.choice(key)? != of_brooder?).filter(|differs| *differs).map(|_| key)
    };
    let key = differs(fuel::FUEL, fuel::of_brooder(answers))
        .or_else(|| differs(second_brooder::FUEL, second_brooder::of_brooder(answers)))?;
    outcome.get("brooding.heat").map(|_| Finding::new("fuel-not-of-brooder", Weight::Look).at(key))
}

/// Some brooders of a second kind stand, and what they give or burn is not known: they would be left out in silence.
fn second_kind_not_told(answers: &Answers, outcome: &Outcome) -> Option<Finding> {
    let left_out =
        outcome.number("brooding.second_share").is_none() || second_brooder::fuel(answers).is_none();
    let told = second_brooder::any(answers) && outcome.get("brooding.heat").is_some();
    (told && left_out)
        .then(|| Finding::new("second-kind-not-told", Weight::Look).at("brooding.second_brooder"))
}

/// Heating where no chick is.
fn heat_for_nobody(answers: &Answers, outcome: &Outcome) -> Option<Finding> {
    // Said once: brooders that are too weak name the partition themselves.
    if brooders_too_weak(answers, outcome).is_some() {
        return None;
    }
    let end = with_partition(answers, outcome)?;
    let less = end.design < outcome.number("brooding.design")?;
    less.then(|| {
        let finding = Finding::new("heat-for-nobody", Weight::Look)
            .at("brooding.heated_length_m")
            .with("design", Detail::Figure("brooding.design"));
        end.told_in(finding)
    })
}

/// Rings that stand beyond the partition have no heat.
fn rings_outside_the_heat(answers: &Answers, outcome: &Outcome) -> Option<Finding> {
    let steps = standing::on_floor(answers, outcome);
    let step = steps.iter().find(|step| step.joined == 1.0 && step.is_outside_the_heat())?;
    let finding = outside_the_heat("rings-outside-heat", Weight::Problem, step);
    let length = outcome.number("guard.length_for_rings");
    Some(
        longer_end(finding, "longer-heated-end", length, answers)
            .out("ring-count-in-heat")
            .out("no-partition"),
    )
}

/// As rings are joined they need another floor: those that then stand beyond the partition have no heat either.
fn joined_rings_outside_the_heat(answers: &Answers, outcome: &Outcome) -> Option<Finding> {
    let steps = standing::on_floor(answers, outcome);
    let mut outside = steps.iter().filter(|step| step.joined > 1.0 && step.is_outside_the_heat());
    let step = outside.next()?;
    let finding = outside_the_heat("joined-rings-outside-heat", Weight::Look, step);
    let lengths = outside.chain([step]).filter_map(|step| Some(step.length_wanted?.in_metres()));
    let finding = longer_end(finding, "move-partition", lengths.reduce(f64::max), answers);
    Some(finding.out("no-partition-from-then").out("leave-rings-apart"))
}

/// What is to say of rings that do not all stand in the heated end.
fn outside_the_heat(name: &'static str, weight: Weight, step: &OnFloor) -> Finding {
    let metres = |length: Length, decimals| number(length.in_metres(), Unit::Metre, decimals);
    Finding::new(name, weight)
        .at("brooding.heated_length_m")
        .with("day", number(f64::from(step.from_day), Unit::One, 0))
        .with("rings", number(step.rings, Unit::Pieces, 0))
        .with("joined", number(step.joined, Unit::One, 0))
        .with("diameter", metres(step.diameter, 2))
        .with("heated", metres(step.part, 1))
        .with("fit", number(step.fit, Unit::Pieces, 0))
}

/// Offers a partition farther off, where the house is long enough for one.
fn longer_end(finding: Finding, way: &'static str, length: Option<f64>, answers: &Answers) -> Finding {
    let house = answers.number("house.length_m").unwrap_or_default();
    match length.filter(|length| *length < house) {
        Some(length) => finding.with("length", number(length, Unit::Metre, 1)).out(way),
        None => finding,
    }
}

fn spare_for_the_night(answers: &Answers, outcome: &Outcome) -> Option<Finding> {
    spare(fuel::FUEL, "brooding.spare", fuel::is_gas(answers), outcome)
}

fn second_spare_for_the_night(answers: &Answers, outcome: &Outcome) -> Option<Finding> {
    spare(second_brooder::FUEL, "brooding.second_spare", second_brooder::is_gas(answers), outcome)
}

fn spare(key: &'static str, kept: &'static str, is_gas: bool, outcome: &Outcome) -> Option<Finding> {
    outcome.number(kept).filter(|spare| *spare > 0.0)?;
    let name = if is_gas { "spare-cylinder" } else { "spare-nights" };
    Some(Finding::new(name, Weight::Note).at(key).with("spare", Detail::Figure(kept)))
}

fn kilowatts(value: f64) -> Detail {
    number(value, Unit::Kilowatt, 1)
}
