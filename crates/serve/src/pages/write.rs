//! Writing one thing down, of whatever kind; and putting an entry right.

use advice::record;
use axum::response::Response;
use book::{EntryId, Kind};
use maud::{Markup, html};
use present::entry::kind_name;
use present::show;

use crate::batch::{Batch, ON};
use crate::boxes::Boxes;
use crate::call::{Call, see_other};
use crate::pages::boxes::{day_and_age, doubts, faults, inputs, made_id};
use crate::pages::{frame, kept};
use crate::sheet::Sheet;
use crate::trouble::Trouble;
use uuid::Uuid;

/// The parameter and form field that name the entry that is put right.
const ENTRY: &str = "entry";

/// The form of a kind, blank or filled with the entry that is put right.
pub(crate) async fn show(call: Call) -> Result<Response, Trouble> {
    let batch = Batch::load(&call).await?;
    let kind = kind(&call)?;
    let entry = entry(call.asked(ENTRY), &batch, kind)?;
    let sheet = with_entry(Sheet::blank(&batch, boxes(kind, &batch)?), entry);
    let page = page(&call, &sheet, kind, entry);
    Ok(frame::fresh(page))
}

/// Writes it, unless something of it does not hold, is doubtful or wants a reason.
pub(crate) async fn save(call: Call) -> Result<Response, Trouble> {
    let batch = Batch::load(&call).await?;
    let kind = kind(&call)?;
    let entry = entry(call.sent(ENTRY), &batch, kind)?;
    let sheet = with_entry(Sheet::sent(&batch, boxes(kind, &batch)?, &call), entry);
    if !sheet.holds() || sheet.is_empty() {
        return Ok(frame::unwritten(page(&call, &sheet, kind, entry)));
    }
    sheet.write(&call).await?;
    let mark = if batch.on == batch.today { "?saved=1" } else { "&saved=1" };
    // What a weighing says is what it was done for.
    let next = if kind.name == "weighing" { "/weighed" } else { "" };
    Ok(see_other(&format!("{}{mark}", batch.page(next))))
}

fn with_entry<'a>(sheet: Sheet<'a>, entry: Option<EntryId>) -> Sheet<'a> {
    match entry {
        Some(entry) => sheet.correcting(entry),
        None => sheet,
    }
}

fn kind(call: &Call) -> Result<&'static Kind, Trouble> {
    let kind = record::kind(call.param("kind")).ok_or(Trouble::NotFound)?;
    if kind.about.contains(&book::About::Batch) { Ok(kind) } else { Err(Trouble::NotFound) }
}

fn boxes(kind: &Kind, batch: &Batch) -> Result<Vec<Boxes>, Trouble> {
    Ok(vec![Boxes::of(kind.name, batch.on).ok_or(Trouble::NotFound)?])
}

/// The entry to put right: one that counts, of that kind.
fn entry(named: Option<&str>, batch: &Batch, kind: &Kind) -> Result<Option<EntryId>, Trouble> {
    let Some(named) = named.filter(|named| !named.is_empty()) else { return Ok(None) };
    let id = Uuid::try_parse(named).map(EntryId).map_err(|_| Trouble::NotFound)?;
    let record = batch.counting(id).ok_or(Trouble::NotFound)?;
    if record.entry().kind == kind.name { Ok(Some(id)) } else { Err(Trouble::NotFound) }
}

fn page(call: &Call, sheet: &Sheet, kind: &'static Kind, entry: Option<EntryId>) -> Markup {
    let batch = sheet.batch;
    let words = batch.viewer.words();
    let name = kind_name(kind.name, &batch.viewer);
    let age = batch.diary().age_today();
    let content = html! {
        p class="subtitle" { (batch.name()) ", " (day_and_age(batch, batch.on, age)) }
        p { a class="back" href=(batch.page("")) { (words.plain("back-to-the-day")) } }
        @if let Some(about) = words.knows(&format!("about-{}", kind.name)).then(|| format!("about-{}", kind.name)) {
            p { (words.plain(&about)) }
        }
        form class="day-form" method="post" action=(format!("{}/write/{}", batch.address(), kind.name)) novalidate
            data-kept data-seen=(kept::seen(batch)) data-day=(show::day_short(batch.on, &batch.viewer))
            data-draft=[kept::draft(call)] {
            (faults(sheet))
            @if sheet.is_empty_sent() { p class="fault" role="alert" { (words.plain("nothing-was-said")) } }
            (doubts(sheet))
            (day_box(batch, entry))
            @for boxes in &sheet.shown {
                (inputs(sheet, boxes))
                (made_id(call, boxes))
            }
            div class="save-bar" { button { (words.plain("write-down")) } }
        }
    };
    frame::page(&call.site, &batch.viewer, &name, &content)
}

/// The day it is about. Of an entry that is put right the day stays: another day is another entry.
fn day_box(batch: &Batch, entry: Option<EntryId>) -> Markup {
    let words = batch.viewer.words();
    html! {
        @match entry {
            Some(entry) => {
                input type="hidden" name=(ON) value=(batch.on);
                input type="hidden" name=(ENTRY) value=(entry.0);
            }
            None => {
                div class="input" {
                    label for=(ON) { (words.plain("about-which-day")) }
                    input id=(ON) name=(ON) type="date" value=(batch.on) max=(batch.today);
                }
            }
        }
    }
}
