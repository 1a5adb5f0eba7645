//! What is to say about the farm: what was typed and is no longer asked.

use quantity::Answers;
use quantity::fields::TIME_ZONE;

use super::Check;
use crate::finding::{Finding, Weight};
use crate::outcome::Outcome;

/// Its checks.
pub(super) static CHECKS: &[Check] = &[time_zone_not_needed];

fn time_zone_not_needed(answers: &Answers, _: &Outcome) -> Option<Finding> {
    let typed = answers.text(TIME_ZONE).is_some_and(|zone| !zone.is_empty());
    typed.then(|| Finding::new("time-zone-not-needed", Weight::Note).at(TIME_ZONE))
}
