//! What counts about one subject, in the order of the fold, with a checkpoint at the end of each day.
//!
//! A checkpoint is what a subject's entries have come to by the end of a day: how many counted, and a digest of which.
//! Each is made from the one before and the entries of its day, so an entry about a day makes new ones from that day on
//! and leaves the earlier alone. What kinds have to carry from day to day (birds alive, feed in store) is its [`Tally`].

use std::collections::BTreeMap;
use std::sync::Arc;

use quantity::CivilDay;
use sha2::{Digest, Sha256};

use crate::entry::{DeviceId, EntryHash, HybridClock};
use crate::record::{Record, Written};
use crate::tally::Tally;

/// The place of an entry in the fold: by day, rank of its kind, and order of writing.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub(crate) struct FoldOrder {
    day: CivilDay,
    rank: u8,
    written: Written,
}

impl FoldOrder {
    /// The place of a record. An unknown kind comes last; it never counts.
    pub(crate) fn of(record: &Record) -> Self {
        let rank = record.kind().map_or(u8::MAX, |kind| kind.rank);
        Self { day: record.entry().day, rank, written: record.written() }
    }

    /// Before all places of a day.
    fn start_of(day: CivilDay) -> Self {
        let clock = HybridClock { millis: i64::MIN, counter: 0 };
        Self { day, rank: 0, written: (clock, DeviceId(uuid::Uuid::nil()), 0, EntryHash([0; 32])) }
    }
}

/// What a subject's entries have come to by the end of a day.
#[derive(Clone, Copy, Debug, PartialEq, Default)]
pub struct Checkpoint {
    /// How many entries count, up to and with the day.
    pub entries: u64,
    /// A digest of which they are. Two books in which the same entries count have the same digest, so it can name what
    /// was computed from them.
    pub digest: [u8; 32],
    /// What the entries add up to.
    pub tally: Tally,
}

impl Checkpoint {
    /// The checkpoint of the next day that has entries.
    fn after<'a>(&self, of_the_day: impl Iterator<Item = &'a Arc<Record>>) -> Self {
        let mut digest = Sha256::new_with_prefix(self.digest);
        let (mut entries, mut tally) = (self.entries, self.tally);
        for record in of_the_day {
            digest.update(record.hash().0);
            tally.take(record);
            entries += 1;
        }
        Self { entries, digest: digest.finalize().into(), tally }
    }
}

/// The entries that count about one subject.
#[derive(Clone, Debug, Default, PartialEq)]
pub(crate) struct Days {
    counting: BTreeMap<FoldOrder, Arc<Record>>,
    checkpoints: BTreeMap<CivilDay, Checkpoint>,
}

impl Days {
    /// Lets a record count. The checkpoints are as before until [`Days::recount`].
    pub(crate) fn insert(&mut self, record: &Arc<Record>) {
        self.counting.insert(FoldOrder::of(record), Arc::clone(record));
    }

    /// Lets a record count no longer.
    pub(crate) fn remove(&mut self, record: &Record) {
        self.counting.remove(&FoldOrder::of(record));
    }

    /// Makes the checkpoints of a day and of all later ones anew.
    pub(crate) fn recount(&mut self, from: CivilDay) {
        drop(self.checkpoints.split_off(&from));
        let mut last = self.checkpoints.last_key_value().map(|(_, last)| *last).unwrap_or_default();
        let mut changed = self.counting.range(FoldOrder::start_of(from)..).peekable();
        while let Some(day) = changed.peek().map(|(order, _)| order.day) {
            let of_the_day = std::iter::from_fn(|| changed.next_if(|(order, _)| order.day == day));
            last = last.after(of_the_day.map(|(_, record)| record));
            self.checkpoints.insert(day, last);
        }
    }

    /// Whether nothing counts.
    pub(crate) fn is_empty(&self) -> bool {
        self.counting.is_empty()
    }

    /// What counts, in the order of the fold.
    pub(crate) fn counting(&self) -> impl DoubleEndedIterator<Item = (&FoldOrder, &Arc<Record>)> {
        self.counting.iter()
    }

    /// The checkpoint at the end of a day.
    pub(crate) fn checkpoint(&self, day: CivilDay) -> Checkpoint {
        self.checkpoints.range(..=day).next_back().map(|(_, checkpoint)| *checkpoint).unwrap_or_default()
    }
}

#[cfg(test)]
mod tests {
    use crate::compose::Draft;
    use crate::entry::StoredEntry;
    use crate::fold::{BookState, fold};
    use crate::trial::make::{self, BATCH, FARM, Phone, body, note};

    fn ids(state: &BookState) -> Vec<u128> {
        state.counting().iter().map(|record| record.entry().id.0.as_u128()).collect()
    }

    #[test]
    fn the_fold_goes_by_day_then_rank_then_writing() {
        let mut phone = Phone::new(1);
        phone.write(note(1, 2, "about day 2"));
        phone.write(note(2, 0, "about day 0, written first"));
        phone.write(note(3, 0, "about day 0, written last"));
        phone.write(make::house(4, 10.0));
        assert_eq!(ids(&phone.state), [4, 2, 3, 1]);
    }

    #[test]
    fn a_correction_that_moves_a_note_moves_it_in_the_fold() {
        let mut phone = Phone::new(1);
        let first = phone.write(note(1, 1, "of yesterday"));
        phone.write(note(2, 2, "of today"));
        let moved = Draft {
            day: make::day(3),
            ..Draft::correction(make::id(3), &first.entry, body("text", "of tomorrow"))
        };
        phone.write(moved);
        assert_eq!(ids(&phone.state), [2, 3]);
        assert_eq!(phone.state.checkpoint(BATCH, make::day(1)).entries, 0);
        assert_eq!(phone.state.checkpoint(BATCH, make::day(2)).entries, 1);
        assert_eq!(phone.state.checkpoint(BATCH, make::day(99)).entries, 2);
    }

    fn notes_of_days(days: &[i32]) -> Vec<StoredEntry> {
        let mut phone = Phone::new(1);
        days.iter().zip(1..).map(|(day, number)| phone.write(note(number, *day, "a note"))).collect()
    }

    #[test]
    fn a_late_entry_leaves_earlier_checkpoints_alone() {
        let all = notes_of_days(&[1, 2, 3]);
        let mut state = fold(FARM, all[..2].iter().cloned());
        let at = |state: &BookState, day| state.checkpoint(BATCH, make::day(day));
        let (first, second) = (at(&state, 1), at(&state, 2));
        state.append(all[2].clone());
        assert_eq!((at(&state, 1), at(&state, 2)), (first, second));
        assert_ne!(at(&state, 3).digest, second.digest);
    }

    #[test]
    fn an_early_entry_changes_all_checkpoints_after_it() {
        let all = notes_of_days(&[1, 3, 2]);
        let mut state = fold(FARM, all[..2].iter().cloned());
        let at = |state: &BookState, day| state.checkpoint(BATCH, make::day(day));
        let before = [at(&state, 1), at(&state, 2), at(&state, 3)];
        state.append(all[2].clone());
        assert_eq!(at(&state, 1), before[0]);
        assert_ne!(at(&state, 2), before[1]);
        assert_ne!(at(&state, 3), before[2]);
        assert_eq!(state, fold(FARM, all));
    }

    #[test]
    fn nothing_counts_is_a_checkpoint_too() {
        let mut phone = Phone::new(1);
        let empty = phone.state.checkpoint(BATCH, make::day(5));
        let first = phone.write(note(1, 1, "a note"));
        phone.write(Draft::withdrawal(make::id(2), &first.entry));
        assert_eq!(phone.state.checkpoint(BATCH, make::day(5)), empty);
        assert_eq!(phone.state.batches(), []);
    }
}
