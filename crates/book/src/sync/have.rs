//! How far a book reaches, and what another one lacks.

use std::cmp::Ordering;
use std::collections::BTreeMap;

use serde::{Deserialize, Serialize};

use crate::entry::{DeviceId, EntryHash, StoredEntry};
use crate::fold::BookState;
use crate::record::Record;
use crate::series::Series;

/// The most devices an end tells of: more than a farm has. What is not told of is sent again, which costs line and loses
/// nothing.
pub const DEVICES_MAX: usize = 1024;

/// How far a book reaches: of each device the highest sequence without a gap below it, and a print of what stands up to
/// there.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(transparent)]
pub struct Have(pub BTreeMap<DeviceId, Extent>);

/// The most marks told of one series: where a device was cloned, at most this part of its series, and one frame, is sent
/// again when a session was cut off and begun anew.
pub const MARKS_MAX: u64 = 16;

/// How far one device's series reaches.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Extent {
    /// The highest sequence without a gap below it.
    pub sequence: u64,
    /// Says which entries stand at the places up to there: equal prints, equal entries. Where no device was cloned, it is
    /// the hash of the last of them.
    pub print: EntryHash,
    /// The prints up to some lower places, in short: where the series differ, they are sent from the last mark that does
    /// not. Told in a greeting only.
    #[serde(default, skip_serializing_if = "BTreeMap::is_empty")]
    pub marks: BTreeMap<u64, u64>,
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
    /// How far a book reaches, without marks.
    pub fn of(state: &BookState) -> Self {
        let all = state.book.series.iter().filter(|(_, series)| series.contiguous() > 0);
        let extent = |series: &Series| {
            let sequence = series.contiguous();
            Extent { sequence, print: series.print(sequence), marks: BTreeMap::new() }
        };
        Self(all.map(|(device, series)| (*device, extent(series))).take(DEVICES_MAX).collect())
    }

    /// How far a book reaches, with marks.
    pub fn with_marks(state: &BookState) -> Self {
        let mut have = Self::of(state);
        for (device, extent) in &mut have.0 {
            if let Some(series) = state.book.series.get(device) {
                extent.marks =
                    mark_places(extent.sequence).map(|place| (place, mark(series, place))).collect();
            }
        }
        have
    }

    /// Takes in what was told later. A book only grows, so that a lower reach is old news that was late.
    pub(crate) fn learn(&mut self, told: &Have) {
        for (device, extent) in &told.0 {
            // However much is told in however many pieces, no more is remembered than one book may tell.
            if self.0.len() == DEVICES_MAX && !self.0.contains_key(device) {
                continue;
            }
            let known = self.0.entry(*device).or_insert_with(|| extent.clone());
            if known.sequence <= extent.sequence {
                (known.sequence, known.print) = (extent.sequence, extent.print);
                // Marks stay true: what was there is there.
                if !extent.marks.is_empty() {
                    known.marks.clone_from(&extent.marks);
                }
            }
        }
    }

    /// Whether two books reach equally far and hold the same up to there.
    pub(crate) fn is_even_with(&self, other: &Have) -> bool {
        let prints = |have: &Have| -> Vec<(DeviceId, u64, EntryHash)> {
            have.0.iter().map(|(device, extent)| (*device, extent.sequence, extent.print)).collect()
        };
        prints(self) == prints(other)
    }

    /// The sequence from which on a book with this reach lacks entries of a device.
    ///
    /// Where the two differ further below, the device was cloned, and the series is sent from where they still agree.
    fn lacks_from(&self, device: DeviceId, series: &Series) -> u64 {
        let Some(theirs) = self.0.get(&device) else { return 1 };
        let marked = theirs.marks.iter().take_while(|(place, _)| **place <= series.contiguous());
        let agrees = |(place, print): &(&u64, &u64)| mark(series, **place) == **print;
        let differs = match theirs.sequence.cmp(&series.contiguous()) {
            Ordering::Greater => !marked.clone().all(|marked| agrees(&marked)),
            _ => series.print(theirs.sequence) != theirs.print,
        };
        if differs {
            return marked.take_while(agrees).last().map_or(1, |(place, _)| place.saturating_add(1));
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
            series.from(self.lacks_from(*device, series).max(sent))
        });
        let entries = entries.map(|record| Record::stored(record));
        entries.filter(move |stored| after.is_none_or(|after| Place::of(stored) > after))
    }
}

/// The places that are marked in a series of a length: evenly spread, below its end.
fn mark_places(sequence: u64) -> impl Iterator<Item = u64> {
    let step = sequence.div_ceil(MARKS_MAX).max(1);
    (1..MARKS_MAX).map(move |number| number.saturating_mul(step)).take_while(move |place| *place < sequence)
}

/// The print up to a place, cut to 48 bits, which any reader of JSON takes for the very number. It only tells where to
/// begin; that all arrived is told by the whole print.
fn mark(series: &Series, place: u64) -> u64 {
    let EntryHash(bytes) = series.print(place);
    bytes[..6].iter().fold(0, |mark, byte| mark << 8 | u64::from(*byte))
}

impl Place {
    /// The place of an entry.
    pub(crate) fn of(stored: &StoredEntry) -> Self {
        Self { device: stored.entry.device, sequence: stored.entry.sequence, hash: stored.hash }
    }
}
