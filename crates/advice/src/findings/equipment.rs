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
    more_sold_than_there_are,
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
            .with(
                "day",
                super::number(outcome.number("space.large_from").unwrap_or_default(), quantity::Unit::One, 0),
            )
            .out("buy-or-borrow")
    })
}

/// Where birds leave over several days, the floor is followed day by day; a sale on one day has its own finding.
fn over_limit_on_day(answers: &Answers, outcome: &Outcome) -> Option<Finding> {
    let day = outcome.number("space.first_day_over")?;
    super::space::sold_in_parts(answers).then(|| {
        Finding::new("over-limit-on-day", Weight::Problem)
            .at("batch.chicks")
            .with("day", super::number(day, quantity::Unit::One, 0))
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
        Finding::new("birds-left-unsold", Weight::Problem)
            .at("sale.days")
            .with("left", super::number(left, quantity::Unit::Birds, 0))
            .out("sell-the-rest")
    })
}

fn more_sold_than_there_are(answers: &Answers, outcome: &Outcome) -> Option<Finding> {
    let steps = answers.schedule("sale.days")?.steps();
    let asked: f64 = steps
        .map(|(_, count)| match count {
            quantity::Count::Number(number) => number,
            quantity::Count::Rest => 0.0,
        })
        .sum();
    let there = outcome.number("sale.birds")?;
    (asked > there).then(|| {
        Finding::new("more-sold-than-there-are", Weight::Problem)
            .at("sale.days")
            .with("asked", super::number(asked, quantity::Unit::Birds, 0))
            .with("there", Detail::Figure("sale.birds"))
            .out("sell-what-there-is")
    })
}
