//! How far a book reaches, and what another one lacks.

use std::collections::BTreeMap;

use serde::{Deserialize, Serialize};

use crate::entry::{DeviceId, EntryHash, StoredEntry};
use crate::fold::BookState;
use crate::record::Record;
use crate::shape::MAX_SEEN;

/// The most devices an end tells of: no more than an entry can have seen. What is not told of is sent again, which costs
/// line and loses nothing.
pub const DEVICES_MAX: usize = MAX_SEEN;

/// How far a book reaches: of each device the highest sequence without a gap below it, and a print of what stands up to
/// there.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(transparent)]
pub struct Have(pub BTreeMap<DeviceId, Extent>);

/// How far one device's series reaches.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Extent {
    /// The highest sequence without a gap below it.
    pub sequence: u64,
    /// Says which entries stand at the places up to there: equal prints, equal entries. Where no device was cloned, it is
    /// the hash of the last of them.
    pub print: EntryHash,
}

/// One entry's place among all that an end sends: by device, sequence and hash. Up to it all was sent.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
pub struct Place {
    /// The device.
    pub device: DeviceId,
    /// The place in the device's series.
    pub sequence: u64,
    /// The hash, for a cloned device has several entries in one place.
    pub hash: EntryHash,
}

impl Have {
    /// How far a book reaches.
    pub fn of(state: &BookState) -> Self {
        let extent = |sequence, print| Extent { sequence, print };
        let all = state.book.series.iter().filter(|(_, series)| series.contiguous() > 0);
        let all = all.map(|(device, series)| {
            (*device, extent(series.contiguous(), series.print(series.contiguous())))
        });
        Self(all.take(DEVICES_MAX).collect())
    }

    /// Takes in what was told later. A book only grows, so that a lower reach is old news that was late.
    pub(crate) fn learn(&mut self, told: &Have) {
        for (device, extent) in &told.0 {
            // However much is told in however many pieces, no more is remembered than one book may tell.
            if self.0.len() == DEVICES_MAX && !self.0.contains_key(device) {
                continue;
            }
            let known = self.0.entry(*device).or_insert(*extent);
            if known.sequence <= extent.sequence {
                *known = *extent;
            }
        }
    }

    /// The sequence from which on a book with this reach lacks entries of a device.
    ///
    /// Where the prints differ, the device was cloned and the copies part somewhere below, so all of its series is sent.
    /// Where the other reaches further than this book, it is the other that can tell, and sends its own.
    fn lacks_from(&self, state: &BookState, device: DeviceId) -> u64 {
        let (Some(theirs), Some(series)) = (self.0.get(&device), state.book.series.get(&device)) else {
            return 1;
        };
        let can_tell = theirs.sequence <= series.contiguous();
        if can_tell && series.print(theirs.sequence) != theirs.print {
            return 1;
        }
        theirs.sequence.saturating_add(1)
    }

    /// What a book with this reach lacks of another, after a place, in the order of places.
    pub(crate) fn lacking<'a>(
        &'a self,
        state: &'a BookState,
        after: Option<Place>,
    ) -> impl Iterator<Item = &'a StoredEntry> {
        let devices = state.book.series.iter().filter(move |(device, _)| {
            // A device that is done is not looked at again.
            after.is_none_or(|after| after.device <= **device)
        });
        let entries = devices.flat_map(move |(device, series)| {
            let sent = after.filter(|after| after.device == *device).map_or(0, |after| after.sequence);
            series.from(self.lacks_from(state, *device).max(sent))
        });
        let entries = entries.map(|record| Record::stored(record));
        entries.filter(move |stored| after.is_none_or(|after| Place::of(stored) > after))
    }
}

impl Place {
    /// The place of an entry.
    pub(crate) fn of(stored: &StoredEntry) -> Self {
        Self { device: stored.entry.device, sequence: stored.entry.sequence, hash: stored.hash }
    }
}
