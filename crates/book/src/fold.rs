//! The fold: from a set of entries, in whatever order they arrive, to the state of the book.
//!
//! Two ways lead there. [`fold`] takes everything in and judges each thread and slot once, from scratch.
//! [`BookState::append`] takes one entry in and looks again only at the thread, the slot and the days it touches. That
//! both give the same state in every order is what the crate's property tests are about.

use std::collections::{BTreeMap, BTreeSet};
use std::sync::Arc;

use quantity::CivilDay;

use crate::days::Days;
use crate::entry::{DeviceId, Entry, EntryHash, EntryId, FarmId, StoredEntry, Subject};
use crate::kind::{KINDS, Kind, Slot};
use crate::record::Record;
use crate::series::Series;
use crate::slot::{SlotState, Splits, Standing};
use crate::thread::{Joined, ThreadKey, Threads};

/// The state of one farm's book: what counts, what is asked about, what is odd, and all that led there.
///
/// Two states are equal when everything in them is, whatever the order in which their entries arrived. A clone shares
/// the entries and is cheap.
#[derive(Clone, Debug)]
pub struct BookState {
    pub(crate) farm: FarmId,
    rules: Rules,
    pub(crate) book: Contents,
}

/// What the fold goes by.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Rules {
    /// The table of kinds.
    pub(crate) kinds: &'static [Kind],
    /// Decides between records that each claim to be the one that counts.
    pub(crate) contest: fn(&[Arc<Record>]) -> Option<Outcome>,
}

/// The end of a contest.
pub(crate) struct Outcome {
    /// What counts, at least for now.
    pub(crate) winner: Arc<Record>,
    /// Whether somebody has to be asked.
    pub(crate) asked: bool,
}

/// Everything a state holds. Each field is a function of the set of entries alone, never of the order they came in.
#[derive(Clone, Debug, Default, PartialEq)]
pub(crate) struct Contents {
    pub(crate) threads: Threads,
    pub(crate) series: BTreeMap<DeviceId, Series>,
    pub(crate) slots: BTreeMap<Slot, SlotState>,
    pub(crate) days: BTreeMap<Subject, Days>,
    /// All that was ever written, whatever became of it.
    pub(crate) about: BTreeMap<Subject, About>,
    /// The threads whose heads are asked about.
    pub(crate) forked: BTreeSet<ThreadKey>,
    /// The slots whose claimants are asked about.
    pub(crate) contested: BTreeSet<Slot>,
    /// The threads with rings in them.
    pub(crate) ringed: BTreeSet<ThreadKey>,
    /// The ids under which several entries stand.
    pub(crate) doubled: BTreeSet<EntryId>,
    /// The entries whose version cannot be read.
    pub(crate) unreadable: BTreeMap<(EntryId, EntryHash), Arc<Record>>,
    /// How many entries there are of each kind that is not known.
    pub(crate) unknown: BTreeMap<String, u64>,
    /// The entries of other farms.
    pub(crate) foreign: BTreeMap<(EntryId, EntryHash), Arc<Record>>,
    splits: Splits,
}

/// All that was ever written about a subject, so that a day of one batch is read without a look at the others.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct About {
    /// The latest day that anything was written about.
    pub(crate) latest: CivilDay,
    /// The entries, in the order of ids and each once.
    pub(crate) entries: Vec<EntryId>,
}

impl About {
    fn from(day: CivilDay) -> About {
        About { latest: day, entries: Vec::new() }
    }

    /// Ids are made in the order of time, so that most go to the end.
    fn remember(&mut self, entry: &Entry) {
        self.latest = self.latest.max(entry.day);
        if self.entries.last().is_none_or(|last| *last < entry.id) {
            self.entries.push(entry.id);
        } else if let Err(at) = self.entries.binary_search(&entry.id) {
            self.entries.insert(at, entry.id);
        }
    }
}

/// What became of an appended entry.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Appended {
    /// It is part of the book now.
    New,
    /// The very same bytes were there already.
    Known,
    /// It names another farm. It is kept, and reported as a fault.
    OtherFarm,
}

/// What speaks for a thread.
enum Voice {
    /// A withdrawal, or an entry of an unknown kind: nothing counts.
    None,
    /// An additive entry: it counts.
    ByItself(Arc<Record>),
    /// An entry that claims a slot.
    InASlot(Slot, Standing),
}

/// A change in what counts. Several about one record are to be followed in order.
enum Change {
    /// It starts to count.
    Starts(Arc<Record>),
    /// It ceases to count.
    Ceases(Arc<Record>),
}

/// Folds a set of entries into the state of a farm's book. Their order does not matter, and neither does it when one
/// comes twice.
pub fn fold(farm: FarmId, entries: impl IntoIterator<Item = StoredEntry>) -> BookState {
    BookState::folded(farm, Rules::of_the_trade(), entries)
}

impl Rules {
    /// The rules the program goes by.
    fn of_the_trade() -> Self {
        Self { kinds: KINDS, contest: ask_and_take_the_last }
    }
}

/// Asks where there are several, unless all are withdrawals and there is nothing to ask; meanwhile the last in the order
/// of writing counts.
pub(crate) fn ask_and_take_the_last(claimants: &[Arc<Record>]) -> Option<Outcome> {
    let winner = claimants.iter().max_by(|one, other| one.written().cmp(&other.written()))?;
    let asked = claimants.len() > 1 && claimants.iter().any(|record| !record.entry().withdrawn);
    Some(Outcome { winner: Arc::clone(winner), asked })
}

impl BookState {
    /// The state of an empty book.
    pub fn new(farm: FarmId) -> Self {
        Self::with_rules(farm, Rules::of_the_trade())
    }

    /// The state of an empty book under given rules.
    pub(crate) fn with_rules(farm: FarmId, rules: Rules) -> Self {
        Self { farm, rules, book: Contents::default() }
    }

    /// Folds a whole set at once.
    pub(crate) fn folded(farm: FarmId, rules: Rules, entries: impl IntoIterator<Item = StoredEntry>) -> Self {
        let mut state = Self::with_rules(farm, rules);
        let mut records: Vec<Arc<Record>> =
            entries.into_iter().map(|stored| Arc::new(Record::read(stored, rules.kinds))).collect();
        // Ids are made in the order of time, so that threads rarely have to be renamed when they are joined in it.
        records.sort_by_key(|record| record.entry().id);
        for record in &records {
            if state.is_ours(record) {
                state.book.enter(record);
            }
        }
        state.book.judge_all(&rules);
        state
    }

    /// Takes one entry in. The cost is that of the thread, the slot and the days it touches: it does not grow with the
    /// age of the book where the entry is about a late day.
    pub fn append(&mut self, stored: StoredEntry) -> Appended {
        let mut changes = Vec::new();
        let appended = self.append_before_recount(stored, &mut changes);
        self.book.recount(changes);
        appended
    }

    /// Takes many entries in, as [`BookState::append`] would one by one, but counts the days they touch only once: a
    /// queue of a thousand notes about one day costs no more than that day read anew.
    pub fn append_all(&mut self, stored: impl IntoIterator<Item = StoredEntry>) {
        let mut changes = Vec::new();
        for entry in stored {
            self.append_before_recount(entry, &mut changes);
        }
        self.book.recount(changes);
    }

    fn append_before_recount(&mut self, stored: StoredEntry, changes: &mut Vec<Change>) -> Appended {
        let record = Arc::new(Record::read(stored, self.rules.kinds));
        if !self.is_ours(&record) {
            return Appended::OtherFarm;
        }
        let before = self.book.voices_before(&record, &self.rules);
        match self.book.enter(&record) {
            None => Appended::Known,
            Some(joined) => {
                self.book.take_in(&record, joined, before, &self.rules, changes);
                Appended::New
            }
        }
    }

    /// Whether a record belongs to this farm. One that does not is put aside.
    fn is_ours(&mut self, record: &Arc<Record>) -> bool {
        let entry = record.entry();
        if entry.farm != self.farm {
            self.book.foreign.insert((entry.id, record.hash()), Arc::clone(record));
        }
        entry.farm == self.farm
    }
}

impl PartialEq for BookState {
    /// The rules are the program's and not the book's, so they are not compared.
    fn eq(&self, other: &Self) -> bool {
        self.farm == other.farm && self.book == other.book
    }
}

impl Contents {
    /// Enters a record wherever it belongs, and judges nothing yet. `None` when it is there already.
    fn enter(&mut self, record: &Arc<Record>) -> Option<Joined> {
        let joined = self.threads.join(record)?;
        let entry = record.entry();
        self.series.entry(entry.device).or_default().insert(record);
        self.about.entry(entry.subject).or_insert_with(|| About::from(entry.day)).remember(entry);
        if let Some(slot) = record.slot() {
            self.slots.entry(slot).or_default().remember(entry.id);
        }
        if joined.doubles {
            self.doubled.insert(entry.id);
        }
        if record.kind().is_none() {
            *self.unknown.entry(entry.kind.clone()).or_default() += 1;
        } else if record.body().is_none() {
            self.unreadable.insert((entry.id, record.hash()), Arc::clone(record));
        }
        Some(joined)
    }

    /// Judges all threads, slots and days from scratch.
    fn judge_all(&mut self, rules: &Rules) {
        self.splits = self.find_splits();
        let mut changes = Vec::new();
        for thread in self.threads.tied() {
            self.threads.judge(thread);
            let voice = self.stand(thread, rules);
            self.place(thread, voice, &mut changes);
        }
        self.place_the_untied(rules, &mut changes);
        self.judge_slots(rules, &mut changes);
        self.recount(changes);
    }

    /// Lets each entry that is a thread by itself speak: [`Contents::stand`] and [`Contents::place`] for most of a book.
    fn place_the_untied(&mut self, rules: &Rules, changes: &mut Vec<Change>) {
        let threads = std::mem::take(&mut self.threads);
        for (thread, records) in threads.untied() {
            let (voice, asked) = voice(records, || records.to_vec(), rules);
            if asked {
                self.forked.insert(thread);
            }
            self.place(thread, voice, changes);
        }
        self.threads = threads;
    }

    /// Takes a thread to where it counts, without a look at what else does.
    fn place(&mut self, thread: ThreadKey, voice: Voice, changes: &mut Vec<Change>) {
        match voice {
            Voice::InASlot(slot, standing) => self.slots.entry(slot).or_default().place(thread, standing),
            Voice::ByItself(record) => changes.push(Change::Starts(record)),
            Voice::None => {}
        }
    }

    /// The threads a record will tie together, with what speaks for each until then.
    fn voices_before(&self, record: &Record, rules: &Rules) -> Vec<(ThreadKey, Voice)> {
        self.threads.touched_by(record).into_iter().map(|key| (key, self.voice(key, rules).0)).collect()
    }

    /// Judges what one entered record touches.
    fn take_in(
        &mut self,
        record: &Record,
        joined: Joined,
        before: Vec<(ThreadKey, Voice)>,
        rules: &Rules,
        changes: &mut Vec<Change>,
    ) {
        let splits_before = std::mem::take(&mut self.splits);
        self.splits = self.find_splits();
        if joined.unheard_of {
            self.threads.extend(joined.thread, record);
        } else {
            self.threads.judge(joined.thread);
        }
        self.move_thread(joined.thread, before, rules, changes);
        if self.splits != splits_before {
            self.judge_slots(rules, changes);
        }
    }

    /// Lets the threads that grew together leave their places and the one they became take its own.
    fn move_thread(
        &mut self,
        thread: ThreadKey,
        before: Vec<(ThreadKey, Voice)>,
        rules: &Rules,
        changes: &mut Vec<Change>,
    ) {
        let mut leaving: BTreeMap<Slot, Vec<ThreadKey>> = BTreeMap::new();
        for (old, voice) in before {
            self.forked.remove(&old);
            self.ringed.remove(&old);
            match voice {
                Voice::InASlot(slot, _) => leaving.entry(slot).or_default().push(old),
                Voice::ByItself(record) => changes.push(Change::Ceases(record)),
                Voice::None => {}
            }
        }
        match self.stand(thread, rules) {
            Voice::InASlot(slot, standing) => {
                let gone = leaving.remove(&slot).unwrap_or_default();
                self.change_slot(slot, &gone, Some((thread, standing)), rules, changes);
            }
            Voice::ByItself(record) => changes.push(Change::Starts(record)),
            Voice::None => {}
        }
        for (slot, gone) in leaving {
            self.change_slot(slot, &gone, None, rules, changes);
        }
    }

    /// Finds what speaks for a thread, and remembers whether it is asked about.
    fn stand(&mut self, key: ThreadKey, rules: &Rules) -> Voice {
        let (voice, asked) = self.voice(key, rules);
        if asked {
            self.forked.insert(key);
        }
        if !self.threads.rings_in(key).is_empty() {
            self.ringed.insert(key);
        }
        voice
    }

    /// What speaks for a thread, and whether it is asked about.
    fn voice(&self, key: ThreadKey, rules: &Rules) -> (Voice, bool) {
        voice(&self.threads.heads(key), || self.threads.beginnings(key).into_owned(), rules)
    }

    fn change_slot(
        &mut self,
        slot: Slot,
        gone: &[ThreadKey],
        came: Option<(ThreadKey, Standing)>,
        rules: &Rules,
        changes: &mut Vec<Change>,
    ) {
        let state = self.slots.entry(slot.clone()).or_default();
        state.replace(gone, came, &self.splits);
        settle_slot(slot, state, &mut self.contested, rules, changes);
    }

    /// Judges all slots from scratch.
    fn judge_slots(&mut self, rules: &Rules, changes: &mut Vec<Change>) {
        for (slot, state) in &mut self.slots {
            state.judge(&self.splits);
            settle_slot(slot.clone(), state, &mut self.contested, rules, changes);
        }
    }

    /// The devices whose series is no longer one.
    fn find_splits(&self) -> Splits {
        self.series.iter().filter_map(|(device, series)| Some((*device, series.split()?))).collect()
    }

    /// Brings the days in line with what starts and what ceases to count.
    fn recount(&mut self, changes: Vec<Change>) {
        let mut touched: BTreeMap<Subject, CivilDay> = BTreeMap::new();
        for change in changes {
            let (Change::Starts(record) | Change::Ceases(record)) = &change;
            let Entry { subject, day, .. } = *record.entry();
            let first = touched.entry(subject).or_insert(day);
            *first = day.min(*first);
            let days = self.days.entry(subject).or_default();
            match &change {
                Change::Starts(record) => days.insert(record),
                Change::Ceases(record) => days.remove(record),
            }
        }
        for (subject, day) in touched {
            self.recount_from(subject, day);
        }
    }

    fn recount_from(&mut self, subject: Subject, day: CivilDay) {
        let days = self.days.entry(subject).or_default();
        days.recount(day);
        if days.is_empty() {
            self.days.remove(&subject);
        }
    }
}

/// What speaks for a thread with such heads and beginnings, and whether it is asked about.
fn voice(
    heads: &[Arc<Record>],
    beginnings: impl FnOnce() -> Vec<Arc<Record>>,
    rules: &Rules,
) -> (Voice, bool) {
    let Some(Outcome { winner, asked }) = (rules.contest)(heads) else { return (Voice::None, false) };
    if winner.entry().withdrawn || winner.kind().is_none() {
        return (Voice::None, asked);
    }
    let Some(slot) = winner.slot() else { return (Voice::ByItself(winner), asked) };
    let standing = Standing { record: winner, beginnings: beginnings(), forked: heads.len() > 1 };
    (Voice::InASlot(slot, standing), asked)
}

/// Says what counts in a slot, and whether it is asked about.
fn settle_slot(
    slot: Slot,
    state: &mut SlotState,
    contested: &mut BTreeSet<Slot>,
    rules: &Rules,
    changes: &mut Vec<Change>,
) {
    let outcome = (rules.contest)(&state.claimants());
    if outcome.as_ref().is_some_and(|outcome| outcome.asked) {
        contested.insert(slot);
    } else {
        contested.remove(&slot);
    }
    let counting = outcome.map(|outcome| outcome.winner);
    if counting != state.counting {
        changes.extend(state.counting.take().map(Change::Ceases));
        changes.extend(counting.clone().map(Change::Starts));
        state.counting = counting;
    }
}

#[cfg(test)]
mod tests {
    use serde_json::json;
    use uuid::Uuid;

    use super::*;
    use crate::compose::Draft;
    use crate::finding::{Fault, Finding};
    use crate::trial::make::{self, FARM, Phone, answer, body, house_slot, note};

    fn stored(entry: Entry) -> StoredEntry {
        entry.encode().unwrap()
    }

    #[test]
    fn notes_written_apart_all_count() {
        let (mut one, mut other) = (Phone::new(1), Phone::new(2));
        one.write(note(1, 0, "the litter is wet"));
        other.write(note(2, 0, "the litter is wet"));
        one.hear(&other);
        assert_eq!(one.state.counting_of("note").len(), 2);
        assert_eq!(one.state.conflicts(), []);
    }

    #[test]
    fn the_same_bytes_twice_are_one_entry() {
        let entry = stored(make::entry(1));
        let mut state = BookState::new(FARM);
        assert_eq!(state.append(entry.clone()), Appended::New);
        assert_eq!(state.append(entry.clone()), Appended::Known);
        assert_eq!(state, fold(FARM, [entry.clone(), entry]));
        assert_eq!(state.counting().len(), 1);
    }

    #[test]
    fn other_bytes_under_one_id_are_both_kept_and_reported() {
        let one = stored(make::entry(1));
        let other = stored(Entry { body: body("text", "damaged"), ..make::entry(1) });
        let state = fold(FARM, [one.clone(), other.clone()]);
        let mut hashes = vec![one.hash, other.hash];
        hashes.sort_unstable();
        assert_eq!(state.faults(), [Fault::SameIdOtherBytes { id: make::id(1), hashes }]);
        assert_eq!(state.records(make::id(1)).len(), 2);
        assert_eq!(state.counting().len(), 1, "one thing was said, so one counts");
        assert_eq!(state.conflicts()[0].to_supersede(), [make::id(1)]);
    }

    #[test]
    fn an_entry_of_another_farm_is_kept_aside() {
        let farm = FarmId(Uuid::from_u128(0xfb));
        let mut state = BookState::new(FARM);
        assert_eq!(state.append(stored(Entry { farm, ..make::entry(1) })), Appended::OtherFarm);
        assert_eq!(state.faults(), [Fault::OtherFarm { id: make::id(1), farm }]);
        assert_eq!((state.counting().len(), state.seen().len(), state.foreign().count()), (0, 0, 1));
    }

    #[test]
    fn an_old_house_is_read_in_the_words_of_today() {
        let entry = Entry {
            kind: "house".to_owned(),
            subject: make::HOUSE,
            body: body("height_m", 2.4),
            ..make::entry(1)
        };
        let state = fold(FARM, [stored(entry)]);
        assert_eq!(answer(&state, &house_slot(), "eave_height_m"), Some(json!(2.4)));
        let as_written = state.current(&house_slot()).unwrap().entry();
        assert!(as_written.body.contains_key("height_m"), "the entry itself is as it was written");
    }

    #[test]
    fn a_house_from_a_newer_program_is_found_and_not_guessed_at() {
        let mut phone = Phone::new(1);
        let old = phone.write(make::house(1, 10.0));
        let mut newer = phone.write(Draft::correction(make::id(2), &old.entry, body("length_m", 11.0))).entry;
        newer.body_version = 9;
        let state = fold(FARM, [old, stored(newer)]);
        assert_eq!(state.current(&house_slot()).map(|record| record.entry().id), Some(make::id(2)));
        assert_eq!(state.answers(&house_slot()), None);
        let finding = Finding::UnreadableVersion { entry: make::id(2), kind: "house", version: 9 };
        assert_eq!(state.findings(), [finding]);
    }

    #[test]
    fn an_unknown_kind_is_kept_and_counts_as_nothing() {
        let mut phone = Phone::new(1);
        phone.write(note(1, 0, "a note"));
        let mut unknown = phone.write(note(2, 0, "another")).entry;
        unknown.kind = "hatchery".to_owned();
        let unknown = stored(unknown);
        let state =
            fold(FARM, [stored(phone.state.records(make::id(1))[0].entry().clone()), unknown.clone()]);
        assert_eq!((state.unknown_entries(), state.counting().len()), (1, 1));
        assert_eq!(state.records(make::id(2))[0].stored().bytes, unknown.bytes);
        assert_eq!(state.findings(), [], "its place in the series is taken");
    }

    #[test]
    fn houses_and_batches_are_those_something_counts_about() {
        let mut phone = Phone::new(1);
        phone.write(make::house(1, 10.0));
        phone.write(note(2, 0, "a note"));
        assert_eq!(phone.state.houses().len(), 1);
        assert_eq!(phone.state.batches().len(), 1);
        assert_eq!(phone.state.subjects().count(), 2);
    }
}
