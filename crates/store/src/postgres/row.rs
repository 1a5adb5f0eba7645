//! Values out of PostgreSQL's rows.

use book::{DeviceId, EntryHash, EntryId, StoredEntry};
use tokio_postgres::Row as Answer;
use uuid::Uuid;

use crate::error::StoreError;
use crate::row::{self, Columns, Row};

pub(super) fn uuid(row: &Answer, column: usize) -> Result<Uuid, StoreError> {
    Uuid::from_slice(row.try_get(column)?).map_err(|_| wrong_size(column))
}

pub(super) fn hash(row: &Answer, column: usize) -> Result<EntryHash, StoreError> {
    let bytes: &[u8] = row.try_get(column)?;
    bytes.try_into().map(EntryHash).map_err(|_| wrong_size(column))
}

/// An entry from the columns id, hash and bytes.
pub(super) fn entry(row: &Answer) -> Result<StoredEntry, StoreError> {
    Ok(row::read(EntryId(uuid(row, 0)?), hash(row, 1)?, row.try_get(2)?)?)
}

/// A row from all columns, in the order of the table without the farm.
pub(super) fn full(row: &Answer) -> Result<Row, StoreError> {
    let columns = Columns {
        id: EntryId(uuid(row, 0)?),
        hash: hash(row, 1)?,
        device: DeviceId(uuid(row, 2)?),
        sequence: row.try_get(3)?,
        day: row.try_get(4)?,
        kind: row.try_get(5)?,
        clock_millis: row.try_get(6)?,
        clock_counter: row.try_get(7)?,
    };
    Ok(Row { columns, bytes: row.try_get(8)? })
}

fn wrong_size(column: usize) -> StoreError {
    StoreError::Corrupt {
        detail: format!("column {column} of an answer has another size than ids and hashes have"),
    }
}
