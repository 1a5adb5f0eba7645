//! The series of a device: 1, 2, 3 and so on, each carrying the hash of the one before.

use std::collections::btree_map::Entry;
use std::collections::{BTreeMap, BTreeSet};
use std::sync::Arc;

use crate::entry::{DeviceId, EntryHash, HybridClock};
use crate::finding::Finding;
use crate::record::Record;

/// What arrived of one device's series.
#[derive(Clone, Debug, Default, PartialEq)]
pub(crate) struct Series {
    /// What stands at each sequence; where the device was cloned, the record with the least hash.
    places: BTreeMap<u64, Arc<Record>>,
    /// What else stands at a sequence, by hash.
    copies: BTreeMap<u64, Vec<Arc<Record>>>,
    /// The highest sequence without a gap below it; 0 while the first is missing.
    contiguous: u64,
    /// The entries that do not carry on from the one before them.
    broken: BTreeSet<(u64, EntryHash)>,
}

impl Series {
    /// Takes a record in.
    pub(crate) fn insert(&mut self, record: &Arc<Record>) {
        let sequence = record.entry().sequence;
        let is_last = self.places.last_key_value().is_none_or(|(last, _)| *last < sequence);
        match self.places.entry(sequence) {
            Entry::Vacant(place) => drop(place.insert(Arc::clone(record))),
            Entry::Occupied(mut place) => {
                let copies = self.copies.entry(sequence).or_default();
                copies.extend([Arc::clone(record), Arc::clone(place.get())]);
                copies.sort_unstable_by_key(|copy| copy.hash());
                *place.get_mut() = copies.remove(0);
            }
        }
        self.carry_on(sequence, is_last);
        self.check_links(sequence);
        if !is_last {
            self.check_links(sequence.saturating_add(1));
        }
    }

    /// Counts on where the record at a sequence closes a gap, over what had arrived too early.
    fn carry_on(&mut self, sequence: u64, is_last: bool) {
        if sequence != self.contiguous + 1 {
            return;
        }
        self.contiguous = sequence;
        if !is_last {
            let later = self.places.range(sequence..).map(|(place, _)| *place).zip(sequence..);
            let further = later.take_while(|(place, wanted)| place == wanted);
            self.contiguous = further.last().map_or(sequence, |(place, _)| place);
        }
    }

    pub(crate) fn at(&self, sequence: u64) -> impl Iterator<Item = &Arc<Record>> {
        self.places.get(&sequence).into_iter().chain(self.copies.get(&sequence).into_iter().flatten())
    }

    /// Looks again at how the entries at a sequence carry on from those before.
    fn check_links(&mut self, sequence: u64) {
        let is_broken = |record: &&Arc<Record>| self.is_broken(record);
        let broken: Vec<EntryHash> =
            self.at(sequence).filter(is_broken).map(|record| record.hash()).collect();
        if broken.is_empty() && self.broken.is_empty() {
            return;
        }
        self.broken.retain(|(at, _)| *at != sequence);
        self.broken.extend(broken.into_iter().map(|hash| (sequence, hash)));
    }

    /// Whether a record does not carry on from what stands at the place before, as far as that has arrived.
    fn is_broken(&self, record: &Record) -> bool {
        let entry = record.entry();
        match (entry.sequence, entry.previous) {
            (0, _) | (1, Some(_)) => true,
            (1, None) => false,
            (_, None) => true,
            (sequence, Some(previous)) => {
                let mut before = self.at(sequence - 1).peekable();
                before.peek().is_some() && !before.any(|record| record.hash() == previous)
            }
        }
    }

    /// The highest sequence without a gap below it.
    pub(crate) fn contiguous(&self) -> u64 {
        self.contiguous
    }

    /// The lowest sequence at which several entries stand.
    pub(crate) fn split(&self) -> Option<u64> {
        self.copies.keys().next().copied()
    }

    /// The latest clock in it that is not after `limit`. Clocks grow along a series, so the search from its end is short.
    pub(crate) fn latest_clock(&self, limit: HybridClock) -> Option<HybridClock> {
        self.latest_clock_through(u64::MAX, limit)
    }

    /// The latest clock up to a place of it that is not after `limit`.
    pub(crate) fn latest_clock_through(&self, through: u64, limit: HybridClock) -> Option<HybridClock> {
        let copies = self.copies.range(..=through).flat_map(|(_, copies)| copies);
        let of_copies = copies.map(|record| record.entry().clock).filter(|clock| *clock <= limit);
        let mut clocks = self.places.range(..=through).rev().map(|(_, record)| record.entry().clock);
        clocks.find(|clock| *clock <= limit).max(of_copies.max())
    }

    /// What stands from a place on, by place and hash.
    pub(crate) fn from(&self, sequence: u64) -> impl Iterator<Item = &Arc<Record>> {
        self.places.range(sequence..).flat_map(|(place, _)| self.at(*place))
    }

    /// What the next entry of the device has to follow.
    pub(crate) fn last(&self) -> Option<&Arc<Record>> {
        self.places.last_key_value().map(|(_, record)| record)
    }

    /// All that stands at the places from 1 to `through` in one hash. Where nothing is odd below, the last entry's own
    /// hash says it, since each entry carries the hash of the one before it.
    pub(crate) fn print(&self, through: u64) -> EntryHash {
        let odd = self.broken.range((1, EntryHash([0; 32]))..).next().map(|(place, _)| *place);
        let is_plain = odd.into_iter().chain(self.split()).all(|place| place > through);
        match self.places.get(&through) {
            Some(record) if is_plain => record.hash(),
            _ => {
                let below = self.from(1).take_while(|record| record.entry().sequence <= through);
                EntryHash::of(&below.flat_map(|record| record.hash().0).collect::<Vec<u8>>())
            }
        }
    }

    /// What is odd about it: gaps, copies, broken links.
    pub(crate) fn findings(&self, device: DeviceId) -> Vec<Finding> {
        let mut findings = self.gaps(device);
        findings.extend(self.copies(device));
        findings.extend(self.broken_links(device));
        findings
    }

    fn gaps(&self, device: DeviceId) -> Vec<Finding> {
        let mut gaps = Vec::new();
        let mut last = self.contiguous;
        for sequence in self.places.range(self.contiguous..).map(|(sequence, _)| *sequence) {
            if sequence > last.saturating_add(1) {
                gaps.push(Finding::MissingSequence { device, first: last + 1, last: sequence - 1 });
            }
            last = sequence;
        }
        gaps
    }

    fn copies(&self, device: DeviceId) -> impl Iterator<Item = Finding> {
        self.copies.keys().map(move |sequence| Finding::ClonedDevice {
            device,
            sequence: *sequence,
            hashes: self.at(*sequence).map(|record| record.hash()).collect(),
        })
    }

    fn broken_links(&self, device: DeviceId) -> impl Iterator<Item = Finding> {
        let record =
            |(sequence, hash): &(u64, EntryHash)| self.at(*sequence).find(|record| record.hash() == *hash);
        self.broken.iter().filter_map(record).map(move |record| Finding::BrokenChain {
            device,
            sequence: record.entry().sequence,
            entry: record.entry().id,
        })
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::entry::{Entry, StoredEntry};
    use crate::fold::fold;
    use crate::trial::make::{self, FARM, Phone, note};

    fn five_notes() -> Vec<StoredEntry> {
        let mut phone = Phone::new(1);
        (1..=5).map(|number| phone.write(note(number, 0, "a note"))).collect()
    }

    /// What is found when only the entries at some places of the series arrive.
    fn found(places: &[usize]) -> Vec<Finding> {
        let all = five_notes();
        fold(FARM, places.iter().map(|at| all[*at - 1].clone())).findings()
    }

    fn missing(first: u64, last: u64) -> Finding {
        Finding::MissingSequence { device: make::device(1), first, last }
    }

    #[test]
    fn gaps_are_named_and_close_again() {
        assert_eq!(found(&[1, 2, 3, 4, 5]), []);
        assert_eq!(found(&[1, 2]), [], "nobody knows of what was never heard of");
        assert_eq!(found(&[5, 1]), [missing(2, 4)]);
        assert_eq!(found(&[2, 4]), [missing(1, 1), missing(3, 3)]);
    }

    #[test]
    fn the_version_vector_stops_at_the_first_gap() {
        let seen = |places: &[usize]| {
            let all = five_notes();
            fold(FARM, places.iter().map(|at| all[*at - 1].clone())).seen().remove(&make::device(1))
        };
        assert_eq!(seen(&[1, 2, 4, 5]), Some(2));
        assert_eq!(seen(&[4, 2, 1, 3]), Some(4));
        assert_eq!(seen(&[2, 3]), None);
    }

    #[test]
    fn a_cloned_device_is_found() {
        let mut phone = Phone::new(1);
        phone.write(note(1, 0, "before the backup"));
        let mut copy = Phone { state: phone.state.clone(), end: phone.end, ..Phone::new(1) };
        let (one, other) = (phone.write(note(2, 0, "here")), copy.write(note(3, 0, "there")));
        copy.write(note(4, 0, "there again"));
        phone.hear(&copy);
        let mut hashes = vec![one.hash, other.hash];
        hashes.sort_unstable();
        // What follows on one of the copies is no further fault: it carries on from an entry that is there.
        assert_eq!(
            phone.state.findings(),
            [Finding::ClonedDevice { device: make::device(1), sequence: 2, hashes }]
        );
        assert_eq!(phone.state.counting().len(), 4, "both copies' entries count");
    }

    #[test]
    fn an_entry_that_does_not_carry_on_is_found() {
        let all = five_notes();
        let broken = |change: fn(&mut Entry)| {
            let mut entry = all[2].entry.clone();
            change(&mut entry);
            let forged = entry.encode().unwrap();
            let state = fold(FARM, [all[0].clone(), all[1].clone(), forged]);
            state.findings().iter().filter(|finding| matches!(finding, Finding::BrokenChain { .. })).count()
        };
        assert_eq!(broken(|_| {}), 0);
        assert_eq!(broken(|entry| entry.previous = Some(EntryHash::of(b"nothing"))), 1);
        assert_eq!(broken(|entry| entry.previous = None), 1);
        assert_eq!(broken(|entry| entry.sequence = 0), 1);
    }

    #[test]
    fn a_forged_place_at_the_end_of_all_numbers_is_a_gap_and_no_more() {
        let last = Entry { sequence: u64::MAX, previous: Some(EntryHash::of(b"")), ..make::entry(1) };
        let copy = Entry { id: make::id(2), ..last.clone() };
        let state = fold(FARM, [last, copy].map(|entry| entry.encode().unwrap()));
        assert_eq!(state.findings()[0], missing(1, u64::MAX - 1));
    }
}
