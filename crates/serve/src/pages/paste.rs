//! Days pasted from a table: every bad line shown, and the good ones written only if somebody says so.

use std::collections::BTreeSet;

use advice::day_rows::{self, DayRow, RowFault, TableFault};
use advice::writing::{Seen, Writing};
use axum::response::Response;
use book::{Draft, EntryId, Slot};
use maud::{Markup, html};
use present::{fault, oddity, say};
use quantity::Source;

use crate::batch::Batch;
use crate::call::{Call, see_other};
use crate::pages::boxes::reason_box;
use crate::pages::frame;
use crate::sheet::{SURE, reason};
use crate::trouble::Trouble;

/// The form field that holds the rows.
const ROWS: &str = "rows";
/// The form field by which somebody has the good lines written although others are bad.
const GOOD_ONLY: &str = "good-only";
/// The most characters that are read.
const CHARACTERS_MAX: usize = 100_000;

/// What becomes of pasted rows.
#[derive(Default)]
struct Pasted {
    /// Lines that cannot be written, with why.
    bad: Vec<(usize, String, String)>,
    /// Lines that are doubtful, with why.
    doubts: Vec<(usize, String, String)>,
    /// Lines that change what was written before and do not say why.
    unexplained: Vec<usize>,
    /// What is to be written of lines without fault.
    drafts: Vec<Draft>,
    /// Lines without fault.
    good: usize,
}

/// The page to paste into.
pub(crate) async fn show(call: Call) -> Result<Response, Trouble> {
    let batch = Batch::load(&call).await?;
    Ok(frame::fresh(page(&call, &batch, "", None)))
}

/// Writes the rows, unless one is bad, doubtful or wants a reason.
pub(crate) async fn save(call: Call) -> Result<Response, Trouble> {
    let batch = Batch::load(&call).await?;
    let text: String = call.sent(ROWS).unwrap_or_default().chars().take(CHARACTERS_MAX).collect();
    let pasted = judged(&call, &batch, &text);
    let is_sure = pasted.doubts.is_empty() || call.sent(SURE).is_some();
    let may_leave_out = pasted.bad.is_empty() || (call.sent(GOOD_ONLY).is_some() && pasted.good > 0);
    if !is_sure || !may_leave_out || !pasted.unexplained.is_empty() {
        return Ok(frame::unwritten(page(&call, &batch, &text, Some(&pasted))));
    }
    let drafts = pasted.drafts;
    call.site.write(&call.access, |_| drafts).await?;
    Ok(see_other(&format!("{}?saved=1", batch.address())))
}

fn judged(call: &Call, batch: &Batch, text: &str) -> Pasted {
    let diary = batch.diary();
    let mut pasted = Pasted::default();
    match day_rows::read(text, &diary) {
        Ok(rows) => {
            let mut slots = BTreeSet::new();
            for row in rows {
                judge(call, batch, &row, &mut slots, &mut pasted);
            }
        }
        Err(why) => pasted.bad.push((1, String::new(), table_fault(&why, batch))),
    }
    pasted
}

/// Judges one line: all of it is written or nothing.
fn judge(call: &Call, batch: &Batch, row: &DayRow, slots: &mut BTreeSet<Slot>, pasted: &mut Pasted) {
    let words = batch.viewer.words();
    let bad = |why: String| (row.line, row.text.clone(), why);
    let (day, filled) = match &row.said {
        Ok(said) => said,
        Err(why) => return pasted.bad.push(bad(row_fault(why, batch))),
    };
    if *day > batch.today {
        return pasted.bad.push(bad(words.plain("row-in-the-future")));
    }
    let mut diary = batch.diary_of(*day);
    let reason = reason(call);
    let mut drafts = Vec::new();
    let (mut doubts, mut needs_reason) = (Vec::new(), false);
    for (kind, raws) in filled {
        let id = EntryId((call.site.options.new_id)());
        let writing = Writing {
            state: &batch.open.state,
            diary: &diary,
            today: batch.today,
            reason: reason.as_deref(),
            seen: Seen::WhatCounts,
        };
        let judged = writing.judge(id, kind, *day, raws, Source::Hand);
        if let Some(problem) = judged.problems.first() {
            return pasted.bad.push(bad(fault::labelled(problem, &problem.key, &batch.viewer)));
        }
        if judged.slot.is_some_and(|slot| !slots.insert(slot)) {
            return pasted.bad.push(bad(words.plain("row-twice")));
        }
        doubts.extend(judged.questions.iter().map(|question| fault::question(question, &batch.viewer)));
        doubts.extend(judged.asks.iter().map(|ask| oddity::ask(ask, &batch.viewer)));
        needs_reason |= judged.needs_reason;
        if let Some(draft) = judged.draft {
            diary = diary.expecting(&draft);
            drafts.push(draft);
        }
    }
    pasted.good += 1;
    pasted.doubts.extend(doubts.into_iter().map(bad));
    if needs_reason {
        pasted.unexplained.push(row.line);
    }
    pasted.drafts.extend(drafts);
}

fn row_fault(why: &RowFault, batch: &Batch) -> String {
    let words = batch.viewer.words();
    match why {
        RowFault::TooManyCells { found, named } => {
            say!(words, "row-too-many-cells", found = found.to_string(), named = named.to_string())
        }
        RowFault::NoDay { typed } if typed.is_empty() => words.plain("row-without-day"),
        RowFault::NoDay { typed } => say!(words, "row-no-day", typed = typed),
        RowFault::Empty => words.plain("row-empty"),
    }
}

fn table_fault(why: &TableFault, batch: &Batch) -> String {
    let words = batch.viewer.words();
    let names = || day_rows::short_names().join(", ");
    match why {
        TableFault::Nothing => words.plain("table-nothing"),
        TableFault::NoDayColumn => words.plain("table-no-day-column"),
        TableFault::UnknownColumn { name } => {
            say!(words, "table-unknown-column", name = name, names = names())
        }
        TableFault::ColumnTwice { name } => say!(words, "table-column-twice", name = name),
        TableFault::TooManyLines { found } => {
            say!(
                words,
                "table-too-many-lines",
                found = found.to_string(),
                most = day_rows::LINES_MAX.to_string()
            )
        }
    }
}

fn page(call: &Call, batch: &Batch, text: &str, pasted: Option<&Pasted>) -> Markup {
    let words = batch.viewer.words();
    let content = html! {
        p class="subtitle" { (batch.name()) }
        p { a class="back" href=(batch.page("")) { (words.plain("back-to-the-day")) } }
        p { (words.plain("paste-how")) }
        p class="note" { (say!(words, "paste-columns", names = day_rows::short_names().join(", "))) }
        p class="formula" { "day;dead;water_l;phase;feed_kg" br; "2027-05-12;1;182;grower;78,9" }
        form class="day-form" method="post" action=(format!("{}/paste", batch.address())) {
            @if let Some(pasted) = pasted { (told(batch, pasted)) }
            div class="input" {
                label for=(ROWS) { (words.plain("paste-rows-label")) }
                textarea id=(ROWS) name=(ROWS) rows="12" spellcheck="false" autocomplete="off" { (text) }
            }
            @if let Some(pasted) = pasted.filter(|pasted| !pasted.bad.is_empty() && pasted.good > 0) {
                p {
                    button class="quiet" name=(GOOD_ONLY) value="yes" {
                        (say!(words, "write-good-down", n = pasted.good.to_string(), count = pasted.good as f64))
                    }
                }
            }
            div class="save-bar" { button { (words.plain("write-all-down")) } }
        }
    };
    frame::page(&call.site, &batch.viewer, &words.plain("paste-rows"), &content)
}

fn told(batch: &Batch, pasted: &Pasted) -> Markup {
    let words = batch.viewer.words();
    let list = |lines: &[(usize, String, String)]| {
        html! { ul { @for (line, text, why) in lines {
            li { (say!(words, "row-line", line = line.to_string())) " " code { (text) } br; (why) }
        } } }
    };
    html! {
        @if !pasted.bad.is_empty() {
            div class="faults" role="alert" tabindex="-1" id="faults" {
                h2 { (say!(words, "rows-bad", count = pasted.bad.len() as f64, n = pasted.bad.len().to_string())) }
                (list(&pasted.bad))
            }
        }
        @if !pasted.doubts.is_empty() {
            div class="faults" role="alert" id="doubts" {
                h2 { (words.plain("is-it-so")) }
                (list(&pasted.doubts))
                label class="tick" { input type="checkbox" name=(SURE) value="yes"; " " (words.plain("it-is-so")) }
            }
        }
        @if !pasted.unexplained.is_empty() {
            @let lines: Vec<String> = pasted.unexplained.iter().map(ToString::to_string).collect();
            div class="faults" role="alert" id="unexplained" {
                h2 { (words.plain("why-changed")) }
                p { (say!(words, "rows-change", lines = lines.join(", "))) }
                (reason_box(batch))
            }
        }
    }
}
