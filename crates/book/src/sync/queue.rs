//! What a phone without signal has put down, taken into the book.
//!
//! The phone queues drafts, each with the id it minted, and sends them as often as it likes until it is told what became
//! of each. Its series is kept here: the drafts are composed as its next entries, with what their author had seen and the
//! phone's own clock. That a draft is written once follows from its id alone.

use std::collections::BTreeMap;

use crate::access::Access;
use crate::compose::{ComposeError, Draft, SeriesEnd, Sight, compose};
use crate::entry::{Answer, Body, DeviceId, Entry, EntryId, HybridClock, StoredEntry};
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
    let answers = queued.into_iter().enumerate().map(answer).collect();
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
