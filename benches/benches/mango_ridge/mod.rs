//! The book of the invented farm, and the batch that runs in it.

use book::{Access, BatchId, BookState, DeviceId, FarmId, PersonId, Role, Subject, fold};
use quantity::CivilDay;
use uuid::Uuid;

const FARM: FarmId = FarmId(Uuid::from_u128(1));

/// The invented farm's book.
pub fn state() -> BookState {
    let someone = Uuid::from_u128(2);
    let access = Access::granted(FARM, PersonId(someone), DeviceId(someone), Role::Owner);
    fold(FARM, demo::Farm::mango_ridge().unwrap().entries(&access).unwrap())
}

/// The batch that was placed last, and the last day written of it.
pub fn running(state: &BookState) -> (BatchId, CivilDay) {
    let placed = state.counting_of("chicks-placed");
    let last = placed.iter().max_by_key(|record| record.entry().day).unwrap();
    let Subject::Batch(batch) = last.entry().subject else { panic!("chicks of no batch") };
    let days = state.counting_about(Subject::Batch(batch)).map(|record| record.entry().day);
    (batch, days.max().unwrap())
}
