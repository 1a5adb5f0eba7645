//! A day of a batch as a command shows it: what there is to do, what is expected, what is written and what is not.

use std::collections::BTreeMap;

use advice::diary::Noted;
use advice::walk::{Job, Walk};
use schemars::JsonSchema;
use serde::Serialize;

use crate::batch::air_of_today;
use crate::document::Block;
use crate::entry::{kind_name, lines};
use crate::history::{AnswerJson, answers_json};
use crate::plan::Shown;
use crate::view::{self, FigureView, TaskJson};
use crate::viewer::Viewer;
use crate::words::key_part;
use crate::{say, show};

/// A figure with the name under which its working is asked for.
#[derive(Clone, Debug, PartialEq, Serialize, JsonSchema)]
pub struct WorkedJson {
    /// The figure.
    #[serde(flatten)]
    pub figure: FigureView,
    /// The name of its working, and of the history behind it.
    pub working: &'static str,
}

/// An entry that ticks a job off.
#[derive(Clone, Debug, PartialEq, Serialize, JsonSchema)]
pub struct TickJson {
    /// The entry.
    pub entry: String,
    /// The day it is about, YYYY-MM-DD.
    pub day: String,
}

/// A job of the day.
#[derive(Clone, Debug, PartialEq, Serialize, JsonSchema)]
pub struct JobJson {
    /// The job.
    #[serde(flatten)]
    pub task: TaskJson,
    /// Names it among all jobs of the batch: what a tick (task-done) names.
    pub key: String,
    /// Days since it should have been done.
    pub late_d: i32,
    /// The tick; absent while it is not done.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub done: Option<TickJson>,
}

/// Something written about the day.
#[derive(Clone, Debug, PartialEq, Serialize, JsonSchema)]
pub struct WrittenJson {
    /// The entry.
    pub entry: String,
    /// Its kind.
    pub kind: &'static str,
    /// What was written, by key.
    pub answers: BTreeMap<String, AnswerJson>,
}

/// A day on which something is missing.
#[derive(Clone, Debug, PartialEq, Serialize, JsonSchema)]
pub struct UnwrittenJson {
    /// The day, YYYY-MM-DD.
    pub day: String,
    /// The kinds that were not written.
    pub kinds: Vec<&'static str>,
}

/// A day of a batch.
#[derive(Clone, Debug, PartialEq, Serialize, JsonSchema)]
pub struct WalkView {
    /// The batch.
    pub batch: String,
    /// Its name; absent where the plan gives it none.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub name: Option<String>,
    /// The day, YYYY-MM-DD.
    pub day: String,
    /// That day as day of age; absent while nobody knows when the chicks come.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub age_d: Option<i32>,
    /// Whether the chicks came.
    pub is_placed: bool,
    /// Whether the batch is closed.
    pub is_closed: bool,
    /// What there is to do, and what was not ticked in time.
    pub jobs: Vec<JobJson>,
    /// The feeds of the day; two while one is mixed into the next.
    pub feeds: Vec<&'static str>,
    /// So many deaths in a day are a reason to call; absent while it is not known how many are alive.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub call_at_deaths: Option<f64>,
    /// What is expected of the day, by name.
    pub expected: BTreeMap<&'static str, WorkedJson>,
    /// How the batch stands, by name.
    pub figures: BTreeMap<&'static str, WorkedJson>,
    /// What is written about the day.
    pub written: Vec<WrittenJson>,
    /// Earlier days on which something is missing, the latest first.
    pub unwritten: Vec<UnwrittenJson>,
    /// The version of the rules that gave these figures.
    pub rules_version: u32,
}

/// What a figure of the day is expected to be, and how the batch stands.
const EXPECTED: &str = "walk.";
const STANDS: &str = "growing.";

/// A day of a batch as JSON.
pub fn view(walk: &Walk, viewer: &Viewer) -> WalkView {
    let diary = &walk.diary;
    let shown = Shown::new(&walk.plan, viewer);
    WalkView {
        batch: diary.batch.0.to_string(),
        name: name(walk),
        day: diary.on.to_string(),
        age_d: diary.age_today(),
        is_placed: diary.is_placed,
        is_closed: diary.is_closed,
        jobs: walk.jobs.iter().map(|job| job_json(job, &shown)).collect(),
        feeds: walk.feeds.iter().map(|feed| feed.name()).collect(),
        call_at_deaths: walk.call_at,
        expected: figures(walk, EXPECTED),
        figures: figures(walk, STANDS),
        written: of_today(walk).map(written_json).collect(),
        unwritten: walk
            .unwritten
            .iter()
            .map(|(day, kinds)| UnwrittenJson { day: day.to_string(), kinds: kinds.clone() })
            .collect(),
        rules_version: advice::RULES_VERSION,
    }
}

pub(crate) fn name(walk: &Walk) -> Option<String> {
    walk.plan.answers.text("batch.name").filter(|name| !name.is_empty()).map(str::to_owned)
}

fn of_today(walk: &Walk) -> impl Iterator<Item = &Noted> {
    // A plan is adopted, not written down.
    let on = walk.diary.on;
    walk.diary.notes.iter().filter(move |note| note.day == on && note.kind != "plan-adopted")
}

pub(crate) fn figures(walk: &Walk, prefix: &str) -> BTreeMap<&'static str, WorkedJson> {
    let ours = walk.plan.outcome.figures().filter(|worked| worked.figure.id.starts_with(prefix));
    ours.map(|worked| {
        let id = worked.figure.id;
        (id, WorkedJson { figure: view::figure(worked), working: id })
    })
    .collect()
}

fn job_json(job: &Job, shown: &Shown) -> JobJson {
    let tick = |note: &Noted| TickJson { entry: note.id.0.to_string(), day: note.day.to_string() };
    JobJson {
        task: view::task(&job.task, shown),
        key: job.key.clone(),
        late_d: job.late_d,
        done: job.done.as_ref().map(tick),
    }
}

fn written_json(note: &Noted) -> WrittenJson {
    WrittenJson { entry: note.id.0.to_string(), kind: note.kind, answers: answers_json(&note.body) }
}

/// A day of a batch as text.
pub fn text(walk: &Walk, viewer: &Viewer) -> String {
    let parts = [
        ("walk-jobs", jobs(walk, viewer)),
        ("walk-expected", expected(walk, viewer)),
        ("air-day-today", air(walk, viewer)),
        ("walk-stands", figure_lines(walk, STANDS, viewer)),
        ("walk-written", written(walk, viewer)),
        ("walk-unwritten", unwritten(walk, viewer)),
    ];
    let words = viewer.words();
    let part = |(heading, lines): &(&str, Vec<String>)| {
        let lines: String = lines.iter().map(|line| format!("  {line}\n")).collect();
        format!("\n{}\n{lines}", words.plain(heading))
    };
    let filled = parts.iter().filter(|(_, lines)| !lines.is_empty());
    heading(walk, viewer) + "\n" + &filled.map(part).collect::<String>()
}

pub(crate) fn heading(walk: &Walk, viewer: &Viewer) -> String {
    let (words, day) = (viewer.words(), show::day(walk.diary.on, viewer));
    let name = name(walk).unwrap_or_else(|| walk.diary.batch.0.to_string());
    match walk.diary.age_today() {
        Some(age) if age >= 0 => say!(words, "walk-day", name = name, day = day, age = age.to_string()),
        Some(age) => say!(words, "walk-day-before", name = name, day = day, days = (-age).to_string()),
        None => say!(words, "walk-day-unknown", name = name, day = day),
    }
}

/// Where the curtain stands tonight, and the heat of tomorrow.
fn air(walk: &Walk, viewer: &Viewer) -> Vec<String> {
    let line = |block: Block| match block {
        Block::Lead { label, value, note } => Some(format!("{label}: {value}. {note}")),
        _ => None,
    };
    air_of_today(walk, viewer).into_iter().filter_map(line).collect()
}

fn jobs(walk: &Walk, viewer: &Viewer) -> Vec<String> {
    let shown = Shown::new(&walk.plan, viewer);
    let line = |job: &Job| {
        let (title, why) = shown.job(&job.task);
        let tick = if job.done.is_some() { "[x]" } else { "[ ]" };
        let late = match job.late_d {
            0 => String::new(),
            days => format!(
                " · {}",
                say!(viewer.words(), "walk-late", count = f64::from(days), days = days.to_string())
            ),
        };
        let why = if why.is_empty() { why } else { format!("\n        {why}") };
        format!("{tick} {title}{late} · {}{why}", job.key)
    };
    walk.jobs.iter().map(line).collect()
}

fn expected(walk: &Walk, viewer: &Viewer) -> Vec<String> {
    let words = viewer.words();
    let feeds =
        walk.feeds.iter().map(|feed| words.plain(&format!("choice-feed-given-phase-{}", feed.name())));
    let feeds: Vec<String> = feeds.collect();
    let mut lines = figure_lines(walk, EXPECTED, viewer);
    if !feeds.is_empty() {
        lines.push(say!(words, "walk-feeds", feeds = feeds.join(" + ")));
    }
    lines.extend(walk.call_at.map(|deaths| say!(words, "walk-call-at", deaths = show::short(deaths, 0))));
    lines
}

fn figure_lines(walk: &Walk, prefix: &str, viewer: &Viewer) -> Vec<String> {
    let ours = walk.plan.outcome.figures().filter(|worked| worked.figure.id.starts_with(prefix));
    ours.map(|worked| {
        let label = viewer.words().plain(&format!("figure-{}", key_part(worked.figure.id)));
        format!("{label}: {}", show::figure(&worked.figure, worked.spec, viewer))
    })
    .collect()
}

fn written(walk: &Walk, viewer: &Viewer) -> Vec<String> {
    let line = |note: &Noted| {
        let answers = lines(note.kind, &note.body, viewer).into_iter();
        let answers = answers.map(|line| format!("{} {}", line.label, line.text));
        format!("{}: {}", kind_name(note.kind, viewer), answers.collect::<Vec<_>>().join(", "))
    };
    of_today(walk).map(line).collect()
}

fn unwritten(walk: &Walk, viewer: &Viewer) -> Vec<String> {
    let line = |(day, kinds): &(quantity::CivilDay, Vec<&'static str>)| {
        let kinds: Vec<String> = kinds.iter().map(|kind| kind_name(kind, viewer)).collect();
        format!("{}: {}", show::day(*day, viewer), kinds.join(", "))
    };
    walk.unwritten.iter().map(line).collect()
}
