//! What a batch adds up to, on ten thousand generated books of two phones: tallies, limits and the view of a day, held
//! against a slow oracle that adds up from the entries themselves.

use std::collections::BTreeSet;
use std::ops::Range;

use quantity::CivilDay;
use uuid::Uuid;

use super::generate::{self, Sort};
use super::luck::Luck;
use super::make::{self, FARM};
use super::oracle::View;
use super::shares::Shares;
use crate::entry::{BatchId, Entry, EntryHash, HouseId, StoredEntry, Subject};
use crate::finding::Finding;
use crate::fold::{BookState, fold};
use crate::kind::{KINDS, Kind, Slot};
use crate::tally::{PHASES, Tally};

/// Small ones, so that so many take some ten seconds on two cores.
const BOOKS: u64 = 10_000;

/// What a book says about one batch by the end of a day.
#[derive(Debug, PartialEq)]
struct DayView {
    /// What counts about the batch, its farm and the houses, in the order of the fold.
    counting: Vec<EntryHash>,
    tally: Tally,
    limits: BTreeSet<Finding>,
}

/// The batch of the books, and whatever else its view shows.
fn is_meant(batch: BatchId, subject: Subject) -> bool {
    !matches!(subject, Subject::Batch(other) if other != batch)
}

impl DayView {
    /// What the book itself says.
    fn of(state: &BookState, batch: BatchId, day: CivilDay) -> DayView {
        let state = state.on_day(day, batch);
        let counting = state.counting().into_iter().filter(|record| is_meant(batch, record.entry().subject));
        DayView {
            counting: counting.map(|record| record.hash()).collect(),
            tally: state.checkpoint(Subject::Batch(batch), day).tally,
            limits: state.findings_about(Subject::Batch(batch)).into_iter().collect(),
        }
    }

    /// What the entries about that day and earlier ones must say.
    fn expected(entries: &[StoredEntry], batch: BatchId, day: CivilDay) -> DayView {
        let until: Vec<StoredEntry> = entries
            .iter()
            .filter(|stored| stored.entry.day <= day && is_meant(batch, stored.entry.subject))
            .cloned()
            .collect();
        let added = Added::of(&until);
        DayView {
            tally: added.tally(Subject::Batch(batch), day),
            limits: added.limits(Subject::Batch(batch)),
            counting: added.view.counting,
        }
    }
}

/// The entries that count, by the oracle of threads and slots, ready to be added up one by one.
struct Added<'a> {
    view: View,
    counting: Vec<&'a Entry>,
}

impl<'a> Added<'a> {
    fn of(entries: &'a [StoredEntry]) -> Added<'a> {
        let view = View::expected(FARM, KINDS, entries);
        let with = |hash: &EntryHash| entries.iter().find(|stored| stored.hash == *hash);
        let counting = view.counting.iter().filter_map(with).map(|stored| &stored.entry).collect();
        Added { view, counting }
    }

    /// A subject's entries of a kind up to a day.
    fn of_kind(&self, subject: Subject, kind: &str, day: CivilDay) -> Vec<&'a Entry> {
        let is_it = |entry: &&&Entry| entry.subject == subject && entry.kind == kind && entry.day <= day;
        self.counting.iter().filter(is_it).copied().collect()
    }

    fn tally(&self, subject: Subject, day: CivilDay) -> Tally {
        let all = |kind| self.of_kind(subject, kind, day);
        let sum = |kind, keys: &[&str]| -> f64 {
            all(kind).iter().flat_map(|entry| keys.iter().map(|key| number(entry, key).unwrap_or(0.0))).sum()
        };
        let came = |entry: &&Entry| {
            let off = |key| number(entry, key).unwrap_or(0.0);
            Some(number(entry, "counted")? - off("dead_on_arrival") - off("weak_culled"))
        };
        let fed = |kind, kilograms: fn(&Entry) -> Option<f64>| {
            PHASES.map(|phase| {
                let of_phase = all(kind).into_iter().filter(|entry| word(entry, "phase") == Some(phase));
                of_phase.filter_map(kilograms).sum::<f64>()
            })
        };
        Tally {
            placed: all("chicks-placed").iter().find_map(came),
            lost: sum("deaths", &["dead", "culled"]),
            out: sum("birds-out", &["birds"]),
            sold: sum("sale", &["birds"]),
            delivered_kg: fed("feed-delivered", |entry| {
                Some(number(entry, "bags")? * number(entry, "bag_kg")?)
            }),
            given_kg: fed("feed-given", |entry| number(entry, "feed_kg")),
            spoiled_kg: fed("feed-spoiled", |entry| number(entry, "feed_kg")),
        }
    }

    /// The limits that a batch's entries go beyond.
    fn limits(&self, subject: Subject) -> BTreeSet<Finding> {
        let about = self.counting.iter().filter(|entry| entry.subject == subject);
        about.filter_map(|entry| self.limit(entry)).collect()
    }

    fn limit(&self, of: &Entry) -> Option<Finding> {
        let entry = of.id;
        let tally = self.tally(of.subject, of.day);
        let gone = tally.lost + tally.out + tally.sold;
        match of.kind.as_str() {
            "deaths" | "birds-out" | "sale" if gone > tally.placed? => {
                Some(Finding::MoreGoneThanAlive { entry, birds: (gone - tally.placed?) as u64 })
            }
            "feed-given" => {
                let phase = PHASES.iter().position(|phase| word(of, "phase") == Some(phase))?;
                let used = tally.given_kg[phase] + tally.spoiled_kg[phase] - tally.delivered_kg[phase];
                let kilograms = used.round() as u64;
                (used > 0.5).then_some(Finding::MoreFeedThanDelivered {
                    entry,
                    phase: PHASES[phase],
                    kilograms,
                })
            }
            "crop-fill" => {
                (number(of, "full")? > number(of, "felt")?).then_some(Finding::MoreFullThanFelt { entry })
            }
            "chicks-placed" => {
                let plan = self.current("plan-adopted", of.subject)?;
                let days = of.day.number() - CivilDay::parse(word(plan, "batch.placement")?)?.number();
                (!(-14..=14).contains(&days)).then_some(Finding::PlacedFarFromPlan { entry, days })
            }
            "plan-adopted" => {
                let house = word(of, "house")?;
                let described = Subject::House(HouseId(Uuid::parse_str(house).ok()?));
                let unknown = self.current("house", described).is_none();
                unknown.then(|| Finding::PlanForUnknownHouse { entry, house: house.to_owned() })
            }
            _ => None,
        }
    }

    /// What counts in a slot that a subject has one of.
    fn current(&self, kind: &'static str, subject: Subject) -> Option<&'a Entry> {
        self.view.slots.get(&Slot::of(kind, subject))?;
        self.counting.iter().find(|entry| entry.kind == kind && entry.subject == subject).copied()
    }
}

/// Whether the body is of the version that is written today. None of the kinds that are added up had an older one.
fn is_read(entry: &Entry) -> bool {
    Kind::named(&entry.kind, KINDS).is_some_and(|kind| entry.body_version == kind.body_version())
}

fn number(entry: &Entry, key: &str) -> Option<f64> {
    entry.body.get(key).filter(|_| is_read(entry))?.value.as_f64()
}

fn word<'e>(entry: &'e Entry, key: &str) -> Option<&'e str> {
    entry.body.get(key).filter(|_| is_read(entry))?.value.as_str()
}

/// Holds one book against the oracle: as a whole and entry by entry, and on one of its days.
fn hold(seed: u64, shares: &mut Shares) {
    let book = generate::book(Sort::Batch, seed);
    let mut luck = Luck::new(!seed);
    let batch = BatchId(Uuid::from_u128(if luck.chance(15) { 2 } else { 1 }));
    let day = make::day(luck.below(7) as i32);
    let subject = Subject::Batch(batch);
    let mut entries = book.entries;

    let whole = fold(FARM, entries.iter().cloned());
    let added = Added::of(&entries);
    assert_eq!(View::of(&whole), added.view, "book {seed}");
    assert_eq!(whole.checkpoint(subject, day).tally, added.tally(subject, day), "book {seed}, {day}");
    let limits: BTreeSet<Finding> = whole.findings_about(subject).into_iter().collect();
    assert_eq!(limits, added.limits(subject), "book {seed}");

    let expected = DayView::expected(&entries, batch, day);
    assert_eq!(DayView::of(&whole, batch, day), expected, "book {seed} on {day}");
    let early: Vec<StoredEntry> = entries.iter().filter(|stored| stored.entry.day <= day).cloned().collect();
    if early.len() < entries.len() {
        let early = fold(FARM, early);
        assert_eq!(DayView::of(&early, batch, day), expected, "book {seed} on {day}, before the later days");
    }

    book.features.iter().for_each(|feature| shares.count(feature, true));
    shares.count("=> asked about", !added.view.conflicts.is_empty());
    let differs = expected.tally != whole.checkpoint(subject, day).tally;
    shares.count("=> a later entry changes an earlier day", differs);
    count_sums(shares, &expected.tally);
    let limits: BTreeSet<&'static str> = limits.iter().map(limit_name).collect();
    limits.into_iter().for_each(|limit| shares.count(limit, true));

    luck.shuffle(&mut entries);
    let mut appended = BookState::new(FARM);
    for stored in entries {
        appended.append(stored);
    }
    assert_eq!(appended, whole, "book {seed}, entry by entry");
}

fn count_sums(shares: &mut Shares, tally: &Tally) {
    let some = |kilograms: &[f64; 4]| kilograms.iter().any(|kilograms| *kilograms > 0.0);
    shares.count("=> placed", tally.placed.is_some());
    shares.count("=> lost", tally.lost > 0.0);
    shares.count("=> out", tally.out > 0.0);
    shares.count("=> sold", tally.sold > 0.0);
    shares.count("=> delivered", some(&tally.delivered_kg));
    shares.count("=> given", some(&tally.given_kg));
    shares.count("=> spoiled", some(&tally.spoiled_kg));
}

fn limit_name(limit: &Finding) -> &'static str {
    match limit {
        Finding::MoreGoneThanAlive { .. } => "=> more gone than alive",
        Finding::MoreFeedThanDelivered { .. } => "=> more feed than delivered",
        Finding::MoreFullThanFelt { .. } => "=> more full than felt",
        Finding::PlacedFarFromPlan { .. } => "=> placed far from the plan",
        Finding::PlanForUnknownHouse { .. } => "=> unknown house",
        _ => "=> no limit",
    }
}

/// Each thing with the least share of the books, in percent, in which it has to occur.
const LEAST_SHARES: &[(&str, u64)] = &[
    ("correction", 50),
    ("withdrawal", 30),
    ("entry twice", 20),
    ("moved to another day", 10),
    ("lost entry", 10),
    ("newer version", 10),
    ("=> asked about", 15),
    ("=> placed", 25),
    ("=> lost", 12),
    ("=> out", 7),
    ("=> sold", 7),
    ("=> delivered", 7),
    ("=> given", 12),
    ("=> spoiled", 7),
    ("=> a later entry changes an earlier day", 3),
    ("=> more gone than alive", 8),
    ("=> more feed than delivered", 15),
    ("=> more full than felt", 5),
    ("=> placed far from the plan", 5),
    ("=> unknown house", 30),
];

#[test]
fn batches_add_up_as_their_entries_say() {
    let hold_all = |seeds: Range<u64>, shares: &mut Shares| seeds.for_each(|seed| hold(seed, shares));
    Shares::of(BOOKS, hold_all).ask_for(LEAST_SHARES, BOOKS);
}

/// A few hundred books are enough to meet every kind there is.
#[test]
fn every_kind_is_met() {
    let kinds_of =
        |seed| generate::book(Sort::Batch, seed).entries.into_iter().map(|stored| stored.entry.kind);
    let met: BTreeSet<String> = (0..300).flat_map(kinds_of).collect();
    let missing: Vec<&str> = KINDS.iter().map(|kind| kind.name).filter(|name| !met.contains(*name)).collect();
    assert!(missing.is_empty(), "{missing:?} are never written");
}
