//! *Before the chicks*: the plan of a batch, answers first, with the form to change them below.

use advice::finding::Weight;
use axum::response::Response;
use book::{BookState, HouseId, Slot, Subject};
use maud::{Markup, html};
use present::document::FindingView;
use present::html::{blocks_of_plan, chapters_of_plan, fault_summary, summary};
use present::plan::{SHEETS, Shown};
use present::summary::Summary;
use present::{Block, Document, fault, say, show as shown};
use quantity::Question;

use crate::adopt;
use crate::before::{Adopted, Before, address};
use crate::call::{Call, see_other};
use crate::draft::{self, PlanDraft};
use crate::house;
use crate::pages::form::PlanForm;
use crate::pages::{answers, conflict, frame};
use crate::settle;
use crate::trouble::Trouble;

/// Begins a plan in the house that was chosen, else in the one described last; or goes on with a plan that was begun and
/// says nothing yet.
pub(crate) async fn create(call: Call) -> Result<Response, Trouble> {
    let (site, access) = (&call.site, &call.access);
    let open = site.open(access).await?;
    let house = match call.sent(house::FIELD) {
        Some(_) => house::chosen(&call, &open.state)?,
        None => latest_house(&open.state).unwrap_or_else(|| HouseId((site.options.new_id)())),
    };
    let drafts = draft::all(&*site.store, access).await?;
    let blank = drafts.iter().rev().find(|(_, draft)| draft.typed.is_empty()).map(|(id, _)| *id);
    let id = blank.unwrap_or_else(site.options.new_id);
    draft::keep(&*site.store, access, id, &PlanDraft::empty(house), (site.options.now)()).await?;
    Ok(see_other(&address(id)))
}

/// The house that was described or put right last.
pub(crate) fn latest_house(state: &BookState) -> Option<HouseId> {
    let described = |id: &HouseId| state.current(&Slot::of("house", Subject::House(*id)));
    let houses = state.houses().into_iter().filter(|id| described(id).is_some());
    houses.max_by_key(|id| described(id).map(|record| record.entry().clock))
}

/// The plan.
pub(crate) async fn show(call: Call) -> Result<Response, Trouble> {
    let before = Before::load(&call).await?;
    let stamp = call.stamp(&before.open, &before.viewer, &[&before.typed_text()]);
    if let Some(unchanged) = call.unless_known(&stamp) {
        return Ok(unchanged);
    }
    Ok(call.page(&stamp, page(&call, &before)))
}

fn page(call: &Call, before: &Before) -> Markup {
    let may_write = call.access.may_write();
    let words = before.viewer.words();
    let document = Shown::new(before.plan(), &before.viewer).document();
    let content = html! {
        p class="subtitle" { (document.subtitle) }
        @if call.asked("saved").is_some() { p class="done" role="status" { (words.plain("saved-here")) } }
        @if before.is_blank() {
            p { (words.plain("plan-intro")) }
            @if may_write { (answers::form(before, None)) }
        } @else {
            (fault_summary(&PlanForm::of(before, None).inputs(), words, &format!("{}/answers", before.address())))
            (conflict::markup(&settle::conflicts(before), before, may_write))
            (worked_out(before, &document, may_write))
        }
    };
    frame::page(&call.site, &before.viewer, &document.title, &content)
}

/// What comes of the answers: in short, then question by question.
fn worked_out(before: &Before, document: &Document, may_write: bool) -> Markup {
    html! {
        (summary(&Summary::of(document).in_order_of(&before.plan().findings), &before.viewer))
        (ways(before, may_write))
        @if let Some(record) = before.adoption() {
            @let day = shown::day(record.entry().day, &before.viewer);
            p { strong { (say!(before.viewer.words(), "adopted-on", day = day)) } }
        }
        (questions(before))
        (chapters_of_plan(document, &before.viewer, &before.address()))
        @if may_write { (adoption(before)) }
        (prints(before))
    }
}

/// The two ways most taken.
fn ways(before: &Before, may_write: bool) -> Markup {
    let words = before.viewer.words();
    html! {
        nav class="jump" aria-label=(words.plain("on-this-page")) {
            @if may_write { a href=(format!("{}/answers", before.address())) { (words.plain("change-the-answers")) } }
            a href="#to-print" { (words.plain("to-print")) }
        }
    }
}

/// The button that puts the plan into the book, once there is something to put there, and what it would change.
fn adoption(before: &Before) -> Markup {
    let words = before.viewer.words();
    let adopted = before.adopted();
    let holds = before.problems.is_empty() && adopt::lacking(before).is_empty();
    let button = if adopted == Adopted::Never { "adopt" } else { "adopt-again" };
    html! {
        @if holds && adopted != Adopted::AsItStands {
            section class="adoption" {
                @if adopted == Adopted::ChangedSince {
                    p { strong { (words.plain("changed-since-adopted")) } }
                    (blocks_of_plan(&before.since_adopted(), &before.viewer, &before.address()))
                }
                @if before.is_closed() {
                    p { (words.plain("since-adopted-closed")) }
                } @else {
                    p { (words.plain("adopt-what")) }
                    form method="post" action=(format!("{}/adopt", before.address())) {
                        button { (words.plain(button)) }
                    }
                }
            }
        }
    }
}

/// Rare values are asked about and never refused.
fn questions(before: &Before) -> Markup {
    let word = before.viewer.words().plain("weight-look");
    let ask = |question: &Question| {
        Block::Finding(FindingView {
            name: "rare",
            weight: Weight::Look,
            weight_word: word.clone(),
            text: fault::question(question, &before.viewer),
            ways_out: Vec::new(),
            field: Some(question.key),
        })
    };
    let asked = before.questions.iter().map(ask).collect();
    let asked = Document { blocks: asked, ..Document::default() };
    blocks_of_plan(&asked, &before.viewer, &before.address())
}

fn prints(before: &Before) -> Markup {
    let words = before.viewer.words();
    let address = before.address();
    html! {
        h2 id="to-print" { (words.plain("to-print")) }
        ul class="prints" {
            @for sheet in SHEETS {
                @let name = words.plain(&format!("print-{}", sheet.name));
                @let sheet = sheet.name;
                li {
                    a href=(format!("{address}/print/{sheet}?paper=a4")) { (say!(words, "print-a4", sheet = &name)) }
                    " "
                    a href=(format!("{address}/print/{sheet}?paper=us-letter")) {
                        (words.plain("print-us-letter")) span class="hidden" { ": " (name) }
                    }
                }
            }
            @if !before.plan().tasks.is_empty() {
                li { a href=(format!("{address}/calendar.ics")) { (words.plain("calendar-file")) } }
            }
            li { a href=(format!("{address}/plan.json?working=1")) { (words.plain("plan-as-data")) } }
        }
    }
}
