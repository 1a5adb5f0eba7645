//! What is in the store room, out of the book.

use std::collections::BTreeMap;

use book::tally::PHASES;
use quantity::{CivilDay, Value};

use crate::diary::{Diary, Noted, set, set_days, set_number};
use crate::families::{growing, store};
use crate::outcome::Outcome;
use crate::record::alive_before;
use crate::store_room::Phase;

/// Puts it among the answers.
pub(crate) fn write(diary: &mut Diary) {
    let sums: [(&str, Amount, Key); 5] = [
        ("feed-delivered", delivered_kg, |feed| feed.came),
        ("feed-delivered", |note| note.number("bags"), |feed| feed.bags),
        ("feed-opened", |note| note.number("bags"), |feed| feed.opened),
        ("feed-given", |note| note.number("feed_kg"), |feed| feed.given),
        ("feed-spoiled", |note| note.number("feed_kg"), |feed| feed.spoiled),
    ];
    for (at, phase) in PHASES.iter().enumerate() {
        let fields = &store::FEEDS[at];
        for (kind, amount, key) in &sums {
            if let Some(sum) = sum_of(diary, kind, phase, *amount) {
                set_number(&mut diary.answers, key(fields), sum);
            }
        }
        let last =
            of_phase(diary, "feed-delivered", phase).filter_map(|note| note.number("bag_kg")).next_back();
        if let Some(bag) = last {
            set_number(&mut diary.answers, fields.bag, bag);
        }
    }
    write_days(diary);
    write_ahead(diary);
}

/// What came and what spoiled, by day. Feed is there before the chicks: that counts on the day they come.
fn write_days(diary: &mut Diary) {
    let sums: [(&'static str, &str, Amount); 2] = [
        (store::CAME, "feed-delivered", delivered_kg),
        (store::SPOILED, "feed-spoiled", |note| note.number("feed_kg")),
    ];
    for (key, kind, amount) in sums {
        let written = |note: &Noted| (note.kind == kind).then(|| amount(note))?;
        let mut days: BTreeMap<i32, f64> = BTreeMap::new();
        for (age, kilograms) in diary.by_day(written, |sum, more| sum + more) {
            *days.entry(age.max(0)).or_default() += kilograms;
        }
        set_days(&mut diary.answers, key, days);
    }
}

/// The field of a feed that a sum goes into.
type Key = fn(&store::FeedFields) -> &'static str;

/// Reads an amount out of what was written down.
type Amount = fn(&Noted) -> Option<f64>;

fn delivered_kg(note: &Noted) -> Option<f64> {
    Some(note.number("bags")? * note.number("bag_kg")?)
}

fn of_phase<'a>(
    diary: &'a Diary,
    kind: &'a str,
    phase: &'a str,
) -> impl DoubleEndedIterator<Item = &'a Noted> {
    diary.of_kind(kind).filter(move |note| note.text("phase") == Some(phase))
}

/// `None` where nothing was written: that is not the same as nothing.
fn sum_of(diary: &Diary, kind: &str, phase: &str, amount: Amount) -> Option<f64> {
    of_phase(diary, kind, phase).filter_map(amount).reduce(|sum, more| sum + more)
}

/// What the plan has eaten on each day to come by the birds that are alive now: from today on, or from tomorrow on where today's
/// feed is written. Each feed from its first day on, or from now where that is past.
fn write_ahead(diary: &mut Diary) {
    let Some(today) = diary.age_today() else { return };
    let alive = alive_before(diary, diary.on.plus_days(1));
    let expected = diary.answers.by_day(growing::EXPECTED_FEED);
    let Some((alive, expected)) = alive.filter(|alive| *alive > 0.0).zip(expected) else { return };
    let next = if diary.on_day("feed-given", diary.on).next().is_some() { today + 1 } else { today };
    let eaten: BTreeMap<i32, f64> =
        expected.range(next.max(0)..).map(|(age, grams)| (*age, grams * alive / 1000.0)).collect();
    let from = |first: i32| eaten.range(first..).map(|(_, kg)| *kg).collect::<Vec<f64>>();
    let all = from(next.max(0));
    let starts = first_days(diary);
    let of_feeds: Vec<Vec<f64>> = starts.into_iter().map(|first| from(first.max(next).max(0))).collect();
    set_numbers(diary, store::AHEAD, all);
    for (feed, ahead) in store::FEEDS.iter().zip(of_feeds) {
        set_numbers(diary, feed.ahead, ahead);
    }
}

/// The first day of age of each feed by the plan; 0 where the plan does not say.
fn first_days(diary: &Diary) -> [i32; 4] {
    let outcome = Outcome::of(&diary.answers, Phase::ALL.map(Phase::last_day_figure));
    let last = |phase: Phase| outcome.number(phase.last_day_figure()).map_or(-1, |day| day as i32);
    let [starter, grower, finisher, _] = Phase::ALL;
    [0, last(starter) + 1, last(grower) + 1, last(finisher) + 1]
}

fn set_numbers(diary: &mut Diary, key: &'static str, numbers: Vec<f64>) {
    if !numbers.is_empty() {
        set(&mut diary.answers, key, Value::Numbers(numbers));
    }
}

/// Something bought beside feed, all of one name and measure together.
#[derive(Clone, Debug, PartialEq)]
pub struct Bought {
    /// Which sort: litter, fuel, medicine and so on.
    pub what: String,
    /// Its name, where it has one.
    pub name: Option<String>,
    /// The measure it is counted in, where it was written.
    pub unit: Option<String>,
    /// How much, of those that said it.
    pub amount: Option<f64>,
    /// The last day it was bought.
    pub last: CivilDay,
}

/// What was bought of the sorts that lie in a store room, by sort and name.
pub fn bought(diary: &Diary) -> Vec<Bought> {
    const KEPT: [&str; 5] = ["litter", "fuel", "medicine", "vaccine", "disinfectant"];
    let mut all: BTreeMap<(usize, Option<String>, Option<String>), Bought> = BTreeMap::new();
    for note in diary.of_kind("purchase") {
        let text = |key: &str| note.text(key).filter(|text| !text.is_empty()).map(str::to_owned);
        let Some(at) = KEPT.iter().position(|kept| note.text("what") == Some(kept)) else { continue };
        let (name, unit) = (text("name"), text("unit"));
        let bought = all.entry((at, name.clone(), unit.clone())).or_insert_with(|| Bought {
            what: KEPT[at].to_owned(),
            name,
            unit,
            amount: None,
            last: note.day,
        });
        bought.last = note.day;
        bought.amount = match (bought.amount, note.number("amount")) {
            (Some(sum), Some(more)) => Some(sum + more),
            (sum, more) => sum.or(more),
        };
    }
    all.into_values().collect()
}

/// Fuel burnt, by sort.
#[derive(Clone, Debug, PartialEq)]
pub struct Burnt {
    /// The fuel.
    pub fuel: String,
    /// In all, kg.
    pub amount_kg: f64,
    /// Days on which it was written.
    pub days: usize,
    /// The last of them.
    pub last: CivilDay,
}

/// What was burnt, by fuel.
pub fn burnt(diary: &Diary) -> Vec<Burnt> {
    let mut all: BTreeMap<&str, Burnt> = BTreeMap::new();
    for note in diary.of_kind("fuel-burnt") {
        let Some((fuel, amount)) = note.text("fuel").zip(note.number("amount_kg")) else { continue };
        let burnt = all.entry(fuel).or_insert_with(|| Burnt {
            fuel: fuel.to_owned(),
            amount_kg: 0.0,
            days: 0,
            last: note.day,
        });
        burnt.amount_kg += amount;
        burnt.days += 1;
        burnt.last = note.day;
    }
    all.into_values().collect()
}
