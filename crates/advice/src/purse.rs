//! What other plans would leave in the purse, without working them out whole: fewer chicks, or feed bought nearer to its day.

use quantity::{Answers, Value};

use crate::diary::set;
use crate::halving;
use crate::outcome::Outcome;
use crate::purchases::{self, Purchase};
use crate::series::Listed;
use crate::store_room;

/// Days of feed that the first delivery covers, and days before need that later feed comes, of who buys as near as is wise
/// (our judgement: a lorry that comes a day late must not stop the birds).
const FIRST_COVERS_D: f64 = 7.0;
const AHEAD_D: f64 = 2.0;

/// Whole tens: nobody orders 437 chicks.
const TEN: f64 = 10.0;

/// Fewer are no batch of this kind.
const LEAST_CHICKS: f64 = 50.0;

/// What feed bought nearer to its day would change.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct Nearer {
    /// Days that the first delivery covers.
    pub(crate) covers_d: f64,
    /// Days before need that the rest comes.
    pub(crate) ahead_d: f64,
    /// The first day on which more would be missing than may be owed; `None` where none would.
    pub(crate) first: Option<i32>,
    /// What would be missing at the worst, beyond what may be owed.
    pub(crate) short: f64,
}

/// What may be owed; nothing where no limit was told.
fn may_owe(answers: &Answers) -> f64 {
    answers.number("cash.credit_limit").unwrap_or_default()
}

/// The most chicks, in tens, with which money never goes further below nothing than may be owed; `None` where no batch of this
/// kind can be paid. Chicks and feed go with their number, feed in whole bags, and so does what is received; all else is taken
/// as planned.
pub(crate) fn chicks_carried(answers: &Answers, outcome: &Outcome) -> Option<f64> {
    let chicks = answers.number("batch.chicks")?;
    let start = answers.number("cash.at_start")?;
    let (list, received) = (purchases::list(answers, outcome), received(outcome));
    let holds = |tens: u32| {
        let share = TEN * f64::from(tens) / chicks;
        let paid = list.iter().filter_map(|one| Some((one.day, of_fewer(one, share)?)));
        let got = received.iter().map(|(day, amount)| (*day, share * amount));
        let evenings = evenings(start, paid, got);
        evenings.iter().all(|(_, on_hand)| *on_hand >= -may_owe(answers))
    };
    let most = halving::most((LEAST_CHICKS / TEN) as u32, (chicks / TEN).floor() as u32 + 1, holds)?;
    Some(TEN * f64::from(most))
}

/// What is missing, and from when on, where feed comes nearer to its day; `None` where it is bought on the cheapest days, or already
/// comes as near.
pub(crate) fn feed_nearer(answers: &Answers, outcome: &Outcome) -> Option<Nearer> {
    if store_room::cheapest(answers) {
        return None;
    }
    let start = answers.number("cash.at_start")?;
    let covers_d = answers.number("feed.on_hand_days_d")?.min(FIRST_COVERS_D);
    let ahead_d = answers.number("feed.ahead_d")?.min(AHEAD_D);
    let mut nearer = answers.clone();
    for (key, value) in [
        ("feed.buying", Value::Choice("by-phase")),
        ("feed.on_hand_days_d", Value::Number(covers_d)),
        ("feed.ahead_d", Value::Number(ahead_d)),
    ] {
        set(&mut nearer, key, value);
    }
    let list = purchases::list(&nearer, outcome);
    let paid = list.iter().filter_map(|one| Some((one.day, one.cost?)));
    let evenings = evenings(start, paid, received(outcome).into_iter());
    let missing = |on_hand: f64| (-on_hand - may_owe(answers)).max(0.0);
    let first = evenings.iter().find(|(_, on_hand)| missing(*on_hand) > 0.0).map(|(day, _)| *day);
    let short = evenings.iter().map(|(_, on_hand)| missing(*on_hand)).fold(0.0, f64::max);
    Some(Nearer { covers_d, ahead_d, first, short })
}

/// What a line of the list costs a batch of a share of the chicks; `None` while it has no price.
fn of_fewer(one: &Purchase, share: f64) -> Option<f64> {
    let cost = one.cost?;
    Some(match (one.what, one.quantity) {
        ("chicks" | "chick-deposit", _) => cost * share,
        (what, Some(bags)) if what.starts_with("feed-") && bags > 0.0 => cost * (bags * share).ceil() / bags,
        _ => cost,
    })
}

fn received(outcome: &Outcome) -> Listed {
    let days = 0..=outcome.last_day().unwrap_or(-1);
    days.filter_map(|day| Some((day, outcome.on_day("cash.received_by_day", day)?))).collect()
}

/// Money on hand in the evening of each day on which any is paid or received.
fn evenings(
    start: f64,
    paid: impl Iterator<Item = (i32, f64)>,
    received: impl Iterator<Item = (i32, f64)>,
) -> Listed {
    let mut days: Listed = paid.map(|(day, amount)| (day, -amount)).chain(received).collect();
    days.sort_by_key(|(day, _)| *day);
    let mut on_hand = start;
    let mut evenings = Vec::new();
    for day in days.chunk_by(|one, other| one.0 == other.0) {
        on_hand += day.iter().map(|(_, amount)| amount).sum::<f64>();
        evenings.extend(day.first().map(|(day, _)| (*day, on_hand)));
    }
    evenings
}
