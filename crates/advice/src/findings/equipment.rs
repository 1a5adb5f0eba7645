//! What is to say about feeders and drinkers: what runs short, and from which day on.

use quantity::Answers;

use super::Check;
use crate::finding::{Detail, Finding, Weight};
use crate::outcome::Outcome;

/// Its checks.
pub(super) static CHECKS: &[Check] = &[
    |_, outcome| {
        let (short, needed) = ("space.chick_feeders_short", "space.chick_feeders");
        Some(
            missing(Finding::new("chick-feeders-short", Weight::Problem), outcome, short, needed)?
                .at("equipment.chick_feeders"),
        )
    },
    |_, outcome| {
        let (short, needed) = ("space.chick_drinkers_short", "space.chick_drinkers");
        Some(
            missing(Finding::new("chick-drinkers-short", Weight::Problem), outcome, short, needed)?
                .at("equipment.chick_drinkers"),
        )
    },
    |_, outcome| {
        let (short, needed) = ("space.feeders_short", "space.feeders");
        Some(
            missing(Finding::new("feeders-short", Weight::Problem), outcome, short, needed)?
                .at("equipment.feeders"),
        )
    },
    |_, outcome| {
        let (short, needed) = ("space.drinkers_short", "space.drinkers");
        Some(
            missing(Finding::new("drinkers-short", Weight::Problem), outcome, short, needed)?
                .at("equipment.drinkers"),
        )
    },
    over_limit_on_day,
    birds_left_unsold,
];

fn missing(
    finding: Finding,
    outcome: &Outcome,
    short: &'static str,
    needed: &'static str,
) -> Option<Finding> {
    (outcome.number(short)? > 0.0).then(|| {
        finding
            .with("short", Detail::Figure(short))
            .with("needed", Detail::Figure(needed))
            .with("day", Detail::Figure("space.change_over"))
            .out("buy-or-borrow")
    })
}

/// Where birds leave over several days, the floor is followed day by day; a sale on one day has its own finding.
fn over_limit_on_day(answers: &Answers, outcome: &Outcome) -> Option<Finding> {
    outcome.get("space.first_day_over")?;
    super::space::sold_in_parts(answers).then(|| {
        Finding::new("over-limit-on-day", Weight::Problem)
            .at("batch.chicks")
            .with("day", Detail::Figure("space.first_day_over"))
            .with("limit", Detail::Figure("space.limit"))
            .with("order", Detail::Figure("space.chicks_to_order"))
            .with("boxes", super::space::boxes_of_hundred(outcome))
            .out("sell-more-before")
            .out("fewer-chicks")
    })
}

fn birds_left_unsold(answers: &Answers, outcome: &Outcome) -> Option<Finding> {
    answers.schedule("sale.days")?;
    let last = outcome.last_day()?;
    let left = outcome.on_day("batch.birds_alive", last)? - outcome.on_day("sale.birds_by_day", last)?;
    (left >= 1.0).then(|| {
        Finding::new("birds-left-unsold", Weight::Look)
            .at("sale.days")
            .with("left", super::number(left, quantity::Unit::Birds, 0))
    })
}
