//! Ids and instants of the demo. Nothing here is drawn: the same at every start.

use book::{BatchId, EntryId, HouseId};
use quantity::CivilDay;
use uuid::{Builder, Uuid};

/// The demo's clock, milliseconds since 1970 UTC: ten in the morning of 8 October 2027 at the farm.
pub const NOW_MILLIS: i64 = 1_822_982_400_000;

/// Hours that the farm is ahead of UTC, by its longitude.
const AHEAD_H: i64 = 2;

const MILLIS_AN_HOUR: i64 = 3_600_000;

/// The instant of an hour of a day at the farm.
pub(crate) fn millis(day: CivilDay, hour: i32) -> i64 {
    (i64::from(day.number()) * 24 + i64::from(hour) - AHEAD_H) * MILLIS_AN_HOUR
}

/// The houses: made up once.
pub(crate) const LONG_HOUSE: HouseId = HouseId(Uuid::from_u128(0x019d_0000_0000_7000_8000_0000_0000_0001));
/// The smaller one.
pub(crate) const LOWER_HOUSE: HouseId = HouseId(Uuid::from_u128(0x019d_0000_0000_7000_8000_0000_0000_0002));

/// The batch of a row of the table, by when its plan was begun.
pub(crate) fn batch(row: usize, millis: i64) -> BatchId {
    BatchId(made(millis, 0, row))
}

/// The entry of a batch, by its place among all that was written of it; what belongs to no batch has the last row.
pub(crate) fn entry(row: usize, at: usize, millis: i64) -> EntryId {
    EntryId(made(millis, at + 1, row))
}

/// A version 7 UUID whose random part is counted.
fn made(millis: i64, at: usize, row: usize) -> Uuid {
    let mut counted = [0; 10];
    counted[2..6].copy_from_slice(&(at as u32).to_be_bytes());
    counted[6..].copy_from_slice(&(row as u32).to_be_bytes());
    Builder::from_unix_timestamp_millis(millis.unsigned_abs(), &counted).into_uuid()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn it_is_ten_in_the_morning_on_day_24() {
        let placement = CivilDay::new(2027, 9, 14).unwrap();
        assert_eq!(millis(placement.plus_days(24), 10), NOW_MILLIS);
    }

    #[test]
    fn ids_are_of_version_7_and_each_its_own() {
        assert_eq!(batch(1, NOW_MILLIS).0.get_version_num(), 7);
        assert_ne!(entry(1, 0, 5), entry(0, 1, 5));
        assert_ne!(batch(1, 5).0, entry(1, 0, 5).0);
    }
}
