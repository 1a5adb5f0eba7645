//! A phone that writes entries, and the people who may see them. Ids are counted, so that every run writes the same.

use std::collections::BTreeMap;

use book::{
    Access, Answer, BatchId, DeviceId, Entry, EntryId, FarmId, HybridClock, PersonId, Role, StoredEntry,
    Subject,
};
use quantity::CivilDay;
use serde_json::json;
use uuid::Uuid;

/// The farm most tests are about.
pub const FARM: FarmId = FarmId(Uuid::from_u128(0xfa));
/// Another farm of the same book.
pub const OTHER_FARM: FarmId = FarmId(Uuid::from_u128(0xfb));
/// Who writes.
pub const PERSON: PersonId = PersonId(Uuid::from_u128(0xbe));

/// Access for the usual person in a role, on a device.
pub fn access(farm: FarmId, device: u128, role: Role) -> Access {
    Access::granted(farm, PERSON, DeviceId(Uuid::from_u128(device)), role)
}

/// The owner of [`FARM`] on device 1.
pub fn owner() -> Access {
    access(FARM, 1, Role::Owner)
}

/// An entry by device and sequence, not yet in bytes, to be bent to what a test needs.
pub fn entry(device: u128, sequence: u64) -> Entry {
    Entry {
        id: EntryId(Uuid::from_u128(device << 64 | u128::from(sequence))),
        farm: FARM,
        subject: Subject::Batch(BatchId(Uuid::from_u128(7))),
        day: CivilDay::new(2027, 3, 14).unwrap(),
        device: DeviceId(Uuid::from_u128(device)),
        sequence,
        previous: None,
        clock: HybridClock {
            millis: 1_805_000_000_000 + i64::try_from(sequence % 100_000).unwrap(),
            counter: 0,
        },
        person: PERSON,
        kind: "deaths".to_owned(),
        body_version: 1,
        body: BTreeMap::from([(
            "dead_count".to_owned(),
            Answer { typed: Some("3".to_owned()), value: json!(3) },
        )]),
        supersedes: Vec::new(),
        withdrawn: false,
        reason: None,
        seen: BTreeMap::new(),
    }
}

/// The same in bytes.
pub fn stored(device: u128, sequence: u64) -> StoredEntry {
    entry(device, sequence).encode().unwrap()
}

/// Many of a device, from one sequence number to another.
pub fn series(device: u128, sequences: std::ops::RangeInclusive<u64>) -> Vec<StoredEntry> {
    sequences.map(|sequence| stored(device, sequence)).collect()
}

/// The same place in the device's series, taken by an entry with another id: what a cloned phone writes.
pub fn cloned(device: u128, sequence: u64) -> StoredEntry {
    let mut twin = entry(device, sequence);
    twin.id = EntryId(Uuid::from_u128(0xc << 124 | twin.id.0.as_u128()));
    twin.encode().unwrap()
}

/// Entries in the order a store gives them.
pub fn in_order(mut entries: Vec<StoredEntry>) -> Vec<StoredEntry> {
    entries.sort_by_key(|stored| (stored.entry.device, stored.entry.sequence, stored.hash));
    entries
}
