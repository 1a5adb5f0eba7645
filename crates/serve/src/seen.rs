//! What a form had before it: the entries whose answers it showed. It travels in the form, so that a correction names
//! what its author truly saw, and two people who changed the same thing apart are asked and not overwritten.

use book::{BookState, EntryId, HouseId, Record};
use uuid::Uuid;

use crate::before::slot_of;
use crate::call::Call;

/// The form field that carries the house whose answers a form shows.
pub(crate) const HOUSE: &str = "seen-of-house";

/// The form field that carries the entry seen of a kind.
pub(crate) fn field(kind: &str) -> String {
    format!("seen-{kind}")
}

/// The entry that a form shows of a kind; empty while there is none.
pub(crate) fn shown(state: &BookState, kind: &'static str, house: HouseId) -> String {
    state.current(&slot_of(kind, house)).map_or_else(String::new, |record| record.entry().id.0.to_string())
}

/// The entry that the author of a form had seen. A form that names none, or names what is no entry of that slot, is taken
/// to have seen what counts now.
pub(crate) fn by_author<'a>(
    call: &Call,
    state: &'a BookState,
    kind: &'static str,
    house: HouseId,
) -> Option<&'a Record> {
    let slot = slot_of(kind, house);
    let named = call.sent(&field(kind)).and_then(|id| Uuid::try_parse(id).ok());
    let seen = named.and_then(|id| state.records(EntryId(id)).first());
    seen.map(|record| &**record)
        .filter(|record| record.slot().as_ref() == Some(&slot))
        .or_else(|| state.current(&slot))
}
