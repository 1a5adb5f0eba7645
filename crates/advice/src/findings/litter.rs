//! What is to say about the litter.

use quantity::Answers;

use super::Check;
use crate::finding::{Finding, Weight};
use crate::outcome::Outcome;

/// Its checks.
pub(super) static CHECKS: &[Check] = &[husk_is_eaten];

fn husk_is_eaten(answers: &Answers, _: &Outcome) -> Option<Finding> {
    (answers.choice("litter.kind") == Some("rice-husk"))
        .then(|| Finding::new("husk-is-eaten", Weight::Note).at("litter.kind"))
}
