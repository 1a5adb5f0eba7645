//! An entry as the book holds it: the stored bytes, and what this program reads in them.

use crate::entry::{Body, DeviceId, Entry, EntryHash, HybridClock, StoredEntry};
use crate::kind::{Counting, Kind, Slot, Span};
use crate::upcast::Reading;

/// A stored entry with its kind looked up and its body read. Two records are equal when their bytes are.
#[derive(Clone, Debug)]
pub struct Record {
    stored: StoredEntry,
    kind: Option<&'static Kind>,
    reading: Reading,
}

/// The order of writing, as far as clocks can tell. The hash makes it total even where a device was cloned.
pub(crate) type Written = (HybridClock, DeviceId, u64, EntryHash);

impl Record {
    /// Looks the kind up and reads the body.
    pub(crate) fn read(stored: StoredEntry, kinds: &'static [Kind]) -> Self {
        let kind = Kind::named(&stored.entry.kind, kinds);
        let reading = Reading::of(&stored.entry, kind);
        Self { stored, kind, reading }
    }

    /// The entry with its bytes.
    pub fn stored(&self) -> &StoredEntry {
        &self.stored
    }

    /// The entry. Its body is as written: see [`Record::body`] for the one to use.
    pub fn entry(&self) -> &Entry {
        &self.stored.entry
    }

    /// The hash of the stored bytes.
    pub fn hash(&self) -> EntryHash {
        self.stored.hash
    }

    /// The row of its kind; `None` for a kind this program does not know.
    pub fn kind(&self) -> Option<&'static Kind> {
        self.kind
    }

    /// The body in the version this program speaks; `None` where kind or version are not known.
    pub fn body(&self) -> Option<&Body> {
        match &self.reading {
            Reading::AsWritten => Some(&self.stored.entry.body),
            Reading::CarriedOver(body) => Some(body),
            Reading::UnknownVersion | Reading::UnknownKind => None,
        }
    }

    /// What this program makes of the body.
    pub fn reading(&self) -> &Reading {
        &self.reading
    }

    /// The slot it would fill; `None` for additive and unknown kinds.
    pub fn slot(&self) -> Option<Slot> {
        let kind = self.kind?;
        match kind.counting {
            Counting::Additive => None,
            Counting::OneASlot(span) => Some(self.slot_in(kind.name, span)),
        }
    }

    fn slot_in(&self, kind: &'static str, span: Span) -> Slot {
        let entry = self.entry();
        Slot {
            kind,
            subject: entry.subject,
            day: span.each_day.then_some(entry.day),
            part: span.part.and_then(|key| self.word(key)),
        }
    }

    /// The answer to `key` as a number; `None` where it is none.
    pub fn number(&self, key: &str) -> Option<f64> {
        self.body()?.get(key)?.value.as_f64()
    }

    /// The answer to `key` as a word: text without quotation marks, anything else as JSON writes it.
    pub fn word(&self, key: &str) -> Option<String> {
        let value = &self.body()?.get(key)?.value;
        Some(value.as_str().map_or_else(|| value.to_string(), str::to_owned))
    }

    /// The place in the order of writing.
    pub(crate) fn written(&self) -> Written {
        let entry = self.entry();
        (entry.clock, entry.device, entry.sequence, self.hash())
    }
}

impl PartialEq for Record {
    fn eq(&self, other: &Self) -> bool {
        self.hash() == other.hash()
    }
}
