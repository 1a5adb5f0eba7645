//! An entry: one thing that one person wrote down on one device, for ever.

use std::collections::BTreeMap;

use quantity::CivilDay;
use serde::{Deserialize, Serialize};
use uuid::Uuid;

macro_rules! id {
    ($(#[$doc:meta])* $name:ident) => {
        $(#[$doc])*
        #[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
        #[serde(transparent)]
        pub struct $name(pub Uuid);
    };
}

id! {
    /// An entry, named by a UUID v7 made where it was written, so that sending it twice is harmless.
    EntryId
}
id! {
    /// A farm: the unit of sharing, and of access.
    FarmId
}
id! {
    /// A phone or a computer that writes.
    DeviceId
}
id! {
    /// A person, opaque: the name stands in a side table that can be blanked.
    PersonId
}
id! {
    /// A house of a farm.
    HouseId
}
id! {
    /// A batch of birds.
    BatchId
}

/// SHA-256 of an entry's stored bytes.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct EntryHash(pub [u8; 32]);

/// A hybrid logical clock: wall-clock milliseconds since 1970 pushed forward by what was seen, and a counter for ties.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
pub struct HybridClock {
    /// Milliseconds since 1970-01-01 UTC, never behind any clock the device had seen.
    pub millis: i64,
    /// Counts entries within one millisecond.
    pub counter: u32,
}

/// What an entry is about.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Subject {
    /// The farm as a whole.
    Farm,
    /// One house.
    House(HouseId),
    /// One batch.
    Batch(BatchId),
}

/// One field of a body: what was typed, and what the program took it for.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Answer {
    /// The characters as typed, such as "59 ft"; absent where nobody typed it (a default, a computed expectation).
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub typed: Option<String>,
    /// The canonical value: a number in the field's unit, a word, a list of either.
    pub value: serde_json::Value,
}

/// The body of an entry: answers by field key (`length_m`), in the order of the keys.
pub type Body = BTreeMap<String, Answer>;

/// One thing that one person wrote down on one device. Never changed; corrected by a later entry that names it in
/// [`Entry::supersedes`].
///
/// The order of the fields is the order of the keys in the stored bytes.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Entry {
    /// Names the entry, for ever and everywhere.
    pub id: EntryId,
    /// The farm whose book it belongs to.
    pub farm: FarmId,
    /// What it is about.
    pub subject: Subject,
    /// The day of the calendar, at the farm, that it is about. Not the day of writing.
    pub day: CivilDay,
    /// The device that wrote it.
    pub device: DeviceId,
    /// Counts the entries of the device: 1, 2, 3 and so on without a gap.
    pub sequence: u64,
    /// The hash of the device's previous entry; absent for its first.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub previous: Option<EntryHash>,
    /// When it was written, as far as clocks can tell. Settles ties, and nothing that was seen or superseded.
    pub clock: HybridClock,
    /// Who wrote it.
    pub person: PersonId,
    /// What kind of thing it is ("house"). A kind this program does not know is kept and passed on.
    pub kind: String,
    /// The version of the body's shape, from 1. A newer one than this program knows is kept and passed on.
    pub body_version: u16,
    /// What was written. Empty in a withdrawal.
    pub body: Body,
    /// The entries that this one puts right, or whose conflict it settles.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub supersedes: Vec<EntryId>,
    /// A withdrawal: it supersedes, and counts as nothing itself.
    #[serde(default, skip_serializing_if = "is_false")]
    pub withdrawn: bool,
    /// Why something was corrected or withdrawn, in the writer's words.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub reason: Option<String>,
    /// What the author had before them: of each other device the highest sequence without a gap below it. That the
    /// author had seen all earlier entries of the own device goes without saying.
    #[serde(default, skip_serializing_if = "BTreeMap::is_empty")]
    pub seen: BTreeMap<DeviceId, u64>,
}

/// An entry beside the bytes it was written as. The bytes are what is hashed, stored, sent and passed on: they may hold
/// more than this program can read. Made by [`Entry::encode`] and [`StoredEntry::decode`] only, so that the three agree.
#[derive(Clone, Debug, PartialEq)]
pub struct StoredEntry {
    /// What this program reads in the bytes.
    pub entry: Entry,
    /// One line of JSON, without the line's end.
    pub bytes: Vec<u8>,
    /// SHA-256 of the bytes.
    pub hash: EntryHash,
}

/// Keeps a key out of the bytes where it would say nothing.
fn is_false(flag: &bool) -> bool {
    !flag
}
