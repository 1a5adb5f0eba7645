//! The grower who writes a batch down: who rounds, forgets a thermometer, and catches the slow birds.

mod brooding;
mod daily;
mod health;
mod jobs;
mod money;
mod weekly;

use quantity::{CivilDay, Raw};

use crate::life::{Day, Life, matter};
use crate::luck::Luck;
use crate::scenario::Scenario;

/// Something written down, as it was typed into a form.
#[derive(Clone, Debug, PartialEq)]
pub struct Line {
    /// The day it is about.
    pub day: CivilDay,
    /// The day it was written.
    pub written: CivilDay,
    /// The hour it was written.
    pub hour: i32,
    /// The kind of entry.
    pub kind: &'static str,
    /// What was typed, under the keys of the kind.
    pub raws: Vec<Raw>,
}

/// All that the grower wrote of a batch, in the order of writing.
pub fn write_down(scenario: &Scenario, life: &Life) -> Vec<Line> {
    let luck = Luck::of(scenario.seed, matter::PEN);
    let mut pen = Pen { scenario, life, luck, lines: Vec::new() };
    pen.before();
    pen.jobs();
    pen.arrival();
    for day in &life.days {
        pen.daily(day);
        pen.brooding(day);
        pen.weekly(day);
        pen.health(day);
        pen.money(day);
    }
    pen.closing();
    pen.lines.sort_by_key(|line| (line.written, line.hour));
    pen.lines
}

/// An answer: its key and what was typed.
type Typed = (&'static str, String);

struct Pen<'a> {
    scenario: &'a Scenario,
    life: &'a Life,
    luck: Luck,
    lines: Vec<Line>,
}

impl Pen<'_> {
    /// Writes a line about a day of age, on that day.
    fn write(&mut self, age: i32, hour: i32, kind: &'static str, typed: Vec<Typed>) {
        let lists = typed.into_iter().map(|(key, text)| (key, vec![text])).collect();
        self.write_lists(age, hour, kind, lists);
    }

    /// The same, of lists.
    fn write_lists(&mut self, age: i32, hour: i32, kind: &'static str, typed: Vec<(&str, Vec<String>)>) {
        let raw = |(key, text): (&str, Vec<String>)| Raw { key: key.to_owned(), text, line: None };
        let (day, raws) = (self.day(age), typed.into_iter().map(raw).collect());
        self.lines.push(Line { day, written: day, hour, kind, raws });
    }

    /// Writes a line on the next morning.
    fn write_late(&mut self, age: i32, kind: &'static str, typed: Vec<Typed>) {
        self.write(age, 6, kind, typed);
        if let Some(line) = self.lines.last_mut() {
            line.written = line.day.plus_days(1);
        }
    }

    fn note(&mut self, age: i32, text: &str) {
        self.write(age, 18, "note", vec![("text", text.to_owned())]);
    }

    fn day(&self, age: i32) -> CivilDay {
        self.scenario.placement.plus_days(age)
    }

    /// How many times the larger batch of the farm this one is.
    fn share(&self) -> f64 {
        f64::from(self.scenario.chicks) / 1600.0
    }

    /// The age of the last day with birds.
    fn last_age(&self) -> i32 {
        self.life.days.last().map_or(0, |day: &Day| day.age)
    }
}

/// A number in steps, with no more digits than the step has.
fn stepped(number: f64, step: f64) -> String {
    let decimals = if step < 0.1 {
        2
    } else if step < 1.0 {
        1
    } else {
        0
    };
    format!("{:.decimals$}", (number / step).round() * step)
}

/// Money as it is typed.
fn money(amount: f64) -> String {
    stepped(amount, 0.01)
}

fn text(word: &str) -> String {
    word.to_owned()
}
