//! One entry of the book with its history: what it says, what stood there before, who wrote it when and why; and the ways
//! to put it right and to take it back. And all that is written about a day.

use std::sync::Arc;

use axum::response::Response;
use book::{EntryId, Record, Subject};
use maud::{Markup, html};
use present::entry::{Line, kind_name, lines};
use present::{say, show as shown};
use quantity::CivilDay;

use crate::batch::Batch;
use crate::call::Call;
use crate::day;
use crate::pages::boxes::{day_and_age, reason_box};
use crate::pages::{frame, today};
use crate::trouble::Trouble;

/// The entry.
pub(crate) async fn show(call: Call) -> Result<Response, Trouble> {
    let batch = Batch::load(&call).await?;
    let id = call.entry()?;
    let thread = batch.open.state.thread(id);
    let is_about = |record: &Arc<Record>| record.entry().subject == Subject::Batch(batch.id);
    let last = thread.last().filter(|record| is_about(record)).ok_or(Trouble::NotFound)?;
    let stamp = call.stamp(&batch.open, &batch.viewer, &[]);
    if let Some(unchanged) = call.unless_known(&stamp) {
        return Ok(unchanged);
    }
    let page = page(&call, &batch, id, &thread, last);
    Ok(call.page(&stamp, page))
}

fn page(call: &Call, batch: &Batch, id: EntryId, thread: &[Arc<Record>], last: &Record) -> Markup {
    let words = batch.viewer.words();
    let entry = last.entry();
    let counting = batch.counting(id).or_else(|| batch.counting(entry.id));
    let title = kind_name(&entry.kind, &batch.viewer);
    let content = html! {
        p class="subtitle" { (batch.name()) ", " (day_and_age(batch, entry.day, batch.diary().age(entry.day))) }
        p { a class="back" href=(batch.page_of("", entry.day)) { (words.plain("back-to-the-day")) } }
        @if counting.is_some() && entry.kind == "weighing" {
            p { a href=(batch.page_of("/weighed", entry.day)) { (words.plain("weighed-that-day")) } }
        }
        @if let Some(record) = counting { (answers(batch, record)) } @else { p { strong { (words.plain("counts-no-more")) } } }
        @if let Some(record) = counting.filter(|_| call.access.may_write()) { (change(call, batch, record)) }
        h2 { (words.plain("history")) }
        ol class="history" { @for record in thread.iter().rev() { (version(batch, record)) } }
    };
    frame::page(&call.site, &batch.viewer, &title, &content)
}

fn answers(batch: &Batch, record: &Record) -> Markup {
    let lines = record.body().map_or_else(Vec::new, |body| lines(&record.entry().kind, body, &batch.viewer));
    html! { dl class="lines" { @for Line { label, text, .. } in lines { dt { (label) } dd { (text) } } } }
}

/// The ways to put it right and to take it back.
fn change(call: &Call, batch: &Batch, record: &Record) -> Markup {
    let words = batch.viewer.words();
    let entry = record.entry();
    let about =
        if entry.day == batch.today { String::new() } else { format!("&{}={}", crate::batch::ON, entry.day) };
    let form = format!("{}/write/{}?entry={}{about}", batch.address(), entry.kind, entry.id.0);
    let is_typed = advice::record::kind(&entry.kind).is_some() && entry.kind != "task-done";
    let lacks_reason = call.asked("lacks").is_some();
    html! {
        @if is_typed { p { a class="button" href=(form) { (words.plain("put-right")) } } }
        @if entry.kind != "plan-adopted" {
            details class="part" open[lacks_reason] {
                summary { span class="part-title" { (words.plain("take-back")) } }
                p { (words.plain("take-back-what")) }
                form method="post" action=(batch.entry_address(entry.id)) {
                    @if lacks_reason { p class="fault" role="alert" { (words.plain("reason-is-needed")) } }
                    (reason_box(batch))
                    button class="quiet" { (words.plain("take-back")) }
                }
            }
        }
    }
}

/// One version: when and why it was written, and what it says.
fn version(batch: &Batch, record: &Record) -> Markup {
    let words = batch.viewer.words();
    let entry = record.entry();
    let (day, time) = batch.local(entry.clock.millis);
    let written = say!(words, "conflict-written", day = shown::day(day, &batch.viewer), time = time);
    html! {
        li {
            p { (written) }
            @if entry.withdrawn { p { strong { (words.plain("history-taken-back")) } } }
            @if let Some(reason) = &entry.reason { p { (say!(words, "history-reason", reason = reason)) } }
            (answers(batch, record))
        }
    }
}

/// All that is written about a day.
pub(crate) async fn of_day(call: Call) -> Result<Response, Trouble> {
    let batch = Batch::load(&call).await?;
    let day = CivilDay::parse(call.param("date")).ok_or(Trouble::NotFound)?;
    let stamp = call.stamp(&batch.open, &batch.viewer, &[]);
    if let Some(unchanged) = call.unless_known(&stamp) {
        return Ok(unchanged);
    }
    let words = batch.viewer.words();
    let diary = batch.diary_of(day);
    let notes: Vec<_> = diary.notes.iter().filter(|note| note.day == day).collect();
    let content = html! {
        p class="subtitle" { (batch.name()) ", " (day_and_age(&batch, day, diary.age(day))) }
        p { a class="back" href=(batch.page_of("", day)) { (words.plain("back-to-the-day")) } }
        @if notes.is_empty() { p { (words.plain("nothing-of-the-day")) } }
        ul class="entries" { @for note in notes { (today::entry_row(&batch, note)) } }
    };
    let title = words.plain("all-of-the-day");
    Ok(call.page(&stamp, frame::page(&call.site, &batch.viewer, &title, &content)))
}

impl Batch {
    /// The day and the time at the farm.
    pub(crate) fn local(&self, millis: i64) -> (CivilDay, String) {
        let raws = advice::body::raws(&self.open.state, &["farm"]);
        let answers = advice::plan::read(&raws, quantity::Source::Hand, false).answers;
        day::local(millis, day::offset_hours(&answers))
    }
}
