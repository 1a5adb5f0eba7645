//! What is to say about the litter.

use model::air::litter_water;
use quantity::{Answers, Unit};

use super::{Check, number};
use crate::finding::{Detail, Finding, Weight};
use crate::outcome::Outcome;

/// Its checks.
pub(super) static CHECKS: &[Check] = &[husk_is_eaten, litter_gets_wet];

/// Birds drop more water than the air takes up.
fn litter_gets_wet(_: &Answers, outcome: &Outcome) -> Option<Finding> {
    let day = outcome.number("air.litter_wet_from")?;
    let wet = number(100.0 * litter_water::WET, Unit::Percent, 0);
    Some(
        Finding::new("litter-gets-wet", Weight::Look)
            .at("litter.depth_cm")
            .with("day", number(day, Unit::Day, 0))
            .with("wet", wet)
            .with("at_sale", Detail::Figure("air.litter_at_sale"))
            .out("turn-litter")
            .out("fewer-on-litter"),
    )
}

fn husk_is_eaten(answers: &Answers, _: &Outcome) -> Option<Finding> {
    (answers.choice("litter.kind") == Some("rice-husk"))
        .then(|| Finding::new("husk-is-eaten", Weight::Note).at("litter.kind"))
}
