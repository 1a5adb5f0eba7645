//! Reading entries.

use std::collections::BTreeMap;

use book::{Access, DeviceId, EntryHash, EntryId, FarmId, SeriesEnd, StoredEntry};
use rusqlite::{Connection, OptionalExtension, Params, params};
use uuid::Uuid;

use crate::check::Check;
use crate::error::StoreError;
use crate::frame::{Frame, FrameLimit};
use crate::report::Reach;
use crate::row::{self, Columns, Row};

const ALL: &str = "SELECT id, hash, bytes FROM entry WHERE farm = ?1 ORDER BY device, sequence, hash";

const AFTER: &str = "
    SELECT id, hash, bytes FROM entry
    WHERE farm = ?1 AND device = ?2 AND sequence > ?3
    ORDER BY sequence, hash";

// Past all indexes, which may themselves be damaged and hide rows.
const EVERY_COLUMN: &str = "
    SELECT id, hash, device, sequence, day, kind, clock_millis, clock_counter, bytes
    FROM entry NOT INDEXED WHERE farm = ?1";

const TIP: &str = "
    SELECT sequence, hash, clock_millis, clock_counter FROM entry
    WHERE farm = ?1 AND device = ?2
    ORDER BY sequence DESC, hash LIMIT 1";

const DEVICES: &str = "SELECT device, entry_count, contiguous FROM device WHERE farm = ?1 ORDER BY device";

pub(crate) fn all(db: &Connection, farm: FarmId) -> Result<Vec<StoredEntry>, StoreError> {
    entries(db, ALL, params![farm.0.as_bytes()])
}

/// Device by device, so that each costs what it has to send and no more.
pub(crate) fn since(
    db: &Connection,
    farm: FarmId,
    seen: &BTreeMap<DeviceId, i64>,
    limit: FrameLimit,
) -> Result<Vec<StoredEntry>, StoreError> {
    let snapshot = db.unchecked_transaction()?;
    let mut frame = Frame::new(limit);
    for device in devices(&snapshot, farm)? {
        let after = seen.get(&device).copied().unwrap_or(0);
        if !fill(&snapshot, &mut frame, farm, device, after)? {
            break;
        }
    }
    Ok(frame.into_entries())
}

pub(crate) fn device_tip(db: &Connection, access: &Access) -> Result<Option<SeriesEnd>, StoreError> {
    let mut statement = db.prepare_cached(TIP)?;
    let (farm, device) = (access.farm(), access.device());
    let tip = statement.query_row(params![farm.0.as_bytes(), device.0.as_bytes()], |row| {
        Ok(SeriesEnd {
            sequence: row.get::<_, i64>(0)?.unsigned_abs(),
            hash: EntryHash(row.get(1)?),
            clock: row::clock(row.get(2)?, row.get(3)?),
        })
    });
    Ok(tip.optional()?)
}

pub(crate) fn reach(db: &Connection, farm: FarmId) -> Result<Reach, StoreError> {
    let mut reach = Reach::default();
    let mut statement = db.prepare_cached(DEVICES)?;
    let mut rows = statement.query(params![farm.0.as_bytes()])?;
    while let Some(row) = rows.next()? {
        reach.add(DeviceId(Uuid::from_bytes(row.get(0)?)), row.get(1)?, row.get(2)?);
    }
    Ok(reach)
}

/// Every row of the farm, good or bad, and what the engine says of its file.
pub(crate) fn check(db: &Connection, farm: FarmId) -> Result<Check, StoreError> {
    let mut check = Check { engine: engine_faults(db)?, ..Check::default() };
    let mut statement = db.prepare_cached(EVERY_COLUMN)?;
    let mut rows = statement.query(params![farm.0.as_bytes()])?;
    loop {
        match rows.next() {
            Ok(Some(row)) => check.add_row(full_row(row)),
            Ok(None) => return Ok(check),
            // The rest cannot be reached over a broken page; what was read until here is still good.
            Err(error) => {
                check.engine.push(error.to_string());
                return Ok(check);
            }
        }
    }
}

/// What SQLite finds wrong with the pages of a file; empty when it is well.
pub(crate) fn engine_faults(db: &Connection) -> Result<Vec<String>, StoreError> {
    let mut statement = db.prepare("PRAGMA integrity_check(100)")?;
    let lines = statement.query_map([], |row| row.get::<_, String>(0))?;
    let faults: Vec<String> = lines.map(|line| line.unwrap_or_else(|error| error.to_string())).collect();
    Ok(if faults == ["ok"] { Vec::new() } else { faults })
}

fn fill(
    db: &Connection,
    frame: &mut Frame,
    farm: FarmId,
    device: DeviceId,
    after: i64,
) -> Result<bool, StoreError> {
    let mut statement = db.prepare_cached(AFTER)?;
    let mut rows = statement.query(params![farm.0.as_bytes(), device.0.as_bytes(), after])?;
    while let Some(row) = rows.next()? {
        if !frame.take(entry(row)?) {
            return Ok(false);
        }
    }
    Ok(true)
}

fn devices(db: &Connection, farm: FarmId) -> Result<Vec<DeviceId>, StoreError> {
    let mut statement = db.prepare_cached(DEVICES)?;
    let devices =
        statement.query_map(params![farm.0.as_bytes()], |row| Ok(DeviceId(Uuid::from_bytes(row.get(0)?))))?;
    Ok(devices.collect::<Result<_, _>>()?)
}

fn entries(db: &Connection, sql: &str, params: impl Params) -> Result<Vec<StoredEntry>, StoreError> {
    let mut statement = db.prepare_cached(sql)?;
    let mut rows = statement.query(params)?;
    let mut entries = Vec::new();
    while let Some(row) = rows.next()? {
        entries.push(entry(row)?);
    }
    Ok(entries)
}

fn entry(row: &rusqlite::Row<'_>) -> Result<StoredEntry, StoreError> {
    Ok(row::read(entry_id(row, 0)?, EntryHash(row.get(1)?), row.get(2)?)?)
}

fn entry_id(row: &rusqlite::Row<'_>, column: usize) -> rusqlite::Result<EntryId> {
    Ok(EntryId(Uuid::from_bytes(row.get(column)?)))
}

fn full_row(row: &rusqlite::Row<'_>) -> rusqlite::Result<Row> {
    let columns = Columns {
        id: entry_id(row, 0)?,
        hash: EntryHash(row.get(1)?),
        device: DeviceId(Uuid::from_bytes(row.get(2)?)),
        sequence: row.get(3)?,
        day: row.get(4)?,
        kind: row.get(5)?,
        clock_millis: row.get(6)?,
        clock_counter: row.get(7)?,
    };
    Ok(Row { columns, bytes: row.get(8)? })
}
