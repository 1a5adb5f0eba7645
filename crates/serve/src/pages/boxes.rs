//! Boxes to write a day down in, as they stand on a page.

use maud::{Markup, html};
use present::entry::kind_name;
use present::form::Input;
use present::html::{fault_summary, field_anchor, input};
use present::{fault, oddity, say, show};
use quantity::CivilDay;

use crate::batch::Batch;
use crate::boxes::{Boxes, MADE_ID, SEEN};
use crate::call::Call;
use crate::sheet::{REASON, SURE, Sheet};

/// What is asked first of kinds that ask for much; the rest is folded away until it is wanted.
const FIRST: &[(&str, &[&str])] = &[
    ("deaths", &["dead", "culled"]),
    ("house-air", &["coldest_c", "warmest_c"]),
    ("chicks-placed", &["counted", "dead_on_arrival", "weak_culled", "hour_h"]),
    ("feed-delivered", &["phase", "bags", "bag_kg", "milled", "price_each"]),
    ("weighing", &["weights_g", "spots"]),
    ("purchase", &["what", "name", "amount", "unit", "cost"]),
    ("sale", &["birds", "live_kg", "income", "buyer"]),
];

/// The boxes of one kind and part.
///
/// - `beside`: what is expected of the day, and where else to look
pub(crate) fn group(sheet: &Sheet, boxes: &Boxes, title: &str, beside: &Markup) -> Markup {
    html! {
        fieldset class="boxes" id=(group_anchor(boxes)) {
            legend { (title) }
            (beside)
            (inputs(sheet, boxes))
        }
    }
}

/// The inputs of some boxes, the most needed ones first.
pub(crate) fn inputs(sheet: &Sheet, boxes: &Boxes) -> Markup {
    let words = sheet.batch.viewer.words();
    let all = sheet.inputs(boxes);
    let (first, more): (Vec<&Input>, Vec<&Input>) = all.iter().partition(|one| is_first(boxes, one));
    let has_reason_to_look = more.iter().any(|one| one.fault.is_some() || one.is_filled());
    html! {
        @for one in first { (input(one, words)) }
        @if !more.is_empty() {
            details class="more" open[has_reason_to_look] {
                summary { (words.plain("more-to-say")) }
                @for one in more { (input(one, words)) }
            }
        }
        input type="hidden" name=(boxes.name(SEEN)) value=(sheet.seen(boxes));
    }
}

/// Carries an id for the entry to be, so that a form that is sent twice makes one entry.
pub(crate) fn made_id(call: &Call, boxes: &Boxes) -> Markup {
    let name = boxes.name(MADE_ID);
    let id = call.sent(&name).map_or_else(|| (call.site.options.new_id)().to_string(), str::to_owned);
    html! { input type="hidden" name=(name) value=(id); }
}

fn is_first(boxes: &Boxes, input: &Input) -> bool {
    let of_kind = FIRST.iter().find(|(kind, _)| *kind == boxes.kind.name);
    of_kind.is_none_or(|(_, fields)| fields.iter().any(|field| input.key == boxes.name(field)))
}

/// Where some boxes stand on their page.
pub(crate) fn group_anchor(boxes: &Boxes) -> String {
    match boxes.part {
        Some(part) => format!("boxes-{}-{part}", boxes.kind.name),
        None => format!("boxes-{}", boxes.kind.name),
    }
}

/// What does not hold, on top of a form.
pub(crate) fn faults(sheet: &Sheet) -> Markup {
    let inputs = sheet.every_input();
    fault_summary(&inputs.iter().collect::<Vec<_>>(), sheet.batch.viewer.words(), "")
}

/// What is doubtful, with a tick that it is so; and what changes something written before, with a box for the reason.
pub(crate) fn doubts(sheet: &Sheet) -> Markup {
    let (outcome, viewer) = (&sheet.outcome, &sheet.batch.viewer);
    let words = viewer.words();
    let questions =
        outcome.questions.iter().map(|(name, question)| (name, fault::question(question, viewer)));
    let asks = outcome.asks.iter().map(|(name, ask)| (name, oddity::ask(ask, viewer)));
    let doubts: Vec<(&String, String)> = questions.chain(asks).collect();
    html! {
        @if !doubts.is_empty() {
            div class="faults" role="alert" id="doubts" {
                h2 { (words.plain("is-it-so")) }
                ul { @for (name, text) in doubts { li { a href=(format!("#{}", field_anchor(name))) { (text) } } } }
                label class="tick" {
                    input type="checkbox" name=(SURE) value="yes"; " " (words.plain("it-is-so"))
                }
            }
        }
        (why_changed(sheet))
    }
}

fn why_changed(sheet: &Sheet) -> Markup {
    let (outcome, viewer) = (&sheet.outcome, &sheet.batch.viewer);
    let words = viewer.words();
    html! {
        @if !outcome.unexplained.is_empty() {
            div class="faults" role="alert" id="unexplained" {
                h2 { (words.plain("why-changed")) }
                ul { @for boxes in &outcome.unexplained {
                    li { (words.plain(if outcome.meanwhile.is_empty() { "changes-what-was-written" } else { "written-meanwhile" }))
                        " " (kind_name(boxes.kind.name, viewer)) ", " (show::day(boxes.day, viewer)) ": "
                        (written(sheet, boxes)) }
                } }
                (reason_box(sheet.batch))
            }
        } @else if let Some(reason) = &sheet.reason {
            input type="hidden" name=(REASON) value=(reason);
        }
    }
}

/// What stands in the book in the place of some boxes.
fn written(sheet: &Sheet, boxes: &Boxes) -> String {
    let record = boxes.written(&sheet.batch.open.state, sheet.batch.id).or_else(|| sheet.standing(boxes));
    record
        .and_then(book::Record::body)
        .map_or_else(String::new, |body| in_short(boxes.kind.name, body, sheet.batch))
}

/// A box for a reason.
pub(crate) fn reason_box(batch: &Batch) -> Markup {
    let words = batch.viewer.words();
    html! {
        div class="input" {
            label for=(REASON) { (words.plain("reason-label")) }
            p class="hint" id="reason-hint" { (words.plain("reason-hint")) }
            input id=(REASON) name=(REASON) type="text" autocomplete="off" aria-describedby="reason-hint";
        }
    }
}

/// What an entry says, on one line.
pub(crate) fn in_short(kind: &str, body: &book::Body, batch: &Batch) -> String {
    let lines = present::entry::lines(kind, body, &batch.viewer);
    let words = batch.viewer.words();
    let line =
        |line: &present::entry::Line| say!(words, "conflict-answer", field = &line.label, value = &line.text);
    lines.iter().map(line).collect::<Vec<_>>().join("; ")
}

/// A day with its day of age.
pub(crate) fn day_and_age(batch: &Batch, day: CivilDay, age: Option<i32>) -> String {
    let words = batch.viewer.words();
    let date = show::day(day, &batch.viewer);
    match age {
        Some(age) => say!(words, "day-and-age", day = date, age = show::number(age.into(), 0)),
        None => date,
    }
}
