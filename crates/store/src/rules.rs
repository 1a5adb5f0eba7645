//! What may enter a store, whatever the engine.

use book::{Access, StoredEntry};

use crate::error::StoreError;
use crate::row::Row;

/// The most bytes of one entry. A form makes some hundreds, an adopted plan with its daily expectations some ten
/// thousand. Our judgement.
pub const ENTRY_BYTES_MAX: usize = 1024 * 1024;

/// Viewers read only.
pub(crate) fn may_write(access: &Access) -> Result<(), StoreError> {
    if access.may_write() {
        return Ok(());
    }
    Err(StoreError::Forbidden { role: access.role() })
}

/// The rows to be filed for the entries, all of them or none.
pub(crate) fn admit(access: &Access, entries: Vec<StoredEntry>) -> Result<Vec<Row>, StoreError> {
    may_write(access)?;
    entries.into_iter().map(|stored| admit_one(access, stored)).collect()
}

fn admit_one(access: &Access, stored: StoredEntry) -> Result<Row, StoreError> {
    let (entry, bytes) = (stored.entry.id, stored.bytes.len());
    if stored.entry.farm != access.farm() {
        return Err(StoreError::OtherFarm { entry, found: stored.entry.farm, expected: access.farm() });
    }
    if bytes > ENTRY_BYTES_MAX {
        return Err(StoreError::EntryTooLarge { entry, bytes, limit: ENTRY_BYTES_MAX });
    }
    Row::of(stored)
}
