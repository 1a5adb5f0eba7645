//! Slots: who fills a place that holds one answer, and who is to be asked about.
//!
//! Several threads can stand in one slot. One is *followed*, and steps back into the history, when somebody began a
//! thread in the slot who had seen it: the entry that stands for it, or everything it began with. That somebody put a new
//! answer in its place knowingly, although as a thing of its own and not as a correction ("since May the price is 90"). A
//! correction of the older thread does not bring it back to the front. Threads that nobody followed are the latest: one
//! of them counts; several were written apart and are asked about.

use std::collections::{BTreeMap, BTreeSet};
use std::sync::Arc;

use crate::entry::{DeviceId, EntryId};
use crate::record::Record;
use crate::thread::ThreadKey;

/// What speaks for a thread.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct Standing {
    /// Its head, or the provisional winner among its heads.
    pub(crate) record: Arc<Record>,
    /// What it began with.
    pub(crate) beginnings: Vec<Arc<Record>>,
    /// Whether it has several heads.
    pub(crate) forked: bool,
}

/// For each device the sequence from which its series is no longer one: nothing claimed to be seen from there on says
/// which of the copies was seen. Devices that were not cloned are not in it.
pub(crate) type Splits = BTreeMap<DeviceId, u64>;

/// The threads of one slot.
#[derive(Clone, Debug, Default, PartialEq)]
pub(crate) struct SlotState {
    /// All entries that were ever written into it, whatever became of them.
    entries: BTreeSet<EntryId>,
    /// The threads that stand in it.
    standing: BTreeMap<ThreadKey, Standing>,
    /// What the authors of the beginnings had seen, taken together.
    seen: BTreeMap<DeviceId, u64>,
    /// The threads that nobody followed.
    latest: BTreeSet<ThreadKey>,
    /// The record that counts.
    pub(crate) counting: Option<Arc<Record>>,
}

impl SlotState {
    /// Remembers that an entry was written into the slot.
    pub(crate) fn remember(&mut self, entry: EntryId) {
        self.entries.insert(entry);
    }

    /// All entries that were ever written into the slot.
    pub(crate) fn entries(&self) -> &BTreeSet<EntryId> {
        &self.entries
    }

    /// Lets a thread stand here without looking who followed whom: [`SlotState::judge`] does.
    pub(crate) fn place(&mut self, key: ThreadKey, standing: Standing) {
        self.standing.insert(key, standing);
    }

    /// Lets threads go and at most one come. Where the one that comes began with all that the others began with, as when
    /// it grew out of them, only it and the latest are looked at again; else the whole slot is.
    pub(crate) fn replace(
        &mut self,
        gone: &[ThreadKey],
        came: Option<(ThreadKey, Standing)>,
        splits: &Splits,
    ) {
        let mut lost: Vec<Arc<Record>> = Vec::new();
        for key in gone {
            self.latest.remove(key);
            lost.extend(self.standing.remove(key).map_or_else(Vec::new, |old| old.beginnings));
        }
        let kept = came.as_ref().map_or(&[][..], |(_, standing)| &standing.beginnings);
        let carries_on = lost.iter().all(|beginning| kept.contains(beginning));
        match came {
            Some((key, standing)) if carries_on => self.come(key, standing, splits),
            Some((key, standing)) => {
                self.place(key, standing);
                self.judge(splits);
            }
            None => self.judge(splits),
        }
    }

    fn come(&mut self, key: ThreadKey, standing: Standing, splits: &Splits) {
        for beginning in &standing.beginnings {
            add_sight(&mut self.seen, beginning, splits);
        }
        self.standing.insert(key, standing);
        let mut latest = std::mem::take(&mut self.latest);
        latest.insert(key);
        latest.retain(|key| !self.is_followed(*key));
        self.latest = latest;
    }

    /// Finds from scratch who followed whom.
    pub(crate) fn judge(&mut self, splits: &Splits) {
        self.seen.clear();
        for beginning in self.standing.values().flat_map(|standing| &standing.beginnings) {
            add_sight(&mut self.seen, beginning, splits);
        }
        self.latest = self.standing.keys().copied().filter(|key| !self.is_followed(*key)).collect();
    }

    fn is_followed(&self, key: ThreadKey) -> bool {
        let Some(standing) = self.standing.get(&key) else { return false };
        let was_seen = |record: &Arc<Record>| {
            let entry = record.entry();
            (1..=self.seen.get(&entry.device).copied().unwrap_or_default()).contains(&entry.sequence)
        };
        // Of several heads none stands for the others, so only the beginnings tell.
        (!standing.forked && was_seen(&standing.record)) || standing.beginnings.iter().all(was_seen)
    }

    /// The threads that claim the slot: the latest. Where each was followed by another, which takes a forged or cloned
    /// device, all of them.
    pub(crate) fn claims(&self) -> Vec<ThreadKey> {
        if self.latest.is_empty() {
            self.standing.keys().copied().collect()
        } else {
            self.latest.iter().copied().collect()
        }
    }

    /// What speaks for the threads that claim the slot.
    pub(crate) fn claimants(&self) -> Vec<Arc<Record>> {
        let record = |key: &ThreadKey| self.standing.get(key).map(|standing| Arc::clone(&standing.record));
        self.claims().iter().filter_map(record).collect()
    }
}

/// Adds what the author of a record had seen. Of the own device that is everything before the record.
fn add_sight(seen: &mut BTreeMap<DeviceId, u64>, record: &Record, splits: &Splits) {
    let entry = record.entry();
    let own = (entry.device, entry.sequence.saturating_sub(1));
    for (device, sequence) in entry.seen.iter().map(|(device, sequence)| (*device, *sequence)).chain([own]) {
        let trusted = splits.get(&device).map_or(sequence, |split| sequence.min(split.saturating_sub(1)));
        let highest = seen.entry(device).or_default();
        *highest = (*highest).max(trusted);
    }
}

#[cfg(test)]
mod tests {
    use serde_json::json;

    use crate::compose::Draft;
    use crate::entry::*;
    use crate::finding::Cause;
    use crate::fold::BookState;
    use crate::kind::Slot;
    use crate::trial::generate;
    use crate::trial::make::{self, BATCH, FARM, Phone, answer, body, house, house_slot, prices};

    fn chick(state: &BookState) -> Option<serde_json::Value> {
        answer(state, &Slot::of("prices", Subject::Farm), "chick")
    }

    #[test]
    fn two_phones_that_had_not_seen_each_other_are_asked_about() {
        let (mut one, mut other) = (Phone::new(1), Phone::new(2));
        one.write(house(1, 10.0));
        other.now_millis += 1;
        other.write(house(2, 11.0));
        one.hear(&other);
        let conflicts = one.state.conflicts();
        assert_eq!(conflicts.len(), 1);
        assert_eq!(conflicts[0].cause, Cause::WrittenApart);
        assert_eq!(conflicts[0].to_supersede(), [make::id(1), make::id(2)]);
        assert_eq!(answer(&one.state, &house_slot(), "length_m"), Some(json!(11.0)), "the later, for now");
        one.write(conflicts[0].settle(make::id(3), body("length_m", 12.0)));
        other.hear(&one);
        assert_eq!(other.state, one.state);
        assert_eq!(other.state.conflicts(), []);
        assert_eq!(answer(&other.state, &house_slot(), "length_m"), Some(json!(12.0)));
    }

    #[test]
    fn putting_right_one_of_two_does_not_settle_them() {
        let (mut one, mut other) = (Phone::new(1), Phone::new(2));
        let first = one.write(house(1, 10.0));
        other.write(house(2, 11.0));
        one.hear(&other);
        one.write(Draft::correction(make::id(3), &first.entry, body("length_m", 10.5)));
        assert_eq!(one.state.conflicts()[0].to_supersede(), [make::id(2), make::id(3)]);
    }

    #[test]
    fn new_prices_follow_those_their_author_had_seen() {
        let (mut one, mut other) = (Phone::new(1), Phone::new(2));
        one.write(prices(1, 0, 80));
        other.hear(&one);
        // The clock of the other phone is years behind; that it had seen the first prices is what tells.
        other.now_millis = 0;
        other.write(prices(2, 30, 90));
        one.hear(&other);
        assert_eq!((chick(&one.state), one.state.conflicts()), (Some(json!(90)), vec![]));
        assert_eq!(one.state.history(&Slot::of("prices", Subject::Farm)).len(), 2);
    }

    #[test]
    fn putting_old_prices_right_does_not_make_them_current() {
        let mut phone = Phone::new(1);
        let old = phone.write(prices(1, 0, 80));
        let new = phone.write(prices(2, 30, 90));
        phone.write(Draft::correction(make::id(3), &old.entry, body("chick", 81)));
        assert_eq!((chick(&phone.state), phone.state.conflicts()), (Some(json!(90)), vec![]));
        phone.write(Draft::withdrawal(make::id(4), &new.entry));
        assert_eq!((chick(&phone.state), phone.state.conflicts()), (Some(json!(81)), vec![]));
    }

    #[test]
    fn who_had_seen_only_one_of_two_is_asked_about_with_the_other() {
        let (mut one, mut other) = (Phone::new(1), Phone::new(2));
        one.write(prices(1, 0, 80));
        other.write(prices(2, 0, 85));
        one.write(prices(3, 7, 90));
        one.hear(&other);
        assert_eq!(one.state.conflicts()[0].to_supersede(), [make::id(2), make::id(3)]);
    }

    #[test]
    fn who_had_seen_both_of_two_answers_for_them() {
        let (mut one, mut other) = (Phone::new(1), Phone::new(2));
        one.write(prices(1, 0, 80));
        other.write(prices(2, 0, 85));
        one.hear(&other);
        one.write(prices(3, 7, 90));
        assert_eq!((chick(&one.state), one.state.conflicts()), (Some(json!(90)), vec![]));
    }

    #[test]
    fn days_and_parts_have_slots_of_their_own() {
        let reading = |number: u128, on: i32, channel: &str| {
            let entry = Entry {
                kind: "sensor-day".to_owned(),
                subject: BATCH,
                day: make::day(on),
                body: body("channel", channel),
                ..make::entry(number)
            };
            entry.encode().unwrap()
        };
        let readings =
            [reading(1, 1, "litter"), reading(2, 1, "air"), reading(3, 2, "air"), reading(4, 2, "air")];
        let state = BookState::folded(FARM, generate::rules(), readings);
        let slot = |on: i32, channel: &str| Slot {
            day: Some(make::day(on)),
            part: Some(channel.to_owned()),
            ..Slot::of("sensor-day", BATCH)
        };
        let current = |slot: &Slot| state.current(slot).map(|record| record.entry().id);
        assert_eq!(current(&slot(1, "litter")), Some(make::id(1)));
        assert_eq!(current(&slot(1, "air")), Some(make::id(2)));
        let conflicts = state.conflicts();
        assert_eq!(conflicts.len(), 1);
        assert_eq!(conflicts[0].slot, Some(slot(2, "air")));
    }

    #[test]
    fn what_a_cloned_device_claims_to_have_seen_is_not_trusted() {
        let mut phone = Phone::new(1);
        phone.write(make::note(1, 0, "before the backup"));
        let mut copy = Phone { state: phone.state.clone(), ..Phone::new(1) };
        (copy.end, copy.now_millis) = (phone.end, phone.now_millis);
        phone.write(prices(2, 0, 80));
        // The copy uses up the same place in the series with a note, so that its prices seem to come after the others.
        copy.write(make::note(3, 0, "on the copy"));
        copy.write(prices(4, 0, 85));
        phone.hear(&copy);
        assert_eq!(phone.state.conflicts()[0].to_supersede(), [make::id(2), make::id(4)]);
    }

    #[test]
    fn where_all_claim_to_have_seen_all_nobody_is_left_out() {
        let all_seen: std::collections::BTreeMap<_, _> =
            (1..=2).map(|number| (make::device(number), 100)).collect();
        let house = |number: u128| Entry {
            kind: "house".to_owned(),
            subject: make::HOUSE,
            body_version: 2,
            seen: all_seen.clone(),
            ..make::entry(number)
        };
        let state = crate::fold(FARM, [house(1), house(2)].map(|entry| entry.encode().unwrap()));
        assert_eq!(state.conflicts()[0].to_supersede(), [make::id(1), make::id(2)]);
    }
}
