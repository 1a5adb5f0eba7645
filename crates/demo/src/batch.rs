//! One batch: its plan adopted, its days lived, and what was written of them, checked as a page checks it.

use advice::outcome::Outcome;
use advice::plan::{self, Plan};
use advice::store_room::Phase;
use advice::tasks::{FEED_ORDER, Task};
use advice::{adoption, record, walk};
use book::{BatchId, Draft, Subject};
use invented::{Job, Line, Scenario, live, write_down};
use quantity::{Answers, CivilDay, Source};

use crate::batches::Row;
use crate::farm::Files;
use crate::ids;
use crate::{DemoError, Written};

/// Days before the chicks on which the plan is adopted, and the hour.
const ADOPTED_BEFORE_D: i32 = 28;
const ADOPTED_AT_H: i32 = 20;

/// Everything written of a batch, `row` of the table.
pub(crate) fn written(files: &Files, batch: &Row, row: usize) -> Result<Vec<Written>, DemoError> {
    let plan = plan::work_out(files.plan(batch.plan)?);
    let scenario = scenario(&plan, batch)?;
    let adopted = scenario.placement.plus_days(-ADOPTED_BEFORE_D);
    let millis = ids::millis(adopted, ADOPTED_AT_H);
    let id = ids::batch(row, millis);
    let body = adoption::body(&plan, id, Some(ids::LONG_HOUSE));
    let adoption = Draft::new(ids::entry(row, 0, millis), "plan-adopted", Subject::Batch(id), adopted, body);
    let mut written = vec![Written { millis, draft: adoption }];
    for line in write_down(&scenario, &live(&scenario)) {
        written.push(entry(&line, id, row, written.len())?);
    }
    Ok(written)
}

/// The batch that the grower of a plan would live, with its luck.
fn scenario(plan: &Plan, batch: &Row) -> Result<Scenario, DemoError> {
    let placement =
        plan.answers.day("batch.placement").ok_or(DemoError::Unsaid { key: "batch.placement" })?;
    let chicks = number(&plan.answers, "batch.chicks")? as u32;
    let usual = Scenario::quiet(batch.seed, placement, chicks);
    Ok(Scenario {
        sale_age: number(&plan.answers, "batch.sale_age_d")? as i32,
        phases_until: phases_until(&plan.outcome).unwrap_or(usual.phases_until),
        events: batch.events.to_vec(),
        jobs: jobs(&plan.tasks, placement),
        ..usual
    })
}

fn number(answers: &Answers, key: &'static str) -> Result<f64, DemoError> {
    answers.number(key).ok_or(DemoError::Unsaid { key })
}

fn phases_until(outcome: &Outcome) -> Option<[i32; 2]> {
    let last = |phase: Phase| outcome.number(phase.last_day_figure()).map(|day| day as i32);
    Some([last(Phase::Starter)?, last(Phase::Grower)?])
}

/// The work of a plan from its adoption on.
fn jobs(tasks: &[Task], placement: CivilDay) -> Vec<Job> {
    let job = |task: &Task| Job {
        key: walk::job_key(task),
        first: task.age_d,
        last: task.until.unwrap_or(task.day).days_since(placement),
        is_never_forgotten: task.name == FEED_ORDER,
    };
    tasks.iter().filter(|task| task.age_d > -ADOPTED_BEFORE_D).map(job).collect()
}

/// A line as the entry that a page would make of it.
fn entry(line: &Line, batch: BatchId, row: usize, at: usize) -> Result<Written, DemoError> {
    let faulty = |problems| DemoError::Entry { kind: line.kind, problems };
    let kind = record::kind(line.kind).ok_or_else(|| faulty(Vec::new()))?;
    let checked = record::check(kind, &line.raws, Source::Hand);
    if !checked.problems.is_empty() {
        return Err(faulty(checked.problems));
    }
    let millis = ids::millis(line.written, line.hour);
    let draft = record::draft(ids::entry(row, at, millis), kind, batch, line.day, &checked.answers);
    Ok(Written { millis, draft })
}
