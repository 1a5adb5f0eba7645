//! Filing entries.

use std::collections::{BTreeMap, BTreeSet};

use book::{EntryHash, FarmId};
use deadpool_postgres::Transaction;
use tokio_postgres::types::ToSql;

use super::row::hash;
use crate::error::StoreError;
use crate::report::{AppendReport, Clash};
use crate::row::{Columns, Row};
use crate::tally;

const LOCK_FARM: &str = "SELECT 1 FROM farm WHERE farm = $1 FOR NO KEY UPDATE";

const INSERT: &str = "
    INSERT INTO entry (farm, id, hash, device, sequence, day, kind, clock_millis, clock_counter, bytes)
    SELECT $1, * FROM unnest(
        $2::bytea[], $3::bytea[], $4::bytea[], $5::int8[], $6::text[], $7::text[], $8::int8[], $9::int8[], $10::bytea[])
    ON CONFLICT (farm, id, hash) DO NOTHING
    RETURNING hash";

const ADD_TO_DEVICES: &str = "
    INSERT INTO device AS old (farm, device, entry_count, contiguous)
    SELECT $1, device, entry_count, 0 FROM unnest($2::bytea[], $3::int8[]) AS new (device, entry_count)
    ON CONFLICT (farm, device) DO UPDATE SET entry_count = old.entry_count + excluded.entry_count";

const CLOSE_GAPS: &str = "
    UPDATE device SET contiguous = (
        WITH RECURSIVE walk (place) AS (
            SELECT device.contiguous
            UNION ALL
            SELECT place + 1 FROM walk WHERE EXISTS (
                SELECT 1 FROM entry
                WHERE entry.farm = device.farm AND entry.device = device.device AND sequence = place + 1))
        SELECT max(place) FROM walk)
    WHERE farm = $1 AND device = ANY ($2)";

const OF_SAME_ID: &str = "
    SELECT DISTINCT new.hash, entry.hash
    FROM unnest($2::bytea[], $3::bytea[]) AS new (hash, id)
    JOIN entry ON entry.farm = $1 AND entry.id = new.id AND entry.hash <> new.hash
    ORDER BY 1, 2";

const OF_SAME_PLACE: &str = "
    SELECT DISTINCT new.hash, entry.hash
    FROM unnest($2::bytea[], $3::bytea[], $4::int8[]) AS new (hash, device, sequence)
    JOIN entry ON entry.farm = $1 AND entry.device = new.device AND entry.sequence = new.sequence
        AND entry.hash <> new.hash
    ORDER BY 1, 2";

/// Files the rows. Appends to one farm wait for each other, for two that do not see each other could neither tell that
/// they clash nor close each other's gaps.
pub(super) async fn append(
    transaction: &Transaction<'_>,
    farm: FarmId,
    rows: &[Row],
) -> Result<AppendReport, StoreError> {
    lock_farm(transaction, farm).await?;
    let added = insert(transaction, farm, rows).await?;
    raise_devices(transaction, farm, rows, &added).await?;
    Ok(AppendReport {
        added: added.len(),
        already_there: rows.len() - added.len(),
        same_id: same_id(transaction, farm, rows).await?,
        same_place: same_place(transaction, farm, rows).await?,
    })
}

/// Keeps other writers of the farm waiting until the transaction ends.
pub(super) async fn lock_farm(transaction: &Transaction<'_>, farm: FarmId) -> Result<(), StoreError> {
    let statement = transaction.prepare_cached(LOCK_FARM).await?;
    match transaction.query_opt(&statement, &[&bytes(&farm.0)]).await? {
        Some(_) => Ok(()),
        None => Err(StoreError::UnknownFarm { farm }),
    }
}

async fn insert(
    transaction: &Transaction<'_>,
    farm: FarmId,
    rows: &[Row],
) -> Result<BTreeSet<EntryHash>, StoreError> {
    let statement = transaction.prepare_cached(INSERT).await?;
    let returned = transaction
        .query(
            &statement,
            &[
                &bytes(&farm.0),
                &column(rows, |it| bytes(&it.id.0)),
                &column(rows, |it| &it.hash.0[..]),
                &column(rows, |it| bytes(&it.device.0)),
                &column(rows, |it| it.sequence),
                &column(rows, |it| it.day.as_str()),
                &column(rows, |it| it.kind.as_str()),
                &column(rows, |it| it.clock_millis),
                &column(rows, |it| it.clock_counter),
                &rows.iter().map(|row| row.bytes.as_slice()).collect::<Vec<_>>(),
            ],
        )
        .await?;
    returned.iter().map(|row| hash(row, 0)).collect()
}

async fn raise_devices(
    transaction: &Transaction<'_>,
    farm: FarmId,
    rows: &[Row],
    added: &BTreeSet<EntryHash>,
) -> Result<(), StoreError> {
    let counts = tally::by_device(added_once(rows, added));
    let devices: Vec<&[u8]> = counts.keys().map(|device| bytes(&device.0)).collect();
    let counts: Vec<i64> = counts.values().copied().collect();
    let farm = bytes(&farm.0);
    let add = transaction.prepare_cached(ADD_TO_DEVICES).await?;
    transaction.execute(&add, &[&farm, &devices, &counts]).await?;
    let close = transaction.prepare_cached(CLOSE_GAPS).await?;
    transaction.execute(&close, &[&farm, &devices]).await?;
    Ok(())
}

/// The new rows, each once even where one call sent it twice.
fn added_once<'a>(rows: &'a [Row], added: &BTreeSet<EntryHash>) -> Vec<&'a Columns> {
    let mut left = added.clone();
    rows.iter().map(|row| &row.columns).filter(|it| left.remove(&it.hash)).collect()
}

async fn same_id(
    transaction: &Transaction<'_>,
    farm: FarmId,
    rows: &[Row],
) -> Result<Vec<Clash>, StoreError> {
    let ids = column(rows, |it| bytes(&it.id.0));
    let hashes = column(rows, |it| &it.hash.0[..]);
    clashes(transaction, OF_SAME_ID, &[&bytes(&farm.0), &hashes, &ids], rows).await
}

async fn same_place(
    transaction: &Transaction<'_>,
    farm: FarmId,
    rows: &[Row],
) -> Result<Vec<Clash>, StoreError> {
    let hashes = column(rows, |it| &it.hash.0[..]);
    let devices = column(rows, |it| bytes(&it.device.0));
    let sequences = column(rows, |it| it.sequence);
    clashes(transaction, OF_SAME_PLACE, &[&bytes(&farm.0), &hashes, &devices, &sequences], rows).await
}

async fn clashes(
    transaction: &Transaction<'_>,
    sql: &str,
    params: &[&(dyn ToSql + Sync)],
    rows: &[Row],
) -> Result<Vec<Clash>, StoreError> {
    let statement = transaction.prepare_cached(sql).await?;
    let mut others = BTreeMap::<EntryHash, Vec<EntryHash>>::new();
    for row in transaction.query(&statement, params).await? {
        others.entry(hash(&row, 0)?).or_default().push(hash(&row, 1)?);
    }
    let of_row = |row: &Row| {
        let others = others.get(&row.columns.hash).cloned().unwrap_or_default();
        Clash::of(&row.columns, others)
    };
    Ok(rows.iter().filter_map(of_row).collect())
}

fn column<'a, T>(rows: &'a [Row], value: impl Fn(&'a Columns) -> T) -> Vec<T> {
    rows.iter().map(|row| value(&row.columns)).collect()
}

fn bytes(id: &uuid::Uuid) -> &[u8] {
    id.as_bytes()
}
