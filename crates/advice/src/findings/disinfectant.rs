//! What is to say about the disinfectant.

use quantity::{Answers, Unit};

use super::{Check, number};
use crate::finding::{Detail, Finding, Weight};
use crate::outcome::Outcome;

/// Its checks.
pub(super) static CHECKS: &[Check] =
    &[ratio_meaning_not_told, ceiling_without_ceiling, stronger_than_label, weaker_than_label, earth_floor];

/// Asked only where it changes the dose by over 2 %: below that the question only worries people.
fn ratio_meaning_not_told(answers: &Answers, outcome: &Outcome) -> Option<Finding> {
    let parts = answers.number("disinfectant.ratio")?;
    let told = answers.get("disinfectant.ratio_means").is_some_and(|given| given.usual.is_none());
    let gap = model::disinfectant::meaning_gap(parts);
    (!told && gap > 0.02 && outcome.get("disinfectant.product_per_load").is_some()).then(|| {
        Finding::new("ratio-meaning-not-told", Weight::Look)
            .at("disinfectant.ratio_means")
            .with("parts", number(parts, Unit::One, 0))
            .with("water", Detail::Figure("disinfectant.product_per_load"))
            .with("total", Detail::Figure("disinfectant.product_other_meaning"))
            .with("percent", number(gap * 100.0, Unit::Percent, 0))
    })
}

fn ceiling_without_ceiling(answers: &Answers, _: &Outcome) -> Option<Finding> {
    let surfaces = answers.choices("disinfectant.surfaces");
    let none = answers.choice("house.ceiling") == Some("none");
    (none && surfaces.contains(&"ceiling"))
        .then(|| Finding::new("ceiling-without-ceiling", Weight::Look).at("disinfectant.surfaces"))
}

fn stronger_than_label(_: &Answers, outcome: &Outcome) -> Option<Finding> {
    let times = outcome.number("disinfectant.times_label")?;
    (times > 1.05).then(|| {
        let finding = Finding::new("stronger-than-label", Weight::Problem)
            .at("disinfectant.poured_ml")
            .with("times", Detail::Figure("disinfectant.times_label"))
            .with("ratio", Detail::Figure("disinfectant.true_ratio"));
        match outcome.get("disinfectant.extra_cost") {
            Some(_) => finding.with("cost", Detail::Figure("disinfectant.extra_cost")).out("extra-cost"),
            None => finding,
        }
    })
}

fn weaker_than_label(answers: &Answers, outcome: &Outcome) -> Option<Finding> {
    let poured = answers.number("disinfectant.poured_ml")?;
    let times = outcome.number("disinfectant.times_label")?;
    (times < 0.95).then(|| {
        Finding::new("weaker-than-label", Weight::Problem)
            .at("disinfectant.poured_ml")
            .with("poured", number(poured, Unit::Millilitre, 0))
            .with("times", Detail::Figure("disinfectant.times_label"))
    })
}

fn earth_floor(answers: &Answers, _: &Outcome) -> Option<Finding> {
    let sprayed = answers.choices("disinfectant.surfaces").contains(&"floor");
    (answers.choice("house.floor") == Some("earth") && sprayed)
        .then(|| Finding::new("earth-floor", Weight::Look).at("house.floor"))
}
