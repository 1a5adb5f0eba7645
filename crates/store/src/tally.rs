//! What new entries add to the rows of their devices.

use std::collections::BTreeMap;

use book::DeviceId;

use crate::row::Columns;

/// How many new entries each device has.
pub(crate) fn by_device<'a>(added: impl IntoIterator<Item = &'a Columns>) -> BTreeMap<DeviceId, i64> {
    let mut counts = BTreeMap::new();
    for columns in added {
        *counts.entry(columns.device).or_default() += 1;
    }
    counts
}
