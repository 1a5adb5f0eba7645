//! What the book says about one batch up to a day, as answers that figures are worked out from.
//!
//! What was written about later days is not there, so that advice for a day is the same whenever it is asked for. A day
//! on which nothing was written is a gap: never a nothing.

use std::collections::{BTreeMap, BTreeSet};

use book::{BatchId, Body, BookState, Draft, EntryId, HybridClock, PersonId, Record, Slot, Subject};
use quantity::{Answers, CivilDay, Given, Source, Value};

use crate::body::raws_of;
use crate::families::{self, growing};
use crate::plan;
use crate::weighing::Weighing;

/// Reads an amount out of what was written down.
type Amount = fn(&Noted) -> Option<f64>;

/// What the book says about one batch.
#[derive(Clone, Debug, PartialEq)]
pub struct Diary {
    /// The batch.
    pub batch: BatchId,
    /// The day it is asked about.
    pub on: CivilDay,
    /// The day the chicks came, or are planned to come; `None` while nobody said either.
    pub placement: Option<CivilDay>,
    /// Whether chicks came.
    pub is_placed: bool,
    /// Whether the batch is closed.
    pub is_closed: bool,
    /// The adopted plan, moved to the day the chicks came and to how many there were, with what the book holds by day.
    pub answers: Answers,
    /// What counts, in the order of days.
    pub notes: Vec<Noted>,
}

/// Something that was written down about a batch and counts.
#[derive(Clone, Debug, PartialEq)]
pub struct Noted {
    /// The entry.
    pub id: EntryId,
    /// Its kind.
    pub kind: &'static str,
    /// The day it is about.
    pub day: CivilDay,
    /// When it was written.
    pub clock: HybridClock,
    /// Who wrote it.
    pub person: PersonId,
    /// What was written.
    pub body: Body,
}

impl Noted {
    fn of(record: &Record) -> Option<Noted> {
        let entry = record.entry();
        Some(Noted {
            id: entry.id,
            kind: record.kind()?.name,
            day: entry.day,
            clock: entry.clock,
            person: entry.person,
            body: record.body()?.clone(),
        })
    }

    /// The answer to a key as a number.
    pub fn number(&self, key: &str) -> Option<f64> {
        self.body.get(key)?.value.as_f64()
    }

    /// The answer to a key as text.
    pub fn text(&self, key: &str) -> Option<&str> {
        self.body.get(key)?.value.as_str()
    }

    /// The answer to a key as words.
    pub fn words(&self, key: &str) -> Vec<String> {
        let items = self.body.get(key).and_then(|answer| answer.value.as_array());
        items.into_iter().flatten().filter_map(|item| item.as_str().map(str::to_owned)).collect()
    }

    /// The answer to a key as numbers.
    pub fn numbers(&self, key: &str) -> Vec<f64> {
        let items = self.body.get(key).and_then(|answer| answer.value.as_array());
        items.into_iter().flatten().filter_map(serde_json::Value::as_f64).collect()
    }
}

impl Diary {
    /// Reads a batch out of the book, as of a day.
    pub fn read(state: &BookState, batch: BatchId, on: CivilDay) -> Diary {
        let state = state.on_day(on, batch);
        let subject = Subject::Batch(batch);
        let notes: Vec<Noted> = state.counting_about(subject).filter_map(Noted::of).collect();
        let placed = notes.iter().find(|note| note.kind == "chicks-placed");
        let plan = state.answers(&Slot::of("plan-adopted", subject));
        let mut answers = plan.map_or_else(Answers::default, planned);
        let placement = placed.map(|note| note.day).or_else(|| answers.day("batch.placement"));
        let (is_placed, is_closed) = (placed.is_some(), notes.iter().any(|note| note.kind == "batch-closed"));
        if let Some(body) = plan {
            expected(body, &mut answers);
        }
        if let Some(note) = placed {
            move_to(note, &mut answers);
        }
        let mut diary = Diary { batch, on, placement, is_placed, is_closed, answers, notes };
        diary.write_days();
        diary
    }

    /// The age on a day; the day of placement is day 0.
    pub fn age(&self, day: CivilDay) -> Option<i32> {
        Some(day.days_since(self.placement?))
    }

    /// The age on the day asked about.
    pub fn age_today(&self) -> Option<i32> {
        self.age(self.on)
    }

    /// The same, no later than the last day that is counted.
    pub fn counted_age(&self) -> Option<i32> {
        Some(self.age_today()?.min(growing::OLDEST_D))
    }

    /// What was written of a kind.
    pub fn of_kind(&self, kind: &str) -> impl DoubleEndedIterator<Item = &Noted> {
        self.notes.iter().filter(move |note| note.kind == kind)
    }

    /// What was written of a kind about a day.
    pub fn on_day(&self, kind: &str, day: CivilDay) -> impl Iterator<Item = &Noted> {
        self.of_kind(kind).filter(move |note| note.day == day)
    }

    /// The same with something that is about to be written as well, for judging what stands beside it on one form: the
    /// water of a day is held against the feed typed above it.
    pub fn expecting(mut self, draft: &Draft) -> Diary {
        let Some(kind) = crate::record::kind(&draft.kind) else { return self };
        self.notes.retain(|note| !draft.supersedes.contains(&note.id));
        let at = self.notes.partition_point(|note| note.day <= draft.day);
        let clock = HybridClock { millis: i64::MAX, counter: 0 };
        let (person, body) = (PersonId(uuid::Uuid::nil()), draft.body.clone());
        self.notes.insert(at, Noted { id: draft.id, kind: kind.name, day: draft.day, clock, person, body });
        self
    }

    /// Puts what the book holds by day among the answers.
    fn write_days(&mut self) {
        let Some(today) = self.counted_age() else { return };
        set(&mut self.answers, growing::TODAY, Value::Number(f64::from(today)));
        let sums: [(&str, Amount); 4] = [
            (growing::LOST, lost),
            (growing::LEFT, left),
            (growing::FEED, |note| of("feed-given", note, "feed_kg")),
            (growing::WATER, |note| of("water", note, "water_l")),
        ];
        for (key, amount) in sums {
            let days = self.by_day(amount, |sum, more| sum + more);
            set_days(&mut self.answers, key, days);
        }
        let coldest = self.by_day(|note| of("house-air", note, "coldest_c"), f64::min);
        let warmest = self.by_day(|note| of("house-air", note, "warmest_c"), f64::max);
        set_days(&mut self.answers, growing::COLDEST, coldest);
        set_days(&mut self.answers, growing::WARMEST, warmest);
        self.write_weights();
        crate::growing::write_more(self);
        crate::watch::write(self);
        crate::chicks::write(self);
        crate::stock::write(self);
        crate::account::write(self);
    }

    /// What entries say by day of age, several of one day put together.
    pub(crate) fn by_day(
        &self,
        amount: impl Fn(&Noted) -> Option<f64>,
        together: impl Fn(f64, f64) -> f64,
    ) -> BTreeMap<i32, f64> {
        let mut days: BTreeMap<i32, f64> = BTreeMap::new();
        for note in &self.notes {
            if let (Some(age), Some(amount)) = (self.age(note.day), amount(note)) {
                days.entry(age).and_modify(|sum| *sum = together(*sum, amount)).or_insert(amount);
            }
        }
        days
    }

    /// The weight of each day of weighing: all that was weighed on the day together.
    fn write_weights(&mut self) {
        let days: BTreeSet<CivilDay> = self.of_kind("weighing").map(|note| note.day).collect();
        let weighed = days.into_iter().filter_map(|day| {
            let ends = Weighing::on(self, day).mean_and_range()?;
            Some((self.age(day)?, ends))
        });
        let weighed: BTreeMap<i32, [f64; 3]> = weighed.collect();
        for (at, key) in [growing::WEIGHT_LOW, growing::WEIGHT, growing::WEIGHT_HIGH].into_iter().enumerate()
        {
            let days = weighed.iter().map(|(age, ends)| (*age, ends[at])).collect();
            set_days(&mut self.answers, key, days);
        }
    }
}

fn of(kind: &str, note: &Noted, key: &str) -> Option<f64> {
    if note.kind == kind { note.number(key) } else { None }
}

/// Birds found dead and culled.
fn lost(note: &Noted) -> Option<f64> {
    let dead = of("deaths", note, "dead")?;
    Some(dead + note.number("culled").unwrap_or_default())
}

/// Birds that left alive.
fn left(note: &Noted) -> Option<f64> {
    of("sale", note, "birds").or_else(|| of("birds-out", note, "birds"))
}

/// The answers of an adopted plan.
pub(crate) fn planned(body: &Body) -> Answers {
    plan::read(&raws_of(body, "batch"), Source::Hand, false).answers
}

/// What an adopted plan expected of each day, in the fields that figures read.
const EXPECTED: [(&str, &str); 7] = [
    ("expected.feed.per_bird_by_day", growing::EXPECTED_FEED),
    ("expected.water.by_day", growing::EXPECTED_WATER),
    ("expected.batch.birds_alive", growing::EXPECTED_ALIVE),
    ("expected.batch.losses_by_day", growing::EXPECTED_LOST),
    ("expected.growth.weight", growing::EXPECTED_WEIGHT),
    ("expected.brooding.temperature_by_day", growing::EXPECTED_TEMPERATURE),
    ("expected.light.hours_by_day", growing::EXPECTED_LIGHT),
];

fn expected(body: &Body, answers: &mut Answers) {
    for (name, key) in EXPECTED {
        let days = body.get(name).and_then(|answer| answer.value.as_array());
        let first = families::series_named(name.trim_start_matches(crate::adoption::EXPECTED_OF))
            .map_or(0, |spec| spec.first_day);
        let days = (first..).zip(days.into_iter().flatten());
        let known = days.filter_map(|(age, value)| Some((age, value.as_f64()?)));
        set_days(answers, key, known.collect());
    }
}

/// Moves the plan to the day the chicks came, and to how many they were.
fn move_to(placed: &Noted, answers: &mut Answers) {
    let number = |key: &str| placed.number(key).unwrap_or_default();
    let live = number("counted") - number("dead_on_arrival") - number("weak_culled");
    set(answers, "batch.placement", Value::Day(placed.day));
    if live > 0.0 {
        set(answers, "batch.chicks", Value::Number(live));
        set(answers, growing::PLACED, Value::Number(live));
    }
}

pub(crate) fn set_days(answers: &mut Answers, key: &'static str, days: BTreeMap<i32, f64>) {
    if !days.is_empty() {
        set(answers, key, Value::ByDay(days));
    }
}

/// Puts a number among the answers as the book's own.
pub(crate) fn set_number(answers: &mut Answers, key: &'static str, number: f64) {
    set(answers, key, Value::Number(number));
}

/// Puts a value among the answers as the book's own.
pub(crate) fn set(answers: &mut Answers, key: &'static str, value: Value) {
    if let Some(field) = families::field(key) {
        answers.set(field, Given { typed: String::new(), value, line: None, usual: None });
    }
}
