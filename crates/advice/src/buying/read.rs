//! Reads what is wanted out of a plan, or out of the book.

use quantity::Answers;

use super::{CannotBuy, Eaten, Wanted, prices};
use crate::account;
use crate::families::{self, store};
use crate::outcome::Outcome;
use crate::purchases;
use crate::store_room::Phase;
use crate::walk::Walk;

/// The figures that buying rests on.
const FIGURES: &[&str] = &[
    "feed.bags_starter",
    "feed.bags_grower",
    "feed.bags_finisher",
    "feed.bags_last",
    "feed.bags_cost",
    "feed.grower_price",
    "feed.last_price",
    "feed.keeps",
    "feed.store_room",
    "feed.starter_until",
    "feed.grower_until",
    "feed.finisher_until",
    "sale.last_age",
];

/// The figures by day that it rests on.
const DAYS: &[&str] = &["feed.by_day", "cash.received_by_day"];

/// The most that may be owed in an evening.
const LIMIT: &str = "cash.credit_limit";

/// What a plan needs.
///
/// - `known`: what is worked out of it already
pub(super) fn of_plan(answers: &Answers, known: Outcome) -> Result<Wanted, CannotBuy> {
    let is_borrowed = ["cash.interest_percent", LIMIT].iter().any(|key| answers.number(key).is_some());
    let paid = purchases::NEEDS.iter().filter(|_| is_borrowed);
    let mut outcome = known.with(answers, FIGURES.iter().chain(paid).copied());
    outcome.days_of(answers, DAYS.iter().filter_map(|id| families::series_named(id)));
    let first = -(days(answers, "feed.on_hand_before_d")?);
    let feeds = feeds_of_plan(answers, &outcome, [0.0; 4])?;
    let mut wanted = conditions(answers, &outcome, feeds, first)?;
    wanted.covers = days(answers, "feed.on_hand_days_d")?;
    if is_borrowed {
        wanted.money = money(answers, &outcome, wanted.first..=wanted.last);
    }
    Ok(wanted)
}

/// What a batch still needs, and what the book says that cannot be.
pub(super) struct FromBook {
    pub(super) wanted: Wanted,
    pub(super) never_bought: Vec<Phase>,
    pub(super) runs_out: Vec<Phase>,
}

/// What is still to be bought by the book. Money for it is taken as borrowed from the day it is paid, where credit has a
/// price: what is in the purse today is not in the book. Where credit has a limit, whatever the plan began with, less what was
/// paid and with what came in, is what there is.
pub(super) fn of_book(walk: &Walk) -> Result<FromBook, CannotBuy> {
    let (answers, outcome) = (&walk.plan.answers, &walk.plan.outcome);
    let today = walk.diary.age_today().ok_or(CannotBuy::NotKnown { key: "batch.placement" })?;
    let left = Phase::ALL.map(|phase| outcome.number(&format!("store.{}_left", phase.name())));
    let in_hand = left.map(|left| left.unwrap_or_default().max(0.0));
    let is_running = store::FEEDS.iter().any(|feed| !answers.numbers(feed.ahead).is_empty());
    if walk.diary.is_closed || (walk.diary.is_placed && !is_running) {
        return Err(CannotBuy::NothingEaten);
    }
    let feeds = match is_running {
        true => feeds_ahead(answers, outcome, today, in_hand)?,
        false => feeds_of_plan(answers, outcome, in_hand)?,
    };
    let soonest = today + days(answers, "feed.lead_d")?;
    let first = if is_running { soonest } else { soonest.max(-days(answers, "feed.on_hand_before_d")?) };
    let mut wanted = conditions(answers, outcome, feeds, first)?;
    if !is_running {
        wanted.covers = days(answers, "feed.on_hand_days_d")?;
    }
    if wanted.limit.is_some() {
        wanted.money = money_by_book(walk, today, wanted.first..=wanted.last);
    }
    let never_bought =
        Phase::ALL.into_iter().zip(left).filter(|(_, left)| left.is_some_and(|left| left < -0.5));
    let never_bought: Vec<Phase> =
        never_bought.map(|(phase, _)| phase).chain(given_without_delivery(answers)).collect();
    let late = |eaten: &&Eaten| wanted.measures(eaten).1.first().is_some_and(|(opened, _)| *opened < first);
    let runs_out = wanted.feeds.iter().filter(late).map(|eaten| eaten.phase).collect();
    Ok(FromBook { never_bought, runs_out, wanted })
}

/// Feeds that were given although none of them ever came.
fn given_without_delivery(answers: &Answers) -> impl Iterator<Item = Phase> {
    let told = move |key: &str| answers.number(key).is_some();
    let without = move |(_, feed): &(Phase, &store::FeedFields)| told(feed.given) && !told(feed.came);
    Phase::ALL.into_iter().zip(&store::FEEDS).filter(without).map(|(phase, _)| phase)
}

fn days(answers: &Answers, key: &'static str) -> Result<i32, CannotBuy> {
    Ok(answers.number(key).ok_or(CannotBuy::NotKnown { key })? as i32)
}

fn conditions(
    answers: &Answers,
    outcome: &Outcome,
    feeds: Vec<Eaten>,
    first: i32,
) -> Result<Wanted, CannotBuy> {
    let last = feeds.iter().map(|eaten| eaten.from + eaten.kg.len() as i32 - 1).max();
    let last = last.ok_or(CannotBuy::NothingEaten)?;
    Ok(Wanted {
        measure_kg: measure(answers, &feeds)?,
        feeds,
        first,
        last,
        covers: i32::MIN,
        ahead: days(answers, "feed.ahead_d")?,
        keeps: outcome.number("feed.keeps").ok_or(CannotBuy::NotKnown { key: "feed.keeps" })? as i32,
        bag_kg: answers.number("feed.bag_kg").unwrap_or(1.0),
        room: outcome.number("feed.store_room").map(|bags| bags as usize),
        fee: answers.number("costs.feed_delivery_each").unwrap_or_default(),
        more_rise: 0.0,
        interest: answers.number("cash.interest_percent").unwrap_or_default() / 100.0,
        limit: answers.number(LIMIT),
        money: Vec::new(),
    })
}

/// What the plan has eaten of each feed.
fn feeds_of_plan(answers: &Answers, outcome: &Outcome, in_hand: [f64; 4]) -> Result<Vec<Eaten>, CannotBuy> {
    let mut from = 0;
    let mut feeds = Vec::new();
    for (phase, in_hand_kg) in Phase::ALL.into_iter().zip(in_hand) {
        let key = phase.last_day_figure();
        let until = outcome.number(key).ok_or(CannotBuy::NotKnown { key })? as i32;
        let on = |day: i32| outcome.on_day("feed.by_day", day);
        let kg: Option<Vec<f64>> = (from..=until).map(on).collect();
        let kg = kg.ok_or(CannotBuy::NotKnown { key: "feed.by_day" })?;
        if !kg.is_empty() {
            feeds.push(eaten(answers, outcome, phase, (from, kg), in_hand_kg)?);
        }
        from = from.max(until + 1);
    }
    Ok(feeds)
}

/// What is eaten from now on by the birds that are alive. A feed begins after the one before it ends.
fn feeds_ahead(
    answers: &Answers,
    outcome: &Outcome,
    today: i32,
    in_hand: [f64; 4],
) -> Result<Vec<Eaten>, CannotBuy> {
    let all = answers.numbers(store::AHEAD);
    let last = outcome.number("sale.last_age").ok_or(CannotBuy::NotKnown { key: "sale.last_age" })? as i32;
    let next = (last - all.len() as i32 + 1).max(today);
    let mut from = next;
    let mut feeds = Vec::new();
    for (phase, in_hand_kg) in Phase::ALL.into_iter().zip(in_hand) {
        let key = phase.last_day_figure();
        let until = outcome.number(key).ok_or(CannotBuy::NotKnown { key })? as i32;
        let on = |day: i32| all.get(usize::try_from(day - next).ok()?).copied();
        let kg: Vec<f64> = (from..=until).filter_map(on).collect();
        if !kg.is_empty() {
            feeds.push(eaten(answers, outcome, phase, (from, kg), in_hand_kg)?);
        }
        from = from.max(until + 1);
    }
    Ok(feeds)
}

fn eaten(
    answers: &Answers,
    outcome: &Outcome,
    phase: Phase,
    (from, kg): (i32, Vec<f64>),
    in_hand_kg: f64,
) -> Result<Eaten, CannotBuy> {
    let came = answers.number(&format!("stock.{}_bag_kg", phase.name()));
    let own = answers.number("feed.bag_kg");
    let bag_kg = came.or(own).ok_or(CannotBuy::NotKnown { key: "feed.bag_kg" })?;
    let told = prices::of_own_bag(answers, outcome, phase);
    let price = told.ok_or(CannotBuy::NotKnown { key: price_key(phase) })?;
    let other = answers.number("feed.other_bag_kg").zip(prices::of_other_bag(answers, phase));
    // Where another size is on offer, bags are of the sizes whose prices were told, whatever came before.
    let sizes = match other.zip(own) {
        Some((other, own)) if own != other.0 => vec![(own, price), other],
        _ => vec![(bag_kg, price)],
    };
    Ok(Eaten { phase, from, kg, in_hand_kg, sizes })
}

/// The weight of which every size on offer is a whole number; `None` where each feed comes in bags of one size.
fn measure(answers: &Answers, feeds: &[Eaten]) -> Result<Option<f64>, CannotBuy> {
    if feeds.iter().all(|feed| feed.sizes.len() == 1) {
        return Ok(None);
    }
    let steps = |kg: f64| (kg / FINEST_KG).round() as u64;
    let own = answers.number("feed.bag_kg").map(steps);
    let sizes = feeds.iter().flat_map(|feed| &feed.sizes).map(|(kg, _)| steps(*kg));
    let common = sizes.chain(own).reduce(common_divisor).unwrap_or_default();
    let common_kg = common as f64 * FINEST_KG;
    if common_kg < LEAST_MEASURE_KG {
        let kg = |key: &str| answers.number(key).unwrap_or_default();
        return Err(CannotBuy::SizesApart { kg: kg("feed.bag_kg"), other_kg: kg("feed.other_bag_kg") });
    }
    Ok(Some(common_kg))
}

/// Sizes of bags are taken to a hundred grams.
const FINEST_KG: f64 = 0.1;

/// The least weight that the sizes on offer must have in common: a batch is a few thousand of it.
const LEAST_MEASURE_KG: f64 = 1.0;

fn common_divisor(one: u64, other: u64) -> u64 {
    if other == 0 { one } else { common_divisor(other, one % other) }
}

fn price_key(phase: Phase) -> &'static str {
    match phase {
        Phase::Starter => "prices.starter_bag_each",
        Phase::Grower => "prices.grower_bag_each",
        Phase::Finisher | Phase::Last => "prices.finisher_bag_each",
    }
}

/// Money in the evening of each day if no feed were bought.
fn money(answers: &Answers, outcome: &Outcome, days: std::ops::RangeInclusive<i32>) -> Vec<f64> {
    let start = answers.number("cash.at_start").unwrap_or_default();
    let paid = purchases::without_feed(answers, outcome);
    let on = |day: i32| {
        let spent: f64 = paid.iter().filter(|one| one.day <= day).filter_map(|one| one.cost).sum();
        let received: f64 = (0..=day).filter_map(|day| outcome.on_day("cash.received_by_day", day)).sum();
        start - spent + received
    };
    days.map(on).collect()
}

/// Money in the evening of each day to come if no feed were bought: what the book leaves today, less what the plan still pays for
/// other things, with what it still gets.
fn money_by_book(walk: &Walk, today: i32, days: std::ops::RangeInclusive<i32>) -> Vec<f64> {
    let (answers, outcome) = (&walk.plan.answers, &walk.plan.outcome);
    let now = answers.number("cash.at_start").unwrap_or_default() + account::paid(&walk.diary);
    let to_pay = purchases::without_feed(answers, outcome);
    let on = |day: i32| {
        let due = to_pay.iter().filter(|one| one.day > today && one.day <= day);
        let spent: f64 = due.filter_map(|one| one.cost).sum();
        let received: f64 =
            (today + 1..=day).filter_map(|day| outcome.on_day("cash.received_by_day", day)).sum();
        now - spent + received
    };
    days.map(on).collect()
}
