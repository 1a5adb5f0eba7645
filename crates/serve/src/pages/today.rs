//! Today: what there is to do and why, what is expected of the day beside the boxes to fill, and what was written last.

use std::collections::BTreeMap;

use advice::diary::Noted;
use advice::walk::{Job, Walk};
use axum::response::Response;
use book::{EntryId, Subject};
use maud::{Markup, html};
use present::batch::{BATCH_SHEETS, air_of_today, watch_of_today};
use present::entry::kind_name;
use present::html::{blocks_of_plan, working_address};
use present::oddity::Oddity;
use present::plan::Shown;
use present::{Document, oddity, say, show as shown};
use quantity::Unit;

use crate::batch::{Batch, ON};
use crate::boxes::Boxes;
use crate::call::{Call, see_other};
use crate::pages::boxes::{day_and_age, doubts, faults, group, in_short};
use crate::pages::sight::Sight;
use crate::pages::{frame, kept, settle};
use crate::sheet::Sheet;
use crate::tick::TASK;
use crate::trouble::Trouble;

/// Entries listed as the last ones.
const LAST_ENTRIES: usize = 6;

/// Today, or another day that is asked for.
pub(crate) async fn show(call: Call) -> Result<Response, Trouble> {
    let batch = Batch::load(&call).await?;
    let stamp = call.stamp(&batch.open, &batch.viewer, &[&batch.today.to_string()]);
    if let Some(unchanged) = call.unless_known(&stamp) {
        return Ok(unchanged);
    }
    let walk = batch.walk();
    let sheet = Sheet::blank(&batch, boxes(&walk));
    Ok(call.page(&stamp, page(&call, &walk, &sheet)))
}

/// Writes what was typed about the day, unless something of it does not hold, is doubtful or wants a reason.
pub(crate) async fn save(call: Call) -> Result<Response, Trouble> {
    let batch = Batch::load(&call).await?;
    let walk = batch.walk();
    let sheet = Sheet::sent(&batch, boxes(&walk), &call);
    if !sheet.holds() {
        return Ok(frame::unwritten(page(&call, &walk, &sheet)));
    }
    sheet.write(&call).await?;
    let mark = if batch.on == batch.today { "?saved=1" } else { "&saved=1" };
    Ok(see_other(&format!("{}{mark}", batch.page(""))))
}

/// The boxes of a day of a running batch.
fn boxes(walk: &Walk) -> Vec<Boxes> {
    let day = walk.diary.on;
    let is_of_batch = walk.diary.is_placed && walk.diary.placement.is_some_and(|placed| placed <= day);
    if !is_of_batch || walk.diary.is_closed {
        return Vec::new();
    }
    let feeds = walk.feeds.iter().filter_map(|phase| Boxes::of_part("feed-given", phase.name(), day));
    let mut all: Vec<Boxes> = Boxes::of("deaths", day).into_iter().chain(feeds).collect();
    all.extend(["water", "house-air", "look"].into_iter().filter_map(|kind| Boxes::of(kind, day)));
    all
}

fn page(call: &Call, walk: &Walk, sheet: &Sheet) -> Markup {
    let batch = sheet.batch;
    let may_write = call.access.may_write();
    let words = batch.viewer.words();
    let content = html! {
        p class="subtitle" { (batch.name()) }
        (days(batch, walk))
        @if call.asked("saved").is_some() { p class="done" role="status" { (words.plain("written-in-the-book")) } }
        (settle::questions(batch, may_write))
        @if !sheet.shown.is_empty() && may_write && !walk.jobs.is_empty() {
            p { a class="onward" href="#write" { (words.plain("write-the-day")) } }
        }
        (oddities(batch))
        (unwritten(batch, walk))
        (watch(batch, walk))
        (jobs(batch, walk, may_write))
        (form(walk, sheet, may_write, kept::draft(call), call.site.options.demo))
        (air(batch, walk))
        (ways(batch, walk, may_write))
        (last_entries(batch, walk))
        (prints(batch))
    };
    let title = words.plain(if batch.on == batch.today { "page-today" } else { "page-a-day" });
    frame::page(&call.site, &batch.viewer, &title, &content)
}

/// The day, and the ones beside it.
fn days(batch: &Batch, walk: &Walk) -> Markup {
    let words = batch.viewer.words();
    let (before, after) = (batch.on.plus_days(-1), batch.on.plus_days(1));
    html! {
        p class="day-line" { strong { (day_and_age(batch, batch.on, walk.diary.age_today())) } }
        nav class="beside" aria-label=(words.plain("other-days")) {
            a class="back" href=(batch.page_of("", before)) { (shown::day_short(before, &batch.viewer)) }
            @if batch.on != batch.today { a href=(batch.address()) { (words.plain("page-today")) } }
            @if after <= batch.today {
                a class="onward" href=(batch.page_of("", after)) { (shown::day_short(after, &batch.viewer)) }
            }
        }
    }
}

/// What the book finds odd about the batch: of each sort the latest, since that is where to begin.
fn oddities(batch: &Batch) -> Markup {
    let viewer = &batch.viewer;
    let words = viewer.words();
    let called = |entry: EntryId| match batch.counting(entry) {
        Some(record) => say!(words, "entry-of-day", day = shown::day_short(record.entry().day, viewer)),
        None => entry.0.to_string(),
    };
    let mut latest: BTreeMap<&'static str, (Oddity, usize)> = BTreeMap::new();
    for finding in batch.open.state.findings_about(Subject::Batch(batch.id)) {
        let odd = oddity::finding_called(&finding, &called, viewer);
        let before = latest.get(odd.name).map_or(0, |(_, count)| *count);
        latest.insert(odd.name, (odd, before + 1));
    }
    html! {
        @for (odd, count) in latest.values() {
            div class="finding look" {
                p {
                    strong { (words.plain("weight-look")) } " " (odd.text)
                    @if *count > 1 { " " (say!(words, "and-before", count = (count - 1) as f64, n = (count - 1).to_string())) }
                }
                @if let Some(entry) = odd.entry {
                    p { a href=(batch.entry_address(entry)) { (words.plain("to-the-entry")) } }
                }
            }
        }
    }
}

/// Days before on which something was not written: offered to be filled in, never filled in unasked.
fn unwritten(batch: &Batch, walk: &Walk) -> Markup {
    let words = batch.viewer.words();
    html! {
        @if !walk.unwritten.is_empty() {
            section class="unwritten" {
                h2 { (words.plain("not-yet-written")) }
                ul { @for (day, kinds) in &walk.unwritten {
                    @let names: Vec<String> = kinds.iter().map(|kind| kind_name(kind, &batch.viewer)).collect();
                    li { a href=(format!("{}#write", batch.page_of("", *day))) {
                        (say!(words, "day-lacks", day = shown::day_short(*day, &batch.viewer), what = names.join(", ")))
                    } }
                } }
                @if walk.unwritten.len() > 1 {
                    p { a class="onward" href=(batch.page("/week")) { (words.plain("type-a-week-in")) } }
                }
            }
        }
    }
}

/// What does not fit what was expected, and the way to all signals.
fn watch(batch: &Batch, walk: &Walk) -> Markup {
    let words = batch.viewer.words();
    let blocks = watch_of_today(walk, &batch.viewer);
    let document = Document { blocks, ..Document::default() };
    html! {
        @if !document.blocks.is_empty() {
            section class="watch" {
                h2 { (words.plain("watch-today")) }
                (blocks_of_plan(&document, &batch.viewer, &batch.address()))
                p { a class="onward" href=(batch.page("/watch")) { (words.plain("watch-to-page")) } }
            }
        }
    }
}

/// Where the curtain stands tonight, and the heat of tomorrow.
fn air(batch: &Batch, walk: &Walk) -> Markup {
    let words = batch.viewer.words();
    let blocks = air_of_today(walk, &batch.viewer);
    let document = Document { blocks, ..Document::default() };
    html! {
        @if !document.blocks.is_empty() {
            section class="watch" {
                h2 { (words.plain("air-day-today")) }
                (blocks_of_plan(&document, &batch.viewer, &batch.address()))
                p { a class="onward" href=(batch.page("/air")) { (words.plain("page-air")) } }
            }
        }
    }
}

fn jobs(batch: &Batch, walk: &Walk, may_write: bool) -> Markup {
    let words = batch.viewer.words();
    let plan = Shown::new(&walk.plan, &batch.viewer);
    html! {
        @if !walk.jobs.is_empty() {
            h2 id="jobs" { (words.plain("jobs-of-the-day")) }
            @let list = html! { ul class="jobs" { @for job in &walk.jobs { (row(batch, &plan, job, may_write)) } } };
            @if may_write {
                form method="post" action=(format!("{}/tick", batch.address())) data-kept data-seen=(kept::seen(batch))
                    data-day=(shown::day_short(batch.on, &batch.viewer)) data-title=(words.plain("jobs-of-the-day")) {
                    input type="hidden" name=(ON) value=(batch.on);
                    (list)
                }
            } @else { (list) }
        }
    }
}

fn row(batch: &Batch, plan: &Shown, job: &Job, may_write: bool) -> Markup {
    let words = batch.viewer.words();
    let (text, why) = plan.job(&job.task);
    html! {
        li {
            @match &job.done {
                Some(note) => {
                    a class="tick-box ticked" href=(batch.entry_address(note.id)) {
                        "✓" span class="hidden" { (words.plain("job-done")) " " (text) }
                    }
                }
                None if may_write => {
                    button class="tick-box" name=(TASK) value=(job.key) {
                        span class="hidden" { (words.plain("tick-off")) ": " (text) }
                    }
                }
                None => { span class="tick-box" {} }
            }
            div {
                p { (text) }
                @if job.late_d > 0 && job.done.is_none() {
                    p class="why" { strong { (say!(words, "job-late", days = job.late_d.to_string(), count = f64::from(job.late_d))) } }
                }
                @if !why.is_empty() { details { summary { (words.plain("job-why")) span class="hidden" { ": " (text) } } p { (why) } } }
            }
        }
    }
}

/// The boxes of the day, each with what is expected beside it.
fn form(walk: &Walk, sheet: &Sheet, may_write: bool, draft: Option<&str>, is_demo: bool) -> Markup {
    let batch = sheet.batch;
    let words = batch.viewer.words();
    html! {
        @if !sheet.shown.is_empty() {
            h2 id="write" { (words.plain("write-the-day")) }
            @if may_write {
                // The clock of the demo stands still: that a phone's goes on is nothing to ask about.
                @let asks = batch.on == batch.today && !is_demo;
                form class="day-form" method="post" action=(format!("{}/day", batch.address())) novalidate
                    data-kept data-seen=(kept::seen(batch)) data-on=(batch.on) data-asks-day[asks]
                    data-day=(shown::day_short(batch.on, &batch.viewer)) data-title=(words.plain("kept-the-day"))
                    data-draft=[draft] {
                    input type="hidden" name=(ON) value=(batch.on);
                    (faults(sheet))
                    (doubts(sheet))
                    @for boxes in &sheet.shown {
                        (group(sheet, boxes, &title(walk, batch, boxes), &expected(walk, batch, boxes)))
                    }
                    div class="save-bar" { button { (words.plain("save-the-day")) } }
                }
            } @else {
                @for boxes in &sheet.shown { p { strong { (title(walk, batch, boxes)) } } (expected(walk, batch, boxes)) }
            }
        }
    }
}

fn title(walk: &Walk, batch: &Batch, boxes: &Boxes) -> String {
    let words = batch.viewer.words();
    let name = kind_name(boxes.kind.name, &batch.viewer);
    match boxes.part {
        Some(part) if walk.feeds.len() > 1 => {
            let feed = words.plain(&format!("choice-feed-given-phase-{part}"));
            say!(words, "kind-of-part", kind = name, part = feed)
        }
        _ => name,
    }
}

/// The figures that say what is expected of a kind.
fn expecting(kind: &str) -> &'static [&'static str] {
    match kind {
        "deaths" => &["walk.deaths_expected"],
        "feed-given" => &["walk.feed_expected"],
        "water" => &["walk.water_expected"],
        "house-air" => &["walk.temperature_target"],
        "look" => &["walk.light_hours"],
        _ => &[],
    }
}

/// What is expected, with the way to how it is worked out.
fn expected(walk: &Walk, batch: &Batch, boxes: &Boxes) -> Markup {
    let words = batch.viewer.words();
    let known = expecting(boxes.kind.name).iter().filter_map(|id| walk.plan.outcome.get(id));
    html! {
        @for worked in known {
            p class="expected" {
                (words.plain(&format!("figure-{}", present::words::key_part(worked.figure.id)))) ": "
                strong { (shown::figure(&worked.figure, worked.spec, &batch.viewer)) }
                @if boxes.kind.name == "feed-given" { (in_bags(walk, batch)) }
                " " a class="how" href=(on_the_day(batch, worked.figure.id)) {
                    (words.plain("how-worked-out"))
                    span class="hidden" { ": " (words.plain(&format!("figure-{}", present::words::key_part(worked.figure.id)))) }
                }
            }
        }
        @if boxes.kind.name == "deaths" { (call_at(walk, batch)) }
    }
}

fn on_the_day(batch: &Batch, id: &str) -> String {
    let about = if batch.on == batch.today { String::new() } else { format!("?{ON}={}", batch.on) };
    format!("{}{about}", working_address(&batch.address(), id))
}

/// The same in bags, which is how feed is carried.
fn in_bags(walk: &Walk, batch: &Batch) -> Markup {
    let kilograms = walk.plan.outcome.number("walk.feed_expected");
    let bag = walk.diary.answers.number("feed.bag_kg");
    let bags = kilograms.zip(bag).map(|(kilograms, bag)| shown::short(kilograms / bag, 1));
    html! { @if let Some(bags) = bags { " " (say!(batch.viewer.words(), "so-many-bags", n = bags)) } }
}

/// From how many deaths on a veterinarian is called.
fn call_at(walk: &Walk, batch: &Batch) -> Markup {
    let birds = walk.call_at.map(|birds| shown::quantity(birds, Unit::Birds, 0, &batch.viewer));
    html! {
        @if let Some(birds) = birds { p class="expected" { (say!(batch.viewer.words(), "call-at", birds = birds)) } }
    }
}

/// What is written now and then, in the order of how often.
const OTHER_KINDS: [&str; 21] = [
    "weighing",
    "feed-delivered",
    "feed-opened",
    "feed-spoiled",
    "birds-out",
    "count-found",
    "litter-check",
    "chick-check",
    "crop-fill",
    "vaccine-given",
    "medicine-given",
    "visitor",
    "foot-bath",
    "power-cut",
    "fuel-burnt",
    "purchase",
    "cost",
    "sale",
    "price-seen",
    "note",
    "batch-closed",
];

fn ways(batch: &Batch, walk: &Walk, may_write: bool) -> Markup {
    let words = batch.viewer.words();
    let is_before = !walk.diary.is_placed;
    html! {
        @if may_write && is_before {
            p { a class="button" href=(batch.page("/write/chicks-placed")) { (words.plain("the-chicks-came")) } }
        }
        h2 { (words.plain("look-at")) }
        ul class="ways" {
            @for sight in Sight::ALL {
                li { a href=(batch.page(&format!("/{}", sight.name()))) { (words.plain(&format!("page-{}", sight.name()))) } }
            }
            li { a href=(batch.page("/air")) { (words.plain("page-air")) } }
            li { a href=(format!("/before/{}", batch.id.0)) { (words.plain("the-adopted-plan")) } }
            li { a href=(batch.page(&format!("/day/{}", batch.on))) { (words.plain("all-of-the-day")) } }
        }
        @if may_write {
            h2 id="write-more" { (words.plain("write-something-else")) }
            ul class="ways" data-keeps {
                @for kind in OTHER_KINDS {
                    @let page = if kind == "weighing" { "/weigh".to_owned() } else { format!("/write/{kind}") };
                    li { a href=(batch.page(&page)) { (kind_name(kind, &batch.viewer)) } }
                }
                @for kind in LESS_OFTEN { li { a href=(batch.page(&format!("/write/{kind}"))) { (kind_name(kind, &batch.viewer)) } } }
                li { a href=(batch.page("/week")) { (words.plain("type-a-week-in")) } }
                li { a href=(batch.page("/paste")) { (words.plain("paste-rows")) } }
            }
        }
    }
}

/// What is written once a batch or hardly ever.
const LESS_OFTEN: [&str; 6] =
    ["chicks-placed", "vaccine-programme", "sensor-day", "order", "payment", "litter-sold"];

fn last_entries(batch: &Batch, walk: &Walk) -> Markup {
    let words = batch.viewer.words();
    let mut notes: Vec<&Noted> = walk.diary.notes.iter().filter(|note| note.kind != "plan-adopted").collect();
    notes.sort_by_key(|note| std::cmp::Reverse(note.clock));
    html! {
        @if !notes.is_empty() {
            h2 { (words.plain("last-entries")) }
            ul class="entries" { @for note in notes.into_iter().take(LAST_ENTRIES) { (entry_row(batch, note)) } }
        }
    }
}

/// The sheets to print.
fn prints(batch: &Batch) -> Markup {
    let words = batch.viewer.words();
    let address = |sheet: &str, paper: &str| {
        let about = if batch.on == batch.today { String::new() } else { format!("&{ON}={}", batch.on) };
        format!("{}/print/{sheet}?paper={paper}{about}", batch.address())
    };
    html! {
        h2 id="to-print" { (words.plain("to-print")) }
        ul class="prints" {
            @for sheet in BATCH_SHEETS {
                @let name = words.plain(&format!("print-{sheet}"));
                li {
                    a href=(address(sheet, "a4")) { (say!(words, "print-a4", sheet = &name)) }
                    " "
                    a href=(address(sheet, "us-letter")) {
                        (words.plain("print-us-letter")) span class="hidden" { ": " (name) }
                    }
                }
            }
        }
    }
}

/// An entry as a row of a list.
pub(crate) fn entry_row(batch: &Batch, note: &Noted) -> Markup {
    html! {
        li {
            a href=(batch.entry_address(note.id)) {
                strong { (kind_name(note.kind, &batch.viewer)) } ", " (shown::day_short(note.day, &batch.viewer))
            }
            p class="why" { (in_short(note.kind, &note.body, batch)) }
        }
    }
}
