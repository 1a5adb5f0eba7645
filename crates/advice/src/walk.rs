//! Today's walk: what there is to do, what is expected of the day, and what is still to be written down.

use std::collections::{BTreeMap, BTreeSet};

use book::{BatchId, BookState};
use quantity::CivilDay;

use crate::diary::{Diary, Noted};
use crate::door_sheet;
use crate::past::Past;
use crate::plan::{self, Plan};
use crate::store_room::Phase;
use crate::tasks::Task;

/// The kinds that every day of a batch has, in the order of a walk through the house.
pub const DAILY: [&str; 5] = ["deaths", "feed-given", "water", "house-air", "look"];

/// The kinds without which a day is not written.
const NEEDED: [&str; 3] = ["deaths", "feed-given", "water"];

/// Days back that are still offered to be filled in: who missed more types the wall sheet in.
const OFFERED_DAYS: i32 = 7;

/// Days that a job which was not ticked goes on being asked for.
const OVERDUE_DAYS: i32 = 7;

/// A day of a batch.
pub struct Walk {
    /// The batch's book.
    pub diary: Diary,
    /// The adopted plan, moved to the real day and number of chicks, with what the book makes of it.
    pub plan: Plan,
    /// What there is to do, and what was not ticked in time.
    pub jobs: Vec<Job>,
    /// The days before on which something that every day needs was not written, the latest first, with the kinds.
    pub unwritten: Vec<(CivilDay, Vec<&'static str>)>,
    /// The feeds of the day: two while one is mixed into the next.
    pub feeds: Vec<Phase>,
    /// So many deaths in a day are a reason to call; `None` while it is not known how many are alive.
    pub call_at: Option<f64>,
}

/// A job of the day.
#[derive(Clone, Debug, PartialEq)]
pub struct Job {
    /// What it is.
    pub task: Task,
    /// Names it among all jobs of the batch, whatever the day.
    pub key: String,
    /// The entry that ticked it off; for a job of several days, that of this day.
    pub done: Option<Noted>,
    /// Days since it should have been done; 0 for a job of today.
    pub late_d: i32,
}

impl Walk {
    /// The walk of a day, by all that is written about that day and those before.
    pub fn read(state: &BookState, batch: BatchId, on: CivilDay) -> Walk {
        Walk::of(Diary::read(state, batch, on))
    }

    /// The walk of the day that a diary is read for.
    pub fn of(diary: Diary) -> Walk {
        let plan = plan::of_book(diary.answers.clone());
        Walk::with(diary, plan)
    }

    /// The walk of the day with what is likely from here, beside the earlier batches of the house.
    pub fn ahead_of(diary: Diary, past: &Past) -> Walk {
        let diary = diary.beside(past).looking_ahead(past);
        let plan = plan::of_book_ahead(diary.answers.clone());
        Walk::with(diary, plan)
    }

    /// The same with what the batch earns by the day of sale.
    pub fn selling(diary: Diary, past: &Past) -> Walk {
        let diary = diary.beside(past).looking_ahead(past).selling();
        let plan = plan::of_book_selling(diary.answers.clone());
        Walk::with(diary, plan)
    }

    fn with(diary: Diary, plan: Plan) -> Walk {
        let age = diary.age_today();
        let jobs = jobs(&diary, &plan);
        let unwritten = unwritten(&diary);
        let feeds = age.map_or_else(Vec::new, |age| feeds(&plan, age));
        let alive = plan.outcome.number("growing.alive");
        let expected = plan.outcome.number("walk.deaths_expected").unwrap_or_default();
        let call_at = alive.map(|alive| door_sheet::call_at(expected, alive));
        Walk { diary, plan, jobs, unwritten, feeds, call_at }
    }

    /// The feeds that a plan means for a day of age, the one that ends first; two while one is mixed into the next.
    pub fn feeds_on(plan: &Plan, age: i32) -> Vec<Phase> {
        feeds(plan, age)
    }

    /// What is written of a kind about the day.
    pub fn written(&self, kind: &str) -> Vec<&Noted> {
        self.diary.on_day(kind, self.diary.on).collect()
    }
}

/// The name of a job among all jobs of a batch.
pub fn job_key(task: &Task) -> String {
    format!("{}/{}", task.name, task.ordinal)
}

/// A job that was due in some days.
#[derive(Clone, Debug, PartialEq)]
pub struct Due {
    /// What it is.
    pub task: Task,
    /// Days of those on which it was due; 1 for a job of one day.
    pub due_d: usize,
    /// Days of those on which it was ticked; a job of one day is ticked whenever that was.
    pub done_d: usize,
}

/// The jobs that were due from one day to another, both with, in the order of the plan.
pub fn jobs_between(diary: &Diary, plan: &Plan, from: CivilDay, to: CivilDay) -> Vec<Due> {
    let ticks = ticks(diary);
    let due = |task: &Task| {
        let ticked = ticks.get(job_key(task).as_str()).map_or(&[][..], Vec::as_slice);
        let (first, last) = (task.day.max(from), task.until.unwrap_or(task.day).min(to));
        let due_d = usize::try_from(last.days_since(first) + 1).ok().filter(|days| *days > 0)?;
        let days: BTreeSet<CivilDay> = ticked.iter().map(|tick| tick.day).collect();
        let done_d = match task.until {
            Some(_) => days.range(first..=last).count(),
            None => days.len().min(1),
        };
        Some(Due { task: task.clone(), due_d, done_d })
    };
    plan.tasks.iter().filter_map(due).collect()
}

fn ticks(diary: &Diary) -> BTreeMap<&str, Vec<&Noted>> {
    let mut ticks: BTreeMap<&str, Vec<&Noted>> = BTreeMap::new();
    for tick in diary.of_kind("task-done") {
        ticks.entry(tick.text("task").unwrap_or_default()).or_default().push(tick);
    }
    ticks
}

fn jobs(diary: &Diary, plan: &Plan) -> Vec<Job> {
    let ticks = ticks(diary);
    let job = |task: &Task| {
        let key = job_key(task);
        let ticked = ticks.get(key.as_str()).map_or(&[][..], Vec::as_slice);
        let each_day = task.until.is_some();
        let is_of_today = task.day <= diary.on && diary.on <= task.until.unwrap_or(task.day);
        let late_d = if is_of_today { 0 } else { diary.on.days_since(task.until.unwrap_or(task.day)) };
        let mut done = ticked.iter().filter(|tick| !each_day || tick.day == diary.on);
        let done = done.next_back().map(|tick| (*tick).clone());
        let is_late = !each_day && done.is_none() && (1..=OVERDUE_DAYS).contains(&late_d);
        // What was done late stays in sight on the day it was done.
        let is_done_today = done.as_ref().is_some_and(|tick| tick.day == diary.on);
        (is_of_today || is_late || is_done_today).then(|| Job { task: task.clone(), key, done, late_d })
    };
    plan.tasks.iter().filter_map(job).collect()
}

/// Days since the chicks came, up to yesterday, on which something is missing.
fn unwritten(diary: &Diary) -> Vec<(CivilDay, Vec<&'static str>)> {
    let Some(placed) = diary.placement.filter(|_| diary.is_placed && !diary.is_closed) else {
        return Vec::new();
    };
    let days = (1..=OFFERED_DAYS).map(|back| diary.on.plus_days(-back)).filter(|day| *day >= placed);
    let missing = |day: CivilDay| {
        let lacks = |kind: &&&str| diary.on_day(kind, day).next().is_none();
        (day, NEEDED.iter().filter(lacks).copied().collect::<Vec<_>>())
    };
    days.map(missing).filter(|(_, kinds)| !kinds.is_empty()).collect()
}

/// The feeds of a day of age, the one that ends first.
fn feeds(plan: &Plan, age: i32) -> Vec<Phase> {
    let last_day = |phase: &Phase| plan.outcome.number(phase.last_day_figure()).map(|day| day as i32);
    let eaten = |phase: &&Phase| {
        let bags = plan.outcome.number(&format!("feed.bags_{}", phase.name()));
        bags.is_none_or(|bags| bags > 0.0)
    };
    let phases: Vec<Phase> = Phase::ALL.iter().filter(eaten).copied().collect();
    let now = phases.iter().position(|phase| last_day(phase).is_none_or(|last| age <= last));
    let Some(now) = now else { return phases.last().copied().into_iter().collect() };
    let began = now.checked_sub(1).and_then(|before| last_day(phases.get(before)?)).map(|last| last + 1);
    // A new feed is mixed into the old for three days.
    let mixing = began.is_some_and(|began| (began..began + MIXING_DAYS).contains(&age));
    let first = if mixing { now - 1 } else { now };
    phases[first..=now].to_vec()
}

/// Days on which a new feed is mixed into the old: a quarter, half, three quarters (common practice).
const MIXING_DAYS: i32 = 3;
