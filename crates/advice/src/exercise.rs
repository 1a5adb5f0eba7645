//! Exercises for a class: a figure worked out once more with one answer doubled or halved.

use quantity::{Answers, Field, Given, Kind, Value};

use crate::families;
use crate::outcome::Outcome;
use crate::procedure::By;
use crate::rule::Origin;

/// A figure asked again with one answer changed.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Exercise {
    /// The field whose answer is changed.
    pub key: &'static str,
    /// What it is in the plan.
    pub from: f64,
    /// What it is in the exercise.
    pub to: f64,
    /// The figure then, worked out by the rules of the plan; a day counts from 1970-01-01.
    pub answer: f64,
}

/// How often a chain of figures is followed back to answers.
const DEEPEST: usize = 3;

/// Two exercises on a figure where there are two: one answer doubled, and another halved (the same where there is no
/// other). Only changes that a field allows and that move the figure.
pub fn exercises(answers: &Answers, outcome: &Outcome, id: &'static str) -> Vec<Exercise> {
    let keys = answers_behind(outcome, id);
    let with = |key: &&'static str, times: f64| changed(answers, outcome, id, key, times);
    let double = keys.iter().find_map(|key| with(key, 2.0));
    let taken = double.map(|one| one.key);
    let others = keys.iter().filter(|key| Some(**key) != taken);
    let same = keys.iter().filter(|key| Some(**key) == taken);
    let half = others.chain(same).find_map(|key| with(key, 0.5));
    double.into_iter().chain(half).collect()
}

/// The answers that a figure rests on, the nearest first.
fn answers_behind(outcome: &Outcome, id: &'static str) -> Vec<&'static str> {
    let mut keys = Vec::new();
    let mut ids = vec![id];
    for _ in 0..DEEPEST {
        let mut next = Vec::new();
        for origin in ids.iter().flat_map(|id| origins(outcome, id)) {
            match origin {
                Origin::Field(key) if !keys.contains(&key) => keys.push(key),
                Origin::Figure(id) => next.push(id),
                _ => {}
            }
        }
        ids = next;
    }
    keys
}

/// Where the inputs of a figure come from.
pub fn origins(outcome: &Outcome, id: &str) -> Vec<Origin> {
    match outcome.get(id).map(|worked| &worked.by) {
        Some(By::Rule(rule)) => rule.inputs.iter().map(|input| input.origin).collect(),
        _ => Vec::new(),
    }
}

fn changed(
    answers: &Answers,
    outcome: &Outcome,
    id: &'static str,
    key: &str,
    times: f64,
) -> Option<Exercise> {
    let field = families::field(key)?;
    let from = answers.number(key)?;
    let to = from * times;
    if !allows(field, to) {
        return None;
    }
    let mut other = answers.clone();
    other.set(field, Given { typed: String::new(), value: Value::Number(to), line: None, usual: None });
    let answer = Outcome::of(&other, [id]).number(id)?;
    let moved = (answer - outcome.number(id)?).abs() > 1e-9;
    moved.then_some(Exercise { key: field.key, from, to, answer })
}

fn allows(field: &Field, value: f64) -> bool {
    match field.kind {
        Kind::Number { low, high, whole, .. } => {
            (low..=high).contains(&value) && !(whole && value.fract() != 0.0)
        }
        Kind::Ratio { low, high, .. } => (low..=high).contains(&value),
        _ => false,
    }
}
