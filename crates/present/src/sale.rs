//! *When do I sell?*: the profit by day of sale with its likely range, one more day worked through, what may be lost, and what
//! matters most.

mod days;
mod diary;
mod orders;
mod risk;
mod sheets;

use std::collections::BTreeMap;

use advice::families::selling::{Luck, SaleDay, Selling, Share};
use advice::health::Clear;
use advice::orders::{Filled, Orders};
use advice::sale::Sale;
use quantity::{CivilDay, DayOfAge, Unit};
use schemars::JsonSchema;
use serde::Serialize;

use crate::batch::Page;
use crate::document::{Block, Caution, Document, Level};
use crate::view::{self, FigureView};
use crate::viewer::Viewer;
use crate::{health, say, show};
pub use diary::calendar;
pub use sheets::{catching, delivery};

/// The figures of a sale, in the order in which they are read.
const FIGURES: &[&str] = &[
    "sale.best_day_house",
    "sale.profit_best_house",
    "sale.best_day_batch",
    "sale.profit_best",
    "sale.price",
    "sale.day_cost",
    "sale.cash_low_point",
];
const RISK: &[&str] =
    &["risk.loss_probability", "risk.profit", "risk.profit_tenth", "risk.expected_shortfall"];

/// When to sell a batch.
#[derive(Clone, Debug, PartialEq, Serialize, JsonSchema)]
pub struct SaleView {
    /// The batch.
    pub batch: String,
    /// The day it is looked at, YYYY-MM-DD.
    pub day: String,
    /// The figures by name; those of the best day are not there where no day may be chosen, or where something grave holds.
    pub figures: BTreeMap<&'static str, FigureView>,
    /// Fixed rules that ask for a veterinarian: while one holds nothing is said of a best day.
    pub held_by: Vec<&'static str>,
    /// What was given and keeps birds from being sold on some day ahead.
    pub waits: Vec<WaitJson>,
    /// Every day of sale.
    pub days: Vec<SaleDayJson>,
    /// The orders that stand, and what each gets.
    pub orders: Vec<OrderJson>,
    /// What matters most for the profit of the best day, the greatest first.
    pub matters: Vec<MattersJson>,
}

/// What keeps birds from being sold.
#[derive(Clone, Debug, PartialEq, Serialize, JsonSchema)]
pub struct WaitJson {
    /// What was given.
    pub what: String,
    /// Whether it was a medicine, a vaccine or a feed.
    pub cause: &'static str,
    /// The first whole day on which birds may be sold again, YYYY-MM-DD; absent while nobody knows how long to wait.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub clear: Option<String>,
}

/// A day of sale.
#[derive(Clone, Debug, PartialEq, Serialize, JsonSchema)]
pub struct SaleDayJson {
    /// Day of age.
    pub age_d: i32,
    /// The day, YYYY-MM-DD.
    pub day: String,
    /// The mean profit of the futures if all birds go at the end of the day; absent where money is hidden.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub profit: Option<f64>,
    /// Nine futures in ten earn between this and `high`.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub low: Option<f64>,
    /// The upper end.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub high: Option<f64>,
    /// The mean number of birds.
    pub birds: f64,
    /// Their mean weight, g.
    pub weight_g: f64,
    /// What they weigh on each square metre, kg; absent while the floor is not known.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub density_kg_m2: Option<f64>,
    /// Whether something that was given holds the birds back.
    pub is_blocked: bool,
    /// Whether they are within the limit of the floor.
    pub fits: bool,
}

/// An order and what it gets.
#[derive(Clone, Debug, PartialEq, Serialize, JsonSchema)]
pub struct OrderJson {
    /// Who.
    pub buyer: String,
    /// Birds still to be delivered.
    pub wants: u32,
    /// What the price is for: bird, live-kg, dressed-kg.
    pub basis: &'static str,
    /// Birds it gets.
    pub gets: u32,
    /// The day it is delivered, YYYY-MM-DD; absent where it gets none.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub day: Option<String>,
    /// Their mean weight, kg; 0 without any.
    pub mean_kg: f64,
    /// What it pays; absent where money is hidden.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub pays: Option<f64>,
    /// Why it gets fewer than it asks: over, held, no-bird, too-few; absent where it gets all.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub short: Option<&'static str>,
    /// The share of futures in which so many birds weigh what it asks, were it the only order.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub chance: Option<f64>,
}

/// How much one thing that is not known matters.
#[derive(Clone, Debug, PartialEq, Serialize, JsonSchema)]
pub struct MattersJson {
    /// What: growth, losses, appetite, feed-price, sale-price.
    pub what: &'static str,
    /// The share of the variance of the profit that it accounts for alone: its first-order index.
    pub first_order: f64,
    /// The standard error of that.
    pub first_order_error: f64,
    /// The share that it has a part in: its total index.
    pub total: f64,
    /// The standard error of that.
    pub total_error: f64,
}

/// When to sell as JSON.
pub fn view(sale: &Sale, viewer: &Viewer) -> SaleView {
    let diary = &sale.walk.diary;
    let is_shown =
        |id: &&str| sale.held_by.is_empty() || !id.starts_with("sale.best") && !id.starts_with("sale.profit");
    let ids = FIGURES.iter().chain(RISK).copied().filter(is_shown);
    let advised = sale.may_be_advised();
    SaleView {
        batch: diary.batch.0.to_string(),
        day: diary.on.to_string(),
        figures: view::chosen(&sale.walk.plan.outcome, ids, viewer),
        held_by: sale.held_by.iter().map(|rule| rule.name).collect(),
        waits: waits(sale, viewer),
        days: advised.map_or_else(Vec::new, |selling| days(sale, selling, viewer)),
        orders: orders(sale, viewer),
        matters: advised.map_or_else(Vec::new, matters),
    }
}

fn orders(sale: &Sale, viewer: &Viewer) -> Vec<OrderJson> {
    let one = |order: &Filled| {
        let date = |day: i32| Some(DayOfAge(day).date(sale.walk.diary.placement?).to_string());
        OrderJson {
            buyer: order.wanted.buyer.clone(),
            wants: order.wanted.birds,
            basis: order.wanted.basis.name(),
            gets: order.birds,
            day: order.day.and_then(date),
            mean_kg: order.mean_kg,
            pays: viewer.money_shown.then_some(order.pays),
            short: order.short.map(|short| short.name()),
            chance: order.chance,
        }
    };
    Orders::of(sale).map_or_else(Vec::new, |orders| orders.orders.iter().map(one).collect())
}

fn days(sale: &Sale, selling: &Selling, viewer: &Viewer) -> Vec<SaleDayJson> {
    let Some(placement) = sale.walk.diary.placement else { return Vec::new() };
    let day = |day: &SaleDay| {
        let money = |amount: f64| viewer.money_shown.then_some(amount);
        SaleDayJson {
            age_d: day.day,
            day: DayOfAge(day.day).date(placement).to_string(),
            profit: money(day.mean),
            low: money(day.low),
            high: money(day.high),
            birds: day.birds,
            weight_g: day.weight_g,
            density_kg_m2: selling.density(day),
            is_blocked: selling.is_blocked(day.day),
            fits: selling.fits(day),
        }
    };
    selling.sales.days.iter().map(day).collect()
}

fn matters(selling: &Selling) -> Vec<MattersJson> {
    let one = |(luck, share): &(Luck, Share)| MattersJson {
        what: luck.name(),
        first_order: share.alone,
        first_order_error: share.alone_error,
        total: share.with_others,
        total_error: share.with_others_error,
    };
    selling.matters.iter().map(one).collect()
}

/// What still holds birds back on a day after the one that is looked at.
fn waits(sale: &Sale, viewer: &Viewer) -> Vec<WaitJson> {
    let tomorrow = sale.walk.diary.on.plus_days(1);
    let holding = sale.health.holding(tomorrow).into_iter();
    holding
        .map(|wait| WaitJson {
            what: health::selling::product(wait, viewer),
            cause: wait.cause.name(),
            clear: wait.withdrawal.clear().earliest_day().map(|day| day.to_string()),
        })
        .collect()
}

/// When to sell as a page.
pub fn document(sale: &Sale, viewer: &Viewer) -> Document {
    let page = Page::new(&sale.walk, viewer);
    page.document("page-sale", page.sale(sale))
}

impl Page<'_> {
    fn sale(&self, sale: &Sale) -> Vec<Block> {
        if !sale.held_by.is_empty() {
            return vec![self.held(sale)];
        }
        let Some(selling) = sale.selling() else { return vec![self.sale_unknown(sale)] };
        let mut blocks = vec![self.sale_lead(selling)];
        blocks.extend(self.held_back(sale));
        blocks.extend(self.crowded(selling));
        blocks.extend(self.profit_by_day(selling));
        blocks.extend(self.one_more_day(selling));
        blocks.extend(self.orders(Orders::of(sale).as_ref()));
        blocks.extend(self.may_be_lost(selling));
        blocks.push(self.heading("sale-figures"));
        blocks.push(self.figures(FIGURES));
        blocks.extend(self.all_days(selling));
        blocks.push(self.note("sale-counts-stock"));
        blocks
    }

    /// A sick flock is not sold, and nobody is told when it would pay.
    fn held(&self, sale: &Sale) -> Block {
        let mut items: Vec<String> =
            sale.held_by.iter().map(|rule| self.words.plain(&format!("watch-rule-{}", rule.name))).collect();
        items.extend((1..=3).map(|at| self.words.plain(&format!("sale-held-{at}"))));
        Block::Caution(Caution { level: Level::Danger, title: self.words.plain("sale-held"), items })
    }

    fn sale_unknown(&self, sale: &Sale) -> Block {
        let diary = &sale.walk.diary;
        let key = match (diary.is_closed, diary.is_placed) {
            (true, _) => "sale-is-closed",
            (_, false) => "sale-not-placed",
            _ => "sale-unknown",
        };
        self.note(key)
    }

    /// A day of age with its date.
    fn sale_day(&self, day: i32) -> String {
        let date = self.date_of(day).map_or_else(String::new, |date| show::day_short(date, self.viewer));
        say!(self.words, "ahead-day", day = show::short(f64::from(day), 0), date = date)
    }

    fn date_of(&self, day: i32) -> Option<CivilDay> {
        Some(DayOfAge(day).date(self.walk.diary.placement?))
    }

    /// The day to sell on, large.
    fn sale_lead(&self, selling: &Selling) -> Block {
        let label = self.words.plain("sale-lead");
        let Some(batch) = selling.best() else {
            let (value, note) = ("sale-no-day", "sale-no-day-note");
            return Block::Lead { label, value: self.words.plain(value), note: self.words.plain(note) };
        };
        let chosen = selling.best_for_house().unwrap_or(batch);
        let mut note = vec![self.earns(chosen)];
        let good = selling.as_good_for_house();
        if let [first, .., last] = good.as_slice() {
            let (first, last) = (self.sale_day(*first), self.sale_day(*last));
            note.push(say!(self.words, "sale-as-good", first = first, last = last));
        }
        if selling.is_full {
            note.push(self.words.plain("sale-full"));
        } else if chosen.mean < 0.0 {
            note.push(self.words.plain("sale-loses"));
        }
        if batch.day != chosen.day {
            let key = if batch.day > chosen.day { "sale-batch-later" } else { "sale-batch-earlier" };
            note.push(say!(self.words, key, day = self.sale_day(batch.day)));
        }
        if selling.sales.days.last().is_some_and(|last| last.day == chosen.day) {
            note.push(self.words.plain("sale-or-later"));
        }
        Block::Lead { label, value: self.sale_day(chosen.day), note: note.join(" ") }
    }

    fn earns(&self, day: &SaleDay) -> String {
        let money = |amount: f64| show::about_money(round_money(amount, day.standard_error), self.viewer);
        let birds = show::quantity(day.birds, Unit::Birds, 0, self.viewer);
        let weight = show::quantity(day.weight_g, Unit::Gram, 0, self.viewer);
        say!(
            self.words,
            "sale-earns",
            birds = birds,
            weight = weight,
            profit = money(day.mean),
            low = money(day.low),
            high = money(day.high)
        )
    }

    /// What was given and until when, with the clear day.
    fn held_back(&self, sale: &Sale) -> Option<Block> {
        let tomorrow = self.walk.diary.on.plus_days(1);
        let items: Vec<String> = sale
            .health
            .holding(tomorrow)
            .into_iter()
            .map(|wait| {
                let product = health::selling::product(wait, self.viewer);
                match wait.withdrawal.clear() {
                    Clear::Unknown => say!(self.words, "sale-wait-unknown", product = product),
                    Clear::On { day, hour } => {
                        let free = wait.withdrawal.clear().earliest_day().unwrap_or(day);
                        say!(
                            self.words,
                            "sale-wait",
                            product = product,
                            day = show::day(day, self.viewer),
                            hour = show::number(f64::from(hour), 0),
                            free = show::day(free, self.viewer)
                        )
                    }
                }
            })
            .collect();
        (!items.is_empty()).then(|| {
            Block::Caution(Caution { level: Level::Danger, title: self.words.plain("sale-waits"), items })
        })
    }

    /// From which day on the birds are too many for the floor, and how many to sell before so that the others may stay.
    fn crowded(&self, selling: &Selling) -> Option<Block> {
        let over = selling.sales.days.iter().find(|day| !selling.fits(day))?;
        let (density, limit) = (selling.density(over)?, *selling.limits.get(&over.day)?);
        let kg_m2 = |value: f64| show::quantity(value, Unit::KilogramPerSquareMetre, 1, self.viewer);
        let mut items = vec![say!(
            self.words,
            "sale-crowded",
            day = self.sale_day(over.day),
            density = kg_m2(density),
            limit = kg_m2(limit)
        )];
        items.extend(self.thinning(selling));
        items.push(self.words.plain("sale-crowded-first"));
        Some(Block::Caution(Caution {
            level: Level::Care,
            title: self.words.plain("sale-crowded-title"),
            items,
        }))
    }
}

/// No digit finer than another seed would change.
pub(crate) fn round_money(amount: f64, standard_error: f64) -> f64 {
    let step = 10_f64.powf((2.0 * standard_error).max(1.0).log10().floor());
    (amount / step).round() * step
}
