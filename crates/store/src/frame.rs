//! Entries in pieces that a poor line can carry.

use book::{DeviceId, StoredEntry};

/// How much one answer may hold. At least one entry is always given if there is any, or nothing would ever move.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct FrameLimit {
    /// The most entries.
    pub entries: usize,
    /// The most bytes of entries.
    pub bytes: usize,
}

/// Collects entries in the order of device and sequence until the limit is reached.
///
/// Entries that share device and sequence are never parted: the other side goes on after the last sequence it got, and
/// would never ask for the second half of such a pair.
pub(crate) struct Frame {
    limit: FrameLimit,
    bytes: usize,
    entries: Vec<StoredEntry>,
}

impl Frame {
    pub(crate) fn new(limit: FrameLimit) -> Self {
        Self { limit, bytes: 0, entries: Vec::new() }
    }

    /// Takes the entry, or says with `false` that it belongs into the next frame, and all after it too.
    pub(crate) fn take(&mut self, next: StoredEntry) -> bool {
        if !self.has_room(next.bytes.len()) && !self.is_twin(&next) {
            return false;
        }
        self.bytes += next.bytes.len();
        self.entries.push(next);
        true
    }

    pub(crate) fn into_entries(self) -> Vec<StoredEntry> {
        self.entries
    }

    fn has_room(&self, bytes: usize) -> bool {
        self.entries.is_empty()
            || (self.entries.len() < self.limit.entries && self.bytes + bytes <= self.limit.bytes)
    }

    fn is_twin(&self, next: &StoredEntry) -> bool {
        self.entries.last().is_some_and(|last| place(last) == place(next))
    }
}

fn place(stored: &StoredEntry) -> (DeviceId, u64) {
    (stored.entry.device, stored.entry.sequence)
}
