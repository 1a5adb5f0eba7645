//! Feeders, drinkers, brooders and sheets: what is needed, what is owned, what is short.

use proptest::prelude::*;

use crate::sample::{self, number};

fn told(keys: &str) -> advice::plan::Plan {
    sample::plan(&sample::complete().replace("[equipment]\n", &format!("[equipment]\n{keys}\n")))
}

/// The shipped table: a lid as a tray (common practice, no source), a trough of 60 cm at 2.5 cm a bird from both sides
/// (Ross handbook, from memory).
#[test]
fn chicks_share_the_feeders_of_their_kind() {
    for (kind, serves) in [("tray", 50.0), ("box-lid", 50.0), ("small-trough", 2.0 * 60.0 / 2.5)] {
        let plan = told(&format!("chick_feeder_kind = \"{kind}\""));
        let chicks = plan.answers.number("batch.chicks").unwrap();
        assert_eq!(number(&plan, "space.chick_feeders"), f64::ceil(chicks / serves), "{kind}");
    }
}

#[test]
fn one_number_holds_at_every_age() {
    let plan = told("feeder_serves = 45\nchick_feeder_serves = \"60\"");
    let chicks = plan.answers.number("batch.chicks").unwrap();
    assert_eq!(number(&plan, "space.chick_feeders"), f64::ceil(chicks / 60.0));
    let hung = number(&plan, "space.change_over") as i32;
    let birds = plan.outcome.on_day("batch.birds_alive", hung).unwrap();
    assert_eq!(number(&plan, "space.feeders"), f64::ceil(birds / 45.0));
    assert_eq!(plan.outcome.on_day("space.feeders_by_day", hung - 1), Some(0.0));
}

/// What runs short only when birds grow is short from that day on.
#[test]
fn the_day_of_shortage_is_the_day_that_needs_more() {
    let plan = told("feeder_serves = \"0: 60, 21: 30\"");
    let short = plan.findings.iter().find(|finding| finding.name == "feeders-short").unwrap();
    let day = format!("{:?}", short.details.iter().find(|detail| detail.0 == "day").unwrap());
    assert!(day.contains("21"), "{day}");
}

/// Only what lacks is bought, and nothing is bought of what is there.
#[test]
fn sheets_owned_are_not_bought_again() {
    let with = |owned: u32| {
        let text = sample::complete().replace("sheets_owned = 2", &format!("sheets_owned = {owned}"));
        sample::plan(&text)
    };
    let bare = with(0);
    let (needed, cost) = (number(&bare, "guard.sheets"), number(&bare, "guard.cost"));
    let total = number(&bare, "money.cost_total");
    for owned in [0, 3, needed as u32, needed as u32 + 2] {
        let plan = with(owned);
        let buy = (needed - f64::from(owned)).max(0.0);
        assert_eq!(number(&plan, "guard.sheets"), needed);
        assert_eq!(number(&plan, "guard.sheets_to_buy"), buy);
        assert!((number(&plan, "guard.cost") - cost * buy / needed).abs() < 0.01);
        let bought = plan.purchases.iter().find(|one| one.what == "guard").map(|one| one.quantity);
        assert_eq!(bought, (buy > 0.0).then_some(Some(buy)), "{owned}");
        let saved = cost - number(&plan, "guard.cost");
        // Interest falls with what is paid, so that a little more than the sheets is saved.
        assert!(total - number(&plan, "money.cost_total") >= saved - 0.01, "{owned}");
    }
}

fn brooders(lines: &str) -> advice::plan::Plan {
    let text = sample::complete()
        .replace("brooder_chicks = 360\nbrooders = 3\nbrooder_kw = 2.6\n", "")
        .replace("fuel = \"lpg\"", lines)
        .replace("cylinder_kg = 13", "cylinder_kg = 13\nsack_kg = 45");
    assert!(text.contains(lines));
    sample::plan(&text)
}

const HOVERS_AND_POTS: &str = "brooder = \"gas-hover\"\nbrooders = 2\nbrooder_kw = 2.9\nsecond_brooder = \"charcoal-pot\"\nsecond_brooders = 3\nsecond_brooder_kw = 2.1";

fn has(plan: &advice::plan::Plan, name: &str) -> bool {
    plan.findings.iter().any(|finding| finding.name == name)
}

/// Two hovers and three pots: 2 * 2.9 + 3 * 2.1 kW, 2 * 250 + 3 * 300 chicks by the cautious ratings.
#[test]
fn two_kinds_of_brooder_are_added_up() {
    let plan = brooders(HOVERS_AND_POTS);
    let get = |id| number(&plan, id);
    assert!((get("brooding.heat_installed") - 12.1).abs() < 1e-9);
    assert_eq!(get("guard.brooders_carry"), 1400.0);
    // Each fuel gives its share of the heat, and both together all of it.
    let first = get("brooding.fuel_total") * get("brooding.fuel_useful") / 3.6;
    let second = get("brooding.second_fuel_total") * get("brooding.second_fuel_useful") / 3.6;
    let all = get("brooding.heat_over_days") + get("brooding.heat_first_day");
    assert!((first + second - all).abs() < 1e-6 * all, "{first} and {second} for {all}");
    assert!((second / all - 6.3 / 12.1).abs() < 1e-9);
    // Both are bought, in cylinders and in sacks, and both are in the cost.
    assert_eq!(get("brooding.cylinders"), (get("brooding.fuel_total") / 13.0).ceil());
    assert_eq!(get("brooding.second_sacks"), (get("brooding.second_fuel_total") / 45.0).ceil());
    let bought = |what: &str| plan.purchases.iter().find(|one| one.what == what).and_then(|one| one.cost);
    assert_eq!(bought("fuel"), Some(get("brooding.fuel_cost")));
    assert_eq!(bought("second-fuel"), Some(get("brooding.second_fuel_cost")));
    assert!(has(&plan, "brooders-carry-too-few") || has(&plan, "two-kinds-of-brooder"));
}

/// The gas is warned of whichever kind burns charcoal, and no cover is let pass over it.
#[test]
fn the_second_kind_is_warned_of_as_the_first() {
    let hovers = "brooder = \"gas-hover\"\nbrooders = 5\nbrooder_kw = 2.9";
    assert!(!has(&brooders(hovers), "charcoal-gas-estimated"));
    let mixed = brooders(HOVERS_AND_POTS);
    assert!(has(&mixed, "charcoal-gas-estimated"));
    let gas = |plan: &advice::plan::Plan| number(plan, "brooding.carbon_monoxide");
    assert!(gas(&mixed) > 2.0 * gas(&brooders(hovers)));
    // Heat without a flame of the first kind does not hide the pots of the second.
    let wires = "brooder = \"other\"\nfuel = \"electricity\"\nbrooders = 2\nbrooder_kw = 2.9\nsecond_brooder = \"charcoal-pot\"\nsecond_brooders = 3\nsecond_brooder_kw = 2.1";
    let wires = brooders(wires);
    assert!(has(&wires, "charcoal-gas-estimated") && gas(&wires) > 9.0);
    assert!(number(&wires, "brooding.air_for_fire") > number(&wires, "brooding.air_to_breathe"));
    let untold = brooders(&HOVERS_AND_POTS.replace("charcoal-pot", "other"));
    assert!(has(&untold, "second-kind-not-told"));
}

/// Three of one kind are two of it and one of a second kind that is the same.
#[test]
fn a_second_kind_that_is_the_first_changes_nothing() {
    for kind in ["gas-hover", "charcoal-pot"] {
        let one = brooders(&format!("brooder = \"{kind}\"\nbrooders = 3\nbrooder_kw = 2.5"));
        let two = brooders(&format!(
            "brooder = \"{kind}\"\nbrooders = 2\nbrooder_kw = 2.5\nsecond_brooder = \"{kind}\"\nsecond_brooders = 1\nsecond_brooder_kw = 2.5"
        ));
        for id in [
            "brooding.heat",
            "brooding.heat_installed",
            "brooding.heat_over_days",
            "brooding.power_short",
            "brooding.coldest_air",
            "brooding.carbon_monoxide",
            "brooding.air_for_fire",
            "guard.rings",
            "guard.rings_without_brooder",
        ] {
            let (one, two) = (number(&one, id), number(&two, id));
            assert!((one - two).abs() < 1e-6 * one.abs().max(1.0), "{id}: {one} and {two}");
        }
        let both = number(&two, "brooding.fuel_total") + number(&two, "brooding.second_fuel_total");
        let alone = number(&one, "brooding.fuel_total");
        assert!((both - alone).abs() < 1e-6 * alone, "{both} and {alone}");
    }
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(12))]

    /// On no day too few, and on the day that needs most one fewer would be too few.
    #[test]
    fn as_many_as_the_hardest_day_needs(young in 20u32..200, old in 20u32..200, day in 8i32..40) {
        let plan = told(&format!("drinker_serves = \"0: {young}, {day}: {old}\""));
        let needed = number(&plan, "space.drinkers");
        let more = number(&plan, "space.more_drinkers");
        let hung = number(&plan, "space.change_over") as i32;
        let serves = |age: i32| f64::from(if age < day { young } else { old });
        let wanted = |age: i32| plan.outcome.on_day("batch.birds_alive", age).unwrap() * more / serves(age);
        let most = (hung..=plan.outcome.last_day().unwrap()).map(wanted).fold(0.0, f64::max);
        prop_assert!(needed >= most - 1e-9 && needed - 1.0 < most, "{needed} for {most}");
    }
}
