//! What can be asked of the state of a book.

use std::borrow::Cow;
use std::collections::{BTreeMap, BTreeSet};
use std::sync::Arc;

use quantity::CivilDay;

use crate::compose::Sight;
use crate::days::{Checkpoint, FoldOrder};
use crate::entry::{BatchId, Body, DeviceId, EntryId, FarmId, HouseId, HybridClock, Subject};
use crate::finding::{Cause, Conflict, Fault, Finding};
use crate::fold::{BookState, fold};
use crate::kind::Slot;
use crate::record::Record;
use crate::thread::{self, ThreadKey};

/// What counts.
impl BookState {
    /// The farm whose book it is.
    pub fn farm(&self) -> FarmId {
        self.farm
    }

    /// The entry that counts in a slot: the only claimant, or the provisional winner of a conflict.
    pub fn current(&self, slot: &Slot) -> Option<&Record> {
        self.book.slots.get(slot)?.counting.as_deref()
    }

    /// The answers by key of the entry that counts in a slot, in the version this program speaks; `None` where nothing
    /// counts or what counts was written by a newer program (a finding says so).
    pub fn answers(&self, slot: &Slot) -> Option<&Body> {
        self.current(slot)?.body()
    }

    /// The slots in which something counts, with what does.
    pub fn slots(&self) -> impl Iterator<Item = (&Slot, &Record)> {
        self.book.slots.iter().filter_map(|(slot, state)| Some((slot, state.counting.as_deref()?)))
    }

    /// What counts about one subject, in the order of the fold: by day, rank of the kind, and order of writing.
    pub fn counting_about(&self, subject: Subject) -> impl DoubleEndedIterator<Item = &Record> {
        self.book.days.get(&subject).into_iter().flat_map(|days| days.counting()).map(|(_, record)| &**record)
    }

    /// All that counts, in the order of the fold.
    pub fn counting(&self) -> Vec<&Record> {
        self.counting_where(|_| true)
    }

    /// All that counts of one kind, in the order of the fold: the notes are `counting_of("note")`.
    pub fn counting_of(&self, kind: &str) -> Vec<&Record> {
        self.counting_where(|record| record.entry().kind == kind)
    }

    fn counting_where(&self, wanted: impl Fn(&Record) -> bool) -> Vec<&Record> {
        let all = self.book.days.values().flat_map(|days| days.counting());
        let mut some: Vec<(&FoldOrder, &Record)> =
            all.map(|(order, record)| (order, &**record)).filter(|(_, record)| wanted(record)).collect();
        some.sort_unstable_by_key(|(order, _)| **order);
        some.into_iter().map(|(_, record)| record).collect()
    }

    /// What a subject's entries have come to by the end of a day.
    pub fn checkpoint(&self, subject: Subject, day: CivilDay) -> Checkpoint {
        self.book.days.get(&subject).map_or_else(Checkpoint::default, |days| days.checkpoint(day))
    }

    /// The subjects about which something counts, in order.
    pub fn subjects(&self) -> impl Iterator<Item = Subject> {
        self.book.days.keys().copied()
    }

    /// The book as it was on a day, as far as one batch goes: of all that is written now, what is about that day or an
    /// earlier one and about the batch, its farm or a house. What was written about a later day is not there, whenever it
    /// was written.
    ///
    /// Where nothing is about a later day this costs next to nothing; else it is a fold of its own.
    pub fn on_day(&self, day: CivilDay, batch: BatchId) -> Cow<'_, BookState> {
        let is_meant = |subject: Subject| match subject {
            Subject::Batch(id) => id == batch,
            Subject::Farm | Subject::House(_) => true,
        };
        let meant = || self.book.about.iter().filter(|(subject, _)| is_meant(**subject));
        if !meant().any(|(_, about)| about.latest > day) {
            return Cow::Borrowed(self);
        }
        let records = meant().flat_map(|(subject, about)| {
            let records = about.entries.iter().flat_map(|id| self.records(*id));
            records.filter(move |record| record.entry().subject == *subject)
        });
        let until = records.filter(|record| record.entry().day <= day);
        Cow::Owned(fold(self.farm, until.map(|record| record.stored().clone())))
    }

    /// The houses about which something counts.
    pub fn houses(&self) -> Vec<HouseId> {
        let house = |subject| if let Subject::House(id) = subject { Some(id) } else { None };
        self.subjects().filter_map(house).collect()
    }

    /// The batches about which something counts.
    pub fn batches(&self) -> Vec<BatchId> {
        let batch = |subject| if let Subject::Batch(id) = subject { Some(id) } else { None };
        self.subjects().filter_map(batch).collect()
    }

    /// Whether somebody has described a house.
    pub fn has_house(&self, id: HouseId) -> bool {
        self.current(&Slot::of("house", Subject::House(id))).is_some()
    }
}

/// What led there.
impl BookState {
    /// All that was ever written into a slot, and what became of it elsewhere, oldest first: what supersedes comes after
    /// what it supersedes.
    pub fn history(&self, slot: &Slot) -> Vec<Arc<Record>> {
        let Some(state) = self.book.slots.get(slot) else { return Vec::new() };
        let threads: BTreeSet<ThreadKey> =
            state.entries().iter().filter_map(|id| self.book.threads.thread_of(*id)).collect();
        thread::oldest_first(
            threads.into_iter().flat_map(|key| self.book.threads.members(key).into_owned()).collect(),
        )
    }

    /// The thread of an entry, oldest first; empty where the entry is not known.
    pub fn thread(&self, id: EntryId) -> Vec<Arc<Record>> {
        let key = self.book.threads.thread_of(id);
        thread::oldest_first(key.map_or_else(Vec::new, |key| self.book.threads.members(key).into_owned()))
    }

    /// What stands under an id: nothing, one entry, or, which is a fault, several.
    pub fn records(&self, id: EntryId) -> &[Arc<Record>] {
        self.book.threads.records(id)
    }

    /// Every entry of the farm's book, by id, whatever became of it. An export is their bytes, a line each.
    pub fn all_records(&self) -> impl Iterator<Item = &Record> {
        self.book.threads.all_records().map(|record| &**record)
    }

    /// What an author who has this book before them has seen: see [`Sight`]. `now_millis` is the wall clock of their
    /// device, milliseconds since 1970; it bounds the clocks they let themselves be pushed by.
    pub fn sight(&self, now_millis: i64) -> Sight {
        let limit = HybridClock::latest_trusted(now_millis);
        let clock = self.book.series.values().filter_map(|series| series.latest_clock(limit)).max();
        Sight { seen: self.seen(), clock }
    }

    /// The version vector: of each device the highest sequence without a gap below it.
    pub fn seen(&self) -> BTreeMap<DeviceId, u64> {
        let vector = self.book.series.iter().map(|(device, series)| (*device, series.contiguous()));
        vector.filter(|(_, contiguous)| *contiguous > 0).collect()
    }
}

/// What is asked about, and what is odd.
impl BookState {
    /// The questions that somebody has to answer: first those about a slot, then the others.
    pub fn conflicts(&self) -> Vec<Conflict> {
        let mut within: BTreeSet<ThreadKey> = BTreeSet::new();
        let mut conflicts = Vec::new();
        for slot in &self.book.contested {
            conflicts.extend(self.written_apart(slot, &mut within));
        }
        // The heads of a forked thread that claims a contested slot are in that question already.
        let forks = self.book.forked.iter().filter(|key| !within.contains(key));
        conflicts.extend(forks.filter_map(|key| self.fork(*key)));
        conflicts
    }

    fn written_apart(&self, slot: &Slot, within: &mut BTreeSet<ThreadKey>) -> Option<Conflict> {
        let state = self.book.slots.get(slot)?;
        let claims = state.claims();
        let heads = claims.iter().flat_map(|key| self.book.threads.heads(*key).into_owned()).collect();
        within.extend(claims);
        let winner = Arc::clone(state.counting.as_ref()?);
        Some(Conflict {
            cause: Cause::WrittenApart,
            slot: Some(slot.clone()),
            heads: in_order(heads),
            winner,
        })
    }

    fn fork(&self, key: ThreadKey) -> Option<Conflict> {
        let heads = in_order(self.book.threads.heads(key).into_owned());
        let winner = Arc::clone(heads.last()?);
        Some(Conflict { cause: Cause::Fork, slot: winner.slot(), heads, winner })
    }

    /// What a correct program never writes.
    pub fn faults(&self) -> Vec<Fault> {
        let doubled = self.book.doubled.iter().map(|id| Fault::SameIdOtherBytes {
            id: *id,
            hashes: self.records(*id).iter().map(|record| record.hash()).collect(),
        });
        let rings = self.book.ringed.iter().flat_map(|key| self.book.threads.rings_in(*key));
        let rings = rings.map(|ring| Fault::Cycle { entries: ring.clone() });
        let foreign = self
            .book
            .foreign
            .values()
            .map(|record| Fault::OtherFarm { id: record.entry().id, farm: record.entry().farm });
        doubled.chain(rings).chain(foreign).collect()
    }

    /// What is to be looked at: first about devices, then about versions, then the limits.
    pub fn findings(&self) -> Vec<Finding> {
        let devices = self.book.series.iter().flat_map(|(device, series)| series.findings(*device));
        let versions = self.book.unreadable.values().filter_map(|record| unreadable(record));
        let limits = self.subjects().flat_map(|subject| self.findings_about(subject));
        devices.chain(versions).chain(limits).collect()
    }

    /// The limits that what counts about one subject goes beyond, in the order of the fold.
    pub fn findings_about(&self, subject: Subject) -> Vec<Finding> {
        let look = |record: &Record| record.kind()?.limit?(self, record);
        self.counting_about(subject).filter_map(look).collect()
    }

    /// How many entries are of kinds that this program does not know. They are kept and passed on.
    pub fn unknown_entries(&self) -> u64 {
        self.book.unknown.values().sum()
    }

    /// The kinds that this program does not know, with how many entries there are of each.
    pub fn unknown_kinds(&self) -> &BTreeMap<String, u64> {
        &self.book.unknown
    }

    /// The entries of other farms that were kept aside.
    pub fn foreign(&self) -> impl Iterator<Item = &Record> {
        self.book.foreign.values().map(|record| &**record)
    }
}

/// The finding about an entry whose version cannot be read.
fn unreadable(record: &Record) -> Option<Finding> {
    let entry = record.entry();
    let kind = record.kind()?.name;
    Some(Finding::UnreadableVersion { entry: entry.id, kind, version: entry.body_version })
}

fn in_order(mut records: Vec<Arc<Record>>) -> Vec<Arc<Record>> {
    records.sort_unstable_by_key(|record| record.written());
    records
}
