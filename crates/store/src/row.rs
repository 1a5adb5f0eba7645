//! How an entry is filed: its bytes as written, and beside them what it is found by.

use std::collections::BTreeMap;

use book::{DeviceId, EntryHash, EntryId, HybridClock, StoredEntry};

use crate::check::{Damage, Damaged};
use crate::error::StoreError;

/// The most bytes of a kind. Kinds are words of the program; longer ones are no kinds.
const KIND_BYTES_MAX: usize = 100;

/// What an entry is found by. All of it repeats what stands in the bytes.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(crate) struct Columns {
    pub(crate) id: EntryId,
    pub(crate) hash: EntryHash,
    pub(crate) device: DeviceId,
    pub(crate) sequence: i64,
    pub(crate) day: String,
    pub(crate) kind: String,
    pub(crate) clock_millis: i64,
    pub(crate) clock_counter: i64,
}

/// An entry as it is filed.
#[derive(Clone, Debug)]
pub(crate) struct Row {
    pub(crate) columns: Columns,
    pub(crate) bytes: Vec<u8>,
}

impl Columns {
    fn of(stored: &StoredEntry) -> Result<Self, StoreError> {
        let entry = &stored.entry;
        let unfileable = |field| StoreError::Unfileable { entry: entry.id, field };
        if entry.kind.len() > KIND_BYTES_MAX || entry.kind.contains(char::is_control) {
            return Err(unfileable("kind"));
        }
        if entry.sequence == 0 {
            return Err(unfileable("sequence"));
        }
        Ok(Self {
            id: entry.id,
            hash: stored.hash,
            device: entry.device,
            sequence: i64::try_from(entry.sequence).map_err(|_| unfileable("sequence"))?,
            day: entry.day.to_string(),
            kind: entry.kind.clone(),
            clock_millis: entry.clock.millis,
            clock_counter: i64::from(entry.clock.counter),
        })
    }
}

impl Row {
    /// # Errors
    /// `Unfileable`; also where the hash is not that of the bytes, or the row would read as damaged for ever.
    pub(crate) fn of(stored: StoredEntry) -> Result<Self, StoreError> {
        if EntryHash::of(&stored.bytes) != stored.hash {
            return Err(StoreError::Unfileable { entry: stored.entry.id, field: "hash" });
        }
        Ok(Self { columns: Columns::of(&stored)?, bytes: stored.bytes })
    }

    /// The entry, if the bytes are as written and the columns say the same.
    pub(crate) fn check(self) -> Result<StoredEntry, Damaged> {
        let stored = read(self.columns.id, self.columns.hash, self.bytes)?;
        match Columns::of(&stored) {
            Ok(columns) if columns == self.columns => Ok(stored),
            _ => Err(Damaged { entry: self.columns.id, damage: Damage::OtherColumns }),
        }
    }
}

/// The entry from its bytes, if they are as written.
pub(crate) fn read(entry: EntryId, hash: EntryHash, bytes: Vec<u8>) -> Result<StoredEntry, Damaged> {
    let stored = StoredEntry::decode(bytes).map_err(|_| Damaged { entry, damage: Damage::Unreadable })?;
    if stored.hash != hash {
        return Err(Damaged { entry, damage: Damage::OtherHash });
    }
    Ok(stored)
}

/// Sequence numbers by device as the engines count them. A number too large for them lies beyond any entry.
pub(crate) fn places(seen: &BTreeMap<DeviceId, u64>) -> BTreeMap<DeviceId, i64> {
    seen.iter().map(|(device, seen)| (*device, i64::try_from(*seen).unwrap_or(i64::MAX))).collect()
}

/// A clock from its two columns.
pub(crate) fn clock(millis: i64, counter: i64) -> HybridClock {
    // The counter was a u32 when it was filed; a hand that changed it is found by `check`.
    HybridClock { millis, counter: u32::try_from(counter).unwrap_or(u32::MAX) }
}
