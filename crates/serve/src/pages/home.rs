//! The first page: the plans of the farm, and where to go.

use std::collections::BTreeMap;
use std::sync::Arc;

use advice::diary::Diary;
use advice::finding::Weight;
use advice::record;
use axum::response::Response;
use book::{BatchId, HouseId, Slot, Subject};
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
    for (slot, _) in open.state.slots().filter(|(slot, _)| slot.kind == "plan-adopted") {
        if let Subject::Batch(batch) = slot.subject
            && !drafts.contains_key(&batch.0)
        {
            drafts.extend(adopt::draft_of(&open.state, batch.0).map(|draft| (batch.0, draft)));
        }
    }
    // A plan whose chicks have come is a batch, and stands among those.
    let has_come = |id: &Uuid| {
        let slot = Slot::of("chicks-placed", Subject::Batch(BatchId(*id)));
        open.state.current(&slot).is_some()
    };
    let saying_something =
        drafts.into_iter().rev().filter(|(id, draft)| !draft.typed.is_empty() && !has_come(id));
    saying_something.take(PLANS_LISTED).map(|(id, draft)| Before::of(id, draft, Arc::clone(open))).collect()
}

/// The batches whose plan was adopted: those that run first, then those to come, then those that are closed.
fn batches(open: &Open, today: CivilDay, viewer: &Viewer) -> Markup {
    let words = viewer.words();
    let adopted = open.state.slots().filter(|(slot, _)| slot.kind == "plan-adopted");
    let ids = adopted.filter_map(|(slot, _)| match slot.subject {
        Subject::Batch(id) => Some(id),
        _ => None,
    });
    let mut diaries: Vec<Diary> = ids.map(|id| Diary::read(&open.state, id, today)).collect();
    diaries.sort_by_key(|diary| (diary.is_closed, !diary.is_placed, std::cmp::Reverse(diary.placement)));
    html! {
        @if !diaries.is_empty() {
            h2 { (words.plain("page-batches")) }
            ul class="plans" { @for diary in diaries.iter().take(PLANS_LISTED) { (batch_row(open, diary, viewer)) } }
        }
    }
}

fn batch_row(open: &Open, diary: &Diary, viewer: &Viewer) -> Markup {
    let words = viewer.words();
    let name = batch::name(&open.state, diary.batch).unwrap_or_else(|| words.plain("plan-without-name"));
    html! {
        li {
            a href=(batch::address(diary.batch.0)) { strong { (name) } }
            p class="why" { (how_it_stands(diary, viewer)) }
        }
    }
}

fn how_it_stands(diary: &Diary, viewer: &Viewer) -> String {
    let words = viewer.words();
    if diary.is_closed {
        return words.plain("batch-is-closed");
    }
    let alive = record::alive_before(diary, diary.on.plus_days(1));
    match (diary.age_today(), alive.filter(|_| diary.is_placed)) {
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
    let heaviest = Shown::new(before.plan(), viewer).weight();
    if heaviest == Weight::Problem {
        return words.plain("plan-does-not-hold");
    }
    let known = |id| before.plan().outcome.number(id).is_some();
    let finished = known("space.birds_at_sale") && known("space.birds_allowed");
    words.plain(if finished { "plan-holds" } else { "plan-unfinished" })
}
