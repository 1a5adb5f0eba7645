//! What is to say about money.

use quantity::{Answers, Unit};

use super::{Check, number};
use crate::finding::{Detail, Finding, Weight};
use crate::outcome::Outcome;

/// Its checks.
pub(super) static CHECKS: &[Check] = &[
    cash_short,
    deposit_not_told,
    loss_planned,
    loss_likely,
    bought_for_nothing,
    price_missing,
    not_all_priced,
];

/// Half the failures of small growers are feed stopped in week four or five for want of money: said first of all.
fn cash_short(answers: &Answers, outcome: &Outcome) -> Option<Finding> {
    let short = outcome.number("money.cash_short")?;
    let (day, worst) = (outcome.number("money.first_day_short")?, outcome.number("money.cash_low_day")?);
    (short > 0.0).then(|| {
        let finding = if money_told(answers) {
            Finding::new("cash-short", Weight::Problem)
        } else {
            Finding::new("cash-not-told", Weight::Look)
        };
        finding
            .at("cash.at_start")
            .with("short", Detail::Figure("money.cash_short"))
            .with("day", number(day, Unit::One, 0))
            .with("worst", number(worst, Unit::One, 0))
            .out("fewer-chicks-or-money")
            .out("sell-some-early")
    })
}

/// Hatcheries mostly want money when chicks are booked; without a word the plan pays all of it on the chick day.
fn deposit_not_told(answers: &Answers, outcome: &Outcome) -> Option<Finding> {
    outcome.number("money.cost_total")?;
    answers.number("batch.deposit_percent").is_none().then(|| {
        Finding::new("deposit-not-told", Weight::Look)
            .at("batch.deposit_percent")
            .with("chicks", Detail::Figure("money.chicks"))
    })
}

/// Whether the grower said what money there is; else the plan counts from nothing, and says what is wanted.
pub fn money_told(answers: &Answers) -> bool {
    answers.get("cash.at_start").is_some_and(|given| given.usual.is_none())
}

fn loss_planned(_: &Answers, outcome: &Outcome) -> Option<Finding> {
    (outcome.number("money.profit")? < 0.0).then(|| {
        let finding = Finding::new("loss-planned", Weight::Problem)
            .at("prices.sale_per_kg")
            .with("cost", Detail::Figure("money.cost_per_kg"))
            .with("price", Detail::Figure("money.price_per_kg"))
            .with("even", Detail::Figure("money.break_even_price"))
            .with("conversion", Detail::Figure("money.break_even_fcr"))
            .out("price-that-pays");
        let feeds = outcome.number("money.break_even_fcr").filter(|conversion| *conversion > 1.0);
        let finding = if feeds.is_some() { finding.out("feed-that-pays") } else { finding };
        finding.out("leave-it-out")
    })
}

/// What counts nothing because its price was told as 0, by the field of the price and the purchase.
const FREE: &[(&str, &str)] = &[
    ("prices.litter_bag_each", "litter"),
    ("prices.sheet_each", "guard"),
    ("prices.disinfectant_per_l", "disinfectant"),
    ("prices.charcoal_sack_each", "fuel"),
    ("prices.gas_cylinder_each", "fuel"),
];

/// A price of nothing can be true, of husk from the own mill; it lowers every cost, and so is said.
fn bought_for_nothing(answers: &Answers, outcome: &Outcome) -> Option<Finding> {
    let list = crate::purchases::list(answers, outcome);
    let (key, bought) = FREE.iter().find_map(|(key, what)| {
        let bought = list.iter().find(|one| one.what == *what && one.cost == Some(0.0))?;
        (answers.number(key) == Some(0.0)).then_some((*key, bought))
    })?;
    Some(
        Finding::new("bought-for-nothing", Weight::Look)
            .at(key)
            .with("amount", number(bought.quantity?, bought.unit, 0))
            .with("day", number(f64::from(bought.day), Unit::One, 0))
            .out("price-or-nothing"),
    )
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
    let told = ["prices.chick_each", "prices.starter_bag_each", "prices.finisher_bag_each"];
    if told.iter().all(|key| missing(key)) || outcome.get("money.cost_total").is_some() {
        return None;
    }
    let two = answers.choice("feed.phases") == Some("starter-finisher");
    let finding = if missing("prices.chick_each") {
        Finding::new("price-missing-chick", Weight::Look).at("prices.chick_each")
    } else if missing("prices.starter_bag_each") {
        Finding::new("price-missing-starter", Weight::Look).at("prices.starter_bag_each")
    } else if missing("prices.grower_bag_each") && !two {
        Finding::new("price-missing-grower", Weight::Look).at("prices.grower_bag_each")
    } else {
        Finding::new("price-missing-finisher", Weight::Look).at("prices.finisher_bag_each")
    };
    Some(finding)
}

/// What is on the list without a price is in no sum.
fn not_all_priced(answers: &Answers, outcome: &Outcome) -> Option<Finding> {
    outcome.get("money.cost_total")?;
    let list = crate::purchases::list(answers, outcome);
    let without = list.iter().filter(|one| one.cost.is_none()).count();
    (without > 0).then(|| {
        Finding::new("not-all-priced", Weight::Look)
            .at("prices.litter_bag_each")
            .with("count", number(without as f64, Unit::One, 0))
    })
}
