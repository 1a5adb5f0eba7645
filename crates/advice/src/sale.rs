//! When to sell a batch that is on its way: what the book says of its money, of what holds it back and of what the floor carries,
//! and the day that is best by all of it.

use std::collections::{BTreeMap, BTreeSet};

use book::{BatchId, BookState};
use model::outlook::futures::FEEDS;
use quantity::{CivilDay, DayOfAge, Value};

use crate::account::{self, Head};
use crate::closing::{PLANNED, planned_for};
use crate::diary::{Diary, Noted, set, set_days, set_number};
use crate::families::selling::{self as keys, Selling};
use crate::families::{closing as fields, money, outlook, store};
use crate::health::Health;
use crate::outcome::Outcome;
use crate::past::Past;
use crate::plan::{self, Plan};
use crate::walk::Walk;
use crate::watch::{Level, Ruled, Watch, asked};

/// A price seen longer ago is not today's (our judgement: three markets of a week).
const PRICE_KNOWN_D: i32 = 21;

/// Rules whose names begin so ask for shade and water, not for a veterinarian.
const OF_HEAT: &str = "heat";

/// What goes by the day: work of others, own work, power.
const BY_DAY: [Head; 3] = [Head::Labour, Head::OwnLabour, Head::Power];

/// When to sell, as the book has it on a day.
pub struct Sale {
    /// The batch's book, with its figures and what its futures earn.
    pub walk: Walk,
    /// What was given and from when birds may be sold.
    pub health: Health,
    /// Fixed rules on deaths, water and feed that hold now and ask for a veterinarian: nothing is said then of a best day.
    pub held_by: Vec<Ruled>,
}

impl Sale {
    /// Reads a batch's sale.
    pub fn read(state: &BookState, batch: BatchId, on: CivilDay) -> Sale {
        let past = Past::read(state, batch, on);
        Sale::of(Diary::read(state, batch, on), &past)
    }

    /// The sale of a batch's book beside the earlier batches of its house.
    pub fn of(diary: Diary, past: &Past) -> Sale {
        let health = Health::of(&diary);
        let walk = Walk::selling(diary, past);
        let rules = Watch::of(&walk).map_or_else(Vec::new, |watch| watch.rules);
        let is_grave = |rule: &Ruled| {
            rule.holds && asked(rule.call) == Some(Level::Act) && !rule.name.starts_with(OF_HEAT)
        };
        let held_by = rules.into_iter().filter(is_grave).collect();
        Sale { walk, health, held_by }
    }

    /// What the futures say of each day of sale; `None` while that is not known.
    pub fn selling(&self) -> Option<&Selling> {
        self.walk.plan.outcome.drawn().selling()
    }

    /// The plan with its jobs moved to the day that is best for the house, where the plan sells on one day and a day may be advised;
    /// else as it stands.
    pub fn moved_plan(&self) -> Plan {
        let mut answers = self.walk.diary.answers.clone();
        let sold_over_days = ["sale.days", "sale.first_age_d", "sale.last_age_d"];
        let is_one_day = sold_over_days.iter().all(|key| answers.get(key).is_none());
        let best =
            self.may_be_advised().and_then(|selling| selling.best_for_house().or_else(|| selling.best()));
        if let (Some(day), true) = (best, is_one_day) {
            set(&mut answers, "batch.sale_age_d", Value::Number(f64::from(day.day)));
        }
        plan::of_book(answers)
    }

    /// The same, unless a grave sign holds: a sick flock is not sold.
    pub fn may_be_advised(&self) -> Option<&Selling> {
        self.selling().filter(|_| self.held_by.is_empty())
    }
}

impl Diary {
    /// The same with what the sale goes by. Nothing is added where there is nothing to look ahead to.
    pub(crate) fn selling(mut self) -> Diary {
        let Some(days) = self.answers.by_day(outlook::STANDARD).map(|days| days.keys().copied().collect())
        else {
            return self;
        };
        let days: BTreeSet<i32> = days;
        let planned = Outcome::of(&self.answers, PLANNED.into_iter().chain(["feed.total", "sale.last_age"]));
        let stock_price = stock_price(&self, &planned);
        let spent = spent(&self, &planned, stock_price);
        let got = got(&self);
        let cash = self.answers.number("cash.at_start").unwrap_or_default() + account::paid(&self);
        let numbers = [
            (keys::SPENT, spent),
            (keys::GOT, Some(got)),
            (keys::STOCK_PRICE, stock_price),
            (keys::CASH, Some(cash)),
            (keys::PLANNED_D, planned.number("sale.last_age")),
        ];
        for (key, number) in numbers {
            if let Some(number) = number {
                set_number(&mut self.answers, key, number);
            }
        }
        if let Some(price) = seen_price(&self) {
            set_number(&mut self.answers, keys::SEEN_PRICE, price);
        }
        let blocked = blocked(&self, &days);
        set_days(&mut self.answers, keys::BLOCKED, blocked);
        let limits = limits(&self, &days);
        set_days(&mut self.answers, keys::LIMIT, limits);
        self
    }
}

/// A kilogram of the feed that came, at what it cost; where nobody wrote that, at the plan's price.
fn stock_price(diary: &Diary, planned: &Outcome) -> Option<f64> {
    let priced = |note: &&Noted| note.number("price_each").is_some();
    let came = diary.of_kind("feed-delivered").filter(priced);
    let kilograms: f64 = came.filter_map(|note| Some(note.number("bags")? * note.number("bag_kg")?)).sum();
    let cost = account::spent_on(diary, Head::Feed);
    let paid = cost.and_then(|cost| model::budget::per(cost, kilograms));
    paid.or_else(|| model::budget::per(planned.number("feed.cost")?, planned.number("feed.total")?))
}

/// What the batch has cost so far, and what of the plan is still to come whatever the day of sale is. `None` while the price of
/// chicks or feed is not known.
fn spent(diary: &Diary, planned: &Outcome, stock_price: Option<f64>) -> Option<f64> {
    let of = |head: Head| {
        let (spent, plan) = (account::spent_on(diary, head), planned_for(&diary.answers, planned, head));
        match head {
            Head::Chicks => spent.or(plan),
            Head::Feed => Some(feed_spent(diary, spent.unwrap_or_default(), stock_price?)),
            Head::Interest => Some(spent.unwrap_or_default()),
            head if BY_DAY.contains(&head) => {
                let passed =
                    model::budget::per(f64::from(diary.age_today()?), planned.number("sale.last_age")?);
                let due = plan.unwrap_or_default() * passed.unwrap_or_default().clamp(0.0, 1.0);
                Some(spent.unwrap_or_default().max(due))
            }
            _ => Some(spent.unwrap_or_default().max(plan.unwrap_or_default())),
        }
    };
    Head::ALL.into_iter().map(of).sum()
}

/// Feed that came, at what it cost; what was given without ever coming, at the same price.
fn feed_spent(diary: &Diary, spent: f64, price: f64) -> f64 {
    let number = |key: &str| diary.answers.number(key).unwrap_or_default();
    let short = (0..FEEDS).map(|at| {
        let feed = &store::FEEDS[at];
        (number(feed.given) + number(feed.spoiled) - number(feed.came)).max(0.0)
    });
    spent + price * short.sum::<f64>()
}

fn got(diary: &Diary) -> f64 {
    let number = |key: &str| diary.answers.number(key).unwrap_or_default();
    number(fields::INCOME_BIRDS) + number(fields::INCOME_LITTER).max(number("prices.litter_sold"))
}

/// The price of live birds seen last, in what this batch is sold by; `None` where none was seen lately.
fn seen_price(diary: &Diary) -> Option<f64> {
    let basis = if money::by_head(&diary.answers) { "bird" } else { "kg" };
    let is_of_birds =
        |note: &&Noted| note.text("what") == Some("live-bird") && note.text("per") == Some(basis);
    let last = diary.of_kind("price-seen").rfind(is_of_birds)?;
    (diary.on.days_since(last.day) <= PRICE_KNOWN_D).then(|| last.number("price"))?
}

fn blocked(diary: &Diary, days: &BTreeSet<i32>) -> BTreeMap<i32, f64> {
    let (Some(placement), health) = (diary.placement, Health::of(diary)) else { return BTreeMap::new() };
    let held = |day: i32| !health.holding(DayOfAge(day).date(placement)).is_empty();
    days.iter().map(|day| (*day, f64::from(u8::from(held(*day))))).collect()
}

/// What the floor may carry on each day: the grower's own limit, or that of the month.
fn limits(diary: &Diary, days: &BTreeSet<i32>) -> BTreeMap<i32, f64> {
    let Some(placement) = diary.placement else { return BTreeMap::new() };
    let mut of_months: BTreeMap<i8, Option<f64>> = BTreeMap::new();
    let limit_in = |day: i32| {
        let mut answers = diary.answers.clone();
        set(&mut answers, "batch.sale_age_d", Value::Number(f64::from(day)));
        Outcome::of(&answers, ["space.limit"]).number("space.limit")
    };
    let limit = |day: &i32| {
        let month = DayOfAge(*day).date(placement).month();
        Some((*day, (*of_months.entry(month).or_insert_with(|| limit_in(*day)))?))
    };
    days.iter().filter_map(limit).collect()
}
