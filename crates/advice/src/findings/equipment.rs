//! What is to say about feeders and drinkers: what runs short, and from which day on.

use quantity::Answers;

use super::Check;
use crate::families::space::{Fit, sold_in_parts};
use crate::finding::{Detail, Finding, Weight};
use crate::outcome::Outcome;

/// Its checks.
pub(super) static CHECKS: &[Check] = &[
    |answers, outcome| missing(&CHICK_FEEDERS, answers, outcome),
    |answers, outcome| missing(&CHICK_DRINKERS, answers, outcome),
    |answers, outcome| missing(&FEEDERS, answers, outcome),
    |answers, outcome| missing(&DRINKERS, answers, outcome),
    over_limit_on_day,
    birds_left_unsold,
    more_sold_than_there_are,
];

/// A kind of piece that can run short.
struct Kind {
    finding: &'static str,
    short: &'static str,
    needed: &'static str,
    by_day: &'static str,
    owned: &'static str,
    /// The figure that says from which day on it stands; none for the chick day.
    from: Option<&'static str>,
}

const CHICK_FEEDERS: Kind = Kind {
    finding: "chick-feeders-short",
    short: "space.chick_feeders_short",
    needed: "space.chick_feeders",
    by_day: "space.chick_feeders_by_day",
    owned: "equipment.chick_feeders",
    from: None,
};
const CHICK_DRINKERS: Kind = Kind {
    finding: "chick-drinkers-short",
    short: "space.chick_drinkers_short",
    needed: "space.chick_drinkers",
    by_day: "space.chick_drinkers_by_day",
    owned: "equipment.chick_drinkers",
    from: None,
};
const FEEDERS: Kind = Kind {
    finding: "feeders-short",
    short: "space.feeders_short",
    needed: "space.feeders",
    by_day: "space.feeders_by_day",
    owned: "equipment.feeders",
    from: Some("space.large_from"),
};
const DRINKERS: Kind = Kind {
    finding: "drinkers-short",
    short: "space.drinkers_short",
    needed: "space.drinkers",
    by_day: "space.drinkers_by_day",
    owned: "equipment.drinkers",
    from: Some("space.large_from"),
};

fn missing(kind: &Kind, answers: &Answers, outcome: &Outcome) -> Option<Finding> {
    (outcome.number(kind.short)? > 0.0).then(|| {
        let day = first_day_short(kind, answers, outcome)
            .or_else(|| outcome.number(kind.from?))
            .unwrap_or_default();
        Finding::new(kind.finding, Weight::Problem)
            .at(kind.owned)
            .with("short", Detail::Figure(kind.short))
            .with("needed", Detail::Figure(kind.needed))
            .with("day", super::number(day, quantity::Unit::One, 0))
            .out("buy-or-borrow")
    })
}

/// The first day that needs more than there are, where the need goes by day; those that stand beside the small ones before
/// are short from the day they are hung.
fn first_day_short(kind: &Kind, answers: &Answers, outcome: &Outcome) -> Option<f64> {
    let lids = outcome.number("space.box_lids").filter(|_| kind.short == CHICK_FEEDERS.short);
    let owned = answers.number(kind.owned)? + lids.unwrap_or_default();
    let day = (0..=outcome.last_day()?)
        .find(|day| outcome.on_day(kind.by_day, *day).is_some_and(|needed| needed > owned))?;
    let change_over = outcome.number("space.change_over")?;
    let from = kind.from.filter(|_| f64::from(day) <= change_over).and_then(|id| outcome.number(id));
    Some(from.unwrap_or(f64::from(day)))
}

/// Where birds leave over several days, the floor is followed day by day; a sale on one day has its own finding.
fn over_limit_on_day(answers: &Answers, outcome: &Outcome) -> Option<Finding> {
    let day = outcome.number("space.first_day_over")?;
    let order = sold_in_parts(answers).then(|| Fit::of(answers, outcome)).flatten()?.chicks_to_order;
    Some(
        Finding::new("over-limit-on-day", Weight::Problem)
            .at("batch.chicks")
            .with("day", super::number(day, quantity::Unit::One, 0))
            .with("limit", Detail::Figure("space.limit"))
            .with("fullest", Detail::Figure("space.fullest_day"))
            .with("density", Detail::Figure("space.fullest_density"))
            .with("order", super::number(order, quantity::Unit::Chicks, 0))
            .with("boxes", super::space::boxes_of_hundred(order))
            .out("sell-more-before")
            .out("fewer-chicks"),
    )
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
