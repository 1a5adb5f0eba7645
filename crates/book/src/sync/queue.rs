//! What a phone without signal has put down, taken into the book.
//!
//! The phone queues drafts, each with the id it minted, and sends them as often as it likes until it is told what became
//! of each. Its series is kept here: the drafts are composed as its next entries, with what their author had seen and the
//! phone's own clock. That a draft is written once follows from its id alone.

use std::collections::{BTreeMap, BTreeSet};

use crate::access::Access;
use crate::compose::{ComposeError, Draft, SeriesEnd, Sight, compose};
use crate::entry::{Answer, Body, DeviceId, Entry, EntryId, HybridClock, StoredEntry};
use crate::finding::Conflict;
use crate::fold::BookState;

/// The most drafts that are looked at in one call: several weeks without signal, and bounded, for all of them become one
/// commit. The others are told to come again.
pub const DRAFTS_MAX: usize = 256;

/// A draft that waited on a phone.
#[derive(Clone, Debug, PartialEq)]
pub struct Queued {
    /// What was put down. A draft that was not answered, or refused and put right, keeps its id.
    pub draft: Draft,
    /// What its author had before them, as the page they wrote on told: [`BookState::seen`] of the book the page was made
    /// from. A claim to have seen more than is there is cut down to what is there.
    pub seen: BTreeMap<DeviceId, u64>,
    /// The phone's wall clock when it was put down, milliseconds since 1970. Where it is ahead of the clock of whoever
    /// takes the draft, that one holds: nothing is written after it arrived.
    pub written_millis: i64,
}

/// What becomes of the drafts of one call, once it is on disk.
#[derive(Debug)]
pub struct Taking {
    /// To be put on disk, all or nothing, before anything is answered.
    pub to_write: Vec<StoredEntry>,
    answers: Vec<(EntryId, Status)>,
}

/// What became of a draft.
#[derive(Debug)]
pub enum Status {
    /// It is in the book now. The phone forgets it.
    Written,
    /// It was in the book already: the answer to an earlier call was lost. The phone forgets it.
    AlreadyTaken,
    /// Under its id this very device has written other words: the draft was changed after it had been taken. The phone shows
    /// both; what is new in it goes into a draft of its own, with a fresh id, that supersedes this one.
    TakenOtherwise,
    /// Under its id something else stands in the book. The phone gives it a fresh id and sends it again.
    IdInUse,
    /// It cannot be written as it is. The phone keeps it and shows what is to be put right.
    Refused(ComposeError),
    /// It was not looked at: too many came at once. The phone sends it again.
    NotYet,
}

impl Status {
    /// Whether the phone may forget the draft.
    pub fn is_in_the_book(&self) -> bool {
        matches!(self, Self::Written | Self::AlreadyTaken)
    }

    /// The word the phone is told.
    pub fn word(&self) -> &'static str {
        match self {
            Self::Written => "written",
            Self::AlreadyTaken => "already-taken",
            Self::TakenOtherwise => "taken-otherwise",
            Self::IdInUse => "id-in-use",
            Self::Refused(_) => "refused",
            Self::NotYet => "not-yet",
        }
    }
}

impl Taking {
    /// What somebody has to be asked because of these drafts: where a draft and somebody else's entry stand apart, both are
    /// kept. Told again when the drafts are sent again.
    ///
    /// - `after`: the book with [`Taking::to_write`] in it
    pub fn conflicts(&self, after: &BookState) -> Vec<Conflict> {
        let is_in = self.answers.iter().filter(|(_, status)| status.is_in_the_book());
        let ids: BTreeSet<EntryId> = is_in.map(|(id, _)| *id).collect();
        let concerns = |conflict: &Conflict| conflict.heads.iter().any(|head| ids.contains(&head.entry().id));
        after.conflicts().into_iter().filter(concerns).collect()
    }

    /// What to tell the phone, in the order of its drafts. To be called when [`Taking::to_write`] is on disk, and only then:
    /// the phone forgets what it is told is written.
    pub fn committed(self) -> Vec<(EntryId, Status)> {
        self.answers
    }
}

/// Composes the drafts of a phone as the next entries of its series.
///
/// - `access`: the person and the phone; no other may write in the phone's series meanwhile, so the caller holds the book's
///   pen from reading `state` to the end of the commit
/// - `state`: the book as it is on disk
/// - `queued`: in the order they were put down
/// - `now_millis`: the wall clock here, milliseconds since 1970
pub fn take_drafts(access: &Access, state: &BookState, queued: Vec<Queued>, now_millis: i64) -> Taking {
    let series = state.book.series.get(&access.device());
    let end = series.and_then(|series| series.last()).map(|last| SeriesEnd::at(last.stored()));
    let mut taker = Taker { access, state, end, now_millis, to_write: Vec::new() };
    let answer = |(at, queued): (usize, Queued)| {
        let id = queued.draft.id;
        (id, if at < DRAFTS_MAX { taker.take(queued) } else { Status::NotYet })
    };
    let answers: Vec<(EntryId, Status)> = queued.into_iter().enumerate().map(answer).collect();
    Taking { to_write: taker.to_write, answers }
}

/// Takes one draft after the other.
struct Taker<'a> {
    access: &'a Access,
    state: &'a BookState,
    end: Option<SeriesEnd>,
    now_millis: i64,
    to_write: Vec<StoredEntry>,
}

impl Taker<'_> {
    fn take(&mut self, queued: Queued) -> Status {
        if let Some(status) = self.known(&queued.draft) {
            return status;
        }
        let written_millis = queued.written_millis.min(self.now_millis);
        let sight = sight(self.state, &queued.seen, written_millis);
        match compose(self.access, self.end, queued.draft, &sight, written_millis) {
            Ok(stored) => {
                self.end = Some(SeriesEnd::at(&stored));
                self.to_write.push(stored);
                Status::Written
            }
            Err(reason) => Status::Refused(reason),
        }
    }

    /// What stands under the draft's id: in the book, or among the drafts before it.
    fn known(&self, draft: &Draft) -> Option<Status> {
        let just_now = self.to_write.iter().map(|stored| &stored.entry).find(|entry| entry.id == draft.id);
        let just_now = just_now.map(|entry| (entry, &entry.body));
        let records = self.state.records(draft.id).iter();
        let before = records.map(|record| (record.entry(), record.body().unwrap_or(&record.entry().body)));
        let there: Vec<(&Entry, &Body)> = just_now.into_iter().chain(before).collect();
        let is_own = |entry: &Entry| entry.device == self.access.device();
        let is_same = |(entry, body): &(&Entry, &Body)| is_own(entry) && says_the_same(entry, body, draft);
        if there.is_empty() {
            None
        } else if there.iter().any(is_same) {
            Some(Status::AlreadyTaken)
        } else if there.iter().any(|(entry, _)| is_own(entry)) {
            Some(Status::TakenOtherwise)
        } else {
            Some(Status::IdInUse)
        }
    }
}

/// Whether a draft says what an entry says. Where something was typed, the characters tell: a later program may take them
/// for another number.
fn says_the_same(entry: &Entry, body: &Body, draft: &Draft) -> bool {
    let same_answer = |(one, other): (&Answer, &Answer)| match (&one.typed, &other.typed) {
        (Some(one), Some(other)) => one == other,
        _ => one == other,
    };
    (&entry.kind, entry.subject, entry.day) == (&draft.kind, draft.subject, draft.day)
        && (&entry.supersedes, entry.withdrawn, &entry.reason)
            == (&draft.supersedes, draft.withdrawn, &draft.reason)
        && body.keys().eq(draft.body.keys())
        && body.values().zip(draft.body.values()).all(same_answer)
}

/// What the author of a draft had before them, as far as it is true.
fn sight(state: &BookState, seen: &BTreeMap<DeviceId, u64>, written_millis: i64) -> Sight {
    let limit = HybridClock::latest_trusted(written_millis);
    let mut sight = Sight::default();
    for (device, sequence) in seen {
        let Some(series) = state.book.series.get(device) else { continue };
        let sequence = (*sequence).min(series.contiguous());
        sight.seen.insert(*device, sequence);
        sight.clock = sight.clock.max(series.latest_clock_through(sequence, limit));
    }
    sight
}

#[cfg(test)]
mod tests {
    use uuid::Uuid;

    use super::*;
    use crate::access::Role;
    use crate::clock::MAX_LEAD_MILLIS;
    use crate::entry::PersonId;
    use crate::trial::make::{self, FARM, Phone, body, house, note, prices};

    const NOW: i64 = 1_800_000_600_000;

    fn access(device: u128) -> Access {
        Access::granted(FARM, PersonId(Uuid::from_u128(7)), make::device(device), Role::Helper)
    }

    fn queued(draft: Draft) -> Queued {
        Queued { draft, seen: BTreeMap::new(), written_millis: NOW }
    }

    /// Takes drafts from the phone with number 9 and puts them on disk; gives the words of the answers.
    fn take(state: &mut BookState, drafts: Vec<Queued>) -> Vec<&'static str> {
        let taking = take_drafts(&access(9), state, drafts, NOW);
        take_in(state, &taking.to_write);
        taking.committed().into_iter().map(|(_, status)| status.word()).collect()
    }

    fn take_in(state: &mut BookState, entries: &[StoredEntry]) {
        for stored in entries {
            assert_eq!(state.append(stored.clone()), crate::Appended::New);
        }
    }

    #[test]
    fn drafts_sent_again_are_written_once() {
        let mut state = BookState::new(FARM);
        let drafts = [note(1, 0, "one"), house(2, 10.0), note(3, 0, "three")].map(queued);
        assert_eq!(take(&mut state, drafts[..2].to_vec()), ["written", "written"]);
        assert_eq!(take(&mut state, drafts.to_vec()), ["already-taken", "already-taken", "written"]);
        let twice = [drafts.to_vec(), vec![queued(note(4, 0, "four")); 2]].concat();
        assert_eq!(take(&mut state, twice)[3..], ["written", "already-taken"]);
        assert_eq!(state.all_records().count(), 4);
        assert_eq!(state.findings(), [], "one unbroken series");
        assert_eq!(state.seen(), BTreeMap::from([(make::device(9), 4)]));
    }

    #[test]
    fn a_draft_changed_after_it_was_taken_is_not_taken_for_the_old_one() {
        let mut state = BookState::new(FARM);
        take(&mut state, vec![queued(note(1, 0, "three dead"))]);
        assert_eq!(take(&mut state, vec![queued(note(1, 0, "four dead"))]), ["taken-otherwise"]);
        let moved = Draft { day: make::day(1), ..note(1, 0, "three dead") };
        assert_eq!(take(&mut state, vec![queued(moved)]), ["taken-otherwise"]);
        assert_eq!(state.all_records().count(), 1);
    }

    #[test]
    fn what_was_typed_tells_and_not_what_it_was_taken_for() {
        let typed = |value: f64| {
            let mut draft = house(1, value);
            draft.body.get_mut("length_m").unwrap().typed = Some("59 ft".to_owned());
            queued(draft)
        };
        let mut state = BookState::new(FARM);
        take(&mut state, vec![typed(17.98)]);
        assert_eq!(take(&mut state, vec![typed(17.9832)]), ["already-taken"]);
    }

    #[test]
    fn an_id_that_another_device_has_used_is_not_taken() {
        let mut other = Phone::new(1);
        other.write(note(1, 0, "the very same"));
        assert_eq!(take(&mut other.state, vec![queued(note(1, 0, "the very same"))]), ["id-in-use"]);
    }

    #[test]
    fn a_bad_draft_does_not_hold_up_the_others() {
        let mut state = BookState::new(FARM);
        let bad = Draft { kind: "hatchery".to_owned(), ..note(1, 0, "a note") };
        assert_eq!(
            take(&mut state, [bad, note(2, 0, "a note")].map(queued).to_vec()),
            ["refused", "written"]
        );
        assert_eq!(take(&mut state, vec![queued(note(1, 0, "put right"))]), ["written"]);
        let viewer = Access::granted(FARM, PersonId(Uuid::nil()), make::device(9), Role::Viewer);
        let taking = take_drafts(&viewer, &state, vec![queued(note(3, 0, "a note"))], NOW);
        assert!(taking.to_write.is_empty());
        assert!(matches!(taking.committed()[..], [(_, Status::Refused(ComposeError::MayNotWrite { .. }))]));
    }

    #[test]
    fn too_many_drafts_come_again() {
        let mut state = BookState::new(FARM);
        let drafts: Vec<Queued> =
            (1..=DRAFTS_MAX as u128 + 1).map(|number| queued(note(number, 0, "a note"))).collect();
        let words = take(&mut state, drafts.clone());
        assert_eq!((words[DRAFTS_MAX - 1], words[DRAFTS_MAX]), ("written", "not-yet"));
        assert_eq!(take(&mut state, drafts[DRAFTS_MAX..].to_vec()), ["written"]);
    }

    #[test]
    fn a_draft_counts_as_written_with_what_its_author_had_seen() {
        let mut other = Phone::new(1);
        other.write(prices(1, 0, 80));
        let seen_first = Queued { seen: other.state.seen(), ..queued(prices(2, 1, 85)) };
        other.write(note(3, 0, "after the phone went out of sight"));
        let claims_too_much =
            BTreeMap::from([(make::device(1), 1_000), (make::device(5), 3), (make::device(9), 8)]);
        let boasting = Queued { seen: claims_too_much, ..queued(note(4, 0, "a note")) };
        let taking = take_drafts(&access(9), &other.state, vec![seen_first, boasting], NOW);
        let seen: Vec<_> = taking.to_write.iter().map(|stored| stored.entry.seen.clone()).collect();
        assert_eq!(seen, [1, 2].map(|sequence| BTreeMap::from([(make::device(1), sequence)])));
        for stored in taking.to_write {
            other.state.append(stored);
        }
        assert_eq!(other.state.conflicts(), [], "the phone had seen the prices it puts its own in place of");
    }

    #[test]
    fn what_was_written_unseen_is_asked_about_and_never_put_aside() {
        let mut other = Phone::new(1);
        other.write(prices(1, 0, 80));
        let unseen = vec![queued(prices(2, 1, 85)), queued(note(3, 0, "a note"))];
        for words in [["written", "written"], ["already-taken", "already-taken"]] {
            let taking = take_drafts(&access(9), &other.state, unseen.clone(), NOW);
            take_in(&mut other.state, &taking.to_write);
            let conflicts = taking.conflicts(&other.state);
            let [conflict] = &conflicts[..] else { panic!("{conflicts:?}") };
            let heads: Vec<EntryId> = conflict.heads.iter().map(|head| head.entry().id).collect();
            assert_eq!(heads, [make::id(1), make::id(2)], "both stand");
            let answers = taking.committed();
            assert_eq!(answers.iter().map(|(_, status)| status.word()).collect::<Vec<_>>(), words);
        }
        let settled = other.state.conflicts()[0].settle(make::id(4), prices(4, 1, 85).body);
        let seen = Queued { seen: other.state.seen(), ..queued(settled) };
        let taking = take_drafts(&access(9), &other.state, vec![seen], NOW);
        take_in(&mut other.state, &taking.to_write);
        assert_eq!(taking.conflicts(&other.state), []);
    }

    #[test]
    fn drafts_are_written_in_the_order_they_were_put_down() {
        let mut state = BookState::new(FARM);
        let corrected = Draft { supersedes: vec![make::id(1)], ..note(2, 0, "four dead") };
        take(&mut state, [note(1, 0, "three dead"), corrected, note(3, 0, "hot")].map(queued).to_vec());
        let sequence = |id: u128| state.records(make::id(id))[0].entry().sequence;
        assert_eq!([1, 2, 3].map(sequence), [1, 2, 3]);
        let counting: Vec<EntryId> = state.counting().iter().map(|record| record.entry().id).collect();
        assert_eq!(counting, [make::id(2), make::id(3)]);
    }

    #[test]
    fn the_clock_is_the_phones_unless_it_is_ahead() {
        let state = BookState::new(FARM);
        let clock = |written_millis| {
            let queued = Queued { written_millis, ..queued(note(1, 0, "a note")) };
            take_drafts(&access(9), &state, vec![queued], NOW).to_write[0].entry.clock.millis
        };
        assert_eq!(clock(NOW - 5 * MAX_LEAD_MILLIS), NOW - 5 * MAX_LEAD_MILLIS);
        assert_eq!(clock(NOW + 5 * MAX_LEAD_MILLIS), NOW);
        assert_eq!(clock(i64::MIN), 0);
    }

    #[test]
    fn answers_are_compared_key_by_key() {
        let mut state = BookState::new(FARM);
        let two = |other: &str| {
            let mut draft = house(1, 10.0);
            draft.body.extend(body(other, 3.0));
            queued(draft)
        };
        take(&mut state, vec![two("width_m")]);
        assert_eq!(take(&mut state, vec![queued(house(1, 10.0))]), ["taken-otherwise"]);
        assert_eq!(take(&mut state, vec![two("eave_height_m")]), ["taken-otherwise"]);
        assert_eq!(take(&mut state, vec![two("width_m")]), ["already-taken"]);
    }
}
