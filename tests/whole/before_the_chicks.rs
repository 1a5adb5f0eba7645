//! What a plan says before the chicks come, held to what it says elsewhere.

use advice::families;
use advice::finding::Weight;
use advice::plan::Plan;
use proptest::prelude::*;
use quantity::{DayOfAge, Fault, Source};
use reference::growth::Standard;

use crate::sample;

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
    let poor = told.replace(line, "at_start = 1");
    let unlent = sample::plan(&poor.replace("credit_limit = 1000000\n", ""));
    assert_eq!(named(&unlent, "cash-short").unwrap().weight, Weight::Problem);
    // Whoever may owe as much is not short.
    let lent = sample::plan(&poor);
    assert!(named(&lent, "cash-short").is_none());
    assert_eq!(named(&lent, "cash-within-credit").unwrap().weight, Weight::Look);
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

/// A price taken away is said to be missing: what it paid for stands on the list without a cost, at the same day and in the same
/// number, and no sum counts it.
#[test]
fn what_has_no_price_is_listed_and_in_no_sum() {
    let told = sample::complete();
    let priced = sample::plan(&told);
    let unpriced = |plan: &Plan| plan.purchases.iter().filter(|one| one.cost.is_none()).count();
    for (key, what) in [
        ("disinfectant_per_l", "disinfectant"),
        ("sheet_each", "guard"),
        ("litter_bag_each", "litter"),
        ("gas_cylinder_each", "fuel"),
        ("chick_feeder_each", "chick-trays"),
        ("chick_drinker_each", "small-drinkers"),
        ("feeder_each", "large-feeders"),
        ("drinker_each", "large-drinkers"),
        ("brooder_each", "brooders"),
    ] {
        let at = told.find(&format!("\n{key} = ")).expect(key) + 1;
        let line = told[at..].lines().next().unwrap();
        let silent = sample::plan(&told.replace(line, ""));
        let of = |plan: &Plan, what: &str| plan.purchases.iter().find(|one| one.what == what).copied();
        let (with, without) = (of(&priced, what).expect(what), of(&silent, what).expect(what));
        assert_eq!((without.day, without.quantity, without.cost), (with.day, with.quantity, None), "{what}");
        let said = named(&silent, "not-all-priced").expect(what);
        assert_eq!(said.weight, Weight::Look);
        assert_eq!(
            said.field,
            Some(format!("prices.{key}").as_str()),
            "it points at the price that is missing"
        );
        assert!(unpriced(&silent) > unpriced(&priced));
        let views = present::plan::Shown::new(&silent, &present::Viewer::plain()).finding_views();
        let told = &views.iter().find(|view| view.name == said.name).unwrap().text;
        assert!(told.contains(&unpriced(&silent).to_string()), "{told}");
        let name = present::Viewer::plain().words().plain(&format!("purchase-{what}"));
        assert!(told.contains(&name), "{told} does not name {name}");
        let lacking: f64 = priced
            .purchases
            .iter()
            .filter(|one| silent.purchases.iter().any(|other| other.what == one.what && other.cost.is_none()))
            .filter_map(|one| one.cost)
            .sum();
        let paid = |plan: &Plan| plan.purchases.iter().filter_map(|one| one.cost).sum::<f64>();
        assert!((paid(&priced) - paid(&silent) - lacking).abs() < 0.01, "{what}");
    }
}

/// Charcoal that is too weak is not mended by more charcoal first: less heat let out and heat without its gas come before, and
/// more fires last.
#[test]
fn charcoal_that_is_too_weak_is_not_made_more_first() {
    let weak = |text: String| {
        let plan = sample::plan(&text.replace("brooder_kw = 2.6", "brooder_kw = 0.8"));
        let finding = named(&plan, "brooders-too-weak").cloned().expect("0.8 kW each is too weak");
        assert_eq!(finding.weight, Weight::Problem);
        finding.ways_out
    };
    let ways = weak(sample::with_charcoal());
    assert_eq!(ways.last(), Some(&"more-fires-last"));
    let place = |way: &str| ways.iter().position(|one| *one == way);
    assert!(place("heat-without-charcoal-gas") > place("double-curtain"), "{ways:?}");
    assert!(place("double-curtain").is_some() && place("more-brooders").is_none(), "{ways:?}");
    // Beside gas brooders it is a flue that is offered; wires have no gas, so more of them may come first.
    assert!(weak(sample::complete()).contains(&"heat-with-flue"));
    let wires = weak(sample::complete().replace("fuel = \"lpg\"", "fuel = \"electricity\""));
    assert_eq!(wires.first(), Some(&"more-brooders"));
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(12))]

    /// All birds fit on the day named, and on the day after there are too many: worked out again from the curve, with none lost.
    #[test]
    fn the_last_day_that_fits_fits(chicks in 1000u32..3200, fast in any::<bool>()) {
        let standard = if fast { "fast" } else { "open-house" };
        let text = sample::MANGO_RIDGE
            .replace("chicks = 1600", &format!("chicks = {chicks}"))
            .replace("standard = \"fast\"", &format!("standard = \"{standard}\""));
        let plan = sample::plan(&text);
        let Some(finding) = named(&plan, "does-not-fit") else { return Ok(()) };
        let day = sample::number(&plan, "space.last_day_that_fits") as i32;
        let standard = if fast { Standard::Fast } else { Standard::OpenHouse };
        let curve = standard.curve().unwrap();
        let on_floor = |day: i32| {
            let kg = curve.weight(DayOfAge(day)).unwrap().in_kilograms() * f64::from(chicks);
            kg / sample::number(&plan, "space.floor_area")
        };
        let limit = sample::number(&plan, "space.limit");
        prop_assert!(on_floor(day) <= limit + 1e-9 && on_floor(day + 1) > limit, "{} on day {}", chicks, day);
        let offers_the_day = finding.ways_out.contains(&"sell-all-earlier");
        prop_assert_eq!(offers_the_day, day >= 21, "nobody buys the very young");
        prop_assert!(finding.ways_out.contains(&"fewer-chicks"));
    }
}

/// Where birds leave over several days, the fullest of them decides: verdict, finding and the number to order all go by the floor
/// day by day, and not by the age of sale.
#[test]
fn a_sale_in_parts_is_judged_on_its_fullest_day() {
    let sold = |chicks: u32, days: &str| {
        let text = sample::MANGO_RIDGE
            .replace("chicks = 1600", &format!("chicks = {chicks}"))
            .replace("sale_age_d = 42", "sale_age_d = 30\nexpected_losses_percent = 4");
        sample::plan(&format!("{text}[sale]\ndays = \"{days}\"\n"))
    };
    for (chicks, days) in
        [(1600, "46: rest"), (1500, "36: 300, 46: rest"), (2400, "33: 700, 40: 300, 41: rest")]
    {
        let plan = sold(chicks, days);
        let fit = advice::plan::Fit::of(&plan.answers, &plan.outcome).unwrap();
        let limit = sample::number(&plan, "space.limit");
        let fullest = |plan: &Plan| {
            let days = 0..=plan.outcome.last_day().unwrap();
            days.map(|day| plan.outcome.on_day("space.density_by_day", day).unwrap()).fold(0.0, f64::max)
        };
        assert!(!fit.holds() && fullest(&plan) > limit, "{days}");
        assert!(named(&plan, "over-limit-on-day").is_some() && named(&plan, "does-not-fit").is_none());
        let order = fit.chicks_to_order as u32;
        assert!(order < chicks);
        assert!(
            fullest(&sold(order, days)) <= limit && fullest(&sold(order + 1, days)) > limit,
            "{days}: {order}"
        );
        assert_eq!(named(&plan, "sale-age-beside-its-days").unwrap().weight, Weight::Look);
    }
    // By the age of sale alone these would not fit; leaving in time they do.
    let plan = sold(1450, "31: 500, 36: 500, 42: rest");
    assert!(advice::plan::Fit::of(&plan.answers, &plan.outcome).unwrap().holds());
    assert!(named(&plan, "over-limit-on-day").is_none() && named(&plan, "does-not-fit").is_none());
}

/// Two houses of one name cannot be told apart: the second is named with its row and line, and the first as what it is like.
#[test]
fn houses_that_share_a_name_are_refused() {
    let rows = |first: &str, second: &str| {
        sample::MANGO_RIDGE.replace("[house]\n", &format!("[[house]]\nname = \"{first}\"\n")).replace(
            "[batch]",
            &format!("[[house]]\nname = \"{second}\"\nlength_m = 12\nwidth_m = 7\neave_height_m = 2.2\nridge_height_m = 3\nhalf_wall_m = 0.6\n[batch]"),
        )
    };
    let read = |text: &str| {
        let raws = advice::plan_file::read(text).expect("a plan file");
        advice::plan::read(&raws, Source::File, true)
    };
    let text = rows("Upper", "Upper");
    let checked = read(&text);
    let [problem] = checked.problems.as_slice() else { panic!("{:?}", checked.problems) };
    let line = text[..text.rfind("name = \"Upper\"").unwrap()].matches('\n').count() + 1;
    assert_eq!((problem.key.as_str(), problem.line), ("house[2].name", Some(line)));
    assert_eq!(problem.fault, Fault::SameName { other: "house[1].name".to_owned() });
    let said = present::fault::with_place(problem, &present::Viewer::plain());
    assert!(
        said.contains("house[2].name") && said.contains("house[1].name") && said.contains("Upper"),
        "{said}"
    );
    // Names of their own are no fault, and neither is a house without one.
    assert!(read(&rows("Upper", "Lower")).problems.is_empty());
    assert!(read(&rows("Upper", "Lower").replace("name = \"Lower\"\n", "")).problems.is_empty());
}

/// Whatever a fault names is a key that can be typed: each stands in the list of fields, or is the row of one.
#[test]
fn faults_name_keys_that_can_be_typed() {
    for (from, to) in [
        ("chicks = 1600", "chicks = -5"),
        ("standard = \"fast\"", "standard = \"quick\""),
        ("limit_kg_m2 = 20", "limit_kg_m2 = \"\""),
        ("overlap_m = 0.10", "overlap_m = 2.5"),
        ("ratio = \"1:400\"", "ratio = \"1:zero\""),
        ("surfaces = [\"floor\", \"walls\", \"ceiling\"]", "surfaces = [\"floor\", \"lake\"]"),
        ("bag_kg = 50", "bag_kg = 0"),
        ("eave_height_m = 2.4", "eave_height_m = 4.4"),
    ] {
        let text = sample::MANGO_RIDGE.replacen(from, to, 1);
        assert_ne!(text, sample::MANGO_RIDGE, "{from}");
        let raws = advice::plan_file::read(&text).expect("a plan file");
        let checked = advice::plan::read(&raws, Source::File, true);
        assert!(!checked.problems.is_empty(), "{to}");
        for problem in checked.problems {
            let key = families::field(&problem.key).map(|field| field.key);
            assert_eq!(key, Some(problem.key.as_str()), "{to}");
            let said = present::fault::with_place(&problem, &present::Viewer::plain());
            assert!(said.contains(&problem.key) && said.contains("line "), "{said}");
        }
    }
}
