//! What to buy when and how much of it, so that all feed costs least.
//!
//! Before the batch from its plan ([`of_plan`]), later from what is in the store room by the book ([`of_book`]). The search is
//! [`model::buying`]; what it is told stands in `wanted`; what its answer hangs on in `hangs`.

mod fault;
mod hangs;
pub(crate) mod prices;
mod read;
mod wanted;

use model::buying::{Bought, Buying, Cost, Part};
use quantity::{Answers, Band, BandKind};

pub use fault::CannotBuy;
pub use hangs::{Hang, Hanging};

use crate::outcome::Outcome;
use crate::purchases::rounded;
use crate::store_room::{Delivery, Phase};
use crate::walk::Walk;
use wanted::{Eaten, Wanted};

/// Bags of one feed that come on one day, and what they cost.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Purchase {
    /// What comes when, and when it is eaten. Days are days of age.
    pub delivery: Delivery,
    /// The last day of age on which it is good, if it is milled no earlier than it comes.
    pub good_until: i32,
    /// What the bags cost.
    pub cost: f64,
}

/// The cheapest way to buy what is still needed.
#[derive(Clone, Debug, PartialEq)]
pub struct Cheapest {
    /// What comes, by day and feed.
    pub purchases: Vec<Purchase>,
    /// What it costs.
    pub cost: Cost,
    /// Nothing that was asked for can be had for less.
    pub lower_bound: f64,
    /// The range of its cost as prices stray: nine cases in ten.
    pub band: Option<Band>,
    /// What it costs when every bag comes as late as it may; `None` where it finds no room then.
    pub little_by_little: Option<f64>,
    /// What it costs when as much comes at once as keeps and finds room; `None` where that cannot be.
    pub much_at_once: Option<f64>,
    /// The most that may be owed in an evening, where that is told.
    pub limit: Option<f64>,
    /// What it would cost if more could be owed; `None` without a limit.
    pub without_limit: Option<f64>,
    /// Days between the order and the delivery.
    pub lead_d: i32,
    /// Feeds of which more was given than came: what is in hand is not known.
    pub never_bought: Vec<Phase>,
    /// Feeds that run out before any can come.
    pub runs_out: Vec<Phase>,
    answers: Answers,
    wanted: Wanted,
    bought: Bought,
}

/// What the plan buys at least cost.
///
/// # Errors
/// [`CannotBuy`].
pub fn of_plan(answers: &Answers) -> Result<Cheapest, CannotBuy> {
    of_plan_known(answers, Outcome::default())
}

/// The same on top of what is worked out of the same plan already.
pub(crate) fn of_plan_known(answers: &Answers, known: Outcome) -> Result<Cheapest, CannotBuy> {
    Cheapest::of(answers, read::of_plan(answers, known)?)
}

/// What is still to be bought at least cost, by what is in the store room on the walk's day.
///
/// # Errors
/// [`CannotBuy`].
pub fn of_book(walk: &Walk) -> Result<Cheapest, CannotBuy> {
    let read = read::of_book(walk)?;
    let mut cheapest = Cheapest::of(&walk.plan.answers, read.wanted)?;
    cheapest.never_bought = read.never_bought;
    cheapest.runs_out = read.runs_out;
    Ok(cheapest)
}

impl Cheapest {
    fn of(answers: &Answers, wanted: Wanted) -> Result<Cheapest, CannotBuy> {
        let buying = wanted.model(answers);
        let bought = buying.best().map_err(|fault| CannotBuy::of(fault, &wanted))?;
        let total = |parts: Option<Vec<Part>>| Some(model::buying::cost(&buying, &parts?)?.total());
        let purchases = purchases(answers, &wanted, &buying, &bought.parts);
        Ok(Cheapest {
            cost: bought.cost,
            lower_bound: bought.lower_bound,
            band: band(&purchases, bought.cost.total(), &wanted),
            little_by_little: total(model::buying::just_in_time(&buying)),
            much_at_once: total(model::buying::as_much_as_possible(&buying)),
            limit: wanted.limit,
            without_limit: without_limit(answers, &wanted),
            lead_d: answers.number("feed.lead_d").map_or(0, |days| days as i32),
            never_bought: Vec::new(),
            runs_out: Vec::new(),
            purchases,
            answers: answers.clone(),
            wanted,
            bought,
        })
    }

    /// What comes when, in the order in which it is eaten.
    pub fn deliveries(&self) -> Vec<Delivery> {
        let mut all: Vec<Delivery> = self.purchases.iter().map(|one| one.delivery).collect();
        all.sort_by_key(|one| (one.phase, one.eaten_from, one.day));
        all
    }

    /// Whether no way can be cheaper.
    pub fn is_proven(&self) -> bool {
        self.bought.is_proven()
    }

    /// The days of age on which something comes.
    pub fn days(&self) -> Vec<i32> {
        let mut days: Vec<i32> = self.purchases.iter().map(|one| one.delivery.day).collect();
        days.dedup();
        days
    }

    /// What the answer hangs on: how far a price, a fee or interest may move before other days or amounts are cheapest.
    pub fn hangs(&self) -> Vec<Hang> {
        hangs::all(&self.answers, &self.wanted, &self.bought)
    }
}

/// What the cheapest way would cost if any amount could be owed; `None` where it can.
fn without_limit(answers: &Answers, wanted: &Wanted) -> Option<f64> {
    wanted.limit?;
    let free = Wanted { limit: None, ..wanted.clone() };
    Some(free.model(answers).best().ok()?.cost.total())
}

/// The parts in days of age, with when they are eaten and what they cost.
fn purchases(answers: &Answers, wanted: &Wanted, buying: &Buying, parts: &[Part]) -> Vec<Purchase> {
    let mut taken = vec![0; wanted.feeds.len()];
    let purchase = |part: &Part| {
        let eaten = wanted.feeds.get(part.feed)?;
        let (_, measures) = wanted.measures(eaten);
        let first = taken[part.feed];
        taken[part.feed] += part.bags * wanted.measures_in(eaten, part.size);
        let last = taken[part.feed].min(measures.len()).checked_sub(1)?;
        let (from, until) = (measures.get(first)?.0, measures.get(last)?.1);
        let day = wanted.first + part.period as i32;
        let price = buying.feeds[part.feed].sizes[part.size].price[part.period] * part.bags as f64;
        let delivery = Delivery {
            phase: eaten.phase,
            day,
            bags: part.bags as f64,
            size_kg: wanted.measure_kg.map(|_| eaten.sizes[part.size].0),
            eaten_from: from,
            eaten_until: until,
        };
        let cost = rounded(answers, price).unwrap_or(price);
        Some(Purchase { delivery, good_until: day + wanted.keeps, cost })
    };
    parts.iter().filter_map(purchase).collect()
}

/// Prices stray from what was told as time goes by: the error of a day is the one of the day before and a new one, and comes
/// to [`model::scenarios::FEED_PRICE_SPREAD`] by the last day. The cost of a way is a sum of such prices, so its range is exact.
fn band(purchases: &[Purchase], total: f64, wanted: &Wanted) -> Option<Band> {
    let days = f64::from(wanted.last - wanted.first).max(1.0);
    let spread = model::scenarios::FEED_PRICE_SPREAD.value;
    let paid: Vec<(f64, f64)> = purchases
        .iter()
        .map(|one| (f64::from(one.delivery.day - wanted.first) / days, one.cost * spread))
        .collect();
    let strays = model::scenarios::SIGMAS_IN_90 * model::buying::spread(&paid);
    let (low, high) = (total - strays, total + strays);
    (low < high).then_some(Band { low, high, kind: BandKind::Prediction90 })
}

#[cfg(test)]
mod tests;
