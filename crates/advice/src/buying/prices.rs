//! What a bag costs on which day.

use quantity::Answers;

use crate::outcome::Outcome;
use crate::store_room::Phase;

/// Days of a month of rising prices.
const MONTH: f64 = 30.0;

/// What a bag of a feed costs on the first day of buying.
///
/// - `size_kg`: what it holds where feed is to be had in several sizes; else it is a plan's own bag
pub(crate) fn of_bag(
    answers: &Answers,
    outcome: &Outcome,
    phase: Phase,
    size_kg: Option<f64>,
) -> Option<f64> {
    let own = answers.number("feed.bag_kg");
    match size_kg.filter(|size| own.is_some_and(|own| own != *size)) {
        Some(_) => of_other_bag(answers, phase),
        None => of_own_bag(answers, outcome, phase),
    }
}

/// What a bag of the other size costs on the first day of buying.
pub(crate) fn of_other_bag(answers: &Answers, phase: Phase) -> Option<f64> {
    answers.number(match phase {
        Phase::Starter => "prices.starter_other_bag_each",
        Phase::Grower => "prices.grower_other_bag_each",
        Phase::Finisher => "prices.finisher_other_bag_each",
        Phase::Last => "prices.last_other_bag_each",
    })
}

pub(super) fn of_own_bag(answers: &Answers, outcome: &Outcome, phase: Phase) -> Option<f64> {
    match phase {
        Phase::Starter => answers.number("prices.starter_bag_each"),
        Phase::Grower => outcome.number("feed.grower_price"),
        Phase::Finisher => answers.number("prices.finisher_bag_each"),
        Phase::Last => outcome.number("feed.last_price"),
    }
}

/// How many times its price of the first day of buying feed costs on a day of age: by the weeks told, and by the rise a
/// month.
pub(crate) fn factor(answers: &Answers, day: i32) -> f64 {
    let rise = answers.number("prices.feed_rise_percent").unwrap_or_default();
    by_weeks(answers, day) + rise / 100.0 * since_first(answers, day) / MONTH
}

/// The least rise a month at which feed still costs something on a day.
pub(crate) fn least_rise(answers: &Answers, day: i32) -> f64 {
    -100.0 * by_weeks(answers, day) * MONTH / since_first(answers, day).max(1.0)
}

/// The share of the first price that the weeks told give; the last week goes on.
fn by_weeks(answers: &Answers, day: i32) -> f64 {
    let Some(weeks) = answers.numbers("prices.feed_weeks_percent").split_last() else { return 1.0 };
    let week = (since_first(answers, day) / 7.0) as usize;
    weeks.1.get(week).unwrap_or(weeks.0) / 100.0
}

/// Days since the first on which feed is bought.
fn since_first(answers: &Answers, day: i32) -> f64 {
    let first = answers.number("feed.on_hand_before_d").unwrap_or_default();
    (f64::from(day) + first).max(0.0)
}
