//! What two people wrote apart about a batch: both shown, one tap keeps one.

use axum::response::Response;
use book::{Conflict, EntryId, Record, Subject};
use maud::{Markup, html};
use present::entry::kind_name;
use present::{say, show as shown};
use uuid::Uuid;

use crate::batch::{Batch, ON};
use crate::call::{Call, see_other};
use crate::pages::boxes::in_short;
use crate::settle::settling;
use crate::trouble::Trouble;

/// The form field that names the version that is to count.
const CHOOSE: &str = "choose";

/// The questions about a batch.
fn conflicts(batch: &Batch) -> Vec<Conflict> {
    let is_about = |conflict: &Conflict| {
        let mut heads = conflict.heads.iter();
        heads.any(|head| {
            head.entry().subject == Subject::Batch(batch.id) && head.entry().kind != "plan-adopted"
        })
    };
    batch.open.state.conflicts().into_iter().filter(is_about).collect()
}

/// Asks about each.
pub(crate) fn questions(batch: &Batch, may_write: bool) -> Markup {
    html! { @for conflict in conflicts(batch) { (question(batch, &conflict, may_write)) } }
}

fn question(batch: &Batch, conflict: &Conflict, may_write: bool) -> Markup {
    let words = batch.viewer.words();
    let entry = conflict.winner.entry();
    let what = say!(
        words,
        "conflict-of-day",
        kind = kind_name(&entry.kind, &batch.viewer),
        day = shown::day_short(entry.day, &batch.viewer)
    );
    html! {
        section class="conflict" {
            h2 { (say!(words, "conflict-title", what = what)) }
            p { (words.plain("conflict-why")) }
            form method="post" action=(format!("{}/settle", batch.address())) {
                input type="hidden" name=(ON) value=(batch.on);
                @for head in &conflict.heads { (version(batch, head, may_write)) }
            }
        }
    }
}

fn version(batch: &Batch, head: &Record, may_write: bool) -> Markup {
    let words = batch.viewer.words();
    let entry = head.entry();
    let (day, time) = batch.local(entry.clock.millis);
    html! {
        div class="version" {
            p { (say!(words, "conflict-written", day = shown::day(day, &batch.viewer), time = time)) }
            p { strong {
                @if entry.withdrawn { (words.plain("conflict-withdrawn")) }
                @else if let Some(body) = head.body() { (in_short(&entry.kind, body, batch)) }
            } }
            @if may_write { button class="quiet" name=(CHOOSE) value=(entry.id.0) { (words.plain("keep-this-one")) } }
        }
    }
}

/// Lets the chosen version count and puts every other behind it.
pub(crate) async fn settle(call: Call) -> Result<Response, Trouble> {
    let batch = Batch::load(&call).await?;
    let chosen = call.sent(CHOOSE).and_then(|id| Uuid::try_parse(id).ok()).map(EntryId);
    let chosen = chosen.ok_or(Trouble::Unreadable)?;
    let id = EntryId((call.site.options.new_id)());
    let draft = conflicts(&batch)
        .iter()
        .find_map(|conflict| settling(conflict, chosen, id))
        .ok_or(Trouble::NotFound)?;
    call.site.write(&call.access, |_| vec![draft]).await?;
    Ok(see_other(&batch.page("")))
}
