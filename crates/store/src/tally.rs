//! What new entries add to the row of their device.

use std::collections::BTreeMap;

use book::entry::DeviceId;

use crate::row::Columns;

/// The count and the highest clock of a device's new entries.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) struct Tally {
    pub(crate) entries: i64,
    pub(crate) clock: (i64, i64),
}

/// Tallies by device.
pub(crate) fn by_device<'a>(added: impl IntoIterator<Item = &'a Columns>) -> BTreeMap<DeviceId, Tally> {
    let mut tallies = BTreeMap::new();
    for columns in added {
        let clock = (columns.clock_millis, columns.clock_counter);
        let tally = tallies.entry(columns.device).or_insert(Tally { entries: 0, clock });
        tally.entries += 1;
        tally.clock = tally.clock.max(clock);
    }
    tallies
}
