//! Batches of one house side by side, what was different about each, and what they say of the next plan.

use book::{BatchId, BookState};
use model::learning::{Expected, expected};
use quantity::CivilDay;

use crate::diary::Diary;
use crate::outcome::Outcome;
use crate::past;

/// Batches that are shown, the latest first.
const SHOWN: usize = 6;
/// A batch that differs in its month counts so much, one that differs in its growth standard or in its feed likewise (our
/// judgement).
const UNLIKE_COUNTS: f64 = 0.5;
/// Months that may lie between two batches of one season.
const SEASON_MONTHS: i32 = 1;

/// The figures that a closed batch is known by.
const FIGURES: [&str; 11] = [
    "closing.livability",
    "closing.mean_weight",
    "closing.age",
    "closing.fcr",
    "closing.epef",
    "closing.profit",
    "closing.profit_per_bird",
    "closing.cost_per_kg",
    "feed.total",
    "sale.live_kg",
    "sale.mean_weight",
];

/// What may be different about two batches.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Differs {
    /// The season.
    Month,
    /// What they were held against.
    Standard,
    /// The feeds they got.
    Feed,
}

impl Differs {
    /// The stable name used in message keys.
    pub fn name(self) -> &'static str {
        match self {
            Differs::Month => "month",
            Differs::Standard => "standard",
            Differs::Feed => "feed",
        }
    }
}

/// A batch among others.
#[derive(Clone)]
pub struct Beside {
    /// The batch.
    pub batch: BatchId,
    /// Its name, where it has one.
    pub name: Option<String>,
    /// The day its chicks came.
    pub placement: CivilDay,
    /// What it was held against.
    pub standard: Option<&'static str>,
    /// The feeds it got, by phase, in the order of the phases.
    pub feeds: Vec<String>,
    /// What of it differs from the batch that is looked at; empty for that one itself.
    pub differs: Vec<Differs>,
    /// Whether it is closed.
    pub is_closed: bool,
    /// Its figures, where they are known.
    outcome: Outcome,
}

impl Beside {
    fn read(state: &BookState, batch: BatchId, on: CivilDay) -> Option<Beside> {
        let diary = Diary::read(state, batch, on);
        let placement = diary.placement.filter(|_| diary.is_placed)?;
        let outcome = Outcome::of(&diary.answers, FIGURES);
        let mut feeds: Vec<String> = diary
            .of_kind("feed-delivered")
            .filter_map(|note| note.text("phase").map(str::to_owned))
            .collect();
        feeds.sort_unstable();
        feeds.dedup();
        Some(Beside {
            batch,
            name: diary.answers.text("batch.name").map(str::to_owned),
            placement,
            standard: diary.answers.choice("batch.standard"),
            feeds,
            differs: Vec::new(),
            is_closed: diary.is_closed,
            outcome,
        })
    }

    /// A figure.
    pub fn number(&self, id: &str) -> Option<f64> {
        self.outcome.number(id)
    }

    fn differing_from(mut self, other: &Key) -> Beside {
        let months = (i32::from(self.placement.month()) - i32::from(other.month)).rem_euclid(12);
        let apart = months.min(12 - months);
        self.differs = [
            (Differs::Month, apart > SEASON_MONTHS),
            (Differs::Standard, self.standard != other.standard),
            (Differs::Feed, !other.feeds.is_empty() && self.feeds != other.feeds),
        ]
        .into_iter()
        .filter_map(|(differs, is_so)| is_so.then_some(differs))
        .collect();
        self
    }

    /// How far it counts for the batch that is looked at.
    fn counts(&self) -> f64 {
        UNLIKE_COUNTS.powi(self.differs.len() as i32)
    }
}

/// What batches are held alike by.
struct Key {
    month: i8,
    standard: Option<&'static str>,
    feeds: Vec<String>,
}

/// What the next plan starts from.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Start {
    /// losses (percent), weight and feed (percent of what is planned).
    pub what: &'static str,
    /// What is held without any batch.
    pub usual: f64,
    /// The mean of the house's own batches, each by how far it counts.
    pub own: f64,
    /// What is expected of the next.
    pub expected: Expected,
}

/// Batches of one house side by side.
pub struct SideBySide {
    /// The latest first; the one looked at among them.
    pub batches: Vec<Beside>,
    /// What the next plan starts from; empty while no batch was sold.
    pub starts: Vec<Start>,
}

/// What is lost of the chicks placed where nobody knows better, percent (common practice; as plans take it).
const USUAL_LOSSES: f64 = 4.0;
const AS_PLANNED: f64 = 100.0;

impl SideBySide {
    /// A batch and those before it in its house, by what is written up to a day.
    pub fn read(state: &BookState, batch: BatchId, on: CivilDay) -> SideBySide {
        let earlier = past::earlier(state, batch, on);
        let ids = std::iter::once(batch).chain(earlier).take(SHOWN);
        let batches: Vec<Beside> = ids.filter_map(|id| Beside::read(state, id, on)).collect();
        let Some(first) = batches.first() else { return SideBySide { batches, starts: Vec::new() } };
        let key =
            Key { month: first.placement.month(), standard: first.standard, feeds: first.feeds.clone() };
        let batches: Vec<Beside> = batches.into_iter().map(|one| one.differing_from(&key)).collect();
        let starts = starts(&batches);
        SideBySide { batches, starts }
    }
}

/// What the batches of a house let the next plan expect to lose, percent of the chicks placed; `None` while none was sold.
///
/// - `house`: the id of the house, as plans name it
pub fn losses_to_expect(state: &BookState, house: &str) -> Option<f64> {
    let on = state.all_records().map(|record| record.entry().day).max()?;
    let ids = past::of_house(state, house, on);
    let batches: Vec<Beside> =
        ids.into_iter().take(SHOWN).filter_map(|id| Beside::read(state, id, on)).collect();
    let start = starts(&batches).into_iter().find(|start| start.what == "losses")?;
    Some((10.0 * start.expected.value).round() / 10.0)
}

fn starts(batches: &[Beside]) -> Vec<Start> {
    let losses = |one: &Beside| Some(100.0 - one.number("closing.livability")?);
    let weight = |one: &Beside| {
        let weighed = one.number("closing.mean_weight")?;
        model::budget::per(AS_PLANNED * weighed, one.number("sale.mean_weight")?)
    };
    let feed = |one: &Beside| {
        let planned = model::budget::per(one.number("feed.total")?, one.number("sale.live_kg")?)?;
        model::budget::per(AS_PLANNED * one.number("closing.fcr")?, planned)
    };
    type Of<'a> = &'a dyn Fn(&Beside) -> Option<f64>;
    let all: [(&'static str, f64, Of); 3] =
        [("losses", USUAL_LOSSES, &losses), ("weight", AS_PLANNED, &weight), ("feed", AS_PLANNED, &feed)];
    let start = |(what, usual, of): (&'static str, f64, Of)| {
        // A batch that is being sold is not over: it says nothing yet.
        let is_over = |one: &&Beside| one.is_closed;
        let own: Vec<(f64, f64)> =
            batches.iter().filter(is_over).filter_map(|one| Some((of(one)?, one.counts()))).collect();
        let count: f64 = own.iter().map(|(_, counts)| counts).sum();
        let mean = model::budget::per(own.iter().map(|(value, counts)| value * counts).sum(), count)?;
        Some(Start { what, usual, own: mean, expected: expected(usual, &own) })
    };
    all.into_iter().filter_map(start).collect()
}
