//! Exercises for a class: a figure worked out once more with one answer doubled or halved, by what the handout shows.

use quantity::{Answers, Field, Given, Kind, Unit, Value};

use crate::check;
use crate::families;
use crate::outcome::Outcome;
use crate::procedure::By;
use crate::rule::{FigureSpec, Origin, Over};

/// A figure asked again with one answer changed.
#[derive(Clone, Debug, PartialEq)]
pub struct Exercise {
    /// The field whose answer is changed.
    pub key: &'static str,
    /// What it is in the plan.
    pub from: f64,
    /// What it is in the exercise.
    pub to: f64,
    /// The figure then, worked out by the rules of the plan; a day counts from 1970-01-01.
    pub answer: f64,
    /// The figures that change on the way and whose workings a pupil therefore needs, besides the figure itself.
    pub by_way_of: Vec<&'static str>,
}

/// A figure that is all days of a figure by day added up, by the week: what a pupil can add up by hand.
#[derive(Clone, Debug, PartialEq)]
pub struct Weeks {
    /// The figure by day.
    pub series: &'static str,
    /// The decimals in which its weeks are shown, and added up.
    pub decimals: u8,
    /// First day, last day and what they come to, rounded as shown.
    pub weeks: Vec<(i32, i32, f64)>,
}

/// A question on the weeks: what some of them come to.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum WeeksAsked {
    /// To the end of this day.
    Until(i32),
    /// From this day to the last.
    From(i32),
}

impl Weeks {
    /// The weeks of a figure; `None` for one that is no sum of days, or of fewer than three weeks.
    pub fn of(outcome: &Outcome, id: &str) -> Option<Weeks> {
        let [Origin::OfDays(Over::Sum, series)] = origins(outcome, id)[..] else { return None };
        let spec = families::series_named(series)?;
        let days = outcome.series(spec)?;
        let last = *days.index.last()? as i32;
        let scale = 10f64.powi(i32::from(spec.decimals));
        let week = |first: i32| {
            let end = (first + 6).min(last);
            let within = |day: f64| (f64::from(first)..=f64::from(end)).contains(&day);
            let of_week = days.index.iter().zip(&days.values).filter(|(day, _)| within(**day));
            let total: f64 = of_week.map(|(_, value)| value).sum();
            (first, end, (total * scale).round() / scale)
        };
        let weeks: Vec<_> = (spec.first_day..=last).step_by(7).map(week).collect();
        (weeks.len() >= 3).then_some(Weeks { series, decimals: spec.decimals, weeks })
    }

    /// Two questions: what the first half of the weeks comes to, and what is left from there but for one week.
    pub fn asked(&self) -> [WeeksAsked; 2] {
        let half = self.weeks.len() / 2;
        let later = (half + 1).min(self.weeks.len() - 1);
        [WeeksAsked::Until(self.weeks[half - 1].1), WeeksAsked::From(self.weeks[later].0)]
    }

    /// The answer, from the weeks as they are shown.
    pub fn answer(&self, asked: WeeksAsked) -> f64 {
        let counts = |(first, last, _): &&(i32, i32, f64)| match asked {
            WeeksAsked::Until(day) => *last <= day,
            WeeksAsked::From(day) => *first >= day,
        };
        self.weeks.iter().filter(counts).map(|week| week.2).sum()
    }
}

/// How often a chain of figures is followed back to answers.
const DEEPEST: usize = 5;

/// The most figures that may change on the way to one that is asked again: more is no exercise.
const LONGEST_WAY: usize = 6;

/// Answers closer than this to each other are no two lessons: a pupil would think that nothing changed, or copy one from the
/// other (our judgement).
const CLEARLY: f64 = 0.1;

/// Two exercises on a figure where there are two: one answer doubled, and another halved (the same where there is no
/// other). Only changes that the plan allows, that move the figure, and that can be followed with the rules of the figures
/// alone: what is added up over days or drawn by chance is none for paper. Their answers differ clearly from the plan's and
/// from each other, as they are shown; where no two do, there is one exercise, and none where the figure hardly moves.
pub fn exercises(answers: &Answers, outcome: &Outcome, id: &'static str) -> Vec<Exercise> {
    let (Some(spec), Some(of_plan)) = (families::figure(id), outcome.number(id)) else { return Vec::new() };
    let chain = behind(outcome, id);
    let keys = answers_behind(outcome, &chain);
    let with = |times: f64| {
        let tried = keys.iter().filter_map(|key| changed(answers, outcome, &chain, key, times));
        tried.filter(|one| clearly_differ(spec, one.answer, of_plan)).collect::<Vec<_>>()
    };
    let (doubles, halves) = (with(2.0), with(0.5));
    let differ = |one: &Exercise, other: &Exercise| clearly_differ(spec, one.answer, other.answer);
    let pairs = |are_of_one: bool| {
        let all = doubles.iter().flat_map(|double| halves.iter().map(move |half| (double, half)));
        all.filter(move |(double, half)| (double.key == half.key) == are_of_one)
    };
    let pair = pairs(false).chain(pairs(true)).find(|(double, half)| differ(double, half));
    // Where twice as much moves nothing, two halves may, and the other way round.
    let of_a_kind = || {
        let of = |list: &[Exercise]| {
            let later = |at: usize| list[at + 1..].iter().map(move |other| (at, other));
            let mut pairs = (0..list.len()).flat_map(later);
            pairs
                .find(|(at, other)| differ(&list[*at], other))
                .map(|(at, other)| vec![list[at].clone(), other.clone()])
        };
        of(&doubles).or_else(|| of(&halves))
    };
    match pair {
        Some((double, half)) => vec![double.clone(), half.clone()],
        None => of_a_kind().unwrap_or_else(|| doubles.iter().chain(&halves).take(1).cloned().collect()),
    }
}

/// Whether two answers are told apart at a glance, as they are shown.
fn clearly_differ(spec: &FigureSpec, one: f64, other: f64) -> bool {
    let scale = 10f64.powi(i32::from(spec.decimals));
    let (one, other) = ((one * scale).round(), (other * scale).round());
    let least = if spec.unit == Unit::Date { 1.0 } else { CLEARLY * one.abs().max(other.abs()) };
    one != other && (one - other).abs() >= least
}

/// A figure and those that it is made from, the nearest first.
fn behind(outcome: &Outcome, id: &'static str) -> Vec<&'static str> {
    let (mut all, mut last) = (vec![id], vec![id]);
    for _ in 0..DEEPEST {
        let mut next: Vec<&'static str> = Vec::new();
        for made_from in last.iter().flat_map(|id| figures_in(outcome, id)) {
            if !all.contains(&made_from) {
                all.push(made_from);
                next.push(made_from);
            }
        }
        last = next;
    }
    all
}

/// The figures that go straight into one.
pub fn figures_in(outcome: &Outcome, id: &str) -> Vec<&'static str> {
    let figure = |origin: Origin| match origin {
        Origin::Figure(id) | Origin::IfKnown(id) | Origin::IfChosen { figure: id, .. } => Some(id),
        _ => None,
    };
    origins(outcome, id).into_iter().filter_map(figure).filter(|id| outcome.get(id).is_some()).collect()
}

/// The answers that figures rest on.
fn answers_behind(outcome: &Outcome, figures: &[&'static str]) -> Vec<&'static str> {
    let mut keys = Vec::new();
    for origin in figures.iter().flat_map(|id| origins(outcome, id)) {
        match origin {
            Origin::Field(key) if !keys.contains(&key) => keys.push(key),
            _ => {}
        }
    }
    keys
}

/// Where the inputs of a figure come from.
fn origins(outcome: &Outcome, id: &str) -> Vec<Origin> {
    match outcome.get(id).map(|worked| &worked.by) {
        Some(By::Rule(rule)) => rule.inputs.iter().map(|input| input.origin).collect(),
        _ => Vec::new(),
    }
}

/// Whether a figure can be worked out on paper from its rule and the numbers that go into it.
fn is_for_paper(outcome: &Outcome, id: &str) -> bool {
    let of_days = |origin: &Origin| {
        matches!(
            origin,
            Origin::List(_)
                | Origin::OnDay { .. }
                | Origin::OfDays(..)
                | Origin::OfKnownDays(..)
                | Origin::SumOfDays { .. }
                | Origin::FirstDayOver { .. }
                | Origin::Listed { .. }
                | Origin::TableAt { .. }
        )
    };
    let by_rule = outcome.get(id).is_some_and(|worked| matches!(worked.by, By::Rule(_)));
    by_rule && !origins(outcome, id).iter().any(of_days)
}

fn changed(
    answers: &Answers,
    outcome: &Outcome,
    chain: &[&'static str],
    key: &str,
    times: f64,
) -> Option<Exercise> {
    let (id, made_from) = chain.split_first()?;
    let field = families::field(key)?;
    let from = answers.number(key)?;
    let to = from * times;
    if !allows(field, to) {
        return None;
    }
    let mut other = answers.clone();
    other.set(field, Given { typed: String::new(), value: Value::Number(to), line: None, usual: None });
    if !check::together(&other, &families::plan_fields()).is_empty() {
        return None;
    }
    let then = Outcome::of(&other, chain.iter().copied());
    let answer = then.number(id)?;
    let moves = |id: &&'static str| match (then.number(id), outcome.number(id)) {
        (Some(then), Some(now)) => (then - now).abs() > 1e-9,
        (then, now) => then.is_some() != now.is_some(),
    };
    let by_way_of: Vec<&'static str> = made_from.iter().copied().filter(moves).collect();
    let can_be_followed = by_way_of.len() <= LONGEST_WAY
        && by_way_of.iter().chain([id]).all(|id| is_for_paper(outcome, id) && same_rule(outcome, &then, id));
    (moves(id) && can_be_followed).then_some(Exercise { key: field.key, from, to, answer, by_way_of })
}

/// Whether a figure still comes about by the rule that is shown.
fn same_rule(one: &Outcome, other: &Outcome, id: &str) -> bool {
    let name = |outcome: &Outcome| match outcome.get(id).map(|worked| &worked.by) {
        Some(By::Rule(rule)) => Some(rule.name),
        _ => None,
    };
    name(one) == name(other)
}

/// Whether a field takes the value, and nobody would ask about it.
fn allows(field: &Field, value: f64) -> bool {
    match field.kind {
        Kind::Number { low, high, whole, usual, .. } => {
            let (least, most) = usual.unwrap_or((low, high));
            (low..=high).contains(&value)
                && (least..=most).contains(&value)
                && !(whole && value.fract() != 0.0)
        }
        Kind::Ratio { usual, .. } => (usual.0..=usual.1).contains(&value),
        _ => false,
    }
}
