//! What is to say about the days between two batches.

use quantity::{Answers, Unit};

use super::{Check, number};
use crate::families::turnaround::EMPTY_DAYS;
use crate::finding::{Detail, Finding, Weight};
use crate::outcome::Outcome;

/// Its checks.
pub(super) static CHECKS: &[Check] = &[downtime_short, litter_late];

/// The work itself takes longer than the house is to stand empty.
fn downtime_short(answers: &Answers, outcome: &Outcome) -> Option<Finding> {
    let asked = answers.number("house.downtime_d")?;
    (asked < outcome.number(EMPTY_DAYS)?).then(|| {
        Finding::new("downtime-short", Weight::Look)
            .at("house.downtime_d")
            .with("asked", number(asked, Unit::Day, 0))
            .with("needed", Detail::Figure(EMPTY_DAYS))
    })
}

/// Warming begins up to two days before the chicks; litter has to lie by then.
const WARMING_STARTS_D: f64 = 2.0;

fn litter_late(answers: &Answers, outcome: &Outcome) -> Option<Finding> {
    let before = answers.number("litter.spread_days_before_d")?;
    outcome.get("litter.spread_date")?;
    (before < WARMING_STARTS_D).then(|| {
        Finding::new("litter-late", Weight::Look)
            .at("litter.spread_days_before_d")
            .with("wanted", number(WARMING_STARTS_D, Unit::Day, 0))
    })
}
