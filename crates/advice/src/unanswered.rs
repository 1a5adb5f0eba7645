//! What a figure still waits for: the questions of a plan whose answers it lacks, found by going back over its rules.

use std::collections::BTreeSet;

use quantity::Answers;

use crate::families;
use crate::outcome::Outcome;
use crate::rule::Origin;
use crate::series::{DayOrigin, SeriesSpec, Until, Way};

/// The keys of the questions that these figures, figures by day or questions lack, in the order in which their rules ask for
/// them. Empty for what is known, and for what cannot be worked out although all was answered.
pub fn questions(answers: &Answers, outcome: &Outcome, wanted: &[&'static str]) -> Vec<&'static str> {
    let mut search = Search { answers, outcome, seen: BTreeSet::new(), found: Vec::new() };
    wanted.iter().for_each(|name| search.look_at(name));
    search.found
}

/// The figure that says how long the days of a plan go on.
const LAST_DAY: &str = "sale.last_age";

struct Search<'a> {
    answers: &'a Answers,
    outcome: &'a Outcome,
    seen: BTreeSet<&'static str>,
    found: Vec<&'static str>,
}

impl Search<'_> {
    fn look_at(&mut self, name: &'static str) {
        if !self.seen.insert(name) || self.outcome.get(name).is_some() {
            return;
        }
        if let Some(spec) = families::figure(name) {
            match families::simulation_of(name, self.answers) {
                Some(simulation) => simulation.inputs.iter().for_each(|input| self.follow(input.origin)),
                None => {
                    let rule = spec.rules.iter().find(|rule| (rule.applies)(self.answers));
                    let inputs = rule.into_iter().flat_map(|rule| rule.inputs);
                    inputs.for_each(|input| self.follow(input.origin));
                }
            }
        } else if let Some(spec) = families::series_named(name) {
            if self.outcome.series(spec).is_none() {
                self.look_at_days(spec);
            }
        } else if self.answers.get(name).is_none() && families::field(name).is_some() {
            self.found.push(name);
        }
    }

    fn look_at_days(&mut self, spec: &'static SeriesSpec) {
        match spec.way {
            Way::Rules(rules) => {
                let rule = rules.iter().find(|rule| (rule.applies)(self.answers));
                rule.into_iter().flat_map(|rule| rule.inputs).for_each(|input| self.follow_day(input.origin));
            }
            Way::Procedure { made_from, .. } => made_from.iter().for_each(|name| self.look_at(name)),
        }
        if spec.until == Until::Sale {
            self.look_at(LAST_DAY);
        }
    }

    fn follow(&mut self, origin: Origin) {
        origin.names().needed.into_iter().for_each(|name| self.look_at(name));
        if let Origin::IfChosen { field, word, figure } = origin
            && self.answers.choices(field).contains(&word)
        {
            self.look_at(figure);
        }
    }

    fn follow_day(&mut self, origin: DayOrigin) {
        match origin {
            DayOrigin::Fixed(origin) => self.follow(origin),
            of_days => of_days.names().needed.into_iter().for_each(|name| self.look_at(name)),
        }
    }
}
