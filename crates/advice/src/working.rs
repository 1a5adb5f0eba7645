//! A working: how one figure came about. Built only when somebody asks.

use quantity::{Answers, Status};

use crate::families;
use crate::outcome::{Outcome, Resolved, Worked};
use crate::procedure::By;
use crate::rule::{Input, Origin};

/// How a figure came about.
pub struct Working {
    /// The figure, its declaration and the rule taken.
    pub worked: Worked,
    /// What went in, in the order of the rule.
    pub inputs: Vec<WorkedInput>,
}

/// One thing that went in.
pub struct WorkedInput {
    /// Its symbol in the formula.
    pub symbol: &'static str,
    /// Its value and unit.
    pub resolved: Resolved,
    /// Where it comes from.
    pub origin: Origin,
    /// The numbers of a list, whose `resolved` value is how many they are; empty for anything else.
    pub list: Vec<f64>,
    /// Set when the grower did not say: how the usual value taken instead is backed.
    pub usual: Option<Status>,
    /// The word chosen, where the input is read from a table by it.
    pub chosen: Option<&'static str>,
}

/// The working of a figure of an outcome; `None` when it could not be worked out.
pub fn working(answers: &Answers, outcome: &Outcome, id: &str) -> Option<Working> {
    let worked = outcome.get(id)?.clone();
    let asked: &[Input] = match &worked.by {
        By::Rule(rule) => rule.inputs,
        By::Procedure(_) => families::simulation_of(id, answers).map_or(&[], |simulation| simulation.inputs),
    };
    let mut lists = worked.lists.iter();
    let inputs = asked.iter().zip(&worked.inputs).map(|(input, resolved)| {
        let (usual, chosen) = match input.origin {
            Origin::Field(key) => (answers.get(key).and_then(|given| given.usual), None),
            Origin::TableBy { field, .. } => (None, answers.choice(field)),
            _ => (None, None),
        };
        let list = match input.origin {
            Origin::List(_) => lists.next().cloned().unwrap_or_default(),
            _ => Vec::new(),
        };
        WorkedInput { symbol: input.symbol, resolved: *resolved, origin: input.origin, list, usual, chosen }
    });
    let inputs = inputs.collect();
    Some(Working { inputs, worked })
}
