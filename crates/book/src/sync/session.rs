//! One end of an exchange: told what was heard, it answers with what is to be done.
//!
//! Both ends run the same machine. Each direction is sent in frames, one at a time: the next goes out when the last was
//! acknowledged. Nothing is kept across sessions, so that one that broke off is simply begun again; an end that keeps
//! nothing from one request to the next can make a new session for each.

use std::collections::{BTreeSet, VecDeque};

use super::frame::{
    FRAME_BYTES_MAX, FRAME_ENTRIES_MAX, Frame, FrameError, Message, SAME_PLACE_HASHES_MAX, SAME_PLACE_MAX,
    SamePlace, Say, Taken, Why,
};
use super::have::{Have, Place};
use crate::entry::{DeviceId, FarmId, StoredEntry};
use crate::fold::BookState;

/// Who an end is, and what it lets itself be told.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct End {
    /// The farm whose book is exchanged.
    pub farm: FarmId,
    /// The device this end writes as: on a server, that of the server itself.
    pub device: DeviceId,
    /// Whether the other end may add entries: [`crate::Access::may_write`] of whoever is there. Who may only read gets all
    /// and is refused when it sends.
    pub takes: bool,
    /// How much is sent at once.
    pub pace: Pace,
}

/// How much is sent at once. At least one entry is sent, if there is any, or nothing would ever move.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Pace {
    /// The most entries, at most [`FRAME_ENTRIES_MAX`].
    pub entries: usize,
    /// The most bytes of entries, at most [`FRAME_BYTES_MAX`].
    pub bytes: usize,
}

impl Pace {
    /// For a phone at the edge of the net: at 10 kB/s a frame takes about three seconds, and that is what a cut costs. Our
    /// judgement.
    pub const POOR_LINE: Self = Self { entries: 64, bytes: 32 * 1024 };
    /// For two computers side by side: as much as is taken.
    pub const GOOD_LINE: Self = Self { entries: FRAME_ENTRIES_MAX, bytes: FRAME_BYTES_MAX };
}

/// What is to be done. Several are to be done in order.
#[derive(Clone, Debug, PartialEq)]
pub enum Action {
    /// Send it to the other end.
    Send(Message),
    /// Put these on disk, all or nothing, then call [`Session::committed`]. Many or all of them may be known already. One
    /// that a store will not file is left out by the caller.
    Commit(Vec<StoredEntry>),
    /// A device was cloned; told once a device and session. All its entries are kept. Where it is the end's own, it has to
    /// write what comes next as a newly minted device.
    Cloned(Cloned),
    /// All is exchanged that there was to exchange. Told once. The session still answers an end that missed the last word.
    Done(Summary),
    /// The session is over.
    Failed(Failure),
}

/// A device that writes in two places.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Cloned {
    /// Where two entries of it stand in one place.
    pub place: SamePlace,
    /// Whether it is this end's own device: then mint a new one, and write what comes next as that. What is written stays
    /// as it is.
    pub is_own: bool,
}

/// What a session came to.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Summary {
    /// How many entries the other end has acknowledged.
    pub sent: usize,
    /// How many entries of the other end were committed, those included that were known already.
    pub taken: usize,
    /// How many entries the other end sent that were left out here: of another farm, or unreadable to this program.
    pub left_out_here: usize,
    /// How many were left out there; those larger than a frame, which are not sent, count too.
    pub left_out_there: usize,
    /// Whether both ends reached equally far in the end. Where not, another session brings what came up meanwhile: entries
    /// written during this one, or the copies of a cloned device.
    pub is_even: bool,
}

/// Why a session is over before all was exchanged.
#[derive(Clone, Copy, Debug, PartialEq, Eq, thiserror::Error)]
pub enum Failure {
    /// This end would not listen to the other.
    #[error("the other end was refused: {why:?}")]
    WeRefused {
        /// Why.
        why: Why,
    },
    /// The other end would not listen.
    #[error("the other end refused: {why:?}")]
    TheyRefused {
        /// Why.
        why: Why,
    },
}

impl Failure {
    /// Whether beginning again is of no use.
    pub fn is_lasting(self) -> bool {
        let (Self::WeRefused { why } | Self::TheyRefused { why }) = self;
        why.is_lasting()
    }
}

/// One end of an exchange.
///
/// Every call is handed the state of the book **as it is on disk**: what is acknowledged is read from it.
#[derive(Clone, Debug)]
pub struct Session {
    us: End,
    /// How far the other end reaches, as it last said.
    theirs: Have,
    sending: Sending,
    /// The frames whose entries are being committed, in order.
    committing: VecDeque<Committing>,
    /// What was said of the last frame that is on disk.
    acknowledged: Option<Taken>,
    /// Whether the other end has said that it has no more.
    all_heard: bool,
    /// The cloned devices that were told of.
    told: BTreeSet<DeviceId>,
    summary: Summary,
    ended: Ended,
}

/// How far the sending is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Sending {
    /// Nothing was sent in this session.
    Unbegun,
    /// A frame is out and was not acknowledged.
    Waiting(Out),
    /// The last frame was acknowledged.
    Finished,
}

/// A frame that is out.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
struct Out {
    /// The place it was to go on after.
    after: Option<Place>,
    through: Option<Place>,
    more: bool,
    entries: usize,
    /// How many entries it left out, being too large.
    too_large: usize,
}

/// What is told when a frame is on disk.
#[derive(Clone, Debug)]
struct Committing {
    through: Option<Place>,
    more: bool,
    left_out: usize,
    places: Vec<Place>,
}

#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Ended {
    Not,
    Done,
    Failed,
}

impl Session {
    /// A session that has neither said nor heard anything.
    pub fn new(us: End) -> Self {
        Self {
            us,
            theirs: Have::default(),
            sending: Sending::Unbegun,
            committing: VecDeque::new(),
            acknowledged: None,
            all_heard: false,
            told: BTreeSet::new(),
            summary: Summary::default(),
            ended: Ended::Not,
        }
    }

    /// Greets the other end, to begin with.
    pub fn hello(&self, state: &BookState) -> Action {
        self.say(Say::Hello { have: Have::with_marks(state), asks: true })
    }

    /// Says again what was not answered. To be called when nothing was heard for a while.
    pub fn again(&mut self, state: &BookState) -> Vec<Action> {
        let mut actions = Vec::new();
        match &self.acknowledged {
            _ if self.ended != Ended::Not => return actions,
            None if !self.all_heard => return vec![self.hello(state)],
            Some(last) if !self.all_heard => {
                actions.push(self.say(Say::Taken(Taken { have: Have::of(state), ..last.clone() })));
            }
            _ => {}
        }
        if let Sending::Waiting(out) = self.sending {
            actions.push(self.send_after(out.after, state));
        }
        actions
    }

    /// Takes in what the other end said.
    pub fn on(&mut self, message: Message, state: &BookState) -> Vec<Action> {
        if self.ended == Ended::Failed {
            return Vec::new();
        }
        if let Say::Refused { why } = message.say {
            return self.fail(Failure::TheyRefused { why });
        }
        if message.farm != self.us.farm {
            return self.refuse(Why::OtherFarm);
        }
        match message.say {
            Say::Hello { have, asks } => self.on_hello(have, asks, state),
            Say::Entries(frame) => self.on_entries(frame, state),
            Say::Taken(taken) => self.on_taken(taken, state),
            Say::Refused { .. } => Vec::new(),
        }
    }

    /// Takes in that what the other end said could not be read.
    pub fn unreadable(&mut self, error: &FrameError) -> Vec<Action> {
        self.refuse(error.why())
    }

    /// Takes in that the entries of the oldest open [`Action::Commit`] are on disk, and in `state`.
    pub fn committed(&mut self, state: &BookState) -> Vec<Action> {
        match self.committing.pop_front() {
            Some(frame) if self.ended != Ended::Failed => self.acknowledge(frame, state),
            _ => Vec::new(),
        }
    }

    fn on_hello(&mut self, have: Have, asks: bool, state: &BookState) -> Vec<Action> {
        self.theirs.learn(&have);
        let mut actions = Vec::new();
        if asks {
            actions.push(self.say(Say::Hello { have: Have::with_marks(state), asks: false }));
        }
        // Whoever greets has perhaps lost what was sent before, so it is sent again from where their book ends.
        actions.push(self.send_after(None, state));
        actions
    }

    fn on_entries(&mut self, frame: Frame, state: &BookState) -> Vec<Action> {
        if !self.us.takes && !frame.lines.is_empty() {
            return self.refuse(Why::ReadOnly);
        }
        let count = frame.lines.len();
        let read = frame.lines.into_iter().filter_map(|line| StoredEntry::decode(line).ok());
        let entries: Vec<StoredEntry> = read.filter(|stored| stored.entry.farm == self.us.farm).collect();
        let left_out = count - entries.len();
        let places = entries.iter().map(Place::of).collect();
        let committing = Committing { through: frame.through, more: frame.more, left_out, places };
        if entries.is_empty() {
            return self.acknowledge(committing, state);
        }
        self.committing.push_back(committing);
        vec![Action::Commit(entries)]
    }

    /// Says what a frame has led to, now that it is on disk.
    fn acknowledge(&mut self, frame: Committing, state: &BookState) -> Vec<Action> {
        self.summary.taken += frame.places.len();
        self.summary.left_out_here += frame.left_out;
        self.all_heard |= !frame.more;
        let same_place = shared_places(&frame.places, state);
        let mut actions = self.tell_of_clones(&same_place);
        let Committing { through, more, left_out, .. } = frame;
        let taken = Taken { have: Have::of(state), through, more, same_place, left_out };
        self.acknowledged = Some(taken.clone());
        actions.push(self.say(Say::Taken(taken)));
        actions.extend(self.done(state));
        actions
    }

    fn on_taken(&mut self, taken: Taken, state: &BookState) -> Vec<Action> {
        self.theirs.learn(&taken.have);
        let mut actions = self.tell_of_clones(&taken.same_place);
        match self.sending {
            Sending::Waiting(out) if (out.through, out.more) == (taken.through, taken.more) => {
                self.summary.sent += out.entries.saturating_sub(taken.left_out);
                self.summary.left_out_there += taken.left_out.min(out.entries) + out.too_large;
            }
            // An end that keeps nothing between requests hears of a frame that an earlier one of it has sent.
            Sending::Unbegun => {}
            // Late, or said twice.
            Sending::Waiting(_) | Sending::Finished => return actions,
        }
        if taken.more {
            actions.push(self.send_after(taken.through, state));
        } else {
            self.sending = Sending::Finished;
            actions.extend(self.done(state));
        }
        actions
    }

    /// Sends the next frame of what the other end lacks. An empty one says that it lacks nothing.
    fn send_after(&mut self, after: Option<Place>, state: &BookState) -> Action {
        let (frame, too_large) = next_frame(&self.theirs, state, after, self.us.pace);
        let (through, more, entries) = (frame.through, frame.more, frame.lines.len());
        self.sending = Sending::Waiting(Out { after, through, more, entries, too_large });
        self.say(Say::Entries(frame))
    }

    /// Tells once of each device that was cloned.
    fn tell_of_clones(&mut self, same_place: &[SamePlace]) -> Vec<Action> {
        let mut actions = Vec::new();
        for place in same_place {
            if self.told.insert(place.device) {
                let is_own = place.device == self.us.device;
                actions.push(Action::Cloned(Cloned { place: place.clone(), is_own }));
            }
        }
        actions
    }

    fn done(&mut self, state: &BookState) -> Option<Action> {
        let is_done = self.sending == Sending::Finished && self.all_heard && self.ended == Ended::Not;
        is_done.then(|| {
            self.ended = Ended::Done;
            self.summary.is_even = self.theirs.is_even_with(&Have::of(state));
            Action::Done(self.summary)
        })
    }

    fn refuse(&mut self, why: Why) -> Vec<Action> {
        let mut actions = vec![self.say(Say::Refused { why })];
        actions.extend(self.fail(Failure::WeRefused { why }));
        actions
    }

    fn fail(&mut self, failure: Failure) -> Vec<Action> {
        self.ended = Ended::Failed;
        vec![Action::Failed(failure)]
    }

    fn say(&self, say: Say) -> Action {
        Action::Send(Message { farm: self.us.farm, device: self.us.device, say })
    }
}

/// The next frame of what a book with a reach lacks, and how many entries are left out, being too large for any.
fn next_frame(theirs: &Have, state: &BookState, after: Option<Place>, pace: Pace) -> (Frame, usize) {
    let (entries_max, bytes_max) =
        (pace.entries.clamp(1, FRAME_ENTRIES_MAX), pace.bytes.min(FRAME_BYTES_MAX));
    let mut frame = Frame::default();
    let (mut bytes, mut too_large) = (0, 0);
    for stored in theirs.lacking(state, after) {
        let size = stored.bytes.len() + 1;
        if size > FRAME_BYTES_MAX {
            too_large += 1;
            continue;
        }
        let has_room = frame.lines.len() < entries_max && bytes + size <= bytes_max;
        if !has_room && !frame.lines.is_empty() {
            frame.more = true;
            break;
        }
        bytes += size;
        frame.through = Some(Place::of(stored));
        frame.lines.push(stored.bytes.clone());
    }
    (frame, too_large)
}

/// Those of some places that hold several entries.
fn shared_places(places: &[Place], state: &BookState) -> Vec<SamePlace> {
    let different: BTreeSet<(DeviceId, u64)> =
        places.iter().map(|place| (place.device, place.sequence)).collect();
    let hashes = |(device, sequence): (DeviceId, u64)| {
        let series = state.book.series.get(&device)?;
        let hashes: Vec<_> =
            series.at(sequence).map(|record| record.hash()).take(SAME_PLACE_HASHES_MAX).collect();
        (hashes.len() > 1).then_some(SamePlace { device, sequence, hashes })
    };
    different.into_iter().filter_map(hashes).take(SAME_PLACE_MAX).collect()
}
