//! Generated books: a few phones that write, put right, take back, meet now and then, and have bad luck.

use std::collections::{BTreeMap, BTreeSet};

use quantity::CivilDay;
use serde_json::json;
use uuid::Uuid;

use super::bodies;
use super::luck::Luck;
use super::make::{self, FARM};
use crate::access::{Access, Role};
use crate::compose::{Draft, SeriesEnd, Sight, compose_by};
use crate::entry::*;
use crate::finding::Conflict;
use crate::fold::{BookState, Rules, ask_and_take_the_last};
use crate::kind::{About, KINDS, Kind};

/// The rules of the program.
pub(crate) fn rules() -> Rules {
    Rules { kinds: KINDS, contest: ask_and_take_the_last }
}

/// What sort of book is made.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Sort {
    /// Several phones, copied and forged ones among them, and few kinds, so that they meet in the slots.
    Wild,
    /// Two honest phones that write down a batch, all its kinds, and mostly what is added up.
    Batch,
}

/// The kinds that are added up, and those whose limits look at them.
const ADDED_UP: &[&str] = &[
    "chicks-placed",
    "deaths",
    "deaths",
    "birds-out",
    "sale",
    "feed-delivered",
    "feed-given",
    "feed-given",
    "feed-spoiled",
    "crop-fill",
    "plan-adopted",
];

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
    sort: Sort,
    luck: Luck,
    entries: Vec<StoredEntry>,
    phones: Vec<Phone>,
    features: BTreeSet<&'static str>,
    ids: BTreeSet<u128>,
    /// Ids that somebody superseded before anybody used them, with what the entry that does so is about.
    promised: Vec<(EntryId, Subject)>,
    /// The kinds this book is about: few, so that the phones meet in the slots.
    kinds: Vec<&'static str>,
    /// Whether phones are copied in it.
    cloned: bool,
    /// Whether entries are forged and damaged in it.
    forged: bool,
}

const MINUTE: i64 = 60_000;
const YEAR: i64 = 365 * 24 * 60 * MINUTE;

/// The book of a sort and a seed.
pub(super) fn book(sort: Sort, seed: u64) -> Book {
    let mut world = World::new(sort, seed);
    if sort == Sort::Batch {
        world.begin();
    }
    let steps = match sort {
        Sort::Wild => 10 + world.luck.below(40),
        Sort::Batch => 6 + world.luck.below(11),
    };
    for _ in 0..steps {
        world.step();
    }
    // It folds the book, which the many small ones can do without.
    if sort == Sort::Wild && world.luck.chance(25) {
        world.settle_a_conflict();
    }
    world.deliver()
}

fn any_kind(luck: &mut Luck) -> &'static str {
    luck.pick(KINDS).name
}

/// Half the time of those on which the questions of the fold were first asked.
fn few_kinds(luck: &mut Luck) -> Vec<&'static str> {
    let first = ["farm", "house", "plan-adopted", "note", "prices"];
    let many = 1 + luck.below(4);
    (0..many).map(|_| if luck.chance(60) { *luck.pick(&first) } else { any_kind(luck) }).collect()
}

impl World {
    fn new(sort: Sort, seed: u64) -> Self {
        let mut luck = Luck::new(seed);
        let more = if sort == Sort::Wild { luck.below(3) } else { 0 };
        let phones = (0..2 + more as u128)
            .map(|number| Phone {
                device: make::device(number),
                end: None,
                wall_millis: 1_800_000_000_000 + number as i64 * 7 * MINUTE,
                known: BTreeSet::new(),
            })
            .collect();
        let kinds = match sort {
            Sort::Wild => few_kinds(&mut luck),
            Sort::Batch => (0..12)
                .map(|_| if luck.chance(70) { *luck.pick(ADDED_UP) } else { any_kind(&mut luck) })
                .collect(),
        };
        let is_wild = sort == Sort::Wild;
        let (cloned, forged) = (is_wild && luck.chance(30), is_wild && luck.chance(30));
        Self {
            sort,
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

    /// Most batches have a plan and chicks before there is much else to write down.
    fn begin(&mut self) {
        for (kind, percent) in [("plan-adopted", 60), ("chicks-placed", 80)] {
            if self.luck.chance(percent) {
                let draft = self.something_of(kind);
                let stored = self.compose(0, draft);
                self.put(0, stored);
            }
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
        self.something_of(kind)
    }

    fn something_of(&mut self, kind: &str) -> Draft {
        let (id, subject) = (self.fresh_id(), self.subject(kind));
        let (day, body) = (self.day(), bodies::body(kind, &mut self.luck));
        Draft::new(id, kind, subject, day, body)
    }

    fn subject(&mut self, kind: &str) -> Subject {
        let row = Kind::named(kind, KINDS).unwrap();
        // Of a farm's two batches mostly the one is written about that is in the house.
        let other = if self.sort == Sort::Wild { 50 } else { 15 };
        let which = Uuid::from_u128(if self.luck.chance(other) { 2 } else { 1 });
        match self.luck.pick(row.about) {
            About::Farm => Subject::Farm,
            About::House => Subject::House(HouseId(which)),
            About::Batch => Subject::Batch(BatchId(which)),
        }
    }

    /// One of a few days, so that several entries are about one.
    fn day(&mut self) -> CivilDay {
        let days = if self.sort == Sort::Wild { 4 } else { 7 };
        make::day(self.luck.below(days) as i32)
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
        let second = self.entries[*self.luck.pick(from)].entry.clone();
        let id = self.fresh_id();
        let body = if withdrawn { Body::new() } else { bodies::body(&wrong.kind, &mut self.luck) };
        let mut draft = Draft { withdrawn, ..Draft::correction(id, &wrong, body) };
        if self.luck.chance(12) && second.id != wrong.id && self.may_join(second.subject, wrong.subject) {
            draft.supersedes.push(second.id);
            self.happened("two put right in one");
        }
        if self.luck.chance(12) {
            draft.day = self.day();
            self.happened("moved to another day");
        }
        if known.iter().any(|at| self.entries[*at].entry.id == wrong.id && !wrong.supersedes.is_empty()) {
            self.happened("correction of a correction");
        }
        self.happened(if withdrawn { "withdrawal" } else { "correction" });
        // A kind of another program cannot be composed here, and cannot be put right here either.
        Kind::named(&draft.kind, KINDS).is_some().then_some(draft)
    }

    /// Puts right an entry that nobody has, and that may turn up later.
    fn correction_of_the_unknown(&mut self) -> Draft {
        let promised = self.fresh_id();
        let draft = self.something_new();
        self.promised.push((promised, draft.subject));
        Draft { supersedes: vec![promised], ..draft }
    }

    /// Uses an id that was superseded before, perhaps on top of what supersedes it: then a ring closes.
    fn use_of_a_promised_id(&mut self, phone: usize) -> Option<Draft> {
        let (id, subject) = self.promised.pop()?;
        let draft = self.something_new();
        let last = self.phones[phone].known.last().map(|last| &self.entries[*last].entry);
        let supersedes = match last {
            Some(last) if self.may_join(last.subject, draft.subject) && self.luck.chance(70) => vec![last.id],
            _ => Vec::new(),
        };
        self.may_join(subject, draft.subject).then_some(Draft { id, supersedes, ..draft })
    }

    /// Whether entries about two subjects may be versions of one thing: no honest phone writes that of a batch and its
    /// house.
    fn may_join(&self, one: Subject, other: Subject) -> bool {
        self.sort == Sort::Wild || one == other
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
        compose_by(KINDS, &access, phone.end, draft, &self.sight(phone), phone.wall_millis).unwrap()
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
        let (id, body) = (self.fresh_id(), bodies::body(&conflict.winner.entry().kind, &mut self.luck));
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
