//! What to buy when, by a plan and by the book of a running batch.

use advice::buying::{self, CannotBuy, Cheapest, Hanging};
use advice::store_room::Phase;
use advice::walk::Walk;
use present::Viewer;
use quantity::Answers;

use crate::{running, sample};

fn bags(found: &Cheapest, phase: Phase) -> f64 {
    let of_phase = found.purchases.iter().filter(|one| one.delivery.phase == phase);
    of_phase.map(|one| one.delivery.bags).sum()
}

/// What is bought and what is in hand is what is still eaten, up to a bag of each feed, and nothing comes before it can.
#[test]
fn a_running_batch_buys_what_it_lacks() {
    let (walk, _) = running::walk_on(&running::state(), running::placed().plus_days(20));
    let found = buying::of_book(&walk).unwrap();
    let today = walk.diary.age_today().unwrap();
    assert!(found.purchases.iter().all(|one| one.delivery.day >= today + found.lead_d));
    let eaten_of = |phase: Phase| {
        let all = walk.plan.answers.numbers("stock.ahead_kg");
        let last = walk.plan.outcome.number("sale.last_age").unwrap() as i32;
        let first = last - all.len() as i32 + 1;
        let until = |phase: Phase| walk.plan.outcome.number(phase.last_day_figure()).unwrap() as i32;
        let from =
            Phase::ALL.iter().take_while(|one| **one < phase).map(|one| until(*one) + 1).max().unwrap_or(0);
        let days = (first..).zip(all).filter(|(day, _)| (from..=until(phase)).contains(day));
        days.map(|(_, kg)| *kg).sum::<f64>()
    };
    let mut lacked = 0;
    for phase in Phase::ALL {
        let left = walk.plan.outcome.number(&format!("store.{}_left", phase.name()));
        let (needs, in_hand) = (eaten_of(phase), left.unwrap_or_default().max(0.0));
        let bag = walk.plan.answers.number(&format!("stock.{}_bag_kg", phase.name())).unwrap_or(50.0);
        let bought = bags(&found, phase) * bag;
        assert!(bought + in_hand >= needs - 1e-6, "{phase:?}: {bought} + {in_hand} for {needs}");
        assert!(
            bought == 0.0 || bought + in_hand < needs + bag,
            "{phase:?}: {bought} + {in_hand} for {needs}"
        );
        lacked += usize::from(bought > 0.0);
    }
    assert!(lacked > 0);
}

/// The page of the store room says it, with a drawing; a viewer who sees no money sees none.
#[test]
fn the_store_page_says_what_to_buy() {
    let (walk, _) = running::walk_on(&running::state(), running::placed().plus_days(20));
    let page = |viewer: &Viewer| {
        let document = present::batch::store(&walk, viewer);
        let text = present::text::write(&document, viewer, false);
        text.split_whitespace().collect::<Vec<_>>().join(" ")
    };
    let viewer = Viewer::plain();
    let text = page(&viewer);
    for key in ["buying-label", "buying-then-amounts", "column-good-until", "column-costs"] {
        assert!(text.contains(&viewer.words().plain(key)), "{key}: {text}");
    }
    let blind = page(&Viewer { money_shown: false, ..Viewer::plain() });
    assert!(!blind.contains("nine times in ten"), "{blind}");
}

/// Money never shows to whom it is hidden; dates and sums agree with the figures.
#[test]
fn the_json_adds_up() {
    let answers = sample::answers(&sample::complete());
    let found = buying::of_plan(&answers);
    let viewer = Viewer::plain();
    let view = present::buying::view(&found, answers.day("batch.placement"), &viewer);
    let json = serde_json::to_value(&view).unwrap();
    let number = |at: &str| json.pointer(at).unwrap().as_f64().unwrap();
    let bags: f64 =
        json["purchases"].as_array().unwrap().iter().map(|one| one["cost"].as_f64().unwrap()).sum();
    let all = bags + number("/fees") + number("/interest");
    assert!((all - number("/figures/purchases.cost/value")).abs() < 0.05, "{json}");
    assert!(number("/figures/purchases.lower_bound/value") <= number("/figures/purchases.cost/value"));
    assert!(json["purchases"][0]["date"].is_string() && json["purchases"][0]["phase"].is_string());
    let blind = Viewer { money_shown: false, ..viewer };
    let blind = present::buying::view(&found, None, &blind);
    let blind = serde_json::to_value(&blind).unwrap();
    assert_eq!(blind["figures"], serde_json::json!({}));
    assert!(blind["purchases"][0].get("cost").is_none() && blind.get("fees").is_none(), "{blind}");
}

/// Feed that was given but never came is named, and none of it counts as in hand.
#[test]
fn feed_that_never_came_is_named() {
    let mut pen = running::Pen::default();
    pen.adopt_and_place(running::RUNNING);
    let day = running::placed().plus_days(1);
    let given = [("phase", "starter".to_owned()), ("feed_kg", "30".to_owned())];
    pen.note(running::RUNNING, day, "feed-given", &given);
    let state = pen.fold();
    let walk = Walk::read(&state, running::RUNNING, day);
    let found = buying::of_book(&walk).unwrap();
    assert_eq!(found.never_bought, [Phase::Starter]);
    assert!(found.runs_out.contains(&Phase::Starter));
    let view = present::buying::view(&Ok(found), walk.diary.placement, &Viewer::plain());
    assert!(view.findings.iter().any(|doubt| doubt.name == "never-bought" && doubt.phase == Some("starter")));
}

/// Whatever the plan, the search finds a way that is no dearer than the plan's own, or says why there is none.
#[test]
fn nothing_is_dearer_than_the_calendar() {
    for (fee, rise) in [(0, "0"), (300, "2"), (900, "-3")] {
        let text = sample::complete()
            .replace("feed_delivery_each = 190", &format!("feed_delivery_each = {fee}"))
            .replace("feed_rise_percent = 1.5", &format!("feed_rise_percent = {rise}"))
            .replace("interest_percent = 30\n", "")
            .replace("store_m2 = 9\n", "store_m2 = 40\n");
        let plan = sample::plan(&text);
        let of = |id: &str| plan.outcome.number(id).unwrap();
        let own = of("feed.cost");
        assert!(of("purchases.cost") <= own + 0.01, "{} and {own}", of("purchases.cost"));
        assert!((of("purchases.cost") - of("purchases.lower_bound")).abs() < 0.01);
    }
}

#[test]
fn what_is_not_known_is_named() {
    assert_eq!(
        buying::of_plan(&Answers::default()).unwrap_err(),
        CannotBuy::NotKnown { key: "feed.on_hand_before_d" }
    );
    let answers = sample::answers(&sample::complete());
    let found = buying::of_plan(&answers).unwrap();
    assert!(
        found.hangs().iter().any(|hang| hang.what == Hanging::PriceRise || hang.what == Hanging::Keeping)
    );
}

/// What cannot be paid is said with the amount and ways out; to whom amounts are hidden, without the amount.
#[test]
fn too_small_a_credit_is_told_with_ways_out() {
    let text = sample::complete()
        .replace("at_start = 60000\ncredit_limit = 1000000", "at_start = 500\ncredit_limit = 100");
    let found = buying::of_plan(&sample::answers(&text));
    let Err(CannotBuy::CreditTooSmall { needed, limit, .. }) = found else { panic!("{found:?}") };
    assert!(limit == 100.0 && needed > 100.0);
    let said = |viewer: &Viewer| {
        let view = present::buying::view(&found, None, viewer);
        assert_eq!(view.findings[0].name, "credit-too-small");
        view.findings[0].text.clone()
    };
    let viewer = Viewer::plain();
    let amount = present::show::money((needed - limit).ceil(), &viewer);
    assert!(said(&viewer).contains(&format!("{amount} is missing")), "{}", said(&viewer));
    assert!(said(&viewer).contains("Ways out: put that much money aside before"));
    let blind = said(&Viewer { money_shown: false, ..Viewer::plain() });
    assert!(!blind.contains(['1', '5']) && blind.contains("Ways out"), "{blind}");
}

/// In a running batch the purse is what the book leaves: what was paid counts against the limit.
#[test]
fn the_book_tells_what_can_still_be_paid() {
    let found = |limit: &str, start: &str| {
        let mut pen = running::Pen::default();
        let text = sample::complete().replace(
            "at_start = 60000\ncredit_limit = 1000000",
            &format!("at_start = {start}\ncredit_limit = {limit}"),
        );
        pen.adopt(running::RUNNING, &text);
        pen.note(running::RUNNING, running::placed(), "chicks-placed", &[("counted", "1600".into())]);
        let paid = [("what", "other".to_owned()), ("cost", "4000".to_owned())];
        pen.note(running::RUNNING, running::placed(), "cost", &paid);
        let bags = [("phase", "starter".to_owned()), ("bags", "16".into()), ("bag_kg", "50".into())];
        pen.note(running::RUNNING, running::placed(), "feed-delivered", &bags);
        let day = running::placed().plus_days(1);
        buying::of_book(&Walk::read(&pen.fold(), running::RUNNING, day))
    };
    let Err(CannotBuy::CreditTooSmall { needed, .. }) = found("0", "0") else { panic!() };
    let richer = format!("{:.2}", needed + 1.0);
    assert!(found("0", &richer).is_ok());
    assert!(found(&richer, "0").is_ok());
    assert!(matches!(found("0", "1000"), Err(CannotBuy::CreditTooSmall { .. })));
}

/// Where bringing feed costs nothing and its price stands, all ways cost the same, and any change of prices decides: said so, and
/// not as a change of nought.
#[test]
fn a_tie_is_said_as_one() {
    let text = sample::complete()
        .replace("feed_delivery_each = 190", "feed_delivery_each = 0")
        .replace("feed_rise_percent = 1.5\n", "")
        .replace("feed_weeks_percent = [100, 100, 102, 103]\n", "")
        .replace("interest_percent = 30\n", "");
    let found = buying::of_plan(&sample::answers(&text));
    let rises: Vec<bool> = found
        .iter()
        .flat_map(Cheapest::hangs)
        .filter(|hang| hang.what == Hanging::PriceRise)
        .map(|hang| hang.rises)
        .collect();
    assert!(rises.contains(&true) && rises.contains(&false), "{rises:?}");
    let viewer = Viewer::plain();
    let text = present::text::write(
        &present::buying::document(&found, None, String::new(), &viewer),
        &viewer,
        false,
    );
    let text = text.split_whitespace().collect::<Vec<_>>().join(" ");
    for said in ["As soon as feed prices rise", "As soon as feed prices fall", "costs the same."] {
        assert!(text.contains(said), "{said}: {text}");
    }
    assert!(!text.contains("by 0.0"), "{text}");
}
