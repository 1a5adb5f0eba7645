//! What is to say about guard and brooders.

use model::guard;
use quantity::{Answers, Area, Length, Unit};

use super::{Check, number};
use crate::finding::{Detail, Finding, Weight};
use crate::outcome::Outcome;
use crate::outfit;
use crate::standing::{self, Kind};

/// Its checks.
pub(super) static CHECKS: &[Check] = &[
    rings_do_not_fit,
    fire_too_near_guard,
    pieces_without_place,
    brooder_caps_ring,
    ring_without_brooder,
    two_kinds_of_brooder,
    brooder_not_told,
    sheet_hardly_bends,
    sheet_stands_straight,
];

/// On the whole floor; of a heated end it is said with the heat.
fn rings_do_not_fit(answers: &Answers, outcome: &Outcome) -> Option<Finding> {
    let (rings, fit) = (outcome.number("guard.rings")?, standing::fit_in_house(answers, outcome)?);
    (rings > fit).then(|| {
        Finding::new("rings-do-not-fit", Weight::Problem)
            .at("guard.chicks_per_ring")
            .with("rings", Detail::Figure("guard.rings"))
            .with("fit", number(fit, Unit::Pieces, 0))
            .with("diameter", Detail::Figure("guard.ring_diameter"))
            .out("other-ring-count")
            .out("narrower-walkway")
    })
}

/// Plywood beside an open fire catches fire.
fn fire_too_near_guard(answers: &Answers, outcome: &Outcome) -> Option<Finding> {
    let clear = outcome.number("guard.fire_to_guard")?;
    let (wanted, spare) = (guard::FROM_FIRE.in_metres(), guard::FROM_FIRE_SPARE.in_metres());
    let finding = match clear {
        clear if clear < wanted => Finding::new("fire-too-near-guard", Weight::Problem),
        clear if clear < wanted + spare => Finding::new("fire-just-clear-of-guard", Weight::Look),
        _ => return None,
    };
    let radius = wanted + spare + guard::POT.in_metres() / 2.0;
    let strips = outcome.number("guard.strips_per_ring")?;
    let shape = crate::families::guard::shape(answers);
    let area = guard::area_around(Length::metres(radius), strips, shape).in_square_metres();
    let opened = Area::square_metres(outcome.number("guard.ring_area")?);
    let opened = guard::nearest_guard(opened, strips, shape) - guard::POT / 2.0;
    let mut finding = finding
        .at("guard.chicks_per_m2")
        .with("across", number(2.0 * outcome.number("guard.first_day_radius")?, Unit::Metre, 2))
        .with("pot", number(guard::POT.in_metres(), Unit::Metre, 1))
        .with("clear", Detail::Figure("guard.fire_to_guard"))
        .with("wanted", number(wanted, Unit::Metre, 1))
        .with("opened", number(opened.in_metres(), Unit::Metre, 2))
        .with(
            "density",
            number((outcome.number("guard.chicks_in_ring")? / area).floor(), Unit::PerSquareMetre, 0),
        );
    if opened.in_metres() >= wanted + spare {
        finding = finding.out("open-rings-for-fire");
    }
    Some(finding.out("larger-rings-for-fire").out("gas-hung-for-fire"))
}

/// Feeders and drinkers of the first weeks that do not stand in their ring with room to pass.
fn pieces_without_place(answers: &Answers, outcome: &Outcome) -> Option<Finding> {
    let crowded = outfit::crowded(answers, outcome)?;
    let placed = &crowded.ring.outfit.placed;
    let pieces = |count: usize| number(count as f64, Unit::One, 0);
    let standing = placed.feeders.len() + placed.drinkers.len();
    let mut finding = Finding::new("pieces-without-place", Weight::Look)
        .at("guard.chicks_per_m2")
        .with("day", number(f64::from(crowded.from_day), Unit::One, 0))
        .with("across", number(crowded.ring.diameter.in_metres(), Unit::Metre, 2))
        .with("feeders", pieces(placed.feeders.len() + placed.feeders_left))
        .with("drinkers", pieces(placed.drinkers.len() + placed.drinkers_left))
        .with("standing", pieces(standing))
        .with("left", pieces(placed.left()));
    if let Some(opened) = crowded.opened {
        finding =
            finding.with("opened", number(opened.in_metres(), Unit::Metre, 2)).out("open-rings-for-pieces");
    }
    if crowded.ring.outfit.feeder.name != "tray" {
        finding = finding.out("trays-for-room");
    }
    Some(finding.out("more-room-for-pieces").out("more-rings-for-pieces").out("fewer-pieces"))
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

/// Ring by ring they keep too few chicks warm; or enough, if the chicks are shared out by what each keeps warm.
fn two_kinds_of_brooder(answers: &Answers, outcome: &Outcome) -> Option<Finding> {
    let (carry, chicks) = (outcome.number("guard.brooders_carry")?, answers.number("batch.chicks")?);
    let rings = standing::rings_by_kind(answers, outcome)?;
    let each = |kind| rings.iter().find(|rings| rings.kind == Some(kind)).map(|rings| rings.chicks);
    // Where the stronger kind is enough by itself, there is nothing to share out.
    let (first, second) = (each(Kind::First)?, each(Kind::Second)?);
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
            .with("most", number(answers.number("guard.chicks_per_ring")?, Unit::Chicks, 0))
            .with("first", number(first, Unit::Chicks, 0))
            .with("second", number(second, Unit::Chicks, 0)),
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
    let radius = outcome.number("guard.first_day_radius")?;
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
