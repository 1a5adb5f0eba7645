//! What is to say about the space.

use quantity::{Answers, Unit};

use super::{Check, number};
use crate::families::equipment::CHICKS_A_BOX;
use crate::families::space::{Fit, sold_in_hottest_quarter, sold_in_parts, standard};
use crate::finding::{Detail, Finding, Weight};
use crate::outcome::Outcome;

/// Its checks.
pub(super) static CHECKS: &[Check] = &[
    does_not_fit,
    sale_age_beside_its_days,
    fits_by_own_limit_only,
    limit_above_advice,
    limit_of_hot_season,
    season_not_known,
    curve_is_an_objective,
    slower_in_heat,
];

fn does_not_fit(answers: &Answers, outcome: &Outcome) -> Option<Finding> {
    let (birds, allowed) = (outcome.number("space.birds_at_sale")?, outcome.number("space.birds_allowed")?);
    if birds <= allowed || sold_in_parts(answers) {
        return None;
    }
    let finding = Finding::new("does-not-fit", Weight::Problem)
        .at("batch.chicks")
        .with("birds", Detail::Figure("space.birds_at_sale"))
        .with("allowed", Detail::Figure("space.birds_allowed"))
        .with("density", Detail::Figure("space.density_at_sale"))
        .with("limit", Detail::Figure("space.limit"))
        .with("order", Detail::Figure("space.chicks_to_order"))
        .with("early", number(tens(birds - allowed), Unit::Birds, 0))
        .with("boxes", boxes_of_hundred(outcome.number("space.chicks_to_order").unwrap_or_default()))
        .out("fewer-chicks");
    // Without a growth curve there is no day to name: the weight was typed. And nobody buys the very young.
    match outcome.number("space.last_day_that_fits") {
        Some(day) if day < YOUNGEST_SALE_D => Some(finding),
        Some(_) => Some(
            finding
                .with("day", Detail::Figure("space.last_day_that_fits"))
                .out("sell-all-earlier")
                .out("sell-part-by-day"),
        ),
        None => Some(finding.out("sell-lighter").out("sell-part")),
    }
}

/// Boxes of a hundred that so many chicks are ordered in.
pub(super) fn boxes_of_hundred(chicks: f64) -> Detail {
    number((chicks / CHICKS_A_BOX).floor(), Unit::Pieces, 0)
}

/// Where days of sale are told, they are followed and the age is not: two that do not go together are a slip.
fn sale_age_beside_its_days(answers: &Answers, outcome: &Outcome) -> Option<Finding> {
    let age = answers.number("batch.sale_age_d").filter(|_| sold_in_parts(answers))?;
    let (first, last) = (outcome.number("sale.first_age")?, outcome.number("sale.last_age")?);
    (!(first..=last).contains(&age)).then(|| {
        Finding::new("sale-age-beside-its-days", Weight::Look)
            .at("batch.sale_age_d")
            .with("age", number(age, Unit::One, 0))
            .with("first", number(first, Unit::One, 0))
            .with("last", number(last, Unit::One, 0))
    })
}

/// The next ten above: some of those sold early would have been lost, so that exactly so many are a bird or two short.
fn tens(birds: f64) -> f64 {
    ((birds + 1.0) / 10.0).ceil() * 10.0
}

/// Younger birds have no buyers (common practice).
pub(super) const YOUNGEST_SALE_D: f64 = 21.0;

/// A typed limit above what is advised must not turn "does not fit" into "fits" without a word.
fn fits_by_own_limit_only(answers: &Answers, outcome: &Outcome) -> Option<Finding> {
    let typed = answers.number("space.limit_kg_m2")?;
    let advised = advised_limit(answers)?.high;
    let fit = Fit::of(answers, outcome)?;
    let by_advice = (fit.allowed * advised / typed).floor();
    (fit.holds() && fit.birds > by_advice).then(|| {
        Finding::new("fits-by-own-limit-only", Weight::Problem)
            .at("space.limit_kg_m2")
            .with("typed", number(typed, Unit::KilogramPerSquareMetre, 1))
            .with("high", number(advised, Unit::KilogramPerSquareMetre, 0))
            .with("advised", number(by_advice, Unit::Birds, 0))
    })
}

fn advised_limit(answers: &Answers) -> Option<reference::stocking::StockingLimit> {
    let hot = sold_in_hottest_quarter(answers) == Some(true);
    let fans = answers.choice("house.fans") == Some("yes");
    let house = match (hot, fans) {
        (true, _) => reference::stocking::House::HottestQuarter,
        (false, true) => reference::stocking::House::OpenSidedWithFans,
        (false, false) => reference::stocking::House::OpenSided,
    };
    reference::stocking::limit(house).ok()
}

fn limit_above_advice(answers: &Answers, _: &Outcome) -> Option<Finding> {
    let typed = answers.number("space.limit_kg_m2")?;
    let hot = sold_in_hottest_quarter(answers) == Some(true);
    let advised = advised_limit(answers)?;
    if typed <= advised.high {
        return None;
    }
    let finding = if hot {
        Finding::new("limit-above-hot-advice", Weight::Look)
    } else {
        Finding::new("limit-above-advice", Weight::Look)
    };
    Some(
        finding
            .at("space.limit_kg_m2")
            .with("typed", number(typed, Unit::KilogramPerSquareMetre, 1))
            .with("low", number(advised.low, Unit::KilogramPerSquareMetre, 0))
            .with("high", number(advised.high, Unit::KilogramPerSquareMetre, 0)),
    )
}

fn limit_of_hot_season(answers: &Answers, _: &Outcome) -> Option<Finding> {
    let typed = answers.number("space.limit_kg_m2").is_some();
    let advised = reference::stocking::limit(reference::stocking::House::HottestQuarter).ok()?;
    let usual = reference::stocking::limit(reference::stocking::House::OpenSided).ok()?;
    (!typed && sold_in_hottest_quarter(answers) == Some(true)).then(|| {
        let limit = |kg_m2| number(kg_m2, Unit::KilogramPerSquareMetre, 0);
        Finding::new("limit-of-hot-season", Weight::Look)
            .at("space.limit_kg_m2")
            .with("low", limit(advised.low))
            .with("high", limit(advised.high))
            .with("usual", limit(usual.kg_m2))
    })
}

fn season_not_known(answers: &Answers, outcome: &Outcome) -> Option<Finding> {
    let typed = answers.number("space.limit_kg_m2").is_some();
    let months_typed = answers.get("farm.hottest_months").is_some();
    outcome.get("space.limit").filter(|_| !typed)?;
    match sold_in_hottest_quarter(answers) {
        None => Some(Finding::new("season-not-known", Weight::Look).at("batch.placement")),
        Some(_) if !months_typed => {
            Some(Finding::new("hottest-months-assumed", Weight::Note).at("farm.hottest_months"))
        }
        Some(_) => None,
    }
}

fn curve_is_an_objective(answers: &Answers, outcome: &Outcome) -> Option<Finding> {
    let fast = standard(answers) == reference::growth::Standard::Fast;
    let typed = answers.number("batch.sale_weight_kg").is_some();
    outcome.get("space.weight_at_sale")?;
    (fast && !typed).then(|| {
        Finding::new("curve-is-an-objective", Weight::Look)
            .at("batch.standard")
            .with("weight", Detail::Figure("growth.fast_at_sale"))
            .with("open", Detail::Figure("space.weight_open_house"))
            .with("open_birds", Detail::Figure("space.birds_allowed_open_house"))
    })
}

/// Heat makes no batch cheaper: birds eat less, grow less still, and eat more for each kilogram.
fn slower_in_heat(answers: &Answers, outcome: &Outcome) -> Option<Finding> {
    let (feed, gain) = (outcome.number("feed.heat_lost")?, outcome.number("growth.heat_lost")?);
    (gain >= 0.5).then(|| {
        Finding::new("slower-in-heat", Weight::Look)
            .at("weather.mean_c")
            .with("mean", number(answers.number("weather.mean_c").unwrap_or_default(), Unit::Celsius, 0))
            .with("gain", Detail::Figure("growth.heat_lost"))
            .with("feed", Detail::Figure("feed.heat_lost"))
            .with("more", number(100.0 * ((100.0 - feed) / (100.0 - gain) - 1.0), Unit::Percent, 0))
    })
}
