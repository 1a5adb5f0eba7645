//! Choosing the house of a plan, where the farm has several.

use axum::response::Response;
use book::HouseId;
use uuid::Uuid;

use crate::before::{Before, address, kept};
use crate::body::kept_in;
use crate::call::{Call, see_other};
use crate::draft;
use crate::trouble::Trouble;

/// The word that stands for a house that is not described yet.
pub(crate) const NEW: &str = "new";

/// Puts the plan into another house.
///
/// What was typed about the old one and does not hold stays behind: it is not about the new one.
pub(crate) async fn choose(call: Call) -> Result<Response, Trouble> {
    let mut before = Before::load(&call).await?;
    let house = chosen(&call, &before)?;
    if house != before.draft.house {
        before.draft.house = house;
        before.draft.typed.retain(|key, _| kept_in(key) != Some("house"));
        let site = &call.site;
        draft::keep(&*site.store, &call.access, before.id, &before.draft, (site.options.now)()).await?;
    }
    Ok(see_other(&address(before.id)))
}

fn chosen(call: &Call, before: &Before) -> Result<HouseId, Trouble> {
    match call.sent("house") {
        Some(NEW) => Ok(HouseId((call.site.options.new_id)())),
        Some(id) => {
            let id = HouseId(Uuid::try_parse(id).map_err(|_| Trouble::Unreadable)?);
            let known = kept(&before.open.state, "house", id).is_some();
            if known { Ok(id) } else { Err(Trouble::NotFound) }
        }
        None => Err(Trouble::Unreadable),
    }
}
