//! What two people wrote apart about a batch: both shown, one tap keeps one, both, or their sum.

use advice::record;
use axum::response::Response;
use book::{Body, Conflict, Draft, EntryId, Record, Subject};
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

/// What is chosen where the amounts of all versions are added, before the id of the winner.
const SUM: &str = "sum:";

/// What is chosen where all versions are entries of their own, before the id of the winner.
const BOTH: &str = "both:";

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
                @if may_write { (together(batch, conflict)) }
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

/// The ways in which nothing of it is put aside.
fn together(batch: &Batch, conflict: &Conflict) -> Markup {
    let words = batch.viewer.words();
    let entry = conflict.winner.entry();
    let sum = sum(conflict).map(|body| in_short(&entry.kind, &body, batch));
    html! {
        @if let Some(sum) = sum {
            p { strong { (sum) } }
            button class="quiet" name=(CHOOSE) value=(format!("{SUM}{}", entry.id.0)) { (words.plain("conflict-sum")) }
        }
        @if is_additive(conflict) {
            button class="quiet" name=(CHOOSE) value=(format!("{BOTH}{}", entry.id.0)) { (words.plain("conflict-both")) }
        }
    }
}

/// The bodies of the versions that are not taken back.
fn bodies(conflict: &Conflict) -> impl Iterator<Item = &Body> {
    conflict.heads.iter().filter(|head| !head.entry().withdrawn).filter_map(|head| head.body())
}

fn sum(conflict: &Conflict) -> Option<Body> {
    record::sum(record::kind(&conflict.winner.entry().kind)?, &bodies(conflict).collect::<Vec<_>>())
}

/// Whether each entry of the kind counts, and more than one version stands.
fn is_additive(conflict: &Conflict) -> bool {
    conflict.slot.is_none() && bodies(conflict).count() > 1
}

/// The entries that settle a conflict as somebody chose.
fn chosen(conflict: &Conflict, choice: &str, new_id: fn() -> Uuid) -> Option<Vec<Draft>> {
    let fresh = || EntryId(new_id());
    let of_winner = |text: &str| Uuid::try_parse(text).ok().map(EntryId) == Some(conflict.winner.entry().id);
    if let Some(winner) = choice.strip_prefix(SUM) {
        let sum = sum(conflict).filter(|_| of_winner(winner))?;
        return Some(vec![Draft { withdrawn: false, ..conflict.settle(fresh(), sum) }]);
    }
    if let Some(winner) = choice.strip_prefix(BOTH) {
        return (is_additive(conflict) && of_winner(winner)).then(|| both(conflict, fresh));
    }
    let head = Uuid::try_parse(choice).ok().map(EntryId)?;
    Some(vec![settling(conflict, head, fresh())?])
}

/// One version settles the conflict, and each other becomes an entry of its own.
fn both(conflict: &Conflict, fresh: impl Fn() -> EntryId) -> Vec<Draft> {
    let entry = conflict.winner.entry();
    let mut bodies = bodies(conflict);
    let first = bodies.next().map(|body| conflict.settle(fresh(), body.clone()));
    let others = bodies.map(|body| Draft::new(fresh(), &entry.kind, entry.subject, entry.day, body.clone()));
    first.into_iter().chain(others).collect()
}

/// Settles what was written apart as somebody chose.
pub(crate) async fn settle(call: Call) -> Result<Response, Trouble> {
    let batch = Batch::load(&call).await?;
    let choice = call.sent(CHOOSE).ok_or(Trouble::Unreadable)?;
    let new_id = call.site.options.new_id;
    let drafts = conflicts(&batch)
        .iter()
        .find_map(|conflict| chosen(conflict, choice, new_id))
        .ok_or(Trouble::NotFound)?;
    call.site.write(&call.access, |_| drafts).await?;
    Ok(see_other(&batch.page("")))
}
