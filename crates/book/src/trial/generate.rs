//! Generated books: a few phones that write, put right, take back, meet now and then, and have bad luck.

use std::collections::{BTreeMap, BTreeSet};
use std::sync::LazyLock;

use serde_json::json;
use uuid::Uuid;

use super::luck::Luck;
use super::make::{self, FARM};
use crate::access::{Access, Role};
use crate::compose::{Draft, SeriesEnd, Sight, compose_by};
use crate::entry::*;
use crate::finding::Conflict;
use crate::fold::{BookState, Rules, ask_and_take_the_last};
use crate::kind::{About, Counting, KINDS, Kind, Span};
use crate::limit::HOUSE_OF_PLAN;

/// The program's kinds, and two of the sorts that are still to come.
pub(super) static TRIAL_KINDS: LazyLock<&'static [Kind]> = LazyLock::new(|| {
    let batch = &[About::Batch];
    let a_day = |part| Counting::OneASlot(Span { each_day: true, part });
    let row = |name, rank, counting| Kind {
        name,
        rank,
        counting,
        about: batch,
        upcasters: &[],
        section: None,
        limit: None,
    };
    let to_come = [row("water", 100, a_day(None)), row("sensor-day", 110, a_day(Some("channel")))];
    Vec::leak(KINDS.iter().copied().chain(to_come).collect())
});

/// The rules of the program, over the kinds of the trial.
pub(crate) fn rules() -> Rules {
    Rules { kinds: *TRIAL_KINDS, contest: ask_and_take_the_last }
}

/// A generated book, and what happened while it came about.
pub(super) struct Book {
    pub(super) entries: Vec<StoredEntry>,
    pub(super) features: BTreeSet<&'static str>,
}

/// A phone, or a copy of one.
#[derive(Clone)]
struct Phone {
    device: DeviceId,
    end: Option<SeriesEnd>,
    wall_millis: i64,
    /// The entries it has, by their place in the world's list.
    known: BTreeSet<usize>,
}

struct World {
    luck: Luck,
    entries: Vec<StoredEntry>,
    phones: Vec<Phone>,
    features: BTreeSet<&'static str>,
    ids: BTreeSet<u128>,
    /// Ids that somebody superseded before anybody used them.
    promised: Vec<EntryId>,
    /// The kinds this book is about: few, so that the phones meet in the slots.
    kinds: Vec<&'static str>,
    /// Whether phones are copied in it.
    cloned: bool,
    /// Whether entries are forged and damaged in it.
    forged: bool,
}

const MINUTE: i64 = 60_000;
const YEAR: i64 = 365 * 24 * 60 * MINUTE;

/// The book of a seed.
pub(super) fn book(seed: u64) -> Book {
    let mut world = World::new(seed);
    let steps = 10 + world.luck.below(40);
    for _ in 0..steps {
        world.step();
    }
    if world.luck.chance(25) {
        world.settle_a_conflict();
    }
    world.deliver()
}

impl World {
    fn new(seed: u64) -> Self {
        let mut luck = Luck::new(seed);
        let phones = (0..2 + luck.below(3) as u128)
            .map(|number| Phone {
                device: make::device(number),
                end: None,
                wall_millis: 1_800_000_000_000 + number as i64 * 7 * MINUTE,
                known: BTreeSet::new(),
            })
            .collect();
        let names: Vec<&'static str> = TRIAL_KINDS.iter().map(|kind| kind.name).collect();
        // Half the time of those on which the questions of the fold were first asked.
        let first = ["farm", "house", "plan-adopted", "note", "prices"];
        let kinds = (0..1 + luck.below(4))
            .map(|_| if luck.chance(60) { *luck.pick(&first) } else { *luck.pick(&names) })
            .collect();
        let (cloned, forged) = (luck.chance(30), luck.chance(30));
        Self {
            luck,
            entries: Vec::new(),
            phones,
            features: BTreeSet::new(),
            ids: BTreeSet::new(),
            promised: Vec::new(),
            kinds,
            cloned,
            forged,
        }
    }

    fn step(&mut self) {
        let phone = self.luck.below(self.phones.len());
        match self.luck.below(100) {
            0..3 if self.forged => self.forge(phone),
            3..5 if self.cloned => self.copy(phone),
            5..9 => self.jump(phone),
            9..36 => self.meet(phone),
            _ => self.write_something(phone),
        }
        self.phones[phone].wall_millis += self.luck.below(90) as i64 * MINUTE;
    }

    fn happened(&mut self, feature: &'static str) {
        self.features.insert(feature);
    }

    /// A phone gets what another has, or only what it has of some devices.
    fn meet(&mut self, phone: usize) {
        let other = self.luck.below(self.phones.len());
        let partly = self.luck.chance(25);
        let devices: Vec<DeviceId> = self.phones.iter().map(|phone| phone.device).collect();
        let skipped = partly.then(|| *self.luck.pick(&devices));
        let news: Vec<usize> = self.phones[other].known.iter().copied().collect();
        let wanted = |at: &usize| Some(self.entries[*at].entry.device) != skipped;
        let news: Vec<usize> = news.into_iter().filter(wanted).collect();
        self.phones[phone].known.extend(news);
    }

    /// A phone's wall clock is set wrong, by minutes or by decades.
    fn jump(&mut self, phone: usize) {
        let span = *self.luck.pick(&[-40 * YEAR, -60 * MINUTE, 60 * MINUTE, 40 * YEAR]);
        self.phones[phone].wall_millis += span;
        self.happened("clock jump");
    }

    /// A phone is restored from a backup and both copies are used.
    fn copy(&mut self, phone: usize) {
        let copy = self.phones[phone].clone();
        self.phones.push(copy);
    }

    fn fresh_id(&mut self) -> EntryId {
        let number = loop {
            // Ids mostly grow with time; a phone with a wrong clock makes low ones.
            let low = self.luck.chance(15);
            let number = if low { self.luck.below(100_000) } else { 1_000_000 + self.ids.len() * 1000 };
            let number = number as u128 + self.luck.below(1000) as u128;
            if self.ids.insert(number) {
                break number;
            }
        };
        make::id(number)
    }

    fn write_something(&mut self, phone: usize) {
        let draft = match self.luck.below(100) {
            0..45 => Some(self.something_new()),
            45..80 => self.correction(phone, false),
            80..90 => self.correction(phone, true),
            90..94 => Some(self.correction_of_the_unknown()),
            _ => self.use_of_a_promised_id(phone),
        };
        let Some(draft) = draft else { return };
        let stored = self.compose(phone, draft);
        let stored = self.in_another_version(stored);
        self.put(phone, stored);
    }

    fn something_new(&mut self) -> Draft {
        let kind = *self.luck.pick(&self.kinds.clone());
        let (id, subject) = (self.fresh_id(), self.subject(kind));
        let day = make::day(self.luck.below(4) as i32);
        let body = self.body(kind);
        Draft::new(id, kind, subject, day, body)
    }

    fn subject(&mut self, kind: &str) -> Subject {
        let row = Kind::named(kind, *TRIAL_KINDS).unwrap();
        let which = Uuid::from_u128(1 + self.luck.below(2) as u128);
        match self.luck.pick(row.about) {
            About::Farm => Subject::Farm,
            About::House => Subject::House(HouseId(which)),
            About::Batch => Subject::Batch(BatchId(which)),
        }
    }

    fn body(&mut self, kind: &str) -> Body {
        let number = self.luck.next() as f64 / 1e12;
        let mut body = make::body("number", json!(number));
        let which = 1 + self.luck.below(3) as u128;
        match kind {
            "sensor-day" => body.extend(make::body("channel", json!(format!("channel {which}")))),
            "plan-adopted" => body.extend(make::body(HOUSE_OF_PLAN, json!(Uuid::from_u128(which)))),
            _ => {}
        }
        body
    }

    /// Puts right or takes back something the phone has: mostly what is not put right yet, sometimes an old version, as
    /// somebody does who looks at an old screen; sometimes two things at once.
    fn correction(&mut self, phone: usize, withdrawn: bool) -> Option<Draft> {
        let known: Vec<usize> = self.phones[phone].known.iter().copied().collect();
        if known.is_empty() {
            return None;
        }
        let superseded: BTreeSet<EntryId> =
            known.iter().flat_map(|at| self.entries[*at].entry.supersedes.clone()).collect();
        let open: Vec<usize> =
            known.iter().copied().filter(|at| !superseded.contains(&self.entries[*at].entry.id)).collect();
        let from = if self.luck.chance(12) || open.is_empty() { &known } else { &open };
        let wrong = self.entries[*self.luck.pick(from)].entry.clone();
        let second = self.entries[*self.luck.pick(from)].entry.id;
        let id = self.fresh_id();
        let body = if withdrawn { Body::new() } else { self.body(&wrong.kind) };
        let mut draft = Draft { withdrawn, ..Draft::correction(id, &wrong, body) };
        if self.luck.chance(12) && second != wrong.id {
            draft.supersedes.push(second);
            self.happened("two put right in one");
        }
        if self.luck.chance(12) {
            draft.day = make::day(self.luck.below(4) as i32);
            self.happened("moved to another day");
        }
        if known.iter().any(|at| self.entries[*at].entry.id == wrong.id && !wrong.supersedes.is_empty()) {
            self.happened("correction of a correction");
        }
        self.happened(if withdrawn { "withdrawal" } else { "correction" });
        // A kind of another program cannot be composed here, and cannot be put right here either.
        Kind::named(&draft.kind, *TRIAL_KINDS).is_some().then_some(draft)
    }

    /// Puts right an entry that nobody has, and that may turn up later.
    fn correction_of_the_unknown(&mut self) -> Draft {
        let promised = self.fresh_id();
        self.promised.push(promised);
        Draft { supersedes: vec![promised], ..self.something_new() }
    }

    /// Uses an id that was superseded before, perhaps on top of what supersedes it: then a ring closes.
    fn use_of_a_promised_id(&mut self, phone: usize) -> Option<Draft> {
        let id = self.promised.pop()?;
        let supersedes = match self.phones[phone].known.last() {
            Some(last) if self.luck.chance(70) => vec![self.entries[*last].entry.id],
            _ => Vec::new(),
        };
        Some(Draft { id, supersedes, ..self.something_new() })
    }

    fn sight(&self, phone: &Phone) -> Sight {
        let mut had: BTreeMap<DeviceId, BTreeSet<u64>> = BTreeMap::new();
        for at in &phone.known {
            let entry = &self.entries[*at].entry;
            had.entry(entry.device).or_default().insert(entry.sequence);
        }
        let without_gap =
            |had: &BTreeSet<u64>| (1..).take_while(|sequence| had.contains(sequence)).count() as u64;
        let limit = HybridClock::latest_trusted(phone.wall_millis);
        let clocks = phone.known.iter().map(|at| self.entries[*at].entry.clock);
        Sight {
            seen: had.iter().map(|(device, had)| (*device, without_gap(had))).collect(),
            clock: clocks.filter(|clock| *clock <= limit).max(),
        }
    }

    fn compose(&mut self, phone: usize, draft: Draft) -> StoredEntry {
        let phone = &self.phones[phone];
        let person = PersonId(Uuid::from_u128(7));
        let access = Access::granted(FARM, person, phone.device, Role::Helper);
        compose_by(*TRIAL_KINDS, &access, phone.end, draft, &self.sight(phone), phone.wall_millis).unwrap()
    }

    /// Makes some entries those of an older or a newer program.
    fn in_another_version(&mut self, stored: StoredEntry) -> StoredEntry {
        let mut entry = stored.entry.clone();
        match self.luck.below(100) {
            0..4 => {
                entry.kind = "hatchery".to_owned();
                self.happened("unknown kind");
            }
            4..8 => {
                entry.body_version += 1 + self.luck.below(3) as u16;
                self.happened("newer version");
            }
            8..20 if entry.kind == "house" && !entry.withdrawn => {
                (entry.body_version, entry.body) = (1, make::body("height_m", json!(2.4)));
                self.happened("older version");
            }
            _ => return stored,
        }
        entry.encode().unwrap()
    }

    fn put(&mut self, phone: usize, stored: StoredEntry) {
        self.phones[phone].end = Some(SeriesEnd::at(&stored));
        self.phones[phone].known.insert(self.entries.len());
        self.entries.push(stored);
    }

    /// What no correct program writes.
    fn forge(&mut self, phone: usize) {
        let draft = self.something_new();
        let mut entry = self.compose(phone, draft).entry;
        match self.luck.below(6) {
            0 => entry.previous = Some(EntryHash::of(b"nothing")),
            1 => entry.sequence = 0,
            2 => entry.supersedes.push(entry.id),
            3 => entry.farm = FarmId(Uuid::from_u128(0xfb)),
            4 => entry.sequence = u64::MAX,
            _ => entry.seen.extend(self.phones.iter().map(|phone| (phone.device, 1000))),
        }
        self.happened("forged entry");
        let stored = entry.encode().unwrap();
        // It does not become the end of the series: the program that reads it goes on from its own.
        self.phones[phone].known.insert(self.entries.len());
        self.entries.push(stored);
    }

    /// A phone that has everything settles what it is asked.
    fn settle_a_conflict(&mut self) {
        self.phones[0].known = (0..self.entries.len()).collect();
        let state = BookState::folded(FARM, rules(), self.entries.iter().cloned());
        let is_known = |conflict: &Conflict| conflict.winner.kind().is_some();
        let Some(conflict) = state.conflicts().into_iter().find(is_known) else { return };
        let (id, body) = (self.fresh_id(), self.body(&conflict.winner.entry().kind));
        let stored = self.compose(0, conflict.settle(id, body));
        self.put(0, stored);
        self.happened("settled conflict");
    }

    /// What arrives in the end: some entries twice, some not at all, some damaged under their old id.
    fn deliver(mut self) -> Book {
        let mut entries = std::mem::take(&mut self.entries);
        if self.luck.chance(40) {
            let before = entries.len();
            entries.retain(|_| !self.luck.chance(10));
            if entries.len() < before {
                self.happened("lost entry");
            }
        }
        for at in 0..entries.len() {
            if self.luck.chance(4) {
                entries.push(entries[at].clone());
                self.happened("entry twice");
            }
            if self.forged && self.luck.chance(4) {
                let mut entry = entries[at].entry.clone();
                entry.reason = Some("damaged".to_owned());
                entries.push(entry.encode().unwrap());
                self.happened("same id, other bytes");
            }
        }
        Book { entries, features: self.features }
    }
}
