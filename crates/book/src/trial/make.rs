//! Entries to build on.

use std::collections::BTreeMap;

use quantity::CivilDay;
use serde_json::json;
use uuid::Uuid;

use crate::access::{Access, Role};
use crate::compose::{Draft, SeriesEnd, compose};
use crate::entry::*;
use crate::fold::BookState;
use crate::kind::Slot;

/// The farm of all tests.
pub(crate) const FARM: FarmId = FarmId(Uuid::from_u128(0xfa));

/// The id with a number.
pub(crate) fn id(number: u128) -> EntryId {
    EntryId(Uuid::from_u128(number))
}

/// The device with a number.
pub(crate) fn device(number: u128) -> DeviceId {
    DeviceId(Uuid::from_u128(0xd0_0000 + number))
}

/// A day some days after the first of March 2027.
pub(crate) fn day(number: i32) -> CivilDay {
    CivilDay::new(2027, 3, 1).unwrap().plus_days(number)
}

/// A body with one answer.
pub(crate) fn body(key: &str, value: impl Into<serde_json::Value>) -> Body {
    BTreeMap::from([(key.to_owned(), Answer { typed: None, value: value.into() })])
}

/// A note about the farm, of good shape: the first entry of the device that has the entry's number.
pub(crate) fn entry(number: u128) -> Entry {
    Entry {
        id: id(number),
        farm: FARM,
        subject: Subject::Farm,
        day: day(0),
        device: device(number),
        sequence: 1,
        previous: None,
        clock: HybridClock { millis: 1_800_000_000_000 + number as i64 * 1000, counter: 0 },
        person: PersonId(Uuid::from_u128(0xbe)),
        kind: "note".to_owned(),
        body_version: 1,
        body: body("text", json!(format!("note {number}"))),
        supersedes: Vec::new(),
        withdrawn: false,
        reason: None,
        seen: BTreeMap::new(),
    }
}

/// The house of all tests.
pub(crate) const HOUSE: Subject = Subject::House(HouseId(Uuid::from_u128(0x40)));

/// The batch of all tests.
pub(crate) const BATCH: Subject = Subject::Batch(BatchId(Uuid::from_u128(0xba)));

/// The slot of the house.
pub(crate) fn house_slot() -> Slot {
    Slot::of("house", HOUSE)
}

/// A description of the house, on day 0, by its length.
pub(crate) fn house(number: u128, length_m: f64) -> Draft {
    Draft::new(id(number), "house", HOUSE, day(0), body("length_m", length_m))
}

/// Prices of a day, by what a chick costs.
pub(crate) fn prices(number: u128, on: i32, chick: u32) -> Draft {
    Draft::new(id(number), "prices", Subject::Farm, day(on), body("chick", chick))
}

/// A note about the batch.
pub(crate) fn note(number: u128, on: i32, text: &str) -> Draft {
    Draft::new(id(number), "note", BATCH, day(on), body("text", text))
}

/// The answer that counts for a key of a slot.
pub(crate) fn answer(state: &BookState, slot: &Slot, key: &str) -> Option<serde_json::Value> {
    state.answers(slot)?.get(key).map(|answer| answer.value.clone())
}

/// A phone with its own copy of the book, which it gets from others when told to.
pub(crate) struct Phone {
    pub(crate) access: Access,
    pub(crate) end: Option<SeriesEnd>,
    pub(crate) now_millis: i64,
    pub(crate) state: BookState,
}

impl Phone {
    pub(crate) fn new(number: u128) -> Self {
        let person = PersonId(Uuid::from_u128(0xbe00 + number));
        Self {
            access: Access::granted(FARM, person, device(number), Role::Helper),
            end: None,
            now_millis: 1_800_000_000_000,
            state: BookState::new(FARM),
        }
    }

    /// Writes a draft into its own book, a minute after the last.
    pub(crate) fn write(&mut self, draft: Draft) -> StoredEntry {
        self.now_millis += 60_000;
        let sight = self.state.sight(self.now_millis);
        let stored = compose(&self.access, self.end, draft, &sight, self.now_millis).unwrap();
        self.end = Some(SeriesEnd::at(&stored));
        self.state.append(stored.clone());
        stored
    }

    /// Gets all that another phone has.
    pub(crate) fn hear(&mut self, other: &Phone) {
        for record in other.state.all_records() {
            self.state.append(record.stored().clone());
        }
    }
}
