//! The first page: the plans of the farm, and where to go.

use std::cmp::Reverse;
use std::collections::BTreeMap;
use std::sync::Arc;

use advice::diary::Diary;
use advice::finding::Weight;
use advice::plan::Fit;
use advice::record;
use axum::response::Response;
use book::{BatchId, BookState, HouseId, Slot, Subject};
use maud::{Markup, html};
use present::plan::Shown;
use present::{Viewer, say, show as shown};
use quantity::{CivilDay, Unit};
use uuid::Uuid;

use crate::adopt;
use crate::batch;
use crate::before::{Adopted, Before};
use crate::call::Call;
use crate::desk::Open;
use crate::draft::{self, PlanDraft};
use crate::house;
use crate::pages::before::latest_house;
use crate::pages::form::named_houses;
use crate::pages::frame;
use crate::site::Site;
use crate::trouble::Trouble;

/// The most plans listed. Who has more finds the newest first.
const PLANS_LISTED: usize = 40;

/// The first page.
pub(crate) async fn show(call: Call) -> Result<Response, Trouble> {
    let open = call.site.open(&call.access).await?;
    let viewer = Site::viewer(&open.state);
    let drafts = draft::all(&*call.site.store, &call.access).await?;
    let day = call.site.today(&open.state).to_string();
    let stamp = call.stamp(&open, &viewer, &[&format!("{drafts:?}"), &day]);
    if let Some(unchanged) = call.unless_known(&stamp) {
        return Ok(unchanged);
    }
    let plans = plans(drafts, &open);
    let today = call.site.today(&open.state);
    let content = html! {
        (batches(&open, today, &viewer))
        (content(&plans, &houses_latest_first(&open, &viewer), &viewer, call.access.may_write()))
    };
    let title = viewer.words().plain("page-home");
    Ok(call.page(&stamp, frame::page(&call.site, &viewer, &title, &content)))
}

/// The plans that say something, drafts and adopted ones, newest first.
fn plans(mut drafts: BTreeMap<Uuid, PlanDraft>, open: &Arc<Open>) -> Vec<Before> {
    // A plan whose chicks have come is a batch, and stands among those.
    let has_come =
        |batch: BatchId| open.state.current(&Slot::of("chicks-placed", Subject::Batch(batch))).is_some();
    drafts.retain(|id, _| !has_come(BatchId(*id)));
    for batch in planned(&open.state).filter(|batch| !has_come(*batch)) {
        if !drafts.contains_key(&batch.0) {
            drafts.extend(adopt::draft_of(&open.state, batch.0).map(|draft| (batch.0, draft)));
        }
    }
    let saying_something = drafts.into_iter().rev().filter(|(_, draft)| !draft.typed.is_empty());
    saying_something.take(PLANS_LISTED).map(|(id, draft)| Before::of(id, draft, Arc::clone(open))).collect()
}

/// The batches whose plan was adopted.
fn planned(state: &BookState) -> impl Iterator<Item = BatchId> {
    let adopted = state.slots().filter(|(slot, _)| slot.kind == "plan-adopted");
    adopted.filter_map(|(slot, _)| match slot.subject {
        Subject::Batch(id) => Some(id),
        _ => None,
    })
}

/// The batches whose plan was adopted: those that run first, then those to come, then those that are closed.
fn batches(open: &Open, today: CivilDay, viewer: &Viewer) -> Markup {
    let words = viewer.words();
    let mut listed: Vec<Listed> =
        planned(&open.state).map(|batch| Listed::of(&open.state, batch, today)).collect();
    listed.sort_by_key(|listed| (listed.is_closed, !listed.is_placed, Reverse(listed.placement)));
    html! {
        @if !listed.is_empty() {
            h2 { (words.plain("page-batches")) }
            ul class="plans" { @for listed in listed.iter().take(PLANS_LISTED) { (batch_row(open, listed, today, viewer)) } }
        }
    }
}

/// What orders the batches. No diary is read for it: a book of many years lists the same few.
struct Listed {
    batch: BatchId,
    placement: Option<CivilDay>,
    is_placed: bool,
    is_closed: bool,
}

impl Listed {
    fn of(state: &BookState, batch: BatchId, today: CivilDay) -> Listed {
        let slot = |kind: &'static str| Slot::of(kind, Subject::Batch(batch));
        let day_of =
            |kind| state.current(&slot(kind)).map(|record| record.entry().day).filter(|day| *day <= today);
        let placed = day_of("chicks-placed");
        let planned = || {
            let plan = state.answers(&slot("plan-adopted"))?;
            CivilDay::parse(plan.get("batch.placement")?.value.as_str()?)
        };
        Listed {
            batch,
            placement: placed.or_else(planned),
            is_placed: placed.is_some(),
            is_closed: day_of("batch-closed").is_some(),
        }
    }
}

fn batch_row(open: &Open, listed: &Listed, today: CivilDay, viewer: &Viewer) -> Markup {
    let words = viewer.words();
    let name = batch::name(&open.state, listed.batch).unwrap_or_else(|| words.plain("plan-without-name"));
    let stands = match (listed.is_closed, listed.is_placed) {
        (true, _) => words.plain("batch-is-closed"),
        (false, false) => words.plain("batch-not-begun"),
        (false, true) => how_it_runs(&Diary::read(&open.state, listed.batch, today), viewer),
    };
    html! {
        li {
            a href=(batch::address(listed.batch.0)) { strong { (name) } }
            p class="why" { (stands) }
        }
    }
}

fn how_it_runs(diary: &Diary, viewer: &Viewer) -> String {
    let words = viewer.words();
    let alive = record::alive_before(diary, diary.on.plus_days(1));
    match (diary.age_today(), alive) {
        (Some(age), Some(alive)) => say!(
            words,
            "batch-runs",
            age = shown::number(age.into(), 0),
            alive = shown::quantity(alive, Unit::Birds, 0, viewer)
        ),
        _ => words.plain("batch-not-begun"),
    }
}

/// The houses that the book describes, the one described last on top.
fn houses_latest_first(open: &Open, viewer: &Viewer) -> Vec<(HouseId, String)> {
    let latest = latest_house(&open.state);
    let mut houses = named_houses(&open.state, viewer);
    houses.sort_by_key(|(id, _)| Some(*id) != latest);
    houses
}

fn content(plans: &[Before], houses: &[(HouseId, String)], viewer: &Viewer, may_write: bool) -> Markup {
    let words = viewer.words();
    let farm = plans.first().and_then(|before| before.answers.text("farm.name"));
    html! {
        @if let Some(farm) = farm.filter(|farm| !farm.is_empty()) { p class="why" { (farm) } }
        p { (words.plain("home-intro")) }
        h2 { (words.plain("page-before")) }
        @if plans.is_empty() {
            p { (words.plain("home-no-plans")) }
        } @else {
            ul class="plans" { @for before in plans { (row(before, viewer)) } }
        }
        @if may_write {
            form method="post" action="/before/new" {
                @if !houses.is_empty() { (which_house(houses, viewer)) }
                button { (words.plain("new-plan")) }
            }
        }
        h2 { (words.plain("page-sums")) }
        p { a href="/sums" { (words.plain("sums-intro")) } }
    }
}

/// A new plan stands in the house that was described last, unless another one is chosen.
fn which_house(houses: &[(HouseId, String)], viewer: &Viewer) -> Markup {
    let words = viewer.words();
    html! {
        div class="input" {
            label for="house" { (words.plain("new-plan-in")) }
            select id="house" name=(house::FIELD) {
                @for (id, name) in houses { option value=(id.0) { (name) } }
                option value=(house::NEW) { (words.plain("another-house")) }
            }
        }
    }
}

fn row(before: &Before, viewer: &Viewer) -> Markup {
    let words = viewer.words();
    let name = before.answers.text("batch.name").filter(|name| !name.is_empty());
    let adopted = before.adopted() != Adopted::Never;
    html! {
        li {
            a href=(before.address()) {
                strong { (name.map_or_else(|| words.plain("plan-without-name"), str::to_owned)) }
            }
            @if let Some(what) = chicks_on_day(before, viewer) { p { (what) } }
            p class="why" {
                (standing(before, viewer))
                @if adopted { " " (words.plain("plan-is-adopted")) }
            }
        }
    }
}

fn chicks_on_day(before: &Before, viewer: &Viewer) -> Option<String> {
    let answers = &before.answers;
    let chicks = shown::quantity(answers.number("batch.chicks")?, Unit::Chicks, 0, viewer);
    let day = shown::day(answers.day("batch.placement")?, viewer);
    Some(say!(viewer.words(), "chicks-on-day", chicks = chicks, day = day))
}

/// Whether it holds, in one sentence.
fn standing(before: &Before, viewer: &Viewer) -> String {
    let words = viewer.words();
    let faults = before.problems.len();
    if faults > 0 {
        return say!(words, "faults-title", count = faults as f64);
    }
    let shown = Shown::new(before.plan(), viewer);
    let heaviest = shown.weight();
    if heaviest == Weight::Problem {
        return words.plain("plan-does-not-hold");
    }
    if Fit::of(&before.plan().answers, &before.plan().outcome).is_none() {
        return words.plain("plan-unfinished");
    }
    shown.holds_with_money().unwrap_or_else(|| words.plain("plan-holds"))
}
