//! Choosing the house of a plan, where the farm has several.

use axum::response::Response;
use book::{BookState, HouseId};
use uuid::Uuid;

use crate::before::{Before, address, kept};
use crate::call::{Call, see_other};
use crate::pages::answers;
use crate::seen;
use crate::trouble::Trouble;

/// The form field that names the house.
pub(crate) const FIELD: &str = "house";

/// The word that stands for a house that is not described yet.
pub(crate) const NEW: &str = "new";

/// Puts the plan into another house.
pub(crate) async fn choose(call: Call) -> Result<Response, Trouble> {
    let before = Before::load(&call).await?;
    let moved = moved(&call, before).await?;
    Ok(see_other(&address(moved.id)))
}

/// The plan in the house that the form names. What was typed about the old house and is not in the book waits there until
/// the plan comes back: it is not about the new one.
pub(crate) async fn moved(call: &Call, before: Before) -> Result<Before, Trouble> {
    if call.sent(FIELD) == Some(before.draft.house.0.to_string().as_str()) {
        return Ok(before);
    }
    let house = chosen(call, &before.open.state)?;
    let draft = before.draft.moved_to(house);
    answers::keep(call, before.id, &draft).await?;
    Ok(before.with(draft))
}

/// The plan in the house whose answers a form shows: whoever sends an older page means the house that stood on it.
pub(crate) fn as_shown(call: &Call, before: Before) -> Before {
    let shown = call.sent(seen::HOUSE).and_then(|id| Uuid::try_parse(id).ok()).map(HouseId);
    match shown.filter(|shown| *shown != before.draft.house) {
        Some(shown) => {
            let draft = before.draft.moved_to(shown);
            before.with(draft)
        }
        None => before,
    }
}

/// The house that a form names, a fresh one where it names none that is described.
pub(crate) fn chosen(call: &Call, state: &BookState) -> Result<HouseId, Trouble> {
    match call.sent(FIELD) {
        Some(NEW) => Ok(HouseId((call.site.options.new_id)())),
        Some(id) => {
            let id = HouseId(Uuid::try_parse(id).map_err(|_| Trouble::Unreadable)?);
            let known = kept(state, "house", id).is_some();
            if known { Ok(id) } else { Err(Trouble::NotFound) }
        }
        None => Err(Trouble::Unreadable),
    }
}
