//! Filing entries.

use book::{DeviceId, EntryHash, FarmId};
use rusqlite::{Connection, Params, params};

use super::side::require_farm;
use crate::error::StoreError;
use crate::report::{AppendReport, Clash};
use crate::row::{Columns, Row};
use crate::tally;

const INSERT: &str = "
    INSERT INTO entry (farm, id, hash, device, sequence, day, kind, clock_millis, clock_counter, bytes)
    VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7, ?8, ?9, ?10)
    ON CONFLICT (farm, id, hash) DO NOTHING";

const ADD_TO_DEVICE: &str = "
    INSERT INTO device (farm, device, entry_count, contiguous) VALUES (?1, ?2, ?3, 0)
    ON CONFLICT (farm, device) DO UPDATE SET entry_count = entry_count + excluded.entry_count";

const CLOSE_GAPS: &str = "
    UPDATE device SET contiguous = (
        WITH RECURSIVE walk (place) AS (
            SELECT device.contiguous
            UNION ALL
            SELECT place + 1 FROM walk WHERE EXISTS (
                SELECT 1 FROM entry
                WHERE entry.farm = device.farm AND entry.device = device.device AND sequence = place + 1))
        SELECT max(place) FROM walk)
    WHERE farm = ?1 AND device = ?2";

const OF_SAME_ID: &str = "SELECT hash FROM entry WHERE farm = ?1 AND id = ?2 AND hash <> ?3 ORDER BY hash";

const OF_SAME_PLACE: &str = "
    SELECT hash FROM entry
    WHERE farm = ?1 AND device = ?2 AND sequence = ?3 AND hash <> ?4
    ORDER BY hash";

/// Files the rows in the transaction that is open. All are filed before any clash is looked for, so that two rows of one
/// call that clash are both told.
pub(crate) fn append(db: &Connection, farm: FarmId, rows: &[Row]) -> Result<AppendReport, StoreError> {
    require_farm(db, farm)?;
    let mut added = Vec::new();
    for row in rows {
        if insert(db, farm, row)? {
            added.push(&row.columns);
        }
    }
    let mut report = AppendReport {
        added: added.len(),
        already_there: rows.len() - added.len(),
        ..AppendReport::default()
    };
    for (device, count) in tally::by_device(added) {
        add_to_device(db, farm, device, count)?;
    }
    for row in rows {
        note_clashes(db, farm, &row.columns, &mut report)?;
    }
    Ok(report)
}

fn insert(db: &Connection, farm: FarmId, row: &Row) -> Result<bool, StoreError> {
    let it = &row.columns;
    let changed = db.prepare_cached(INSERT)?.execute(params![
        farm.0.as_bytes(),
        it.id.0.as_bytes(),
        it.hash.0,
        it.device.0.as_bytes(),
        it.sequence,
        it.day,
        it.kind,
        it.clock_millis,
        it.clock_counter,
        row.bytes,
    ])?;
    Ok(changed == 1)
}

fn add_to_device(db: &Connection, farm: FarmId, device: DeviceId, count: i64) -> Result<(), StoreError> {
    let (farm, device) = (farm.0.as_bytes(), device.0.as_bytes());
    db.prepare_cached(ADD_TO_DEVICE)?.execute(params![farm, device, count])?;
    db.prepare_cached(CLOSE_GAPS)?.execute(params![farm, device])?;
    Ok(())
}

fn note_clashes(
    db: &Connection,
    farm: FarmId,
    it: &Columns,
    report: &mut AppendReport,
) -> Result<(), StoreError> {
    let farm = farm.0.as_bytes();
    let same_id = hashes(db, OF_SAME_ID, params![farm, it.id.0.as_bytes(), it.hash.0])?;
    let same_place =
        hashes(db, OF_SAME_PLACE, params![farm, it.device.0.as_bytes(), it.sequence, it.hash.0])?;
    report.same_id.extend(Clash::of(it, same_id));
    report.same_place.extend(Clash::of(it, same_place));
    Ok(())
}

fn hashes(db: &Connection, sql: &str, params: impl Params) -> Result<Vec<EntryHash>, StoreError> {
    let mut statement = db.prepare_cached(sql)?;
    let found = statement.query_map(params, |row| row.get(0).map(EntryHash))?;
    Ok(found.collect::<Result<_, _>>()?)
}
