//! The ends of a simulated exchange: computers with a book on disk, and phones with a queue of drafts.

use std::collections::{BTreeMap, VecDeque};

use uuid::Uuid;

use super::make::{self, FARM};
use crate::access::{Access, Role};
use crate::compose::{Draft, SeriesEnd, compose};
use crate::entry::*;
use crate::fold::BookState;
use crate::sync::{Action, End, Have, Message, Pace, Queued, Say, Session, Status, Taking, take_drafts};

/// What goes over the line.
#[derive(Clone)]
pub(super) enum Parcel {
    /// A message of the exchange of books, and what it claims to be on disk.
    Book(Vec<u8>, Option<Have>),
    /// Drafts of a phone.
    Drafts(Vec<Queued>),
    /// What became of them.
    Answers(Vec<(EntryId, bool)>),
}

/// A parcel, and to whom it goes.
pub(super) type Posted = (usize, Parcel);

/// Whether an end waits for its disk before it acknowledges. The wrong way is planted to see it found.
#[derive(Clone, Copy, PartialEq)]
pub(super) enum Acknowledges {
    AfterCommit,
    BeforeCommit,
}

/// What waits for the disk.
enum Job {
    /// Entries from another end, for which the session waits.
    Entries(usize, Vec<StoredEntry>),
    /// Entries that were acknowledged already.
    Late(Vec<StoredEntry>),
    /// Drafts of a phone.
    Drafts(usize, Vec<Queued>),
}

/// A computer with a book.
pub(super) struct Computer {
    pub(super) device: DeviceId,
    /// The book as it is on disk.
    pub(super) disk: BookState,
    /// The book in memory, where an end acknowledges too early and it differs from the disk.
    ahead: Option<BookState>,
    pub(super) wall_millis: i64,
    pub(super) acknowledges: Acknowledges,
    sessions: BTreeMap<usize, Session>,
    jobs: VecDeque<Job>,
    pub(super) features: Vec<&'static str>,
    /// The devices of its own that turned out to be cloned.
    minted: u128,
}

fn access(device: DeviceId) -> Access {
    Access::granted(FARM, PersonId(Uuid::from_u128(0xbe)), device, Role::Helper)
}

impl Computer {
    pub(super) fn new(number: usize, acknowledges: Acknowledges) -> Self {
        Self {
            device: make::device(number as u128),
            disk: BookState::new(FARM),
            ahead: (acknowledges == Acknowledges::BeforeCommit).then(|| BookState::new(FARM)),
            wall_millis: 1_800_000_000_000,
            acknowledges,
            sessions: BTreeMap::new(),
            jobs: VecDeque::new(),
            features: Vec::new(),
            minted: (number as u128 + 1) * 0x1000,
        }
    }

    /// A computer set up from a backup of this one, that believes to be the same device.
    pub(super) fn copy(&self, number: usize) -> Self {
        let (disk, ahead) = (self.disk.clone(), self.ahead.clone());
        Self { device: self.device, disk, ahead, ..Self::new(number, self.acknowledges) }
    }

    /// The book as this end takes it to be.
    pub(super) fn state(&self) -> &BookState {
        self.ahead.as_ref().unwrap_or(&self.disk)
    }

    /// Writes an entry of its own.
    pub(super) fn write(&mut self, draft: Draft) {
        self.wall_millis += 60_000;
        let series = self.state().book.series.get(&self.device);
        let end = series.and_then(|series| series.last()).map(|last| SeriesEnd::at(last.stored()));
        let sight = self.state().sight(self.wall_millis);
        let stored = compose(&access(self.device), end, draft, &sight, self.wall_millis).unwrap();
        self.keep(vec![stored]);
    }

    fn keep(&mut self, entries: Vec<StoredEntry>) {
        self.remember(&entries);
        for stored in entries {
            self.disk.append(stored);
        }
    }

    /// Takes entries in as if they were on disk.
    fn remember(&mut self, entries: &[StoredEntry]) {
        if let Some(ahead) = &mut self.ahead {
            for stored in entries {
                ahead.append(stored.clone());
            }
        }
    }

    /// Loses all that is not on disk.
    pub(super) fn kill(&mut self) {
        self.ahead = self.ahead.take().map(|_| self.disk.clone());
        self.sessions.clear();
        self.jobs.clear();
    }

    pub(super) fn has_jobs(&self) -> bool {
        !self.jobs.is_empty()
    }

    fn end(&self) -> End {
        End { farm: FARM, device: self.device, takes: true, pace: Pace { entries: 3, bytes: 2_000 } }
    }

    /// Begins a session with another computer, whatever became of the last.
    pub(super) fn begin(&mut self, peer: usize) -> Vec<Posted> {
        let session = Session::new(self.end());
        let hello = session.hello(self.state());
        self.sessions.insert(peer, session);
        self.act(peer, vec![hello])
    }

    /// Says again what was not answered in a session, where there is one.
    pub(super) fn again(&mut self, peer: usize) -> Vec<Posted> {
        let actions = self
            .sessions
            .get_mut(&peer)
            .map(|session| session.again(self.ahead.as_ref().unwrap_or(&self.disk)));
        self.act(peer, actions.unwrap_or_default())
    }

    /// Forgets a session, as a server does that keeps nothing between requests.
    pub(super) fn forget(&mut self, peer: usize) {
        let waits = |job: &Job| matches!(job, Job::Entries(of, _) if *of == peer);
        if !self.jobs.iter().any(waits) {
            self.sessions.remove(&peer);
        }
    }

    pub(super) fn receive(&mut self, from: usize, parcel: Parcel) -> Vec<Posted> {
        match parcel {
            Parcel::Book(bytes, _) => self.hear(from, &bytes),
            Parcel::Drafts(drafts) if self.acknowledges == Acknowledges::AfterCommit => {
                self.jobs.push_back(Job::Drafts(from, drafts));
                Vec::new()
            }
            Parcel::Drafts(drafts) => {
                let taking = self.take(drafts);
                self.remember(&taking.to_write);
                self.jobs.push_back(Job::Late(taking.to_write.clone()));
                vec![answer(from, taking)]
            }
            Parcel::Answers(_) => Vec::new(),
        }
    }

    fn hear(&mut self, from: usize, bytes: &[u8]) -> Vec<Posted> {
        let end = self.end();
        let session = self.sessions.entry(from).or_insert_with(|| Session::new(end));
        let state = self.ahead.as_ref().unwrap_or(&self.disk);
        let actions = match Message::decode_all(bytes) {
            Ok(messages) => messages.into_iter().flat_map(|message| session.on(message, state)).collect(),
            Err(error) => {
                self.features.push("unreadable message");
                session.unreadable(&error)
            }
        };
        self.act(from, actions)
    }

    /// Does what the session with a peer asks for.
    fn act(&mut self, peer: usize, actions: Vec<Action>) -> Vec<Posted> {
        let mut posted = Vec::new();
        for action in actions {
            match action {
                Action::Send(message) => posted.push((peer, book_parcel(&message))),
                Action::Commit(entries) => posted.extend(self.commit(peer, entries)),
                Action::Cloned(cloned) => {
                    self.features.push("clone told");
                    if cloned.is_own && cloned.place.device == self.device {
                        self.minted += 1;
                        self.device = make::device(self.minted);
                        self.features.push("device minted");
                    }
                }
                Action::Done(summary) => {
                    self.features.push(if summary.is_even { "done, even" } else { "done, not even" });
                }
                Action::Failed(_) => {
                    self.features.push("failed session");
                    self.sessions.remove(&peer);
                    self.jobs.retain(|job| !matches!(job, Job::Entries(of, _) if *of == peer));
                }
            }
        }
        posted
    }

    fn commit(&mut self, peer: usize, entries: Vec<StoredEntry>) -> Vec<Posted> {
        if self.acknowledges == Acknowledges::AfterCommit {
            self.jobs.push_back(Job::Entries(peer, entries));
            return Vec::new();
        }
        self.remember(&entries);
        self.jobs.push_back(Job::Late(entries));
        self.committed(peer)
    }

    fn committed(&mut self, peer: usize) -> Vec<Posted> {
        let actions = self
            .sessions
            .get_mut(&peer)
            .map(|session| session.committed(self.ahead.as_ref().unwrap_or(&self.disk)));
        self.act(peer, actions.unwrap_or_default())
    }

    fn take(&mut self, drafts: Vec<Queued>) -> Taking {
        take_drafts(&access(make::device(PHONE_DEVICE)), self.state(), drafts, self.wall_millis)
    }

    /// Lets the disk finish the oldest job, and says what follows.
    pub(super) fn finish_a_job(&mut self) -> Vec<Posted> {
        match self.jobs.pop_front() {
            None => Vec::new(),
            Some(Job::Late(entries)) => {
                self.keep(entries);
                Vec::new()
            }
            Some(Job::Entries(peer, entries)) => {
                self.keep(entries);
                self.committed(peer)
            }
            Some(Job::Drafts(phone, drafts)) => {
                let taking = self.take(drafts);
                self.keep(taking.to_write.clone());
                vec![answer(phone, taking)]
            }
        }
    }
}

fn book_parcel(message: &Message) -> Parcel {
    let claims = if let Say::Taken(taken) = &message.say { Some(taken.have.clone()) } else { None };
    Parcel::Book(message.encode().unwrap(), claims)
}

fn answer(phone: usize, taking: Taking) -> Posted {
    let answers = taking.committed();
    let bad =
        answers.iter().find(|(_, status)| !status.is_in_the_book() && !matches!(status, Status::NotYet));
    assert!(bad.is_none(), "drafts of the trial are all good: {bad:?}");
    let answers = answers.into_iter().map(|(id, status)| (id, status.is_in_the_book())).collect();
    (phone, Parcel::Answers(answers))
}

/// The number of the phone's device, in whose series the server writes.
const PHONE_DEVICE: u128 = 0xf0;

/// A phone with a queue, which it keeps through a restart.
#[derive(Default)]
pub(super) struct Phone {
    pub(super) queue: Vec<Queued>,
    pub(super) seen: BTreeMap<DeviceId, u64>,
    pub(super) wall_millis: i64,
}

impl Phone {
    pub(super) fn put_down(&mut self, draft: Draft) {
        self.wall_millis += 60_000;
        let (seen, written_millis) = (self.seen.clone(), self.wall_millis);
        self.queue.push(Queued { draft, seen, written_millis });
    }

    /// The oldest of its drafts.
    pub(super) fn post(&self, count: usize) -> Parcel {
        Parcel::Drafts(self.queue.iter().take(count).cloned().collect())
    }

    pub(super) fn receive(&mut self, parcel: Parcel) {
        let Parcel::Answers(answers) = parcel else { return };
        let forgotten = |id: EntryId| answers.contains(&(id, true));
        self.queue.retain(|queued| !forgotten(queued.draft.id));
    }
}
