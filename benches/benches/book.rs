//! Budgets of the book: the fold of 5 000 entries in 5 ms, one entry appended to a folded book in 100 µs; both for
//! entries that only stand there and for those that add up day by day.

use std::collections::BTreeMap;
use std::hint::black_box;

use book::{
    Answer, BatchId, Body, BookState, DeviceId, Entry, EntryId, FarmId, HouseId, HybridClock, PersonId,
    StoredEntry, Subject, fold,
};
use criterion::{BatchSize, Criterion, criterion_group, criterion_main};
use quantity::CivilDay;
use serde_json::json;
use uuid::Uuid;

const FARM: FarmId = FarmId(Uuid::from_u128(1));
const PHONES: usize = 3;
/// A batch is in the house for so many days, and each day somebody writes three entries.
const DAYS: usize = 42;
const A_BATCH: usize = DAYS * 3;

/// Writes entries as a farm with a few phones in good touch does.
struct Farm {
    entries: Vec<StoredEntry>,
    ends: [Option<StoredEntry>; PHONES],
    start: CivilDay,
}

/// What one entry says.
struct Said {
    kind: &'static str,
    body_version: u16,
    subject: Subject,
    day: usize,
    /// The answers; some of any kind where it does not matter which.
    body: Option<Body>,
    supersedes: Vec<EntryId>,
}

impl Farm {
    fn new() -> Self {
        let start = CivilDay::from_number(20_000);
        Self { entries: Vec::new(), ends: [const { None }; PHONES], start }
    }

    fn device(phone: usize) -> DeviceId {
        DeviceId(Uuid::from_u128(100 + phone as u128))
    }

    fn next(&mut self, said: Said) -> StoredEntry {
        let number = self.entries.len();
        let phone = number % PHONES;
        let end = self.ends[phone].as_ref();
        let sequence = |end: &StoredEntry| end.entry.sequence;
        let others = (0..PHONES).filter(|other| *other != phone);
        let seen =
            others.filter_map(|other| Some((Self::device(other), sequence(self.ends[other].as_ref()?))));
        let entry = Entry {
            id: EntryId(Uuid::from_u128(1_000_000 + (number as u128) * 0x1_0000_0000)),
            farm: FARM,
            subject: said.subject,
            day: self.start.plus_days(said.day as i32),
            device: Self::device(phone),
            sequence: 1 + end.map_or(0, sequence),
            previous: end.map(|end| end.hash),
            clock: HybridClock { millis: 1_728_000_000_000 + number as i64 * 10_000_000, counter: 0 },
            person: PersonId(Uuid::from_u128(200 + phone as u128)),
            kind: said.kind.to_owned(),
            body_version: said.body_version,
            body: said.body.unwrap_or_else(|| body(number)),
            supersedes: said.supersedes,
            withdrawn: false,
            reason: None,
            seen: seen.collect(),
        };
        let stored = entry.encode().expect("an entry can be written");
        self.ends[phone] = Some(stored.clone());
        stored
    }

    fn write(&mut self, said: Said) {
        let stored = self.next(said);
        self.entries.push(stored);
    }
}

fn body(number: usize) -> Body {
    let answer = |typed: &str, value| Answer { typed: Some(typed.to_owned()), value };
    BTreeMap::from([
        ("length_m".to_owned(), answer("59 ft", json!(17.9832))),
        ("text".to_owned(), answer("", json!(format!("what was seen, number {number}")))),
        ("width_m".to_owned(), answer("9", json!(9.0))),
    ])
}

fn note(day: usize, batch: usize) -> Said {
    said("note", Subject::Batch(batch_id(batch)), day)
}

fn said(kind: &'static str, subject: Subject, day: usize) -> Said {
    let body_version = if kind == "house" { 2 } else { 1 };
    Said { kind, body_version, subject, day, body: None, supersedes: Vec::new() }
}

fn batch_id(batch: usize) -> BatchId {
    BatchId(Uuid::from_u128(batch as u128))
}

/// A book of batches, one after the other: a plan each, notes each day of which one in twenty is put right later, new
/// prices each week, the house described anew with each batch.
fn farm_with(count: usize) -> Farm {
    let mut farm = Farm::new();
    let house = Subject::House(HouseId(Uuid::from_u128(7)));
    while farm.entries.len() < count {
        let number = farm.entries.len();
        let (batch, day) = (number / A_BATCH, number / 3);
        let mut next = match number % A_BATCH {
            0 => said("house", house, day),
            1 => said("plan-adopted", note(day, batch).subject, day),
            at if at % 21 == 20 => said("prices", Subject::Farm, day),
            _ => note(day, batch),
        };
        if next.kind == "note" && number % 20 == 19 {
            next.supersedes.extend(farm.entries.last().map(|last| last.entry.id));
        }
        farm.write(next);
    }
    farm
}

/// What is written down every day of a batch, in the order of a walk through the house.
const DAILY: [&str; 5] = ["deaths", "feed-given", "water", "house-air", "look"];

/// One thing of a day of a batch.
fn daily(kind: &'static str, batch: usize, day: usize) -> Said {
    let answers = match kind {
        "chicks-placed" => vec![("counted", json!(1632)), ("dead_on_arrival", json!(4))],
        "feed-delivered" => vec![("phase", json!("grower")), ("bags", json!(80)), ("bag_kg", json!(50))],
        "deaths" => vec![("dead", json!(day % 4)), ("culled", json!(1))],
        "feed-given" => vec![("phase", json!("grower")), ("feed_kg", json!(95.5))],
        "water" => vec![("water_l", json!(190))],
        "house-air" => vec![("coldest_c", json!(24.5)), ("warmest_c", json!(31))],
        _ => vec![("spread", json!("even")), ("smell_low", json!("slight"))],
    };
    let answers = answers.into_iter();
    let body = answers.map(|(key, value)| (key.to_owned(), Answer { typed: None, value })).collect();
    Said { body: Some(body), ..said(kind, Subject::Batch(batch_id(batch)), day) }
}

/// A book of days: batches one after the other, their chicks and their feed, and the five things of every day.
fn farm_of_days(count: usize) -> Farm {
    let mut farm = Farm::new();
    for day in 0.. {
        let batch = day / DAYS;
        if day % DAYS == 0 {
            farm.write(daily("chicks-placed", batch, day));
            farm.write(daily("feed-delivered", batch, day));
        }
        for kind in DAILY {
            farm.write(daily(kind, batch, day));
        }
        if farm.entries.len() >= count {
            break;
        }
    }
    farm
}

/// The same budgets where entries add up and limits look at the sums; and what a page of a day asks of the book.
fn bench_days(c: &mut Criterion) {
    let mut farm = farm_of_days(5_000);
    let entries = farm.entries.clone();
    c.bench_function("book/fold of 5 000 entries of days", |bencher| {
        bencher.iter_batched(|| entries.clone(), |entries| fold(FARM, entries), BatchSize::LargeInput);
    });
    let state = fold(FARM, entries.iter().cloned());
    let today = entries.last().expect("there are entries").entry.clone();
    let batch = (today.day.days_since(farm.start) as usize) / DAYS;
    let next = farm.next(daily("deaths", batch, today.day.days_since(farm.start) as usize + 1));
    bench_append(c, "book/append the deaths of a day to 5 000 entries of days", &state, &next);
    c.bench_function("book/limits of a batch of 5 000 entries of days", |bencher| {
        bencher.iter(|| black_box(state.findings_about(today.subject)));
    });
    let past = farm.start.plus_days(DAYS as i32 / 2);
    c.bench_function("book/a past day of a batch of 5 000 entries of days", |bencher| {
        bencher.iter(|| black_box(state.on_day(past, batch_id(0)).farm()));
    });
}

fn bench_fold(c: &mut Criterion) {
    let entries = farm_with(5_000).entries;
    c.bench_function("book/fold of 5 000 entries", |bencher| {
        bencher.iter_batched(|| entries.clone(), |entries| fold(FARM, entries), BatchSize::LargeInput);
    });
    let lines: Vec<Vec<u8>> = entries.iter().map(|stored| stored.bytes.clone()).collect();
    c.bench_function("book/decoding of 5 000 entries", |bencher| {
        bencher.iter_batched(
            || lines.clone(),
            |lines| lines.into_iter().map(StoredEntry::decode).collect::<Result<Vec<_>, _>>(),
            BatchSize::LargeInput,
        );
    });
}

/// Appends one entry to a state. The clone that each round starts from is not measured.
fn bench_append(c: &mut Criterion, name: &str, state: &BookState, entry: &StoredEntry) {
    c.bench_function(name, |bencher| {
        bencher.iter_batched(
            || (state.clone(), entry.clone()),
            |(mut state, entry)| {
                black_box(state.append(entry));
                state
            },
            BatchSize::LargeInput,
        );
    });
}

fn bench_appends(c: &mut Criterion) {
    for count in [500, 5_000, 50_000] {
        let mut farm = farm_with(count);
        let state = fold(FARM, farm.entries.iter().cloned());
        let today = note(count / 3, count / A_BATCH);
        let next = farm.next(today);
        bench_append(c, &format!("book/append a note of today to {count} entries"), &state, &next);
        let mut farm = farm_with(count);
        let prices = farm.next(said("prices", Subject::Farm, count / 3));
        bench_append(c, &format!("book/append new prices to {count} entries"), &state, &prices);
    }
}

/// The worst the design allows for: a slot that was put right 5 000 times, one thing a thread.
fn bench_long_thread(c: &mut Criterion) {
    let mut farm = Farm::new();
    let correction = |farm: &Farm| Said {
        supersedes: farm.entries.last().map(|last| last.entry.id).into_iter().collect(),
        ..said("settings", Subject::Farm, farm.entries.len() / 100)
    };
    for _ in 0..5_000 {
        let next = correction(&farm);
        farm.write(next);
    }
    let state = fold(FARM, farm.entries.iter().cloned());
    let next = correction(&farm);
    let next = farm.next(next);
    bench_append(c, "book/append to a slot put right 5 000 times", &state, &next);
}

criterion_group!(benches, bench_fold, bench_days, bench_appends, bench_long_thread);
criterion_main!(benches);
