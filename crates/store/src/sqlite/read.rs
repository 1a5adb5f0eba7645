//! Reading entries.

use std::collections::BTreeMap;

use book::StoredEntry;
use book::access::Access;
use book::entry::{DeviceId, EntryHash, EntryId, FarmId};
use rusqlite::{Connection, OptionalExtension, Params, params};
use uuid::Uuid;

use crate::check::Check;
use crate::error::StoreError;
use crate::frame::{Frame, FrameLimit};
use crate::report::{DeviceTip, Reach};
use crate::row::{self, Columns, Row};

const ALL: &str = "SELECT id, hash, bytes FROM entry WHERE farm = ?1 ORDER BY device, sequence, hash";

// Without being told, SQLite takes the index that gives the order, and reads the whole farm along it.
const ABOUT: &str = "
    SELECT id, hash, bytes FROM entry INDEXED BY entry_by_subject
    WHERE farm = ?1 AND subject IN (SELECT value FROM json_each(?2))
    ORDER BY device, sequence, hash";

const AFTER: &str = "
    SELECT id, hash, bytes FROM entry
    WHERE farm = ?1 AND device = ?2 AND sequence > ?3
    ORDER BY sequence, hash";

// Past all indexes, which may themselves be damaged and hide rows.
const EVERY_COLUMN: &str = "
    SELECT id, hash, device, sequence, subject, day, kind, clock_millis, clock_counter, bytes
    FROM entry NOT INDEXED WHERE farm = ?1";

const TIP: &str = "
    SELECT sequence, hash, clock_millis, clock_counter FROM entry
    WHERE farm = ?1 AND device = ?2
    ORDER BY sequence DESC, hash DESC LIMIT 1";

const DEVICES: &str = "
    SELECT device, entry_count, contiguous, clock_millis, clock_counter
    FROM device WHERE farm = ?1 ORDER BY device";

pub(crate) fn all(db: &Connection, farm: FarmId) -> Result<Vec<StoredEntry>, StoreError> {
    entries(db, ALL, params![farm.0.as_bytes()])
}

pub(crate) fn about(
    db: &Connection,
    farm: FarmId,
    subjects: &[String],
) -> Result<Vec<StoredEntry>, StoreError> {
    let list = serde_json::Value::from(subjects).to_string();
    entries(db, ABOUT, params![farm.0.as_bytes(), list])
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

pub(crate) fn device_tip(db: &Connection, access: &Access) -> Result<Option<DeviceTip>, StoreError> {
    let mut statement = db.prepare_cached(TIP)?;
    let (farm, device) = (access.farm(), access.device());
    let tip = statement.query_row(params![farm.0.as_bytes(), device.0.as_bytes()], |row| {
        Ok(DeviceTip {
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
        let clock = row::clock(row.get(3)?, row.get(4)?);
        reach.add(DeviceId(Uuid::from_bytes(row.get(0)?)), row.get(1)?, row.get(2)?, clock);
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
    Ok(reach(db, farm)?.seen.into_keys().collect())
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
        subject: row.get(4)?,
        day: row.get(5)?,
        kind: row.get(6)?,
        clock_millis: row.get(7)?,
        clock_counter: row.get(8)?,
    };
    Ok(Row { columns, bytes: row.get(9)? })
}
