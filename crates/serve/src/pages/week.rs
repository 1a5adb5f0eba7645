//! A week typed in from paper: the boxes stand as on the sheet at the house door, a column a day.

use advice::store_room::Phase;
use advice::walk::Walk;
use axum::response::Response;
use maud::{Markup, html};
use present::entry::kind_name;
use present::form::{Control, Input};
use present::html::field_anchor;
use present::{say, show as shown};
use quantity::CivilDay;

use crate::batch::{Batch, ON};
use crate::boxes::{Boxes, SEEN};
use crate::call::{Call, see_other};
use crate::pages::boxes::{doubts, faults};
use crate::pages::{frame, kept};
use crate::sheet::Sheet;
use crate::trouble::Trouble;

/// Days on a sheet.
const DAYS: i32 = 7;

/// The rows that a sheet has a box for, besides those of the feeds: kind and field.
const ROWS: [(&str, &str); 5] = [
    ("water", "water_l"),
    ("house-air", "warmest_c"),
    ("house-air", "coldest_c"),
    ("deaths", "dead"),
    ("deaths", "culled"),
];

/// The week that holds the day.
pub(crate) async fn show(call: Call) -> Result<Response, Trouble> {
    let batch = Batch::load(&call).await?;
    let week = Week::of(&batch).ok_or(Trouble::NotFound)?;
    let stamp = call.stamp(&batch.open, &batch.viewer, &[&batch.today.to_string()]);
    if let Some(unchanged) = call.unless_known(&stamp) {
        return Ok(unchanged);
    }
    let sheet = Sheet::blank(&batch, week.boxes());
    Ok(call.page(&stamp, page(&call, &week, &sheet)))
}

/// Writes the week, unless something of it does not hold, is doubtful or wants a reason.
pub(crate) async fn save(call: Call) -> Result<Response, Trouble> {
    let batch = Batch::load(&call).await?;
    let week = Week::of(&batch).ok_or(Trouble::NotFound)?;
    let sheet = Sheet::sent(&batch, week.boxes(), &call);
    if !sheet.holds() {
        return Ok(frame::unwritten(page(&call, &week, &sheet)));
    }
    sheet.write(&call).await?;
    Ok(see_other(&format!("{}?saved=1", batch.address())))
}

/// A week of a batch, as it stands on its sheet.
struct Week {
    /// Its days up to today, the first a whole number of weeks after the chicks came.
    days: Vec<CivilDay>,
    /// The feeds eaten in it.
    feeds: Vec<Phase>,
    /// The age of its first day.
    age: i32,
}

impl Week {
    /// The week of the day that is looked at; `None` before the chicks came.
    fn of(batch: &Batch) -> Option<Week> {
        let walk = batch.walk();
        let placed = walk.diary.placement.filter(|_| walk.diary.is_placed)?;
        let age = walk.diary.age_today().filter(|age| *age >= 0)?;
        let age = age - age % DAYS;
        let first = placed.plus_days(age);
        let days: Vec<CivilDay> =
            (0..DAYS).map(|on| first.plus_days(on)).filter(|day| *day <= batch.today).collect();
        let mut feeds: Vec<Phase> = Vec::new();
        for day in &days {
            let of_day = Walk::feeds_on(&walk.plan, walk.diary.age(*day)?);
            feeds.extend(of_day.into_iter().filter(|phase| !feeds.contains(phase)).collect::<Vec<_>>());
        }
        Some(Week { days, feeds, age })
    }

    /// The boxes by day: whatever is not on the sheet is asked on the day's own page.
    fn boxes(&self) -> Vec<Boxes> {
        let of_day = |day: &CivilDay| {
            let feeds =
                self.feeds.iter().filter_map(|phase| Boxes::of_part("feed-given", phase.name(), *day));
            let others =
                ["water", "house-air", "deaths"].into_iter().filter_map(|kind| Boxes::of(kind, *day));
            feeds.chain(others).collect::<Vec<_>>()
        };
        self.days.iter().flat_map(of_day).collect()
    }

    /// The rows: kind, part and field.
    fn rows(&self) -> Vec<(&'static str, Option<&'static str>, &'static str)> {
        let feeds = self.feeds.iter().map(|phase| ("feed-given", Some(phase.name()), "feed_kg"));
        feeds.chain(ROWS.into_iter().map(|(kind, field)| (kind, None, field))).collect()
    }
}

fn page(call: &Call, week: &Week, sheet: &Sheet) -> Markup {
    let batch = sheet.batch;
    let words = batch.viewer.words();
    let content = html! {
        p class="subtitle" { (batch.name()) ", " (say!(words, "week-of-age", from = week.age.to_string(), to = (week.age + DAYS - 1).to_string())) }
        p { a class="back" href=(batch.page("")) { (words.plain("back-to-the-day")) } }
        p { (words.plain("week-how")) }
        (beside(batch, week))
        form class="week-form" method="post" action=(format!("{}/week", batch.address())) novalidate
            data-kept data-seen=(kept::seen(batch)) data-draft=[kept::draft(call)] {
            input type="hidden" name=(ON) value=(batch.on);
            (faults(sheet))
            (doubts(sheet))
            (table(week, sheet))
            @for boxes in &sheet.shown { (carried(sheet, boxes)) }
            div class="save-bar" { button { (words.plain("write-the-week")) } }
        }
    };
    frame::page(&call.site, &batch.viewer, &words.plain("type-a-week-in"), &content)
}

/// The weeks before and after.
fn beside(batch: &Batch, week: &Week) -> Markup {
    let words = batch.viewer.words();
    let first = week.days.first().copied().unwrap_or(batch.on);
    html! {
        nav class="beside" aria-label=(words.plain("other-weeks")) {
            @if week.age > 0 { a class="back" href=(batch.page_of("/week", first.plus_days(-1))) { (words.plain("week-before")) } }
            @if first.plus_days(DAYS) <= batch.today {
                a class="onward" href=(batch.page_of("/week", first.plus_days(DAYS))) { (words.plain("week-after")) }
            }
        }
    }
}

fn table(week: &Week, sheet: &Sheet) -> Markup {
    let viewer = &sheet.batch.viewer;
    let words = viewer.words();
    let weekday = |day: CivilDay| words.plain(&format!("weekday-{}", day.weekday()));
    html! {
        div class="scroll" tabindex="0" role="region" aria-label=(words.plain("type-a-week-in")) {
            table class="wide week" {
                thead { tr {
                    td {}
                    @for (at, day) in week.days.iter().enumerate() {
                        th scope="col" { (weekday(*day)) " " (shown::day_short(*day, viewer)) br;
                            (say!(words, "day-of-age", day = (week.age + at as i32).to_string())) }
                    }
                } }
                tbody { @for (kind, part, field) in week.rows() { tr {
                    th scope="row" { (label(sheet, kind, part, field)) }
                    @for day in &week.days { td { (cell(sheet, kind, part, field, *day)) } }
                } } }
            }
        }
    }
}

/// What the row is; of a feed, which.
fn label(sheet: &Sheet, kind: &'static str, part: Option<&'static str>, field: &str) -> Markup {
    let boxes = sheet.shown.iter().find(|boxes| boxes.kind.name == kind && boxes.part == part);
    let words = sheet.batch.viewer.words();
    let asked = boxes.and_then(|boxes| found(sheet, boxes, field));
    html! {
        @if let Some(part) = part {
            span class="capital" { (kind_name(kind, &sheet.batch.viewer)) ": " (words.plain(&format!("choice-feed-given-phase-{part}"))) }
        } @else if let Some(asked) = &asked { (asked.label) }
        @if let Some(Control::Text { unit, .. }) = asked.as_ref().map(|asked| &asked.control)
            && !unit.is_empty() { " (" (unit) ")" }
    }
}

fn found(sheet: &Sheet, boxes: &Boxes, field: &str) -> Option<Input> {
    let name = boxes.name(field);
    sheet.inputs(boxes).into_iter().find(|input| input.key == name)
}

fn cell(sheet: &Sheet, kind: &str, part: Option<&str>, field: &str, day: CivilDay) -> Markup {
    let viewer = &sheet.batch.viewer;
    let boxes =
        sheet.shown.iter().find(|boxes| boxes.kind.name == kind && boxes.part == part && boxes.day == day);
    let Some(boxes) = boxes else { return html! {} };
    let Some(input) = found(sheet, boxes, field) else { return html! {} };
    let Control::Text { typed, .. } = &input.control else { return html! {} };
    let id = field_anchor(&input.key);
    let named = format!("{}, {}", input.label, shown::day_short(day, viewer));
    html! {
        input id=(id) name=(input.key) type="text" inputmode="decimal" autocomplete="off" value=(typed) aria-label=(named)
            aria-invalid=[input.fault.is_some().then_some("true")];
        @if let Some(fault) = &input.fault { p class="fault" { (fault) } }
    }
}

/// What the sheet has no box for and the book knows already is carried along, so that nothing is lost by typing a week.
fn carried(sheet: &Sheet, boxes: &Boxes) -> Markup {
    let on_sheet = |input: &Input| {
        let fields = ROWS.iter().filter(|(kind, _)| *kind == boxes.kind.name).map(|(_, field)| *field);
        fields.chain(["feed_kg"]).any(|field| input.key == boxes.name(field))
    };
    let others: Vec<Input> = sheet.inputs(boxes).into_iter().filter(|input| !on_sheet(input)).collect();
    html! {
        input type="hidden" name=(boxes.name(SEEN)) value=(sheet.seen(boxes));
        @for input in &others { @for value in values(&input.control) {
            input type="hidden" name=(input.key) value=(value);
        } }
    }
}

fn values(control: &Control) -> Vec<&str> {
    match control {
        Control::Text { typed, .. } | Control::Lines { typed, .. } | Control::Day { typed } => {
            if typed.is_empty() { Vec::new() } else { vec![typed] }
        }
        Control::One { options } | Control::Some { options } => {
            options.iter().filter(|(.., chosen)| *chosen).map(|(value, ..)| value.as_str()).collect()
        }
    }
}
