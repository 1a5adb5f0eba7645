//! What is to say about money.

use quantity::{Answers, Unit};

use super::space::YOUNGEST_SALE_D;
use super::{Check, number};
use crate::families::money::{by_head, sells_for_something};
use crate::finding::{Detail, Finding, Weight};
use crate::outcome::Outcome;
use crate::purchases::{self, Purchase};
use crate::purse;

/// The check that comes before all small shortages: half the failures of small growers are feed stopped in week four or five
/// for want of money (an impression of the trade).
pub(super) static FIRST: &[Check] = &[cash_short];

/// Its other checks.
pub(super) static CHECKS: &[Check] =
    &[deposit_not_told, loss_planned, loss_likely, price_missing, not_all_priced];

fn cash_short(answers: &Answers, outcome: &Outcome) -> Option<Finding> {
    let short = outcome.number("money.cash_short").filter(|short| *short > 0.0)?;
    let (day, worst) = (outcome.number("money.first_day_short")?, outcome.number("money.cash_low_day")?);
    let beyond = outcome.number("money.beyond_credit");
    let name = match beyond {
        _ if !money_told(answers) => "cash-not-told",
        Some(beyond) if beyond <= 0.0 => "cash-within-credit",
        _ => "cash-short",
    };
    let weight = if name == "cash-short" { Weight::Problem } else { Weight::Look };
    let mut finding = Finding::new(name, weight)
        .at("cash.at_start")
        .with("short", Detail::Figure("money.cash_short"))
        .with("day", number(day, Unit::One, 0))
        .with("worst", number(worst, Unit::One, 0))
        .with("credit", Detail::Case(if beyond.is_some() { "told" } else { "none" }));
    let first = if beyond.is_some() { outcome.number("money.first_day_beyond_credit") } else { Some(day) };
    let first = first.unwrap_or(worst);
    if beyond.is_some() {
        finding = finding
            .with("beyond", Detail::Figure("money.beyond_credit"))
            .with("limit", Detail::Figure("money.credit"))
            .with("first", number(first, Unit::One, 0));
    }
    Some(if name == "cash-within-credit" {
        finding
    } else {
        ways_to_pay(answers, outcome, finding, beyond.unwrap_or(short), first)
    })
}

/// Ways out that fit: with how many chicks the money lasts, what feed bought nearer changes, and birds sold early only where any
/// are heavy enough by then.
///
/// - `missing`: beyond what may be owed
/// - `first`: the first day on which it is
fn ways_to_pay(answers: &Answers, outcome: &Outcome, finding: Finding, missing: f64, first: f64) -> Finding {
    let mut finding = finding.out("money-set-aside");
    let told = money_told(answers);
    if let Some(chicks) = purse::chicks_carried(answers, outcome).filter(|_| told) {
        finding = finding.with("chicks", number(chicks, Unit::Chicks, 0)).out("chicks-carried");
    } else if told {
        finding = finding.out("no-chicks-carried");
    }
    let nearer = purse::feed_nearer(answers, outcome);
    let helps = |nearer: &purse::Nearer| {
        nearer.short < missing - LEAST_GAIN || nearer.first.is_none_or(|day| f64::from(day) > first)
    };
    if let Some(nearer) = nearer.filter(helps) {
        finding = finding
            .with("covers", number(nearer.covers_d, Unit::Day, 0))
            .with("ahead", number(nearer.ahead_d, Unit::Day, 0))
            .with("nearer", Detail::Case(if nearer.first.is_some() { "later" } else { "enough" }))
            .with("then_day", number(f64::from(nearer.first.unwrap_or_default()), Unit::One, 0))
            .with("then", number(nearer.short, Unit::Money, 2))
            .out("feed-nearer");
    }
    finding.with("by", number(first, Unit::One, 0)).out(if first > YOUNGEST_SALE_D {
        "sell-some-early"
    } else {
        "agree-with-shop"
    })
}

/// A coin less is no way out.
const LEAST_GAIN: f64 = 1.0;

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

fn loss_planned(answers: &Answers, outcome: &Outcome) -> Option<Finding> {
    // A price of 0 has its own finding.
    (outcome.number("money.profit")? < 0.0 && sells_for_something(answers)).then(|| {
        let finding = Finding::new("loss-planned", Weight::Problem);
        let finding = if by_head(answers) {
            let price = answers.number("prices.sale_per_bird").unwrap_or_default();
            finding
                .at("prices.sale_per_bird")
                .with("each", Detail::Case("bird"))
                .with("cost", Detail::Figure("money.cost_per_bird"))
                .with("price", number(price, Unit::Money, 2))
                .with("even", Detail::Figure("money.break_even_price_bird"))
        } else {
            finding
                .at("prices.sale_per_kg")
                .with("each", Detail::Case("kg"))
                .with("cost", Detail::Figure("money.cost_per_kg"))
                .with("price", Detail::Figure("money.price_per_kg"))
                .with("even", Detail::Figure("money.break_even_price"))
        };
        let finding =
            finding.with("conversion", Detail::Figure("money.break_even_fcr")).out("price-that-pays");
        let feeds = outcome.number("money.break_even_fcr").filter(|conversion| *conversion > 1.0);
        let finding = if feeds.is_some() { finding.out("feed-that-pays") } else { finding };
        finding.out("leave-it-out")
    })
}

/// A price that was told as 0.
struct Free {
    key: &'static str,
    /// The purchases it is the price of; none for what is sold.
    buys: &'static [&'static str],
    /// Whether a batch without it cannot be judged: birds sold, chicks and feed.
    weighty: bool,
}

const fn vital(key: &'static str, buys: &'static [&'static str]) -> Free {
    Free { key, buys, weighty: true }
}

const fn small(key: &'static str, buys: &'static [&'static str]) -> Free {
    Free { key, buys, weighty: false }
}

const SALE_KG: &str = "prices.sale_per_kg";
const SALE_BIRD: &str = "prices.sale_per_bird";

/// Every price that may be 0, what weighs most first. Husk from the own mill can be free, and chicks can be given; what birds
/// bring and what feed costs is hardly ever nothing.
const FREE: &[Free] = &[
    vital(SALE_KG, &[]),
    vital(SALE_BIRD, &[]),
    vital("prices.chick_each", &["chicks"]),
    vital("prices.starter_bag_each", &["feed-starter"]),
    vital("prices.grower_bag_each", &["feed-grower"]),
    vital("prices.finisher_bag_each", &["feed-finisher", "feed-last"]),
    vital("prices.last_bag_each", &["feed-last"]),
    vital("prices.starter_other_bag_each", &["feed-starter"]),
    vital("prices.grower_other_bag_each", &["feed-grower"]),
    vital("prices.finisher_other_bag_each", &["feed-finisher"]),
    vital("prices.last_other_bag_each", &["feed-last"]),
    small("prices.litter_bag_each", &["litter"]),
    small("prices.sheet_each", &["guard"]),
    small("prices.disinfectant_per_l", &["disinfectant"]),
    small("prices.charcoal_sack_each", &["fuel", "spare-fuel", "second-fuel", "second-spare-fuel"]),
    small("prices.gas_cylinder_each", &["fuel", "spare-fuel", "second-fuel", "second-spare-fuel"]),
    small("prices.chick_feeder_each", &["chick-trays"]),
    small("prices.chick_drinker_each", &["small-drinkers"]),
    small("prices.brooder_each", &["brooders"]),
    small("prices.feeder_each", &["large-feeders"]),
    small("prices.drinker_each", &["large-drinkers", "nipples"]),
];

/// Prices of 0: each with what it is the price of, how much of that there is, and the day it is paid.
pub(super) fn prices_of_zero(answers: &Answers, outcome: &Outcome) -> Vec<Finding> {
    let list = purchases::list(answers, outcome);
    FREE.iter()
        .filter(|free| answers.number(free.key) == Some(0.0))
        .filter_map(|free| match free.key {
            // The price of a kilogram hides that of a bird.
            SALE_BIRD if !by_head(answers) => None,
            SALE_KG | SALE_BIRD => sold_for_nothing(free, outcome),
            _ => bought_for_nothing(free, list.iter().find(|one| is_free(free, one))?),
        })
        .collect()
}

fn is_free(free: &Free, one: &Purchase) -> bool {
    free.buys.contains(&one.what) && one.cost == Some(0.0)
}

fn sold_for_nothing(free: &Free, outcome: &Outcome) -> Option<Finding> {
    let (amount, day) = (outcome.number("sale.birds")?, outcome.number("sale.first_age")?);
    Some(priced_zero(free, "sold", number(amount, Unit::Birds, 0), day))
}

fn bought_for_nothing(free: &Free, bought: &Purchase) -> Option<Finding> {
    let in_bags = bought.what == "litter" || bought.what.starts_with("feed-");
    let amount = if in_bags {
        Detail::Bags(vec![(bought.quantity?, bought.size_kg)])
    } else {
        number(bought.quantity?, bought.unit, 0)
    };
    let finding = priced_zero(free, "bought", amount, f64::from(bought.day));
    Some(finding.with("thing", Detail::Bought(vec![bought.what])))
}

fn priced_zero(free: &Free, case: &'static str, amount: Detail, day: f64) -> Finding {
    let weight = if free.weighty { Weight::Problem } else { Weight::Look };
    Finding::new("price-is-zero", weight)
        .at(free.key)
        .with("case", Detail::Case(case))
        .with("amount", amount)
        .with("day", number(day, Unit::One, 0))
        .out("price-or-nothing")
        .out("price-not-known")
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
    Some(finding.out("write-the-price"))
}

/// What is on the list without a price is in no sum. What has no field of its own, such as firewood, goes to all else.
fn not_all_priced(answers: &Answers, outcome: &Outcome) -> Option<Finding> {
    outcome.get("money.cost_total")?;
    let list = purchases::list(answers, outcome);
    let mut without: Vec<&'static str> = Vec::new();
    for one in list.iter().filter(|one| one.cost.is_none()) {
        if !without.contains(&one.what) {
            without.push(one.what);
        }
    }
    let count = without.len() as f64;
    let key = without.iter().find_map(|what| purchases::price_key(answers, what)).unwrap_or("costs.other");
    (!without.is_empty()).then(|| {
        Finding::new("not-all-priced", Weight::Look)
            .at(key)
            .with("count", number(count, Unit::One, 0))
            .with("items", Detail::Bought(without))
            .out("write-prices")
    })
}
