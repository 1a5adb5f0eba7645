//! Settling what was written apart: two devices changed the same thing without seeing each other, and somebody says which
//! of them counts.

use axum::response::Response;
use book::{Body, Conflict, Draft, EntryId, Slot};
use uuid::Uuid;

use crate::before::{Before, slot_of};
use crate::call::{Call, see_other};
use crate::trouble::Trouble;
use advice::body::KEPT_KINDS;

/// The questions about what a plan rests on.
pub(crate) fn conflicts(before: &Before) -> Vec<Conflict> {
    let mut slots: Vec<Slot> = KEPT_KINDS.iter().map(|kind| slot_of(kind, before.draft.house)).collect();
    slots.push(before.slot());
    let concerns = |conflict: &Conflict| conflict.slot.as_ref().is_some_and(|slot| slots.contains(slot));
    before.open.state.conflicts().into_iter().filter(concerns).collect()
}

/// Lets the chosen version count and puts every other behind it.
pub(crate) async fn settle(call: Call) -> Result<Response, Trouble> {
    let before = Before::load(&call).await?;
    let chosen = call.sent("choose").and_then(|id| Uuid::try_parse(id).ok()).map(EntryId);
    let chosen = chosen.ok_or(Trouble::Unreadable)?;
    let draft = conflicts(&before)
        .iter()
        .find_map(|conflict| settling(conflict, chosen, EntryId((call.site.options.new_id)())))
        .ok_or(Trouble::NotFound)?;
    call.site.write(&call.access, |_| vec![draft]).await?;
    Ok(see_other(&before.address()))
}

pub(crate) fn settling(conflict: &Conflict, chosen: EntryId, id: EntryId) -> Option<Draft> {
    let head = conflict.heads.iter().find(|head| head.entry().id == chosen)?;
    if head.entry().withdrawn {
        return Some(Draft { withdrawn: true, ..conflict.settle(id, Body::new()) });
    }
    // A version of a newer program cannot be written again by this one.
    Some(conflict.settle(id, head.body()?.clone()))
}
