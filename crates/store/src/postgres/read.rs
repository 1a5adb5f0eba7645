//! Reading entries.

use std::collections::BTreeMap;

use book::{Access, DeviceId, FarmId, SeriesEnd, StoredEntry};
use deadpool_postgres::Client;
use tokio::task::spawn_blocking;
use tokio_postgres::Row as Answer;
use tokio_postgres::types::ToSql;

use super::row::{entry, full, hash, uuid};
use crate::check::Check;
use crate::error::StoreError;
use crate::frame::{Frame, FrameLimit};
use crate::report::Reach;
use crate::row;

const ALL: &str = "SELECT id, hash, bytes FROM entry WHERE farm = $1 ORDER BY device, sequence, hash";

/// Device by device, so that each costs what it has to send and no more; never parting two at the same place.
const SINCE: &str = "
    SELECT id, hash, bytes FROM (
        SELECT missing.* FROM device
        LEFT JOIN unnest($2::bytea[], $3::int8[]) AS other (device, seen) ON other.device = device.device
        CROSS JOIN LATERAL (
            SELECT id, hash, bytes, entry.device, sequence FROM entry
            WHERE entry.farm = device.farm AND entry.device = device.device AND sequence > coalesce(other.seen, 0)
            ORDER BY sequence FETCH FIRST ($4) ROWS WITH TIES
        ) AS missing
        WHERE device.farm = $1
        ORDER BY device, sequence FETCH FIRST ($4) ROWS WITH TIES
    ) AS frame
    ORDER BY device, sequence, hash";

const EVERY_COLUMN: &str = "
    SELECT id, hash, device, sequence, day, kind, clock_millis, clock_counter, bytes
    FROM entry WHERE farm = $1";

const TIP: &str = "
    SELECT sequence, hash, clock_millis, clock_counter FROM entry
    WHERE farm = $1 AND device = $2
    ORDER BY sequence DESC, hash LIMIT 1";

const DEVICES: &str = "SELECT device, entry_count, contiguous FROM device WHERE farm = $1";

pub(super) async fn all(client: &Client, farm: FarmId) -> Result<Vec<StoredEntry>, StoreError> {
    let rows = query(client, ALL, &[&farm.0.as_bytes().as_slice()]).await?;
    decode(rows, |rows| rows.iter().map(entry).collect()).await
}

pub(super) async fn since(
    client: &Client,
    farm: FarmId,
    seen: &BTreeMap<DeviceId, u64>,
    limit: FrameLimit,
) -> Result<Vec<StoredEntry>, StoreError> {
    let places = row::places(seen);
    let devices: Vec<&[u8]> = places.keys().map(|device| device.0.as_bytes().as_slice()).collect();
    let seen: Vec<i64> = places.values().copied().collect();
    let most = i64::try_from(limit.entries.max(1)).unwrap_or(i64::MAX);
    let rows = query(client, SINCE, &[&farm.0.as_bytes().as_slice(), &devices, &seen, &most]).await?;
    decode(rows, move |rows| frame(rows, limit)).await
}

pub(super) async fn device_tip(client: &Client, access: &Access) -> Result<Option<SeriesEnd>, StoreError> {
    let (farm, device) = (access.farm(), access.device());
    let key: [&(dyn ToSql + Sync); 2] = [&farm.0.as_bytes().as_slice(), &device.0.as_bytes().as_slice()];
    let rows = query(client, TIP, &key).await?;
    rows.first().map(tip).transpose()
}

pub(super) async fn reach(client: &Client, farm: FarmId) -> Result<Reach, StoreError> {
    let mut reach = Reach::default();
    for row in query(client, DEVICES, &[&farm.0.as_bytes().as_slice()]).await? {
        reach.add(DeviceId(uuid(&row, 0)?), row.try_get(1)?, row.try_get(2)?);
    }
    Ok(reach)
}

pub(super) async fn check(client: &Client, farm: FarmId) -> Result<Check, StoreError> {
    let rows = query(client, EVERY_COLUMN, &[&farm.0.as_bytes().as_slice()]).await?;
    decode(rows, |rows| {
        let mut check = Check::default();
        rows.iter().for_each(|row| check.add_row(full(row)));
        Ok(check)
    })
    .await
}

async fn query(
    client: &Client,
    sql: &str,
    params: &[&(dyn ToSql + Sync)],
) -> Result<Vec<Answer>, StoreError> {
    let statement = client.prepare_cached(sql).await?;
    Ok(client.query(&statement, params).await?)
}

/// Reading a long book takes longer than an async worker may be held.
async fn decode<T: Send + 'static>(
    rows: Vec<Answer>,
    read: impl FnOnce(&[Answer]) -> Result<T, StoreError> + Send + 'static,
) -> Result<T, StoreError> {
    spawn_blocking(move || read(&rows)).await.map_err(|_| StoreError::Panicked)?
}

fn frame(rows: &[Answer], limit: FrameLimit) -> Result<Vec<StoredEntry>, StoreError> {
    let mut frame = Frame::new(limit);
    for row in rows {
        if !frame.take(entry(row)?) {
            break;
        }
    }
    Ok(frame.into_entries())
}

fn tip(row: &Answer) -> Result<SeriesEnd, StoreError> {
    Ok(SeriesEnd {
        sequence: row.try_get::<_, i64>(0)?.unsigned_abs(),
        hash: hash(row, 1)?,
        clock: row::clock(row.try_get(2)?, row.try_get(3)?),
    })
}
