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
    /// Set when the grower did not say: how the usual value taken instead is backed.
    pub usual: Option<Status>,
}

/// The working of a figure; `None` when it could not be worked out.
pub fn working(answers: &Answers, id: &'static str) -> Option<Working> {
    let mut outcome = Outcome::of(answers, [id]);
    let worked = *outcome.get(id)?;
    let inputs = worked
        .rule
        .inputs
        .iter()
        .map(|input| {
            let usual = match input.origin {
                Origin::Field(key) => answers.get(key).and_then(|given| given.usual),
                _ => None,
            };
            let resolved = outcome.resolve(answers, input)?;
            Some(WorkedInput { symbol: input.symbol, resolved, origin: input.origin, usual })
        })
        .collect::<Option<Vec<_>>>()?;
    Some(Working { worked, inputs })
}
