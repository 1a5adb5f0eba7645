use super::*;
use crate::plan;
use quantity::{Raw, Source};

/// A plan of 400 chicks that buys feed; keys told replace those of the plan.
fn answers(told: &[(&str, &str)]) -> Answers {
    let base = [
        ("house.length_m", "10"),
        ("house.width_m", "5"),
        ("batch.chicks", "400"),
        ("batch.placement", "2027-03-01"),
        ("batch.sale_age_d", "42"),
        ("batch.expected_losses_percent", "4"),
        ("batch.standard", "fast"),
        ("feed.bag_kg", "50"),
        ("prices.starter_bag_each", "600"),
        ("prices.grower_bag_each", "580"),
        ("prices.finisher_bag_each", "560"),
        ("prices.chick_each", "20"),
        ("prices.sale_per_kg", "30"),
    ];
    let kept = base.iter().filter(|(key, _)| !told.iter().any(|(other, _)| key == other));
    let raw = |(key, text): &(&str, &str)| Raw {
        key: (*key).to_owned(),
        text: vec![(*text).to_owned()],
        line: None,
    };
    let raws: Vec<Raw> = kept.chain(told).filter(|(_, text)| !text.is_empty()).map(raw).collect();
    let checked = plan::read(&raws, Source::File, false);
    let wrong = checked.problems.iter().filter(|problem| told.iter().any(|(key, _)| *key == problem.key));
    assert_eq!(wrong.count(), 0, "{:?}", checked.problems);
    checked.answers
}

fn found(told: &[(&str, &str)]) -> Cheapest {
    of_plan(&answers(told)).unwrap()
}

#[test]
fn everything_eaten_is_bought_in_time_and_fresh() {
    let told = [("costs.feed_delivery_each", "150"), ("prices.feed_rise_percent", "3")];
    let cheapest = found(&told);
    let plan = plan::work_out(answers(&told));
    let bought: f64 = cheapest.purchases.iter().map(|one| one.delivery.bags).sum();
    assert_eq!(Some(bought), plan.outcome.number("feed.bags"));
    for one in &cheapest.purchases {
        let delivery = one.delivery;
        assert!(delivery.day <= delivery.eaten_from && delivery.eaten_until <= one.good_until, "{one:?}");
    }
    let early: f64 = (0..=14).filter_map(|day| plan.outcome.on_day("feed.by_day", day)).sum();
    let first = cheapest.purchases.iter().filter(|one| one.delivery.day == -14);
    assert!(50.0 * first.map(|one| one.delivery.bags).sum::<f64>() >= early);
    assert!(cheapest.is_proven());
    let of = |id: &str| plan.outcome.number(id).unwrap();
    assert!((of("purchases.cost") - cheapest.cost.total()).abs() < 0.01);
    assert!((of("purchases.lower_bound") - cheapest.lower_bound).abs() < 0.01);
}

/// A plan that buys on the cheapest days pays what the search found, and lists what it bought.
#[test]
fn the_plan_pays_what_was_found() {
    let told =
        [("feed.buying", "cheapest"), ("costs.feed_delivery_each", "150"), ("prices.feed_rise_percent", "2")];
    let plan = plan::work_out(answers(&told));
    let cheapest = of_plan(&plan.answers).unwrap();
    assert_eq!(plan.deliveries, cheapest.deliveries());
    let of = |id: &str| plan.outcome.number(id).unwrap();
    let paid = of("feed.cost");
    assert!((paid - cheapest.cost.bags - cheapest.cost.fees).abs() < 0.05, "{paid} {:?}", cheapest.cost);
    let by_phase = plan::work_out(answers(&told[1..]));
    let dear = by_phase.outcome.number("feed.cost").unwrap();
    assert!(dear > paid, "{dear} is not dearer than {paid}");
}

/// Rising prices are met by buying early, falling ones and dear loans by buying late; a dear lorry by fewer trips.
#[test]
fn buying_follows_prices_loans_and_lorries() {
    let mean_day = |told: &[(&str, &str)]| {
        let cheapest = found(told);
        let all: f64 = cheapest.purchases.iter().map(|one| one.delivery.bags).sum();
        let weighed: f64 =
            cheapest.purchases.iter().map(|one| one.delivery.bags * f64::from(one.delivery.day)).sum();
        (weighed / all, cheapest.days().len())
    };
    let rising = mean_day(&[("prices.feed_rise_percent", "9")]);
    let falling = mean_day(&[("prices.feed_rise_percent", "-9")]);
    let borrowed = mean_day(&[("cash.interest_percent", "60")]);
    assert!(rising.0 + 5.0 < falling.0, "{rising:?} {falling:?}");
    assert!(rising.0 < borrowed.0, "{rising:?} {borrowed:?}");
    let dear = mean_day(&[("prices.feed_rise_percent", "-9"), ("costs.feed_delivery_each", "2000")]);
    assert!(dear.1 < falling.1, "{dear:?} {falling:?}");
}

#[test]
fn the_answer_says_what_it_hangs_on() {
    let told = [("costs.feed_delivery_each", "150"), ("cash.interest_percent", "25")];
    let cheapest = found(&told);
    let rise =
        cheapest.hangs().into_iter().find(|hang| hang.what == Hanging::PriceRise && hang.at > 0.0).unwrap();
    let days = |rise: f64| {
        let rise = rise.to_string();
        found(&[told[0], told[1], ("prices.feed_rise_percent", &rise)]).deliveries()
    };
    assert_eq!(days(0.98 * rise.at), cheapest.deliveries());
    assert_ne!(days(1.02 * rise.at), cheapest.deliveries());
    let band = cheapest.band.unwrap();
    assert!(band.low < cheapest.cost.total() && cheapest.cost.total() < band.high);
}

#[test]
fn what_cannot_be_bought_says_why() {
    let fault = |told: &[(&str, &str)]| of_plan(&answers(told)).unwrap_err();
    assert!(matches!(fault(&[("feed.store_bags", "3")]), CannotBuy::RoomTooSmall { room: 3, .. }));
    let keeps = [("feed.label_keeps_d", "10")];
    assert!(matches!(fault(&keeps), CannotBuy::CannotKeep { phase: Phase::Starter, .. }));
    let unpriced = of_plan(&answers(&[("prices.finisher_bag_each", "")]));
    assert_eq!(unpriced, Err(CannotBuy::NotKnown { key: "prices.finisher_bag_each" }));
    // The plan goes on with feed by the calendar, and says so.
    let plan = plan::work_out(answers(&[("feed.store_bags", "3"), ("feed.buying", "cheapest")]));
    assert!(!plan.deliveries.is_empty());
    assert!(plan.findings.iter().any(|finding| finding.name == "no-cheapest-days"));
}

#[test]
fn a_price_that_falls_to_nothing_is_refused() {
    let text = vec!["-90".to_owned()];
    let raws = [("batch.sale_age_d", "42"), ("feed.on_hand_before_d", "14")].map(|(key, text)| Raw {
        key: key.to_owned(),
        text: vec![text.to_owned()],
        line: None,
    });
    let rise = Raw { key: "prices.feed_rise_percent".to_owned(), text, line: Some(7) };
    let checked = plan::read(&[raws[0].clone(), raws[1].clone(), rise], Source::File, false);
    let problem = checked.problems.iter().find(|problem| problem.key == "prices.feed_rise_percent").unwrap();
    let quantity::Fault::Against { rule: "feed-price-below-zero", low, other_value, .. } = problem.fault
    else {
        panic!("{problem:?}")
    };
    assert!((low + 100.0 * 30.0 / 56.0).abs() < 1e-9 && (19.0..=21.0).contains(&other_value), "{problem:?}");
}

/// Four amounts on one day stray together; half way there with half the variance.
#[test]
fn what_is_paid_later_strays_more() {
    let spread = |paid: &[(f64, f64)]| model::buying::spread(paid);
    assert_eq!(spread(&[(0.0, 50.0)]), 0.0);
    assert!((spread(&[(1.0, 30.0), (1.0, 10.0)]) - 40.0).abs() < 1e-12);
    assert!(
        (spread(&[(0.5, 10.0), (1.0, 10.0)]) - (100.0f64 * (0.5 + 0.5 + 0.5 + 1.0)).sqrt()).abs() < 1e-12
    );
}

/// A limit of credit moves days and costs money, and is kept; where it is too small, what is said to be needed is enough and a little
/// less is not.
#[test]
fn a_limit_of_credit_is_kept_or_said_to_be_too_small() {
    let base = [
        ("prices.feed_rise_percent", "6"),
        ("costs.feed_delivery_each", "150"),
        ("cash.at_start", "15000"),
        ("cash.interest_percent", "20"),
        ("sale.first_age_d", "30"),
        ("sale.last_age_d", "50"),
    ];
    let with = |limit: f64| {
        let limit = limit.to_string();
        of_plan(&answers(&[&base[..], &[("cash.credit_limit", &limit)]].concat()))
    };
    let free = found(&base);
    let owed = |cheapest: &Cheapest| {
        let buying = cheapest.wanted.model(&cheapest.answers);
        let money = buying.credit.unwrap().money;
        let spent = |day: i32| -> f64 {
            let fees = cheapest.days().iter().filter(|one| **one <= day).count() as f64 * 150.0;
            let bags = cheapest.purchases.iter().filter(|one| one.delivery.day <= day);
            fees + bags.map(|one| one.cost).sum::<f64>()
        };
        let evenings = (cheapest.wanted.first..).zip(money).map(|(day, money)| spent(day) - money);
        evenings.fold(f64::NEG_INFINITY, f64::max)
    };
    let most = owed(&free);
    assert!(most > 1000.0, "{most}");
    assert_eq!(with(most + 1.0).unwrap().deliveries(), free.deliveries());
    let CannotBuy::CreditTooSmall { needed, limit, .. } = with(0.0).unwrap_err() else { panic!() };
    assert!(limit == 0.0 && needed > 0.0 && needed < most, "{needed} {most}");
    let least = with(needed + 0.01).unwrap();
    assert!(owed(&least) <= needed + 0.1, "{} {needed}", owed(&least));
    assert!(least.cost.total() > free.cost.total() && least.is_proven());
    assert!((least.without_limit.unwrap() - free.cost.total()).abs() < 1e-6);
    assert!(matches!(with(needed - 1.0), Err(CannotBuy::CreditTooSmall { .. })));
    let middle = with(f64::midpoint(needed, most)).unwrap();
    assert!(middle.cost.total() <= least.cost.total() && middle.cost.total() >= free.cost.total());
    // In the plan the way within the limit is what is paid.
    let told = [("feed.buying", "cheapest"), ("cash.credit_limit", "1")];
    let plan = plan::work_out(answers(&[&base[..], &told].concat()));
    assert!(plan.findings.iter().any(|finding| finding.name == "no-cheapest-days"));
}

/// What comes of a feed, kg, by the size of its bags.
fn kg_of(cheapest: &Cheapest, phase: Phase, size: f64) -> f64 {
    let of = |one: &&Purchase| one.delivery.phase == phase && one.delivery.size_kg == Some(size);
    cheapest.purchases.iter().filter(of).map(|one| one.delivery.bags * size).sum()
}

/// Bags of half the size that cost a little more than half fill up what is no whole bag, and nothing else.
#[test]
fn small_bags_fill_up_what_is_no_whole_bag() {
    let small = [
        ("feed.other_bag_kg", "25"),
        ("prices.starter_other_bag_each", "320"),
        ("prices.grower_other_bag_each", "310"),
        ("prices.finisher_other_bag_each", "300"),
    ];
    let told = [("costs.feed_delivery_each", "150"), ("prices.feed_rise_percent", "3")];
    let plan = plan::work_out(answers(&told));
    let (with, without) = (found(&[&told[..], &small].concat()), found(&told));
    assert!(with.is_proven() && without.is_proven());
    for phase in [Phase::Starter, Phase::Grower, Phase::Finisher] {
        let eaten = plan.outcome.number(&format!("feed.{}", phase.name())).unwrap();
        let (large, small) = (kg_of(&with, phase, 50.0), kg_of(&with, phase, 25.0));
        assert!(
            large + small >= eaten - 1e-6 && large + small < eaten + 25.0,
            "{phase:?}: {large} {small} {eaten}"
        );
        assert!(small <= 25.0 * with.days().len() as f64);
    }
    assert!(with.cost.total() < without.cost.total(), "{:?} {:?}", with.cost, without.cost);
    for one in &with.purchases {
        let delivery = one.delivery;
        assert!(delivery.day <= delivery.eaten_from && delivery.eaten_until <= one.good_until, "{one:?}");
    }
}

/// The bag that holds most for its money is bought, whichever it is; a feed without a price of the other bag comes in its own.
#[test]
fn the_cheaper_bag_is_bought() {
    let told = [("feed.other_bag_kg", "25"), ("prices.starter_other_bag_each", "200")];
    let cheapest = found(&told);
    assert_eq!(kg_of(&cheapest, Phase::Starter, 50.0), 0.0);
    assert_eq!(kg_of(&cheapest, Phase::Grower, 25.0), 0.0);
    assert!(kg_of(&cheapest, Phase::Grower, 50.0) > 0.0);
}

/// A plan that buys on the cheapest days lists bags of both sizes and pays for them what was found; the store room holds as much
/// as it did.
#[test]
fn a_plan_buys_bags_of_both_sizes() {
    let told = [
        ("feed.buying", "cheapest"),
        ("feed.store_bags", "40"),
        ("costs.feed_delivery_each", "150"),
        ("feed.other_bag_kg", "20"),
        ("prices.starter_other_bag_each", "250"),
        ("prices.finisher_other_bag_each", "230"),
    ];
    let plan = plan::work_out(answers(&told));
    let cheapest = of_plan(&plan.answers).unwrap();
    assert_eq!(plan.deliveries, cheapest.deliveries());
    let sizes = |size: f64| plan.deliveries.iter().any(|one| one.size_kg == Some(size));
    assert!(sizes(20.0) && sizes(50.0), "{:?}", plan.deliveries);
    let of = |id: &str| plan.outcome.number(id).unwrap();
    let paid = of("feed.cost");
    assert!((paid - cheapest.cost.bags - cheapest.cost.fees).abs() < 0.05, "{paid} {:?}", cheapest.cost);
    assert!(of("feed.store_peak") <= 41.0, "{}", of("feed.store_peak"));
}

/// Weights that have nothing in common are refused by name, and half an offer is said.
#[test]
fn half_an_offer_is_said() {
    let apart =
        [("feed.bag_kg", "22.7"), ("feed.other_bag_kg", "50"), ("prices.starter_other_bag_each", "1200")];
    assert_eq!(of_plan(&answers(&apart)), Err(CannotBuy::SizesApart { kg: 22.7, other_kg: 50.0 }));
    let said = |told: &[(&str, &str)]| {
        let plan = plan::work_out(answers(told));
        plan.findings.iter().any(|finding| finding.name == "other-bag-half-told")
    };
    assert!(said(&[("feed.other_bag_kg", "25")]) && said(&[("prices.grower_other_bag_each", "300")]));
    assert!(said(&[("feed.other_bag_kg", "50"), ("prices.grower_other_bag_each", "300")]));
    assert!(!said(&[("feed.other_bag_kg", "25"), ("prices.grower_other_bag_each", "300")]) && !said(&[]));
}
