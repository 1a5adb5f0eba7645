//! What a plan says before the chicks come, held to what it says elsewhere.

use crate::sample;
use advice::finding::Weight;
use advice::plan::Plan;
use proptest::prelude::*;

fn named<'a>(plan: &'a Plan, name: &str) -> Option<&'a advice::finding::Finding> {
    plan.findings.iter().find(|finding| finding.name == name)
}

/// Without a word about money at hand the plan counts from nothing: it says what is wanted, and does not keep still.
#[test]
fn money_not_told_is_asked_for() {
    let told = sample::complete();
    let at = told.find("at_start").expect("the sample tells its money");
    let line = told[at..].lines().next().unwrap();
    let silent = sample::plan(&told.replace(line, ""));
    assert!(named(&silent, "cash-short").is_none());
    assert_eq!(named(&silent, "cash-not-told").unwrap().weight, Weight::Look);
    let poor = sample::plan(&told.replace(line, "at_start = 1"));
    assert_eq!(named(&poor, "cash-short").unwrap().weight, Weight::Problem);
    let rich = sample::plan(&told.replace(line, "at_start = 100000000"));
    assert!(named(&rich, "cash-short").is_none() && named(&rich, "cash-not-told").is_none());
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(10))]

    /// Heat never makes a fast bird cheaper: the hotter, the lighter it is and the more feed goes into a kilogram of it.
    #[test]
    fn heat_makes_no_fast_bird_cheaper(mean in 20.0..34.0f64, hotter in 0.5..4.0f64) {
        let at = |mean: f64| {
            let text = sample::complete().replace("mean_c = 26", &format!("mean_c = {mean:.2}"));
            sample::plan(&text.replace("hottest_day_c = 35", "hottest_day_c = 42"))
        };
        let (cool, hot) = (at(mean), at(mean + hotter));
        let get = |plan: &Plan, id| sample::number(plan, id);
        prop_assert!(get(&hot, "feed.conversion") >= get(&cool, "feed.conversion") - 1e-9);
        prop_assert!(get(&hot, "sale.mean_weight") <= get(&cool, "sale.mean_weight") + 1e-9);
    }

    /// Fuel for the night it runs out is bought: full packs hold days and spare, and not a pack more.
    #[test]
    fn spare_fuel_is_bought(chicks in 200u32..2400, charcoal in any::<bool>()) {
        let text = if charcoal { sample::with_charcoal() } else { sample::complete() };
        let plan = sample::plan(&text.replace("chicks = 1600", &format!("chicks = {chicks}")));
        let get = |id| sample::number(&plan, id);
        let (packs, kg) = if charcoal { ("brooding.sacks", 45.0) } else { ("brooding.cylinders", 13.0) };
        let held = (get(packs) + get("brooding.spare_packs")) * kg;
        let wanted = get("brooding.fuel_total") + get("brooding.spare");
        prop_assert!(held >= wanted - 1e-6 && held - kg < wanted, "{held} for {wanted}");
        let bought = plan.purchases.iter().find(|one| one.what == "spare-fuel");
        prop_assert_eq!(bought.is_some(), get("brooding.spare_packs") > 0.0);
    }

    /// Whatever is too few is on the list of what to buy, with as many as lack, before the day it is wanted.
    #[test]
    fn what_is_short_is_bought_in_time(trays in 0u32..60, founts in 0u32..60, large in 0u32..80, bells in 0u32..40) {
        let text = sample::complete()
            .replace("chick_feeders = 30", &format!("chick_feeders = {trays}"))
            .replace("chick_drinkers = 35", &format!("chick_drinkers = {founts}"))
            .replace("\nfeeders = 40", &format!("\nfeeders = {large}"))
            .replace("\ndrinkers = 20", &format!("\ndrinkers = {bells}"));
        let plan = sample::plan(&text);
        for (what, id, by) in [
            ("chick-trays", "space.chick_feeders_short", 0.0),
            ("small-drinkers", "space.chick_drinkers_short", 0.0),
            ("large-feeders", "space.feeders_short", sample::number(&plan, "space.large_from")),
            ("large-drinkers", "space.drinkers_short", sample::number(&plan, "space.large_from")),
        ] {
            let short = sample::number(&plan, id);
            let bought = plan.purchases.iter().find(|one| one.what == what);
            prop_assert_eq!(bought.and_then(|one| one.quantity), (short > 0.0).then_some(short), "{}", what);
            prop_assert!(bought.is_none_or(|one| f64::from(one.day) < by), "{}", what);
        }
    }
}

/// A deposit that nobody spoke of is asked for, and the chicks are then paid whole on their day.
#[test]
fn a_deposit_that_is_not_told_is_asked_for() {
    let told = sample::complete();
    let plan = sample::plan(&told);
    assert!(named(&plan, "deposit-not-told").is_none());
    assert!(plan.purchases.iter().any(|one| one.what == "chick-deposit" && one.day == -21));
    let silent = sample::plan(&told.replace("deposit_percent = 40\n", ""));
    assert_eq!(named(&silent, "deposit-not-told").unwrap().weight, Weight::Look);
    let paid: Vec<_> = silent.purchases.iter().filter(|one| one.what.starts_with("chick")).collect();
    assert!(paid.iter().all(|one| one.day == 0 || !one.what.starts_with("chicks")), "{paid:?}");
    assert!(!paid.iter().any(|one| one.what == "chick-deposit"), "{paid:?}");
}

/// A batch that loses as planned says so as a problem, with ways out.
#[test]
fn a_loss_has_ways_out() {
    let told = sample::complete();
    let at = told.find("sale_per_kg").expect("the sample tells its price");
    let line = told[at..].lines().next().unwrap();
    let loss = sample::plan(&told.replace(line, "sale_per_kg = 5"));
    let finding = named(&loss, "loss-planned").unwrap();
    assert_eq!(finding.weight, Weight::Problem);
    assert!(!finding.ways_out.is_empty(), "{finding:?}");
    assert!(named(&sample::plan(&told.replace(line, "sale_per_kg = 500")), "loss-planned").is_none());
}
