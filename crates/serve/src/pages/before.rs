//! *Before the chicks*: the plan of a batch, answers first, with the form to change them below.

use advice::finding::Weight;
use axum::http::StatusCode;
use axum::response::Response;
use book::{BookState, HouseId, Slot, Subject};
use maud::{Markup, html};
use present::document::FindingView;
use present::html::{blocks, fault_summary};
use present::plan::{SHEETS, Shown};
use present::{Block, Document, fault, say, show as shown};
use quantity::{Question, Source};
use uuid::Uuid;

use crate::adopt;
use crate::before::{Adopted, Before, address, asked};
use crate::call::{Call, html as html_answer, see_other};
use crate::draft::{self, PlanDraft};
use crate::keep::Saved;
use crate::pages::form::PlanForm;
use crate::pages::{conflict, frame};
use crate::settle;
use crate::trouble::Trouble;
use crate::typed;

/// Begins a plan, or goes on with one that was begun and says nothing yet.
pub(crate) async fn create(call: Call) -> Result<Response, Trouble> {
    let (site, access) = (&call.site, &call.access);
    let drafts = draft::all(&*site.store, access).await?;
    let blank = drafts.iter().rev().find(|(_, draft)| draft.typed.is_empty()).map(|(id, _)| *id);
    if let Some(id) = blank {
        return Ok(see_other(&address(id)));
    }
    let open = site.open(access).await?;
    let house = latest_house(&open.state).unwrap_or_else(|| HouseId((site.options.new_id)()));
    let id = (site.options.new_id)();
    draft::keep(&*site.store, access, id, &PlanDraft::empty(house), (site.options.now)()).await?;
    Ok(see_other(&address(id)))
}

/// The house that was described or put right last.
fn latest_house(state: &BookState) -> Option<HouseId> {
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

/// The plan with what does not hold, instead of what was asked for.
pub(crate) fn faulty(call: &Call, before: &Before) -> Response {
    html_answer(StatusCode::UNPROCESSABLE_ENTITY, page(call, before))
}

/// Keeps what was typed: all of it in the draft first, so that nothing is lost whatever happens then; what holds and stays
/// with the farm in the book; and in the draft what is left.
pub(crate) async fn save(call: Call) -> Result<Response, Trouble> {
    let before = Before::load(&call).await?;
    let raws = typed::raws(&asked(&before.viewer), &call.form);
    let (id, house) = (before.id, before.draft.house);
    keep(&call, id, &PlanDraft::of(house, &raws)).await?;
    let left = written(&call, &before, raws).await?;
    let draft = PlanDraft::of(house, &left);
    keep(&call, id, &draft).await?;
    let open = call.site.open(&call.access).await?;
    let saved = Before { open, ..before }.with(draft);
    if saved.problems.is_empty() {
        return Ok(see_other(&format!("{}?saved", address(id))));
    }
    Ok(faulty(&call, &saved))
}

async fn keep(call: &Call, id: Uuid, draft: &PlanDraft) -> Result<(), Trouble> {
    let site = &call.site;
    Ok(draft::keep(&*site.store, &call.access, id, draft, (site.options.now)()).await?)
}

/// Writes what holds and stays with the farm, and gives back the rest.
async fn written(
    call: &Call,
    before: &Before,
    raws: Vec<quantity::Raw>,
) -> Result<Vec<quantity::Raw>, Trouble> {
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
    let may_write = call.access.may_write();
    let document = Shown::new(&before.plan, &before.viewer).document();
    let form = may_write.then(|| PlanForm::of(before));
    let conflicts = settle::conflicts(before);
    let content = html! {
        p class="subtitle" { (document.subtitle) }
        @if call.asked("saved").is_some() {
            p class="done" role="status" { (before.viewer.words().plain("saved-here")) }
        }
        @if let Some(form) = &form { (fault_summary(&form.inputs(), before.viewer.words())) }
        (conflict::markup(&conflicts, before, may_write))
        @if before.is_blank() {
            p { (before.viewer.words().plain("plan-intro")) }
        } @else {
            (answers(before, &document, may_write))
        }
        @if let Some(form) = &form { (answers_form(before, form)) }
    };
    frame::page(&call.site, &before.viewer, &document.title, &content)
}

/// The answers, with the way to the form on top.
fn answers(before: &Before, document: &Document, may_write: bool) -> Markup {
    html! {
        (jump(before, document, may_write))
        @if let Some(record) = before.adoption() {
            @let day = shown::day(record.entry().day, &before.viewer);
            p { strong { (say!(before.viewer.words(), "adopted-on", day = day)) } }
        }
        (questions(before))
        (blocks(document, &before.viewer))
        @if may_write { (adoption(before)) }
        (prints(before))
    }
}

/// The two ways most taken, and the others folded away, so that the first answer is in sight.
fn jump(before: &Before, document: &Document, may_write: bool) -> Markup {
    let words = before.viewer.words();
    html! {
        nav class="jump" aria-label=(words.plain("on-this-page")) {
            @if may_write { a href="#answers" { (words.plain("change-the-answers")) } }
            a href="#to-print" { (words.plain("to-print")) }
            details {
                summary { (words.plain("on-this-page")) }
                ul { @for (anchor, text) in headings(document) { li { a href=(format!("#{anchor}")) { (text) } } } }
            }
        }
    }
}

fn headings(document: &Document) -> Vec<(&'static str, &str)> {
    let heading = |block| match block {
        &Block::Heading { level: 2, ref text, anchor } => Some((anchor, text.as_str())),
        _ => None,
    };
    document.blocks.iter().filter_map(heading).collect()
}

/// The button that puts the plan into the book, once there is something to put there.
fn adoption(before: &Before) -> Markup {
    let words = before.viewer.words();
    let adopted = before.adopted();
    let holds = before.problems.is_empty() && adopt::lacking(before).is_empty();
    let button = if adopted == Adopted::Never { "adopt" } else { "adopt-again" };
    html! {
        @if holds && adopted != Adopted::AsItStands {
            section class="adoption" {
                @if adopted == Adopted::ChangedSince { p { strong { (words.plain("changed-since-adopted")) } } }
                p { (words.plain("adopt-what")) }
                form method="post" action=(format!("{}/adopt", before.address())) {
                    button { (words.plain(button)) }
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
    blocks(&Document { blocks: asked, ..Document::default() }, &before.viewer)
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
            li { a href=(format!("{address}/plan.json?working=1")) { (words.plain("plan-as-data")) } }
        }
    }
}

fn answers_form(before: &Before, form: &PlanForm) -> Markup {
    let words = before.viewer.words();
    html! {
        h2 id="answers" { (words.plain("your-answers")) }
        p class="note" { (words.plain("answers-note")) }
        (form.markup())
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_way_through_the_page_is_its_second_level_headings() {
        let heading = |level, text: &str, anchor| Block::Heading { level, text: text.to_owned(), anchor };
        let blocks = vec![heading(2, "One", "one"), heading(3, "Within", "within"), heading(2, "Two", "two")];
        let document = Document { blocks, ..Document::default() };
        assert_eq!(headings(&document), [("one", "One"), ("two", "Two")]);
    }
}
