//! Money of a plan as a grower reads it: what is bought, what is missing, what is free, and that all sums are one.

use advice::finding::{Finding, Weight};
use advice::plan::Plan;
use present::Viewer;
use present::plan::{COST_PARTS, Shown};
use quantity::Source;

use crate::sample::{self, number};

fn named<'a>(plan: &'a Plan, name: &str) -> Option<&'a Finding> {
    plan.findings.iter().find(|finding| finding.name == name)
}

/// What a finding says, and its ways out.
fn said(plan: &Plan, name: &str) -> (String, Vec<String>) {
    let views = Shown::new(plan, &Viewer::plain()).finding_views();
    let view = views.into_iter().find(|view| view.name == name).expect(name);
    (view.text, view.ways_out)
}

/// A page in words, its lines joined.
fn page(plan: &Plan) -> String {
    let text = present::text::write(&Shown::new(plan, &Viewer::plain()).document(), &Viewer::plain(), false);
    text.split_whitespace().collect::<Vec<_>>().join(" ")
}

fn show(plan: &Plan, id: &str) -> String {
    let worked = plan.outcome.get(id).expect(id);
    let shown = present::show::figure(&worked.figure, worked.spec, &Viewer::plain());
    shown.split_whitespace().collect::<Vec<_>>().join(" ")
}

/// A plan without its futures.
fn quick(text: &str) -> Plan {
    advice::plan::of_book(sample::answers(text))
}

fn paid_for<'a>(plan: &'a Plan, is_meant: impl Fn(&str) -> bool + 'a) -> f64 {
    plan.purchases.iter().filter(|one| is_meant(one.what)).filter_map(|one| one.cost).sum()
}

/// The complete plan, with feed in bags of two sizes on the cheapest days.
fn of_two_sizes() -> String {
    sample::without_hours()
        .replace("buying = \"by-phase\"", "buying = \"cheapest\"")
        .replace("bag_kg = 50\n", "bag_kg = 50\nother_bag_kg = 25\n")
        .replace(
            "last_bag_each = 570",
            "last_bag_each = 570\nstarter_other_bag_each = 320\ngrower_other_bag_each = 310\n\
             finisher_other_bag_each = 300\nlast_other_bag_each = 298",
        )
        .replace("interest_percent = 30\n", "")
        .replace("credit_limit = 1000000\n", "")
}

/// Equipment that is too few counts in all costs, on its day in cash, and in the price below which the batch loses.
#[test]
fn equipment_to_buy_counts_in_every_sum() {
    let told = sample::complete().replace("interest_percent = 30\n", "");
    let dear = told.replace("feeder_each = 130", "feeder_each = 230");
    let (plan, dearer) = (sample::plan(&told), sample::plan(&dear));
    // The key of small feeders ends alike.
    let more = 100.0 * number(&plan, "space.feeders_short");
    let by = |id: &str| number(&dearer, id) - number(&plan, id);
    assert!(more > 0.0 && (by("money.cost_total") - more).abs() < 0.01, "{}", by("money.cost_total"));
    assert!((by("money.equipment") - more).abs() < 0.01);
    assert!((by("money.profit") + more).abs() < 0.01 && by("money.break_even_price") > 0.0);
    assert!((by("money.cash_at_end") + more).abs() < 0.01);
    assert!(by("risk.profit") < 0.0);
    let words = Viewer::plain().words().plain("figure-money-equipment");
    let text = page(&plan);
    assert!(text.contains(&words) && text.contains("serve many batches"), "{text}");
}

/// Lids of chick boxes come with the chicks and cost nothing; only the rest is short.
#[test]
fn lids_come_with_the_chicks() {
    let lids = sample::complete()
        .replace("chick_feeders = 30", "chick_feeder_kind = \"box-lid\"\nchick_feeders = 0");
    let plan = quick(&lids);
    let find = |what: &str| plan.purchases.iter().find(|one| one.what == what).copied();
    let come = find("box-lids").expect("lids are on the list");
    assert_eq!((come.day, come.quantity, come.cost), (0, Some(16.0), Some(0.0)));
    // One serves 50 chicks: 32 are wanted.
    assert_eq!(find("chick-trays").and_then(|one| one.quantity), Some(16.0));
    let enough = quick(&lids.replace("chick_feeders = 0", "chick_feeders = 40"));
    assert!(!enough.purchases.iter().any(|one| ["box-lids", "chick-trays"].contains(&one.what)));
}

#[test]
fn nipples_are_bought_as_nipples() {
    let plan = quick(&sample::complete().replace("\"bell\"", "\"nipple\""));
    let bought = plan.purchases.iter().find(|one| one.what == "nipples").expect("too few nipples");
    assert!((bought.cost.unwrap() - 210.0 * bought.quantity.unwrap()).abs() < 0.01);
    let list = Shown::new(&plan, &Viewer::plain()).shopping_list();
    let text = present::text::write(&list, &Viewer::plain(), false);
    assert!(text.contains("More nipples") && !text.contains("More large drinkers"), "{text}");
}

/// With bags of two sizes, feed costs what its lines on the list cost, and the parts of the cost are all of it.
#[test]
fn feed_costs_what_is_bought_in_two_sizes() {
    for text in [of_two_sizes(), sample::complete()] {
        let plan = quick(&text);
        let bought = paid_for(&plan, |what| what.starts_with("feed-"));
        assert!((number(&plan, "feed.cost") - bought).abs() < 0.01, "{bought}");
        let parts: f64 = COST_PARTS.iter().filter_map(|id| plan.outcome.number(id)).sum();
        let own = plan.answers.number("costs.own_labour").unwrap();
        assert!((parts + own - number(&plan, "money.cost_total")).abs() < 0.01, "{parts}");
        let kg: f64 = plan.deliveries.iter().map(|one| one.bags * one.size_kg.unwrap_or(50.0)).sum();
        let left = kg - number(&plan, "feed.total");
        assert!((number(&plan, "feed.left_over") - left).abs() < 1e-6, "{left}");
        assert!((number(&plan, "feed.cost_per_kg") - bought / kg).abs() < 0.01);
    }
    let plan = quick(&of_two_sizes());
    let of = |size: f64| -> f64 {
        plan.deliveries.iter().filter(|one| one.size_kg == Some(size)).map(|one| one.bags).sum()
    };
    assert!(of(50.0) > 0.0 && of(25.0) > 0.0);
    let text = page(&plan);
    let bags = format!("Bags bought: {} × 50", of(50.0));
    assert!(text.contains(&bags) && text.contains(&format!("{} × 25", of(25.0))), "{bags}: {text}");
    let coming = plan.tasks.iter().filter(|task| task.name == "feed-delivered");
    for task in coming {
        let [(_, advice::finding::Detail::Bags(sizes))] = task.details.as_deref().unwrap() else { panic!() };
        assert!(sizes.iter().all(|(_, size)| size.is_some()), "{sizes:?}");
    }
}

fn with_cash(start: &str) -> String {
    sample::complete().replace("at_start = 60000\ncredit_limit = 1000000\ninterest_percent = 30", start)
}

/// What may be owed is taken off what is missing, and the number of chicks offered is one that the money lasts for.
#[test]
fn what_may_be_owed_is_counted() {
    let poor = quick(&with_cash("at_start = 40000"));
    let lent = quick(&with_cash("at_start = 40000\ncredit_limit = 8000"));
    let short = number(&lent, "money.cash_short");
    assert!((number(&lent, "money.beyond_credit") - (short - 8000.0)).abs() < 0.01);
    let (text, ways) = said(&lent, "cash-short");
    assert!(text.contains("8 000") || text.contains("8\u{a0}000"), "{text}");
    assert_ne!(said(&poor, "cash-short").0, text);
    assert!(!ways.iter().any(|way| way.contains("Sell some birds")), "{ways:?}");
    let carried = |plan: &Plan| -> u32 {
        let finding = named(plan, "cash-short").unwrap();
        let found = finding.details.iter().find(|(name, _)| *name == "chicks").map(|(_, detail)| detail);
        let Some(advice::finding::Detail::Number { value, .. }) = found else { panic!("{finding:?}") };
        *value as u32
    };
    assert!(carried(&lent) > carried(&poor));
    for start in ["at_start = 40000", "at_start = 40000\ncredit_limit = 8000"] {
        let told = with_cash(start);
        let chicks = carried(&quick(&told));
        assert!((50..1600).contains(&chicks), "{chicks}");
        let fewer = quick(&told.replace("chicks = 1600", &format!("chicks = {chicks}")));
        assert!(named(&fewer, "cash-short").is_none(), "{chicks} with {start}");
    }
}

/// Birds can be sold early only where the money runs out after some are heavy enough; feed nearer to its day says what is left.
#[test]
fn ways_out_of_little_money_fit() {
    let low = number(&quick(&with_cash("at_start = 60000")), "money.cash_low_point");
    let late = quick(&with_cash(&format!("at_start = {:.0}", 60000.0 - low - 500.0)));
    assert!(number(&late, "money.first_day_short") > 21.0, "the money lasts until late here");
    assert!(named(&late, "cash-short").unwrap().ways_out.contains(&"sell-some-early"));
    let all = with_cash("at_start = 60000").replace("\"by-phase\"", "\"all-at-once\"");
    let plan = quick(&all);
    assert!(number(&plan, "money.first_day_short") < 21.0);
    let ways = &named(&plan, "cash-short").unwrap().ways_out;
    assert!(ways.contains(&"agree-with-shop") && !ways.contains(&"sell-some-early"), "{ways:?}");
    let finding = named(&plan, "cash-short").unwrap();
    let told = |wanted: &str| match finding.details.iter().find(|(name, _)| *name == wanted) {
        Some((_, advice::finding::Detail::Number { value, .. })) => *value,
        other => panic!("{wanted} is {other:?} in {finding:?}"),
    };
    let nearer = all
        .replace("\"all-at-once\"", "\"by-phase\"")
        .replace("on_hand_days_d = 15", "on_hand_days_d = 7")
        .replace("ahead_d = 6", "ahead_d = 2");
    let nearer = quick(&nearer);
    assert!((number(&nearer, "money.cash_short") - told("then")).abs() < 0.01, "{}", told("then"));
    assert_eq!(number(&nearer, "money.first_day_short"), told("then_day"));
    assert!(told("then_day") > told("day"));
}

/// Money that is missing is said before feeders that are.
#[test]
fn missing_money_comes_before_missing_feeders() {
    let plan = quick(&with_cash("at_start = 1").replace("\"by-phase\"", "\"all-at-once\""));
    let at = |name: &str| plan.findings.iter().position(|finding| finding.name == name).expect(name);
    assert!(at("cash-short") < at("chick-drinkers-short") && at("cash-short") < at("store-too-small"));
}

/// One delivery larger than the store room is not mended by later ones that come nearer: it comes in parts.
#[test]
fn a_delivery_larger_than_the_room_comes_in_parts() {
    let small = sample::complete().replace("store_m2 = 9", "store_bags = 10");
    let plan = quick(&small.replace("\"by-phase\"", "\"all-at-once\""));
    let ways = &named(&plan, "store-too-small").unwrap().ways_out;
    assert!(ways.contains(&"split-delivery") && !ways.contains(&"more-deliveries"), "{ways:?}");
    let (_, ways) = said(&plan, "store-too-small");
    let parts = (number(&plan, "feed.bags") / 10.0).ceil();
    assert!(ways.iter().any(|way| way.contains(&format!("in {parts} parts"))), "{ways:?}");
}

/// Who is paid by the bird reads first what a bird must bring.
#[test]
fn who_sells_by_the_bird_reads_of_birds_first() {
    let by_bird = sample::complete().replace("sale_per_kg = 34", "sale_per_bird = 95");
    let plan = quick(&by_bird);
    let even = number(&plan, "money.break_even_price_bird");
    let income = number(&plan, "sale.birds") * even + 900.0;
    assert!((income - number(&plan, "money.cost_total")).abs() < 20.0, "{even}");
    let lead = format!("You lose below {} a bird", show(&plan, "money.break_even_price_bird"));
    assert!(page(&plan).contains(&lead), "{lead}");
    let loss = quick(&by_bird.replace("sale_per_bird = 95", "sale_per_bird = 20"));
    let (text, ways) = said(&loss, "loss-planned");
    assert!(
        text.contains("a bird costs") && ways.iter().any(|way| way.contains("a bird")),
        "{text} {ways:?}"
    );
    let by_weight = quick(&sample::complete());
    let lead = format!("You lose below {} a kg", show(&by_weight, "money.break_even_price"));
    assert!(page(&by_weight).contains(&lead), "{lead}");
}

/// A price of 0 is worked out and said: as a problem where the batch cannot be judged without it.
#[test]
fn a_price_of_zero_is_said() {
    let told = sample::without_hours();
    for (key, weight) in [
        ("sale_per_kg", Weight::Problem),
        ("\nchick_each", Weight::Problem),
        ("starter_bag_each", Weight::Problem),
        ("grower_bag_each", Weight::Problem),
        ("finisher_bag_each", Weight::Problem),
        ("last_bag_each", Weight::Problem),
        ("litter_bag_each", Weight::Look),
        ("gas_cylinder_each", Weight::Look),
        ("sheet_each", Weight::Look),
        ("disinfectant_per_l", Weight::Look),
        ("brooder_each", Weight::Look),
    ] {
        let at = told.find(&format!("{key} = ")).expect(key);
        let line = told[at..].trim_start().lines().next().unwrap();
        let zero = format!("{} = 0", key.trim());
        let text = told.replace(&format!("\n{line}\n"), &format!("\n{zero}\n"));
        assert_ne!(text, told, "{key}");
        let plan = quick(&text);
        let finding = named(&plan, "price-is-zero").expect(key);
        let field = format!("prices.{}", key.trim());
        assert_eq!((finding.weight, finding.field), (weight, Some(field.as_str())), "{key}");
        let (said, ways) = said(&plan, "price-is-zero");
        assert!(said.contains("day") && ways.len() == 2, "{said} {ways:?}");
        assert!(key != "starter_bag_each" || said.contains("12 bags"), "{said}");
        for worked in plan.outcome.figures() {
            assert!(worked.figure.value.number().is_finite(), "{}", worked.figure.id);
        }
    }
    let given = told.replace("starter_bag_each = 612", "starter_bag_each = 0");
    let cheapest = given.replace("\"by-phase\"", "\"cheapest\"").replace("credit_limit = 1000000\n", "");
    let bought = quick(&cheapest);
    assert!(named(&bought, "no-cheapest-days").is_none() && !bought.deliveries.is_empty());
    let free = told.replace("sale_per_kg = 34", "sale_per_kg = 0");
    let plan = sample::plan(&free);
    assert_eq!(number(&plan, "money.sales"), 0.0);
    for id in ["money.break_even_weight", "money.break_even_fcr"] {
        assert!(plan.outcome.get(id).is_none(), "{id}: nothing pays at 0 a kg");
    }
    assert!(named(&quick(&told), "price-is-zero").is_none());
}

/// Feed that costs nothing at all is planned and bought all the same, in either way and either size.
#[test]
fn free_feed_is_still_bought() {
    let mut free = of_two_sizes().replace("feed_delivery_each = 190", "feed_delivery_each = 0");
    for price in ["612", "588", "575", "570", "320", "310", "300", "298"] {
        free = free.replace(&format!("bag_each = {price}\n"), "bag_each = 0\n");
    }
    for text in [free.clone(), free.replace("\"cheapest\"", "\"by-phase\"")] {
        let plan = quick(&text);
        assert_eq!(number(&plan, "feed.cost"), 0.0);
        assert!(!plan.deliveries.is_empty());
        let names: Vec<_> = plan.findings.iter().filter(|one| one.name == "price-is-zero").collect();
        assert!(names.len() >= 4 && names.iter().all(|one| one.weight == Weight::Problem));
    }
    let found = advice::buying::of_plan(&sample::answers(&free)).expect("free feed can be bought");
    found.hangs();
}

/// What the figures say of the first delivery is what the list of deliveries says of it.
#[test]
fn dates_of_the_first_delivery_are_one() {
    let base = sample::complete().replace("starter_until_d = 11\n", "starter_until_d = 21\n");
    for text in [
        base.clone(),
        base.replace("on_hand_days_d = 15", "on_hand_days_d = 5"),
        base.replace("phases = \"four\"", "phases = \"starter-finisher\""),
        base.replace("\"by-phase\"", "\"all-at-once\""),
        of_two_sizes().replace("store_m2 = 9", "store_bags = 40"),
    ] {
        let plan = quick(&text);
        let placement = plan.answers.day("batch.placement").unwrap();
        let first = plan.deliveries.iter().map(|one| one.day).min().unwrap();
        let of_first = plan.deliveries.iter().filter(|one| one.day == first);
        let until = of_first.map(|one| one.eaten_until).max().unwrap();
        assert_eq!(plan.outcome.day("feed.first_bought_eaten").unwrap(), placement.plus_days(until));
        let keeps = number(&plan, "feed.keeps") as i32;
        assert_eq!(plan.outcome.day("feed.milled_not_before").unwrap(), placement.plus_days(until - keeps));
    }
}

/// Each refusal and each missing price says what to change.
#[test]
fn refusals_say_what_to_change() {
    let broken = sample::complete().replace("[house]", "[house");
    let fault = advice::plan_file::read(&broken).expect_err("no TOML");
    let text = present::fault::file(&fault, Viewer::plain().words());
    assert!(text.contains("[house]") && text.contains("put # before the line"), "{text}");
    let falls = sample::complete().replace("chick_each = 27\n", "");
    let plan = quick(&falls);
    let (_, ways) = said(&plan, "price-missing-chick");
    assert_eq!(ways.len(), 1);
    let curve = "standard = \"own\"\nown_curve = \"age_d,body_weight_g\\n0,42\\n7,180\\n14,150\"";
    let text = sample::MANGO_RIDGE.replace("standard = \"fast\"", curve);
    let raws = advice::plan_file::read(&text).expect("a plan file");
    let checked = advice::plan::read(&raws, Source::File, true);
    let problem = checked.problems.iter().find(|one| one.key == "batch.own_curve").expect("it falls");
    let text = present::fault::with_place(problem, &Viewer::plain());
    assert!(text.contains("leave the line out") && text.contains("batch.standard"), "{text}");
}

/// Whoever reads how few batches lose also reads what that leaves out.
#[test]
fn the_futures_say_what_they_leave_out() {
    let text = page(&sample::plan(&sample::complete()));
    let words = Viewer::plain().words().plain("risk-leaves-out");
    assert!(words.contains("disease") && words.contains("theft"));
    assert!(text.contains(&words), "{text}");
}

/// On a phone the money that fails is read before small shortages, as on paper.
#[test]
fn money_that_fails_is_read_before_small_shortages() {
    let told = sample::complete()
        .replace("at_start = 60000\ncredit_limit = 1000000", "at_start = 100\ncredit_limit = 1000");
    let plan = quick(&told.replace("chick_feeders = 30", "chick_feeders = 0"));
    let document = Shown::new(&plan, &Viewer::plain()).document();
    let summary = present::summary::Summary::of(&document).in_order_of(&plan.findings);
    let place = |name| summary.findings.iter().position(|short| short.name == name).expect(name);
    assert!(place("cash-short") < place("chick-feeders-short"));
    assert_eq!(summary.findings.len(), present::summary::Summary::of(&document).findings.len());
}
