//! An oracle: what the book says about threads, slots and series, worked out straight from its definitions, with no
//! thought for cost and no code in common with the fold but the reading of single entries.

use std::collections::{BTreeMap, BTreeSet};

use crate::entry::*;
use crate::finding::{Cause, Fault, Finding};
use crate::fold::BookState;
use crate::kind::{Kind, Slot};
use crate::record::Record;

/// What can be seen of a state. The fold and the oracle must agree on it.
#[derive(Debug, Default, PartialEq)]
pub(super) struct View {
    /// What counts, in the order of the fold.
    pub(super) counting: Vec<EntryHash>,
    /// What counts in each slot.
    pub(super) slots: BTreeMap<Slot, EntryHash>,
    /// The heads of each conflict, and its provisional winner.
    pub(super) conflicts: BTreeSet<(Cause, BTreeSet<EntryHash>, EntryHash)>,
    faults: BTreeSet<Fault>,
    /// About devices and versions; limits have tests of their own.
    findings: BTreeSet<Finding>,
    seen: BTreeMap<DeviceId, u64>,
    unknown: u64,
}

impl View {
    /// What a state shows.
    pub(super) fn of(state: &BookState) -> Self {
        let hashes =
            |records: &[std::sync::Arc<Record>]| records.iter().map(|record| record.hash()).collect();
        Self {
            counting: state.counting().iter().map(|record| record.hash()).collect(),
            slots: state.slots().map(|(slot, record)| (slot.clone(), record.hash())).collect(),
            conflicts: state
                .conflicts()
                .iter()
                .map(|conflict| (conflict.cause, hashes(&conflict.heads), conflict.winner.hash()))
                .collect(),
            faults: state.faults().into_iter().collect(),
            findings: state.findings().into_iter().filter(|finding| !is_of_a_limit(finding)).collect(),
            seen: state.seen(),
            unknown: state.unknown_entries(),
        }
    }

    /// What a set of entries must show.
    pub(super) fn expected(farm: FarmId, kinds: &'static [Kind], entries: &[StoredEntry]) -> Self {
        let by_hash: BTreeMap<EntryHash, Record> =
            entries.iter().map(|stored| (stored.hash, Record::read(stored.clone(), kinds))).collect();
        let (ours, foreign): (Vec<_>, Vec<_>) =
            by_hash.values().partition(|record| record.entry().farm == farm);
        let mut view = Oracle::new(&ours).view();
        view.faults.extend(
            foreign
                .iter()
                .map(|record| Fault::OtherFarm { id: record.entry().id, farm: record.entry().farm }),
        );
        view
    }
}

/// A set of ids, as bits.
type Ids = u128;

/// The records of a book, with all that hangs together among the ids they name.
struct Oracle<'a> {
    records: &'a [&'a Record],
    ids: Vec<EntryId>,
    /// For each id, the ids it supersedes, directly or not.
    below: Vec<Ids>,
    /// For each id, the ids of its thread.
    thread: Vec<Ids>,
}

impl<'a> Oracle<'a> {
    fn new(records: &'a [&'a Record]) -> Self {
        let named =
            |record: &&'a Record| record.entry().supersedes.iter().copied().chain([record.entry().id]);
        let ids: BTreeSet<EntryId> = records.iter().flat_map(named).collect();
        let ids: Vec<EntryId> = ids.into_iter().collect();
        assert!(ids.len() <= 128, "the oracle keeps ids as 128 bits");
        let mut oracle = Self { records, below: vec![0; ids.len()], thread: vec![0; ids.len()], ids };
        for record in records {
            let upper = oracle.number(record.entry().id);
            for id in &record.entry().supersedes {
                let lower = oracle.number(*id);
                oracle.below[upper] |= 1 << lower;
                oracle.thread[upper] |= 1 << lower;
                oracle.thread[lower] |= 1 << upper;
            }
            oracle.thread[upper] |= 1 << upper;
        }
        close(&mut oracle.below);
        close(&mut oracle.thread);
        oracle
    }

    fn number(&self, id: EntryId) -> usize {
        self.ids.binary_search(&id).unwrap()
    }

    /// Whether two ids are in one ring: each supersedes the other, directly or not.
    fn in_one_ring(&self, one: usize, other: usize) -> bool {
        self.below[one] >> other & 1 == 1 && self.below[other] >> one & 1 == 1
    }

    fn is_superseded(&self, record: &Record) -> bool {
        let lower = self.number(record.entry().id);
        self.records.iter().any(|other| {
            other.entry().supersedes.contains(&record.entry().id)
                && !self.in_one_ring(self.number(other.entry().id), lower)
        })
    }

    fn begins(&self, record: &Record) -> bool {
        let upper = self.number(record.entry().id);
        // What stands under the same id begins only if all of it does.
        let named = self.records.iter().filter(|other| other.entry().id == record.entry().id);
        !named.flat_map(|other| &other.entry().supersedes).any(|id| {
            let is_present = self.records.iter().any(|other| other.entry().id == *id);
            is_present && !self.in_one_ring(upper, self.number(*id))
        })
    }

    fn split(&self, device: DeviceId) -> Option<u64> {
        let of_device: Vec<u64> = self
            .records
            .iter()
            .filter(|record| record.entry().device == device)
            .map(|record| record.entry().sequence)
            .collect();
        let is_double = |sequence: &&u64| of_device.iter().filter(|other| other == sequence).count() > 1;
        of_device.iter().filter(is_double).min().copied()
    }

    /// Whether the author of one record had seen another.
    fn had_seen(&self, author: &Record, other: &Record) -> bool {
        let (author, other) = (author.entry(), other.entry());
        let own = if author.device == other.device { author.sequence.saturating_sub(1) } else { 0 };
        let claimed = own.max(author.seen.get(&other.device).copied().unwrap_or(0));
        let is_trusted = self.split(other.device).is_none_or(|split| other.sequence < split);
        other.sequence >= 1 && other.sequence <= claimed && is_trusted
    }

    fn threads(&self) -> Vec<Vec<&'a Record>> {
        let sets: BTreeSet<Ids> = self.thread.iter().copied().collect();
        let members = |set: Ids| {
            let is_in = |record: &&&'a Record| set >> self.number(record.entry().id) & 1 == 1;
            self.records.iter().filter(is_in).copied().collect()
        };
        sets.into_iter().map(members).collect()
    }

    fn view(&self) -> View {
        let threads: Vec<Thread> = self.threads().iter().map(|members| self.thread(members)).collect();
        let mut view = View { unknown: self.unknown(), ..View::default() };
        let mut counting: Vec<&Record> = Vec::new();
        let mut slots: BTreeMap<Slot, Vec<&Thread>> = BTreeMap::new();
        for thread in threads.iter().filter(|thread| thread.stands()) {
            match thread.winner.slot() {
                Some(slot) => slots.entry(slot).or_default().push(thread),
                None => counting.push(thread.winner),
            }
        }
        let mut asked_with_the_slot: BTreeSet<EntryHash> = BTreeSet::new();
        for (slot, threads) in slots {
            let latest = self.latest(&threads);
            let winner = last_written(latest.iter().map(|thread| thread.winner));
            counting.push(winner);
            view.slots.insert(slot, winner.hash());
            if latest.len() > 1 {
                let heads: BTreeSet<_> = latest.iter().flat_map(|thread| thread.head_hashes()).collect();
                asked_with_the_slot.extend(&heads);
                view.conflicts.insert((Cause::WrittenApart, heads, winner.hash()));
            }
        }
        for thread in threads.iter().filter(|thread| thread.is_asked_about()) {
            if !asked_with_the_slot.contains(&thread.winner.hash()) {
                view.conflicts.insert((Cause::Fork, thread.head_hashes(), thread.winner.hash()));
            }
        }
        counting.sort_by_key(|record| (record.entry().day, record.kind().unwrap().rank, written(record)));
        view.counting = counting.iter().map(|record| record.hash()).collect();
        self.add_faults(&mut view);
        self.add_findings(&mut view);
        view
    }

    fn thread(&self, members: &[&'a Record]) -> Thread<'a> {
        let heads: Vec<_> = members.iter().copied().filter(|record| !self.is_superseded(record)).collect();
        let beginnings = members.iter().copied().filter(|record| self.begins(record)).collect();
        Thread { winner: last_written(heads.iter().copied()), heads, beginnings }
    }

    fn latest<'t>(&self, threads: &[&'t Thread<'a>]) -> Vec<&'t Thread<'a>> {
        let beginnings: Vec<&Record> =
            threads.iter().flat_map(|thread| thread.beginnings.iter().copied()).collect();
        let was_seen = |record: &Record| beginnings.iter().any(|author| self.had_seen(author, record));
        let is_followed = |thread: &Thread| {
            (thread.heads.len() == 1 && was_seen(thread.winner))
                || thread.beginnings.iter().all(|record| was_seen(record))
        };
        let latest: Vec<_> = threads.iter().copied().filter(|thread| !is_followed(thread)).collect();
        if latest.is_empty() { threads.to_vec() } else { latest }
    }

    fn unknown(&self) -> u64 {
        self.records.iter().filter(|record| record.kind().is_none()).count() as u64
    }

    fn add_faults(&self, view: &mut View) {
        for (number, id) in self.ids.iter().enumerate() {
            let under_it = self.records.iter().filter(|record| record.entry().id == *id);
            let hashes: Vec<EntryHash> = under_it.map(|record| record.hash()).collect();
            if hashes.len() > 1 {
                view.faults.insert(Fault::SameIdOtherBytes { id: *id, hashes });
            }
            if self.in_one_ring(number, number) {
                let members = (0..self.ids.len()).filter(|other| self.in_one_ring(number, *other));
                view.faults.insert(Fault::Cycle { entries: members.map(|other| self.ids[other]).collect() });
            }
        }
    }

    fn add_findings(&self, view: &mut View) {
        let mut series: BTreeMap<DeviceId, BTreeMap<u64, Vec<&Record>>> = BTreeMap::new();
        for record in self.records {
            let entry = record.entry();
            series.entry(entry.device).or_default().entry(entry.sequence).or_default().push(record);
            if record.kind().is_some() && record.body().is_none() {
                view.findings.insert(Finding::UnreadableVersion {
                    entry: entry.id,
                    kind: record.kind().unwrap().name,
                    version: entry.body_version,
                });
            }
        }
        for (device, series) in series {
            view.findings.extend(gaps(device, series.keys().copied()));
            let without_gap = (1..).take_while(|sequence| series.contains_key(sequence)).last();
            view.seen.extend(without_gap.map(|sequence| (device, sequence)));
            for (sequence, records) in &series {
                if records.len() > 1 {
                    let hashes = records.iter().map(|record| record.hash()).collect();
                    view.findings.insert(Finding::ClonedDevice { device, sequence: *sequence, hashes });
                }
                let before = series.get(&sequence.wrapping_sub(1)).map_or(&[][..], |before| before);
                for record in records.iter().filter(|record| !carries_on(record, before)) {
                    let entry = record.entry().id;
                    view.findings.insert(Finding::BrokenChain { device, sequence: *sequence, entry });
                }
            }
        }
    }
}

/// Whether a finding is a limit's and not about devices and versions.
fn is_of_a_limit(finding: &Finding) -> bool {
    match finding {
        Finding::ClonedDevice { .. }
        | Finding::MissingSequence { .. }
        | Finding::BrokenChain { .. }
        | Finding::UnreadableVersion { .. } => false,
        Finding::PlanForUnknownHouse { .. }
        | Finding::MoreGoneThanAlive { .. }
        | Finding::MoreFeedThanDelivered { .. }
        | Finding::MoreFullThanFelt { .. }
        | Finding::PlacedFarFromPlan { .. } => true,
    }
}

/// Whether an entry carries on from the ones at the place before, as far as those have arrived.
fn carries_on(record: &Record, before: &[&Record]) -> bool {
    match record.entry().previous {
        _ if record.entry().sequence == 0 => false,
        None => record.entry().sequence == 1,
        Some(_) if record.entry().sequence == 1 => false,
        Some(previous) => before.is_empty() || before.iter().any(|record| record.hash() == previous),
    }
}

fn gaps(device: DeviceId, sequences: impl Iterator<Item = u64>) -> Vec<Finding> {
    let mut last = 0;
    let mut gaps = Vec::new();
    for sequence in sequences {
        if sequence > last && sequence - last > 1 {
            gaps.push(Finding::MissingSequence { device, first: last + 1, last: sequence - 1 });
        }
        last = sequence;
    }
    gaps
}

/// Closes sets under membership: what a member has in its set is in the set.
fn close(sets: &mut [Ids]) {
    for middle in 0..sets.len() {
        for at in 0..sets.len() {
            if sets[at] >> middle & 1 == 1 {
                sets[at] |= sets[middle];
            }
        }
    }
}

struct Thread<'a> {
    heads: Vec<&'a Record>,
    beginnings: Vec<&'a Record>,
    winner: &'a Record,
}

impl Thread<'_> {
    fn stands(&self) -> bool {
        !self.winner.entry().withdrawn && self.winner.kind().is_some()
    }

    fn is_asked_about(&self) -> bool {
        self.heads.len() > 1 && !self.heads.iter().all(|head| head.entry().withdrawn)
    }

    fn head_hashes(&self) -> BTreeSet<EntryHash> {
        self.heads.iter().map(|head| head.hash()).collect()
    }
}

fn written(record: &Record) -> (HybridClock, DeviceId, u64, EntryHash) {
    let entry = record.entry();
    (entry.clock, entry.device, entry.sequence, record.hash())
}

fn last_written<'a>(records: impl Iterator<Item = &'a Record>) -> &'a Record {
    records.max_by_key(|record| written(record)).unwrap()
}
