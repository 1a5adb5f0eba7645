//! What the book tells of growth beyond single days: the weighing before, the birds that left, the chicks as they came.

use std::collections::BTreeMap;

use quantity::Value;

use crate::diary::{Diary, Noted, set, set_days, set_number};
use crate::families::{course, growing};

/// A weighing this many days back still says how the birds stand: they are weighed every week (common practice).
pub const RECENT_DAYS: f64 = 7.0;

/// How something stands by a rule of thumb.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Standing {
    /// As it should be.
    Good,
    /// Not quite; no cause to do more than look.
    Behind,
    /// Ask why.
    Ask,
    /// Do something about it now.
    Act,
}

impl Standing {
    /// The stable name used in message keys.
    pub fn name(self) -> &'static str {
        match self {
            Standing::Good => "good",
            Standing::Behind => "behind",
            Standing::Ask => "ask",
            Standing::Act => "act",
        }
    }
}

/// To the tenth that is shown, so that nobody reads 4.0 and is told that it is under 4.
fn as_shown(value: f64) -> f64 {
    (value * 10.0).round() / 10.0
}

/// How the weight at the end of the first week stands, as so many times the weight on arrival, to a tenth: 4 is good, under
/// 3.5 asks.
///
/// Source: [first-week], from memory.
pub fn first_week_weight(times: f64) -> Standing {
    match as_shown(times) {
        times if times >= 4.0 => Standing::Good,
        times if times >= 3.5 => Standing::Behind,
        _ => Standing::Ask,
    }
}

/// How the losses of the first week stand, in percent of the live chicks placed, to a tenth: up to 1 is good, 2 asks, 3 acts.
///
/// Source: [first-week], from memory.
pub fn first_week_losses(percent: f64) -> Standing {
    match as_shown(percent) {
        percent if percent <= 1.0 => Standing::Good,
        percent if percent < 2.0 => Standing::Behind,
        percent if percent < 3.0 => Standing::Ask,
        _ => Standing::Act,
    }
}

/// The end of the first week is weighed on one of these days, the nearest to day 7 first.
const WEEK_DAYS: [i32; 3] = [7, 8, 6];

/// Puts it among the answers.
pub(crate) fn write_more(diary: &mut Diary) {
    write_arrival(diary);
    write_weighings_before(diary);
    write_left(diary);
    let weighed = diary.answers.by_day(growing::WEIGHT);
    let week = WEEK_DAYS.into_iter().find(|day| weighed.is_some_and(|days| days.contains_key(day)));
    if let Some(day) = week {
        set_number(&mut diary.answers, course::WEEK_WEIGHED, f64::from(day));
    }
}

/// The boxes weighed when the chicks came, and chicks weighed on that day.
fn write_arrival(diary: &mut Diary) {
    if let Some(placed) = diary.of_kind("chicks-placed").last().cloned() {
        let boxes = placed.numbers("box_weights_g");
        if !boxes.is_empty() {
            set(&mut diary.answers, course::BOXES, Value::Numbers(boxes));
        }
        for (key, name) in [(course::EMPTY_BOX, "box_empty_g"), (course::IN_A_BOX, "chicks_per_box")] {
            if let Some(number) = placed.number(name) {
                set_number(&mut diary.answers, key, number);
            }
        }
    }
    if let Some(weight) = on(diary, growing::WEIGHT, 0) {
        set_number(&mut diary.answers, course::ARRIVAL, weight);
    }
}

/// What chicks weighed on arrival; `None` where neither boxes nor chicks were weighed.
fn arrival(diary: &Diary) -> Option<f64> {
    let number = |key| diary.answers.number(key);
    let boxes = diary.answers.numbers(course::BOXES);
    let empty_and_chicks = number(course::EMPTY_BOX).zip(number(course::IN_A_BOX));
    let boxed =
        empty_and_chicks.and_then(|(empty, chicks)| model::growth::chick_in_boxes(boxes, empty, chicks));
    boxed.or_else(|| number(course::ARRIVAL))
}

/// Beside each weighing the one before it; before the first, the chicks as they came.
fn write_weighings_before(diary: &mut Diary) {
    let weighed: Vec<(i32, f64)> = days(diary, growing::WEIGHT);
    let mut before = arrival(diary).map(|weight| (0, weight, 0.0));
    let (mut weights, mut offs, mut ages) = (BTreeMap::new(), BTreeMap::new(), BTreeMap::new());
    for (age, weight) in weighed {
        if let Some((day, earlier, off)) = before.filter(|(day, ..)| *day < age) {
            weights.insert(age, earlier);
            offs.insert(age, off);
            ages.insert(age, f64::from(day));
        }
        before = Some((age, weight, half_width(diary, age)));
    }
    set_days(&mut diary.answers, course::WEIGHT_BEFORE, weights);
    set_days(&mut diary.answers, course::BEFORE_OFF, offs);
    set_days(&mut diary.answers, course::WEIGHED_BEFORE, ages);
}

fn half_width(diary: &Diary, age: i32) -> f64 {
    let ends = on(diary, growing::WEIGHT_LOW, age).zip(on(diary, growing::WEIGHT_HIGH, age));
    ends.map_or(0.0, |(low, high)| (high - low) / 2.0)
}

/// Live weight of birds that left: as it was written, else as many birds at the weight last weighed before they went.
fn write_left(diary: &mut Diary) {
    let weighed = days(diary, growing::WEIGHT);
    let weight_by = |age: i32| weighed.iter().rev().find(|(day, _)| *day <= age).map(|(_, weight)| *weight);
    let kilograms = |note: &Noted| {
        let birds = matches!(note.kind, "sale" | "birds-out").then(|| note.number("birds"))??;
        let by_weighing = || Some(birds * weight_by(diary.age(note.day)?)? / 1000.0);
        note.number("live_kg").or_else(by_weighing)
    };
    let left = diary.by_day(kilograms, |sum, more| sum + more);
    set_days(&mut diary.answers, course::LEFT_KG, left);
}

fn days(diary: &Diary, key: &str) -> Vec<(i32, f64)> {
    let days = diary.answers.by_day(key).into_iter().flatten();
    days.map(|(age, value)| (*age, *value)).collect()
}

fn on(diary: &Diary, key: &str, age: i32) -> Option<f64> {
    diary.answers.by_day(key)?.get(&age).copied()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_first_week_is_judged_at_the_limits() {
        let weights = [3.96, 3.94, 3.46, 3.44].map(first_week_weight);
        assert_eq!(weights, [Standing::Good, Standing::Behind, Standing::Behind, Standing::Ask]);
        let losses = [1.04, 1.06, 2.0, 3.0].map(first_week_losses);
        assert_eq!(losses, [Standing::Good, Standing::Behind, Standing::Ask, Standing::Act]);
    }
}
