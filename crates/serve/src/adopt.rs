//! Adopting a plan: from then on the book says what was meant, and watch and closing compare with it.

use advice::adoption;
use advice::body::{kept_in, raws_of};
use axum::response::Response;
use book::limit::HOUSE_OF_PLAN;
use book::{BatchId, Body, BookState, Draft, EntryId, HouseId};
use quantity::Problem;
use uuid::Uuid;

use crate::before::{Before, slot_of_plan};
use crate::call::{Call, see_other};
use crate::draft::PlanDraft;
use crate::pages;
use crate::trouble::Trouble;

/// Writes the plan into the book, unless something of it does not hold.
pub(crate) async fn adopt(call: Call) -> Result<Response, Trouble> {
    let mut before = Before::load(&call).await?;
    if before.is_closed() {
        // An old page still has the button; the page as it is now says why there is none.
        return Ok(see_other(&before.address()));
    }
    before.problems.extend(lacking(&before));
    if !before.problems.is_empty() {
        return Ok(pages::answers::faulty(&call, &before));
    }
    let (id, today) = (EntryId((call.site.options.new_id)()), call.site.today(&before.open.state));
    let (slot, body) = (before.slot(), body(&before));
    let write = |state: &BookState| {
        let standing = state.current(&slot).map(|record| record.entry().id);
        let day = adoption::day(before.plan(), today, standing.is_none());
        let mut draft = Draft::new(id, slot.kind, slot.subject, day, body);
        draft.supersedes = standing.into_iter().collect();
        vec![draft]
    };
    call.site.write(&call.access, write).await?;
    Ok(see_other(&before.address()))
}

/// What is missing before a plan can be adopted.
pub(crate) fn lacking(before: &Before) -> Vec<Problem> {
    adoption::lacking(&before.answers, &before.problems)
}

/// The body of the plan as it stands, were it adopted.
pub(crate) fn body(before: &Before) -> Body {
    let house = Some(before.draft.house).filter(|house| before.open.state.has_house(*house));
    adoption::body(before.plan(), BatchId(before.id), house)
}

/// The draft that an adopted plan came from, as far as the book tells: for a plan that was adopted on another device.
pub(crate) fn draft_of(state: &BookState, id: Uuid) -> Option<PlanDraft> {
    let body = state.answers(&slot_of_plan(id))?;
    let house = body.get(HOUSE_OF_PLAN).and_then(|answer| Uuid::try_parse(answer.value.as_str()?).ok());
    let typed: Body = body
        .iter()
        .filter(|(key, answer)| answer.typed.is_some() && kept_in(key).is_none())
        .map(|(key, answer)| (key.clone(), answer.clone()))
        .collect();
    // Without a house of its own the plan stands in one that nobody has described: its own id names none other.
    Some(PlanDraft::of(HouseId(house.unwrap_or(id)), &raws_of(&typed, "batch")))
}
