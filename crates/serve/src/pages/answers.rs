//! The answers of a plan: the form that changes them, and what becomes of it when it is sent.

use axum::http::StatusCode;
use axum::response::Response;
use maud::{Markup, html};
use present::html::fault_summary;
use quantity::{Raw, Source};
use uuid::Uuid;

use crate::before::{Before, address, asked};
use crate::call::{Call, html as html_answer, see_other};
use crate::draft::{self, PlanDraft};
use crate::house;
use crate::keep::Saved;
use crate::pages::form::PlanForm;
use crate::pages::{conflict, frame};
use crate::settle;
use crate::trouble::Trouble;
use crate::typed;

/// The form.
pub(crate) async fn show(call: Call) -> Result<Response, Trouble> {
    let before = Before::load(&call).await?;
    let stamp = call.stamp(&before.open, &before.viewer, &[&before.typed_text()]);
    if let Some(unchanged) = call.unless_known(&stamp) {
        return Ok(unchanged);
    }
    if !call.access.may_write() {
        return Err(Trouble::MayOnlyLook);
    }
    Ok(call.page(&stamp, page(&call, &before)))
}

/// The form with what does not hold, instead of what was asked for.
pub(crate) fn faulty(call: &Call, before: &Before) -> Response {
    html_answer(StatusCode::UNPROCESSABLE_ENTITY, page(call, before))
}

/// Keeps what was typed: all of it in the draft first, so that nothing is lost whatever happens then; what holds and stays
/// with the farm in the book; and in the draft what is left. Where another house was chosen the plan then moves there.
pub(crate) async fn save(call: Call) -> Result<Response, Trouble> {
    let before = house::as_shown(&call, Before::load(&call).await?);
    let mut saved = kept(&call, before).await?;
    if call.sent(house::FIELD).is_some() {
        saved = house::moved(&call, saved).await?;
    }
    if !saved.problems.is_empty() {
        return Ok(faulty(&call, &saved));
    }
    Ok(see_other(&format!("{}?saved", address(saved.id))))
}

/// Keeps what a form says.
async fn kept(call: &Call, before: Before) -> Result<Before, Trouble> {
    let raws = typed::raws(&asked(&before.viewer), &call.form);
    keep(call, before.id, &before.draft.saying(&raws)).await?;
    let left = written(call, &before, raws).await?;
    let draft = before.draft.saying(&left);
    keep(call, before.id, &draft).await?;
    let open = call.site.open(&call.access).await?;
    Ok(Before::of(before.id, draft, open))
}

/// Keeps a draft.
pub(crate) async fn keep(call: &Call, id: Uuid, draft: &PlanDraft) -> Result<(), Trouble> {
    let site = &call.site;
    Ok(draft::keep(&*site.store, &call.access, id, draft, (site.options.now)()).await?)
}

/// Writes what holds and stays with the farm, and gives back the rest.
async fn written(call: &Call, before: &Before, raws: Vec<Raw>) -> Result<Vec<Raw>, Trouble> {
    let checked = advice::plan::read(&raws, Source::Hand, false);
    let saved = Saved {
        call,
        house: before.draft.house,
        answers: &checked.answers,
        problems: &checked.problems,
        viewer: &before.viewer,
        today: call.site.today(&before.open.state),
    };
    call.site.write(&call.access, |state| saved.drafts(state, call.site.options.new_id)).await?;
    Ok(saved.left_for_the_draft(raws))
}

fn page(call: &Call, before: &Before) -> Markup {
    let words = before.viewer.words();
    let content = html! {
        @if !before.is_blank() {
            p { a class="back" href=(before.address()) { (words.plain("back-to-plan")) } }
        }
        (form(before, call.asked("at")))
    };
    frame::page(&call.site, &before.viewer, &words.plain("page-answers"), &content)
}

/// The form, with its faults on top; the section of the answer that was pointed at is open.
pub(crate) fn form(before: &Before, pointed_at: Option<&str>) -> Markup {
    let words = before.viewer.words();
    let form = PlanForm::of(before, pointed_at);
    html! {
        (fault_summary(&form.inputs(), words, ""))
        (conflict::markup(&settle::conflicts(before), before, true))
        p class="note" { (words.plain("answers-on-page")) " " (words.plain("answers-note")) }
        (form.markup())
    }
}
