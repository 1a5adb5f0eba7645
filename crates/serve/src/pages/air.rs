//! *The air they breathe* through a night and a day: the curtain, the heat, and what would change it. What goes in stands in the
//! address, so that it can be kept and sent, and the form works with no script.

use advice::air::day::{Answered, answer};
use advice::families::air_day;
use axum::http::StatusCode;
use axum::response::Response;
use maud::{Markup, html};
use present::entry::kind_name;
use present::html::{blocks, fault_summary, input};
use present::plan::Shown;
use present::{Document, Viewer, air_day as shown, batch};

use crate::batch::Batch;
use crate::before::Before;
use crate::call::{Call, html as html_answer};
use crate::pages::frame;
use crate::trouble::Trouble;
use crate::typed;

/// Of a plan: the last day of the batch, unless another one is asked for.
pub(crate) async fn of_plan(call: Call) -> Result<Response, Trouble> {
    let before = Before::load(&call).await?;
    let stamp = call.stamp(&before.open, &before.viewer, &[&before.typed_text()]);
    if let Some(unchanged) = call.unless_known(&stamp) {
        return Ok(unchanged);
    }
    let viewer = &before.viewer;
    let raws = typed::raws(&air_day::form(), &call.query);
    let answered = answer(&before.answers, None, raws);
    let document = shown::document(&answered, Shown::new(before.plan(), viewer).subtitle(), viewer);
    let address = before.address();
    let content = html! {
        p class="subtitle" { (document.subtitle) }
        p { a class="back" href=(format!("{address}/part/air")) { (viewer.words().plain("back-to-plan")) } }
        (page(&document, &answered, viewer, &format!("{address}/air")))
    };
    let page = frame::page(&call.site, viewer, &document.title, &content);
    if answered.checked.problems.is_empty() {
        return Ok(call.page(&stamp, page));
    }
    Ok(html_answer(StatusCode::UNPROCESSABLE_ENTITY, page))
}

/// Of a running batch: tonight, unless another day is asked for.
pub(crate) async fn of_batch(call: Call) -> Result<Response, Trouble> {
    let batch = Batch::load(&call).await?;
    let stamp = call.stamp(&batch.open, &batch.viewer, &[&batch.today.to_string()]);
    if let Some(unchanged) = call.unless_known(&stamp) {
        return Ok(unchanged);
    }
    let (viewer, walk) = (&batch.viewer, batch.walk());
    let words = viewer.words();
    let age_d = walk.diary.age_today().filter(|age| *age >= 0 && !walk.diary.is_closed);
    let raws = typed::raws(&air_day::form(), &call.query);
    let answered = age_d.map(|age_d| answer(&walk.plan.answers, Some(age_d), raws));
    let document = batch::air(&walk, answered.as_ref(), viewer);
    let content = html! {
        p class="subtitle" { (document.subtitle) }
        p { a class="back" href=(batch.page("")) { (words.plain("back-to-the-day")) } }
        nav class="jump" aria-label=(words.plain("write-something-else")) {
            @if call.access.may_write() {
                a class="capital" href=(batch.page("/write/house-air")) { (kind_name("house-air", viewer)) }
            }
            a href=(batch.page("/print/curtain")) { (words.plain("print-curtain")) }
        }
        @match &answered {
            Some(answered) => { (page(&document, answered, viewer, &batch.page("/air"))) }
            None => { (blocks(&document, viewer)) }
        }
    };
    let page = frame::page(&call.site, viewer, &document.title, &content);
    if answered.is_none_or(|answered| answered.checked.problems.is_empty()) {
        return Ok(call.page(&stamp, page));
    }
    Ok(html_answer(StatusCode::UNPROCESSABLE_ENTITY, page))
}

/// What has a slider where scripts run: the box, least, most and step of it, in the units that it is asked in.
const SLIDES: &str = r#"{"age_d": [0, 56, 1], "coldest_c": [-5, 30, 0.5], "warmest_c": [5, 45, 0.5], "fewer_birds_percent": [0, 60, 5]}"#;

/// The answer, and the form to ask for another.
fn page(document: &Document, answered: &Answered, viewer: &Viewer, address: &str) -> Markup {
    let words = viewer.words();
    let inputs = shown::inputs(answered, viewer);
    let in_short = Document { blocks: shown::in_short(answered, viewer), ..Document::default() };
    html! {
        // What is replaced in place where sliders are moved.
        div id="answer" {
            (fault_summary(&inputs.iter().collect::<Vec<_>>(), words, ""))
            @if answered.checked.problems.is_empty() { (blocks(document, viewer)) }
        }
        h2 id="ask" { (words.plain("air-day-ask")) }
        p { (words.plain("air-day-form-hint")) }
        form method="get" action=(address) data-slides=(SLIDES) {
            @for one in &inputs { (input(one, words)) }
            button { (words.plain("air-day-work-out")) }
        }
        // The same in a few lines, in sight of whoever moves a slider.
        div id="answer-in-short" aria-live="polite" { (blocks(&in_short, viewer)) }
    }
}
