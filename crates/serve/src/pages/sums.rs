//! *Work it out*: quick sums that need no plan. What goes in stands in the address, so that a sum can be kept as a
//! bookmark and sent to somebody.

use advice::families;
use advice::sums::{Sum, SumResult, by_name};
use axum::http::StatusCode;
use axum::response::Response;
use maud::{Markup, html};
use present::example::GROUPS;
use present::form::{self, Input};
use present::html::{blocks, fault_summary, input};
use present::{Viewer, Words, example, sum as shown};

use crate::call::{Call, html as html_answer};
use crate::pages::frame;
use crate::site::Site;
use crate::trouble::Trouble;
use crate::typed;

/// The list of sums.
pub(crate) async fn list(call: Call) -> Result<Response, Trouble> {
    let open = call.site.open(&call.access).await?;
    let viewer = Site::viewer(&open.state);
    let stamp = call.stamp(&open, &viewer, &[]);
    if let Some(unchanged) = call.unless_known(&stamp) {
        return Ok(unchanged);
    }
    let content = html! {
        p { (viewer.words().plain("sums-intro")) }
        @for group in GROUPS {
            h2 { (viewer.words().plain(group)) }
            ul class="plans" { @for sum in families::sums().filter(|sum| example::group(sum.name) == group) {
                li { a href=(address(sum)) { strong { (shown::title(sum, &viewer)) } } }
            } }
        }
    };
    let title = viewer.words().plain("page-sums");
    Ok(call.page(&stamp, frame::page(&call.site, &viewer, &title, &content)))
}

/// One sum, answered where enough was said.
pub(crate) async fn show(call: Call) -> Result<Response, Trouble> {
    let sum = by_name(call.param("name")).ok_or(Trouble::NotFound)?;
    let open = call.site.open(&call.access).await?;
    let viewer = Site::viewer(&open.state);
    let stamp = call.stamp(&open, &viewer, &[]);
    if let Some(unchanged) = call.unless_known(&stamp) {
        return Ok(unchanged);
    }
    let asked = sum.asked();
    let raws = typed::raws(&asked, &call.query);
    let result = sum.work_out(&raws, !call.query.is_empty());
    let inputs = form::inputs(&asked, &raws, &result.checked.problems, &viewer);
    let content = content(sum, &result, &inputs, &viewer, call.asked(EXAMPLE).is_some());
    let page = frame::page(&call.site, &viewer, &shown::title(sum, &viewer), &content);
    if result.checked.problems.is_empty() {
        return Ok(call.page(&stamp, page));
    }
    Ok(html_answer(StatusCode::UNPROCESSABLE_ENTITY, page))
}

fn address(sum: &Sum) -> String {
    format!("/sums/{}", sum.name)
}

/// Said in the address of an example, so that its numbers are never taken for somebody's own.
const EXAMPLE: &str = "example";

/// Fills the boxes of a sum with invented numbers, where there are any for it.
fn example_link(sum: &Sum, words: &Words) -> Markup {
    let pairs = example::example(sum.name);
    let pair = |(key, text): &(&str, &str)| format!("&{key}={}", text.replace(' ', "+"));
    let query: String = pairs.iter().map(pair).collect();
    html! {
        @if !pairs.is_empty() {
            a class="onward" href=(format!("{}?{EXAMPLE}=1{query}", address(sum))) { (words.plain("fill-example")) }
        }
    }
}

fn content(sum: &Sum, result: &SumResult, inputs: &[Input], viewer: &Viewer, is_example: bool) -> Markup {
    let words = viewer.words();
    let answered = result.outcome.figures().next().is_some();
    html! {
        @if is_example { p class="example note" role="status" { (words.plain("example-note")) } }
        (fault_summary(&inputs.iter().collect::<Vec<_>>(), words, ""))
        @if answered {
            (blocks(&shown::document(sum, result, viewer), viewer))
            h2 { (words.plain("change-the-answers")) }
        }
        @if !answered { p { (example_link(sum, words)) } }
        form method="get" action=(address(sum)) {
            @for one in inputs { (input(one, words)) }
            button { (words.plain("work-it-out")) }
        }
        nav class="jump" aria-label=(words.plain("on-this-page")) {
            @if answered {
                (example_link(sum, words))
                a href=(address(sum)) { (words.plain("start-empty")) }
            }
            a href="/sums" { (words.plain("all-sums")) }
        }
    }
}
