//! A working: how one figure came about. Built only when somebody asks.

use quantity::{Answers, Status};

use crate::outcome::{Outcome, Resolved, Worked};
use crate::rule::Origin;

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
}

/// The working of a figure of an outcome; `None` when it could not be worked out.
pub fn working(answers: &Answers, outcome: &Outcome, id: &str) -> Option<Working> {
    let worked = outcome.get(id)?.clone();
    let inputs = worked.rule.inputs.iter().zip(&worked.inputs).map(|(input, resolved)| {
        let usual = match input.origin {
            Origin::Field(key) => answers.get(key).and_then(|given| given.usual),
            _ => None,
        };
        let list = match input.origin {
            Origin::List(_) => worked.list.clone(),
            _ => Vec::new(),
        };
        WorkedInput { symbol: input.symbol, resolved: *resolved, origin: input.origin, list, usual }
    });
    Some(Working { inputs: inputs.collect(), worked })
}
