//! What is to say about guard and brooders.

use quantity::{Answers, Unit};

use super::{Check, number};
use crate::finding::{Detail, Finding, Weight};
use crate::outcome::Outcome;

/// Its checks.
pub(super) static CHECKS: &[Check] = &[
    rings_do_not_fit,
    brooder_caps_ring,
    ring_without_brooder,
    two_kinds_of_brooder,
    brooder_not_told,
    sheet_hardly_bends,
    sheet_stands_straight,
];

fn rings_do_not_fit(_: &Answers, outcome: &Outcome) -> Option<Finding> {
    let (rings, fit) = (outcome.number("guard.rings")?, outcome.number("guard.rings_that_fit")?);
    (rings > fit).then(|| {
        Finding::new("rings-do-not-fit", Weight::Problem)
            .at("guard.chicks_per_ring")
            .with("rings", Detail::Figure("guard.rings"))
            .with("fit", Detail::Figure("guard.rings_that_fit"))
            .with("diameter", Detail::Figure("guard.ring_diameter"))
            .out("other-ring-count")
            .out("narrower-walkway")
    })
}

fn brooder_caps_ring(answers: &Answers, outcome: &Outcome) -> Option<Finding> {
    let asked = answers.number("guard.chicks_per_ring")?;
    let taken = outcome.number("guard.chicks_per_ring")?;
    (taken < asked).then(|| {
        Finding::new("brooder-caps-ring", Weight::Look)
            .at("guard.chicks_per_ring")
            .with("asked", number(asked, Unit::Chicks, 0))
            .with("taken", Detail::Figure("guard.chicks_per_ring"))
            .with("rings", Detail::Figure("guard.rings"))
    })
}

fn ring_without_brooder(answers: &Answers, outcome: &Outcome) -> Option<Finding> {
    let second = answers.number("brooding.second_brooders").unwrap_or_default();
    let brooders = answers.number("brooding.brooders")? + second;
    (outcome.number("guard.rings_without_brooder")? > 0.0).then(|| {
        Finding::new("ring-without-brooder", Weight::Problem)
            .at("brooding.brooders")
            .with("brooders", number(brooders, Unit::Pieces, 0))
            .with("rings", Detail::Figure("guard.rings"))
            .with("missing", Detail::Figure("guard.rings_without_brooder"))
            .out("brooder-each-ring")
    })
}

/// Together they keep too few chicks warm; or enough, if the chicks are shared out by what each keeps warm.
fn two_kinds_of_brooder(answers: &Answers, outcome: &Outcome) -> Option<Finding> {
    let (carry, chicks) = (outcome.number("guard.brooders_carry")?, answers.number("batch.chicks")?);
    answers.number("brooding.second_brooders").filter(|count| *count > 0.0)?;
    let share =
        |rating| Some(number((outcome.number(rating)? * (chicks / carry).min(1.0)).floor(), Unit::Chicks, 0));
    let (first, second) = (share("guard.first_rating")?, share("guard.second_rating")?);
    let finding = if carry < chicks {
        Finding::new("brooders-carry-too-few", Weight::Problem)
            .with("left", number(chicks - carry, Unit::Chicks, 0))
            .out("brooder-for-the-rest")
            .out("fewer-chicks-for-brooders")
    } else {
        Finding::new("two-kinds-of-brooder", Weight::Look)
    };
    Some(
        finding
            .at("brooding.second_brooders")
            .with("carry", Detail::Figure("guard.brooders_carry"))
            .with("first", first)
            .with("second", second),
    )
}

fn brooder_not_told(answers: &Answers, outcome: &Outcome) -> Option<Finding> {
    let told = answers.get("brooding.brooder").is_some() || answers.get("brooding.brooder_chicks").is_some();
    let in_ring = outcome.number("guard.chicks_in_ring")?;
    let rating = |kind| reference::brooder::rating(kind).ok().flatten();
    let (pot, gas) = (rating("charcoal-pot")?, rating("gas-hover")?);
    (!told && in_ring > pot.low.min(gas.low)).then(|| {
        Finding::new("brooder-not-told", Weight::Look)
            .at("brooding.brooder")
            .with("in_ring", Detail::Figure("guard.chicks_in_ring"))
            .with("pot", number(pot.low, Unit::Chicks, 0))
            .with("gas_low", number(gas.low, Unit::Chicks, 0))
            .with("gas_high", number(gas.high, Unit::Chicks, 0))
    })
}

fn sheet_hardly_bends(answers: &Answers, outcome: &Outcome) -> Option<Finding> {
    let bend = outcome.get("guard.least_bend_radius")?.figure.band?;
    let radius = outcome.number("guard.ring_diameter")? / 2.0;
    let bends = crate::families::guard::shape(answers) == model::guard::Shape::Circle;
    let finding = if radius < bend.low {
        Finding::new("sheet-does-not-bend", Weight::Problem)
    } else {
        Finding::new("sheet-hardly-bends", Weight::Look)
    };
    (bends && radius < bend.high).then(|| {
        finding
            .at("guard.sheet_thickness_mm")
            .with("radius", number(radius, Unit::Metre, 1))
            .with("low", number(bend.low, Unit::Metre, 1))
            .with("high", number(bend.high, Unit::Metre, 1))
    })
}

fn sheet_stands_straight(answers: &Answers, outcome: &Outcome) -> Option<Finding> {
    let straight = crate::families::guard::shape(answers) == model::guard::Shape::Polygon;
    let corners = outcome.number("guard.strips_per_ring")?;
    straight.then(|| {
        Finding::new("sheet-stands-straight", Weight::Note)
            .at("guard.sheet_thickness_mm")
            .with("corners", Detail::Figure("guard.strips_per_ring"))
            .with("angle", number(180.0 - 360.0 / corners, Unit::Degree, 0))
    })
}
