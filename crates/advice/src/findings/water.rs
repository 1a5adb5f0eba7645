//! What is to say about water.

use quantity::{Answers, Unit};

use super::{Check, number};
use crate::finding::{Detail, Finding, Weight};
use crate::outcome::Outcome;

/// Its checks.
pub(super) static CHECKS: &[Check] = &[tank_too_small, hottest_day_not_told];

fn tank_too_small(answers: &Answers, outcome: &Outcome) -> Option<Finding> {
    let tank = answers.number("water.storage_l")?;
    let days = outcome.number("water.storage_days")?;
    if days >= 2.0 {
        return None;
    }
    let finding = if days < 1.0 {
        Finding::new("tank-under-a-day", Weight::Problem).out("larger-tank").out("carry")
    } else {
        Finding::new("tank-under-two-days", Weight::Look)
    };
    Some(
        finding
            .at("water.storage_l")
            .with("days", Detail::Figure("water.storage_days"))
            .with("tank", number(tank, Unit::Litre, 0))
            .with("need", Detail::Figure("water.peak_day"))
            .with("cans", Detail::Figure("water.cans")),
    )
}

fn hottest_day_not_told(answers: &Answers, outcome: &Outcome) -> Option<Finding> {
    outcome.get("water.peak_day")?;
    let told = answers.number("weather.hottest_day_c").is_some();
    (!told).then(|| {
        Finding::new("hottest-day-not-told", Weight::Look)
            .at("weather.hottest_day_c")
            .with("need", Detail::Figure("water.peak_day"))
    })
}
