//! What is to say about money.

use quantity::{Answers, Unit};

use super::{Check, number};
use crate::finding::{Detail, Finding, Weight};
use crate::outcome::Outcome;

/// Its checks.
pub(super) static CHECKS: &[Check] = &[cash_short, loss_planned, loss_likely, price_missing];

/// Half the failures of small growers are feed stopped in week four or five for want of money: said first of all.
fn cash_short(answers: &Answers, outcome: &Outcome) -> Option<Finding> {
    let short = outcome.number("money.cash_short")?;
    let told = answers.get("cash.at_start").is_some_and(|given| given.usual.is_none());
    let day = outcome.number("money.first_day_short")?;
    (told && short > 0.0).then(|| {
        Finding::new("cash-short", Weight::Problem)
            .at("cash.at_start")
            .with("short", Detail::Figure("money.cash_short"))
            .with("day", number(day, Unit::Day, 0))
            .with("worst", Detail::Figure("money.cash_low_day"))
            .out("fewer-chicks-or-money")
            .out("sell-some-early")
    })
}

fn loss_planned(_: &Answers, outcome: &Outcome) -> Option<Finding> {
    (outcome.number("money.profit")? < 0.0).then(|| {
        Finding::new("loss-planned", Weight::Problem)
            .at("prices.sale_per_kg")
            .with("cost", Detail::Figure("money.cost_per_kg"))
            .with("price", Detail::Figure("money.price_per_kg"))
    })
}

fn loss_likely(_: &Answers, outcome: &Outcome) -> Option<Finding> {
    let chance = outcome.number("risk.loss_probability")?;
    let planned = outcome.number("money.profit")? >= 0.0;
    (planned && chance >= 0.2).then(|| {
        Finding::new("loss-likely", Weight::Look)
            .at("prices.sale_per_kg")
            .with("of_ten", number(10.0 * chance, Unit::One, 0))
            .with("worst", Detail::Figure("risk.expected_shortfall"))
    })
}

/// What must be priced before the money can be added up.
fn price_missing(answers: &Answers, outcome: &Outcome) -> Option<Finding> {
    outcome.get("feed.bags")?;
    let missing = |key: &str| answers.number(key).is_none();
    let some_told = !missing("prices.chick_each") || !missing("prices.starter_bag_each");
    (some_told && outcome.get("money.cost_total").is_none())
        .then(|| Finding::new("price-missing", Weight::Look).at("prices.chick_each"))
}
