//! What a fold has to say about a book besides its contents: faults, findings, conflicts.

use std::sync::Arc;

use crate::compose::Draft;
use crate::entry::{Body, DeviceId, EntryHash, EntryId, FarmId};
use crate::kind::Slot;
use crate::record::Record;
use crate::shape::MAX_SUPERSEDES;

/// Something that a correct program never writes. Nothing is lost by it: all that is named here is kept.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Fault {
    /// Two entries under one id: most likely a damaged or forged copy. Each is a head of the thread until an entry
    /// supersedes the id, so this shows as a conflict too.
    SameIdOtherBytes {
        /// The id.
        id: EntryId,
        /// The hashes of what stands under it, ascending.
        hashes: Vec<EntryHash>,
    },
    /// Entries that supersede each other in a ring (or one that supersedes itself). Inside the ring nothing supersedes
    /// anything: its members are heads, and a conflict, until an entry from outside supersedes them.
    Cycle {
        /// The members, ascending.
        entries: Vec<EntryId>,
    },
    /// An entry of another farm's book. It is kept apart and counts as nothing.
    OtherFarm {
        /// The entry.
        id: EntryId,
        /// The farm it names.
        farm: FarmId,
    },
}

/// Something to look at. It refuses nothing and changes nothing.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Finding {
    /// Two entries in one place of a device's series: the device was copied (a restored backup, a copied folder). Mint a
    /// new device for one of them.
    ClonedDevice {
        /// The device.
        device: DeviceId,
        /// The place in its series.
        sequence: u64,
        /// The hashes of what stands there, ascending.
        hashes: Vec<EntryHash>,
    },
    /// Entries of a device that have not arrived.
    MissingSequence {
        /// The device.
        device: DeviceId,
        /// The first missing place.
        first: u64,
        /// The last missing place, of this gap.
        last: u64,
    },
    /// An entry that does not carry on from the one before it in its device's series: its `previous` is not that one's
    /// hash. Most likely damage or forgery.
    BrokenChain {
        /// The device.
        device: DeviceId,
        /// The place in its series.
        sequence: u64,
        /// The entry.
        entry: EntryId,
    },
    /// A body of a version that this program cannot read: most likely it was written by a newer one.
    UnreadableVersion {
        /// The entry.
        entry: EntryId,
        /// Its kind.
        kind: &'static str,
        /// The version it was written in.
        version: u16,
    },
    /// A plan was adopted for a house that nobody has described.
    PlanForUnknownHouse {
        /// The entry that adopts the plan.
        entry: EntryId,
        /// The house, as the plan names it.
        house: String,
    },
    /// More birds died, left or were sold than came: most likely a number typed twice, or chicks counted wrong.
    MoreGoneThanAlive {
        /// The entry that takes birds away.
        entry: EntryId,
        /// How many too many, at the end of its day.
        birds: u64,
    },
    /// More feed was given than was delivered: most likely a delivery nobody wrote down.
    MoreFeedThanDelivered {
        /// The entry that gives feed.
        entry: EntryId,
        /// Which feed.
        phase: &'static str,
        /// How much too much, at the end of its day, kg.
        kilograms: u64,
    },
    /// More full crops than crops felt.
    MoreFullThanFelt {
        /// The entry.
        entry: EntryId,
    },
    /// Chicks came weeks away from the day of the adopted plan.
    PlacedFarFromPlan {
        /// The entry that places them.
        entry: EntryId,
        /// How many days after the plan's day; before it where negative.
        days: i32,
    },
}

/// How a conflict came about.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Cause {
    /// One thing was put right in several ways.
    Fork,
    /// One slot was filled by several authors who had not seen each other.
    WrittenApart,
}

/// Several entries that each claim to be the one that counts. Somebody has to be asked.
#[derive(Clone, Debug, PartialEq)]
pub struct Conflict {
    /// How it came about.
    pub cause: Cause,
    /// The slot in question, that of the provisional winner; `None` for additive kinds.
    pub slot: Option<Slot>,
    /// The entries, in the order of writing. Among them can be withdrawals.
    pub heads: Vec<Arc<Record>>,
    /// The one that counts until the question is settled: the last in the order of writing by (clock, device, sequence).
    pub winner: Arc<Record>,
}

impl Conflict {
    /// The entries that settling it has to supersede. An entry may supersede [`MAX_SUPERSEDES`]; where there are more,
    /// the rest is asked about again.
    pub fn to_supersede(&self) -> Vec<EntryId> {
        let mut ids: Vec<_> = self.heads.iter().map(|head| head.entry().id).collect();
        ids.sort_unstable();
        ids.dedup();
        ids.truncate(MAX_SUPERSEDES);
        ids
    }

    /// A draft that settles the conflict with the chosen body, in the place of the provisional winner. To settle it in
    /// the place of another head (another day, say), change the draft.
    pub fn settle(&self, id: EntryId, body: Body) -> Draft {
        Draft { supersedes: self.to_supersede(), ..Draft::correction(id, self.winner.entry(), body) }
    }
}
