//! What a store answers about a farm's entries.

use std::collections::BTreeMap;

use book::{DeviceId, EntryHash, EntryId};

use crate::row::Columns;

/// What became of the entries of one call. By the time it is given, all of them are on disk.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct AppendReport {
    /// How many were new.
    pub added: usize,
    /// How many stood there already, byte for byte: sent twice, which is harmless.
    pub already_there: usize,
    /// Entries whose id also stands with other bytes. Both are kept; someone has changed an entry.
    pub same_id: Vec<Clash>,
    /// Entries whose device and sequence number also stand with another hash. Both are kept; the device was cloned, and
    /// must go on under a new id.
    pub same_place: Vec<Clash>,
}

/// An entry that shares what should be its own. Told each time the entry is sent, so that an answer may be lost.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Clash {
    /// The entry sent.
    pub entry: EntryId,
    /// Its hash.
    pub hash: EntryHash,
    /// Its device.
    pub device: DeviceId,
    /// Its place in the device's own series.
    pub sequence: u64,
    /// The hashes it clashes with, in order.
    pub others: Vec<EntryHash>,
}

/// How far the book of a farm reaches. Costs a row a device, however old the book is.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Reach {
    /// How many entries it holds. Only ever grows, so that equal counts mean an equal book.
    pub entries: u64,
    /// Of each device the highest sequence without a gap below it, where its first entry is there.
    pub seen: BTreeMap<DeviceId, u64>,
}

impl Clash {
    /// The clash of a row with the hashes found beside it, where there are any.
    pub(crate) fn of(row: &Columns, others: Vec<EntryHash>) -> Option<Self> {
        if others.is_empty() {
            return None;
        }
        Some(Self {
            entry: row.id,
            hash: row.hash,
            device: row.device,
            sequence: row.sequence.unsigned_abs(),
            others,
        })
    }
}

impl Reach {
    /// Adds what the row of a device says.
    pub(crate) fn add(&mut self, device: DeviceId, entries: i64, contiguous: i64) {
        self.entries += entries.unsigned_abs();
        if contiguous > 0 {
            self.seen.insert(device, contiguous.unsigned_abs());
        }
    }
}
