//! What is to say about water for a vaccine.

use quantity::Answers;

use super::Check;
use crate::families::vaccine::MEASURED;
use crate::finding::{Detail, Finding, Weight};
use crate::outcome::Outcome;

/// Its checks.
pub(super) static CHECKS: &[Check] = &[far_from_rule, drunk_too_fast, day_count];

/// How far the birds' own two hours may lie from the rule before both are looked at again (our judgement).
const FAR: f64 = 0.3;

fn far_from_rule(_: &Answers, outcome: &Outcome) -> Option<Finding> {
    let (taken, rule) = (outcome.number("vaccine.water")?, outcome.number("vaccine.water_by_age")?);
    ((taken - rule).abs() > FAR * rule).then(|| {
        Finding::new("vaccine-water-far-from-rule", Weight::Look)
            .at(MEASURED)
            .with("measured", Detail::Figure("vaccine.water"))
            .with("rule", Detail::Figure("vaccine.water_by_age"))
    })
}

/// In heat birds empty the rule's litres before the timid ones have had their share.
fn drunk_too_fast(answers: &Answers, outcome: &Outcome) -> Option<Finding> {
    outcome.get("vaccine.water")?;
    answers
        .number(MEASURED)
        .is_none()
        .then(|| Finding::new("vaccine-measure-two-hours", Weight::Note).at(MEASURED))
}

fn day_count(_: &Answers, outcome: &Outcome) -> Option<Finding> {
    outcome.get("vaccine.water").map(|_| Finding::new("vaccine-day-count", Weight::Note).at("vaccine.age_d"))
}
