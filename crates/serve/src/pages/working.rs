//! How one figure of a plan is worked out, and the parts of a plan that have a page of their own.

use advice::walk::Walk;
use axum::response::Response;
use maud::{Markup, html};
use present::document::WorkingView;
use present::html::{anchor, blocks_of_plan, working_of_plan};
use present::plan::Shown;
use present::{Document, Viewer, working};

use crate::batch::Batch;
use crate::before::Before;
use crate::call::Call;
use crate::pages::frame;
use crate::trouble::Trouble;

/// How one figure is worked out; of a figure by day, on the day asked for, the last one if none is.
pub(crate) async fn show(call: Call) -> Result<Response, Trouble> {
    let before = Before::load(&call).await?;
    let stamp = call.stamp(&before.open, &before.viewer, &[&before.typed_text()]);
    if let Some(unchanged) = call.unless_known(&stamp) {
        return Ok(unchanged);
    }
    let id = call.param("figure");
    let plan = before.plan();
    let once = working::view(&plan.answers, &plan.outcome, id, &before.viewer);
    let content = match once {
        Some(view) => (content(&before, &view, &anchor(id)), view.title),
        None => by_day(&call, &before, id).ok_or(Trouble::NotFound)?,
    };
    let (content, title) = content;
    Ok(call.page(&stamp, frame::page(&call.site, &before.viewer, &title, &content)))
}

/// A figure by day, with a box to ask for another day.
fn by_day(call: &Call, before: &Before, id: &str) -> Option<(Markup, String)> {
    let last = before.plan().outcome.last_day()?;
    let day = call.asked("day").and_then(|day| day.trim().parse().ok()).unwrap_or(last).clamp(0, last);
    let shown = Shown::new(before.plan(), &before.viewer);
    // On its first day a figure can be told, and not how it came from the day before; then the next day says more.
    let view = shown.day_working(id, day)?;
    let words = before.viewer.words();
    let markup = html! {
        (content(before, &view, "question-days"))
        form method="get" class="again" {
            label for="day" { (words.plain("working-of-another-day")) }
            input id="day" name="day" type="text" inputmode="numeric" value=(day) autocomplete="off";
            button class="quiet" { (words.plain("working-show-day")) }
        }
    };
    Some((markup, view.title))
}

fn content(before: &Before, view: &WorkingView, place: &str) -> Markup {
    html! {
        (back(before, place))
        (worked(view, &before.viewer, &before.address()))
    }
}

fn worked(view: &WorkingView, viewer: &Viewer, address: &str) -> Markup {
    html! {
        div class="lead" {
            p class="lead-label" { (viewer.words().plain("working-answer")) }
            p class="lead-value" { (view.result) }
        }
        section class="working" { (working_of_plan(view, viewer, address)) }
    }
}

fn back(before: &Before, place: &str) -> Markup {
    let words = before.viewer.words();
    html! { p { a class="back" href=(format!("{}#{place}", before.address())) { (words.plain("back-to-plan")) } } }
}

/// How one figure of a running batch is worked out, by the book up to the day that is looked at.
pub(crate) async fn of_batch(call: Call) -> Result<Response, Trouble> {
    let batch = Batch::load(&call).await?;
    let stamp = call.stamp(&batch.open, &batch.viewer, &[&batch.today.to_string()]);
    if let Some(unchanged) = call.unless_known(&stamp) {
        return Ok(unchanged);
    }
    // What is likely from here costs some milliseconds, and is worked out only where nothing else has the figure.
    let view = view_of(&call, &batch, &batch.walk());
    let view = view.or_else(|| view_of(&call, &batch, &batch.sale().walk)).ok_or(Trouble::NotFound)?;
    let words = batch.viewer.words();
    let content = html! {
        p { a class="back" href=(batch.page("")) { (words.plain("back-to-the-day")) } }
        (worked(&view, &batch.viewer, &batch.address()))
    };
    Ok(call.page(&stamp, frame::page(&call.site, &batch.viewer, &view.title, &content)))
}

/// The working of the figure that is asked for, or of its day, out of a walk.
fn view_of(call: &Call, batch: &Batch, walk: &Walk) -> Option<WorkingView> {
    let (id, answers, outcome) = (call.param("figure"), &walk.diary.answers, &walk.plan.outcome);
    let once = working::view(answers, outcome, id, &batch.viewer);
    let day = call.asked("day").and_then(|day| day.trim().parse().ok()).or(walk.diary.age_today());
    // Of a figure that this day has not got, the last day that has it.
    let of_day = |day: i32| working::of_day(answers, outcome, id, day, &batch.viewer);
    once.or_else(|| (0..=day?).rev().find_map(of_day))
}

/// A part that has a page of its own.
pub(crate) async fn part(call: Call) -> Result<Response, Trouble> {
    let before = Before::load(&call).await?;
    let stamp = call.stamp(&before.open, &before.viewer, &[&before.typed_text()]);
    if let Some(unchanged) = call.unless_known(&stamp) {
        return Ok(unchanged);
    }
    let document = Shown::new(before.plan(), &before.viewer).document();
    let (title, blocks) = document.part(call.param("part")).ok_or(Trouble::NotFound)?;
    let part = Document { blocks: blocks.to_vec(), ..Document::default() };
    let content = html! {
        p class="subtitle" { (document.subtitle) }
        (back(&before, "content"))
        @if call.param("part") == "air" {
            p { a class="onward" href=(format!("{}/air", before.address())) { (before.viewer.words().plain("air-day-link")) } }
        }
        (blocks_of_plan(&part, &before.viewer, &before.address()))
    };
    Ok(call.page(&stamp, frame::page(&call.site, &before.viewer, title, &content)))
}
