//! When to sell: figures against the futures they are counted from, waits, limits, orders, and what may go wrong.

use advice::families::selling::{PROFIT, SIMULATION};
use advice::orders::{Orders, Short};
use advice::procedure::By;
use advice::sale::Sale;
use present::{Viewer, sale, text};
use quantity::CivilDay;

use crate::running::{self, Pen, RUNNING};

/// A day of age, a kind, and what is written.
type Written<'a> = (i32, &'a str, &'a [(&'a str, &'a str)]);

fn with(notes: &[Written]) -> Sale {
    let mut pen = running::pen();
    for (age, kind, typed) in notes {
        let typed: Vec<(&str, String)> =
            typed.iter().map(|(key, value)| (*key, (*value).to_owned())).collect();
        pen.note(RUNNING, day(*age), kind, &typed);
    }
    Sale::read(&pen.fold(), RUNNING, running::today())
}

fn day(age: i32) -> CivilDay {
    running::placed().plus_days(age)
}

fn number(sale: &Sale, id: &str) -> Option<f64> {
    sale.walk.plan.outcome.number(id)
}

fn said(sale: &Sale) -> String {
    let page = sale::document(sale, &Viewer::plain());
    text::write(&page, &Viewer::plain(), false).split_whitespace().collect::<Vec<_>>().join(" ")
}

/// Whoever has the profits of the days gets our figures.
#[test]
fn figures_are_counted_from_the_profits_of_the_days() {
    let sale = with(&[]);
    let selling = sale.selling().unwrap();
    let mean = |day: i32| {
        let profits = selling.sales.profits(day).unwrap();
        profits.iter().sum::<f64>() / profits.len() as f64
    };
    let days: Vec<i32> = selling.sales.days.iter().map(|day| day.day).collect();
    let allowed: Vec<i32> = days.iter().copied().filter(|day| selling.may_be_chosen(*day)).collect();
    let best = |of: &dyn Fn(i32) -> f64| {
        let greatest = allowed.iter().map(|day| of(*day)).fold(f64::MIN, f64::max);
        *allowed.iter().find(|day| of(**day) == greatest).unwrap()
    };
    let batch = best(&mean);
    assert_eq!(number(&sale, "sale.best_day_batch"), Some(f64::from(batch)));
    let empty = number(&sale, "house.empty_days").unwrap();
    let house = best(&|day| mean(day) / (f64::from(day) + empty));
    assert_eq!(number(&sale, "sale.best_day_house"), Some(f64::from(house)));
    // Money is rounded to the cent.
    assert!((number(&sale, "sale.profit_best").unwrap() - mean(batch)).abs() <= 0.005);
    let mut profits = selling.sales.profits(batch).unwrap().to_vec();
    profits.sort_by(f64::total_cmp);
    let losing = profits.iter().filter(|profit| **profit < 0.0).count() as f64 / profits.len() as f64;
    assert_eq!(number(&sale, "risk.loss_probability"), Some(losing));
    let worst = &profits[..profits.len() / 10];
    let shortfall = worst.iter().sum::<f64>() / worst.len() as f64;
    assert!((number(&sale, "risk.expected_shortfall").unwrap() - shortfall).abs() <= 0.005);
    let series = sale.walk.plan.series(PROFIT).unwrap();
    assert_eq!(series.index.len(), days.len());
}

#[test]
fn one_seed_gives_the_same_again_and_futures_are_drawn_once() {
    let (one, again) = (with(&[]), with(&[]));
    for spec in SIMULATION.figures {
        let (one, again) = (one.walk.plan.outcome.get(spec.id), again.walk.plan.outcome.get(spec.id));
        assert_eq!(one.map(|worked| worked.figure), again.map(|worked| worked.figure), "{}", spec.id);
        let By::Procedure(run) = &one.unwrap_or_else(|| panic!("{}", spec.id)).by else { panic!() };
        assert_eq!((run.seed, run.count), (Some(1), 2_000));
    }
    let drawn = &one.walk.plan.outcome.drawn().futures().unwrap().1;
    assert_eq!(drawn.len(), 2_000);
    assert_eq!(one.selling().unwrap().sales.profits(40).unwrap().len(), drawn.len());
}

/// The closed condition of Faustmann: no allowed day gives the house more a day, and another day brings less than it is worth.
#[test]
fn the_house_is_worth_no_more_on_any_other_day() {
    let sale = with(&[]);
    let selling = sale.selling().unwrap();
    let empty = selling.terms.empty_days;
    let best = selling.best_for_house().unwrap();
    let rate = best.a_house_day(empty).unwrap();
    for day in selling.sales.days.iter().filter(|day| selling.may_be_chosen(day.day)) {
        assert!(day.a_house_day(empty).unwrap() <= rate, "{}", day.day);
    }
}

/// A medicine of day 27 with 10 days to wait: whole days up to the 37th are blocked, and the page says until when and why.
#[test]
fn a_wait_blocks_its_days_and_says_when_they_are_clear() {
    let given: Written =
        (27, "medicine-given", &[("medicine", "powder"), ("hour_h", "18"), ("withdrawal_d", "10")]);
    let sale = with(&[given]);
    let selling = sale.selling().unwrap();
    assert!((29..=37).all(|day| selling.is_blocked(day)) && !selling.is_blocked(38));
    assert!(number(&sale, "sale.best_day_batch").unwrap() >= 38.0);
    let page = said(&sale);
    let clear = present::show::day(day(38), &Viewer::plain());
    assert!(page.contains("powder") && page.contains(&clear), "{page}");
    let view = serde_json::to_value(sale::view(&sale, &Viewer::plain())).unwrap();
    assert_eq!(view["waits"][0]["clear"], day(38).to_string());
}

#[test]
fn a_wait_that_nobody_knows_leaves_no_day() {
    let sale = with(&[(27, "medicine-given", &[("medicine", "powder")])]);
    assert_eq!(number(&sale, "sale.best_day_batch"), None);
    assert_eq!(number(&sale, "risk.loss_probability"), None);
    let page = said(&sale);
    assert!(
        page.contains("no day yet") && page.contains("Read the label, or ask your veterinarian"),
        "{page}"
    );
}

/// Many dead: nobody is told to sell.
#[test]
fn a_dying_flock_is_not_told_to_be_sold() {
    let sale = with(&[(28, "deaths", &[("dead", "160")])]);
    assert!(!sale.held_by.is_empty() && sale.may_be_advised().is_none());
    let page = said(&sale);
    assert!(page.contains("Do not sell now. Call your veterinarian"), "{page}");
    assert!(!page.contains("Sell on") && !page.contains("best for the house"), "{page}");
    let view = serde_json::to_value(sale::view(&sale, &Viewer::plain())).unwrap();
    assert!(
        view["figures"].get("sale.best_day_batch").is_none() && view["days"].as_array().unwrap().is_empty()
    );
}

/// No day is chosen on which the birds are more than the floor may carry, but for the first where all are.
#[test]
fn the_limit_of_the_floor_comes_before_money() {
    // So dear that waiting would pay.
    let sale = with(&[(28, "price-seen", &[("what", "live-bird"), ("price", "90"), ("per", "kg")])]);
    let selling = sale.selling().unwrap();
    let best = selling.best().unwrap();
    assert!(selling.fits(best));
    let over = selling.sales.days.iter().find(|day| !selling.fits(day)).expect("they outgrow the floor");
    assert!(!selling.may_be_chosen(over.day) && best.day < over.day);
    let thinning = selling.thinning().unwrap();
    let (on, until) = (selling.sales.on(thinning.on).unwrap(), selling.sales.on(thinning.until).unwrap());
    let left = (on.birds - thinning.birds) * until.birds / on.birds;
    let density = left * until.weight_g / 1000.0 / selling.floor_m2;
    assert!(density <= selling.limits[&until.day] + 1e-9 && density > selling.limits[&until.day] - 0.05);
}

#[test]
fn orders_are_filled_and_one_that_no_bird_can_meet_is_named() {
    let order = |buyer: &'static str, birds: &'static str, least: &'static str, latest: i32| {
        vec![
            ("buyer", buyer.to_owned()),
            ("birds", birds.to_owned()),
            ("least_kg", least.to_owned()),
            ("latest", day(latest).to_string()),
            ("price", "150".to_owned()),
            ("basis", "bird".to_owned()),
        ]
    };
    let mut pen = running::pen();
    pen.note(RUNNING, day(20), "order", &order("School", "100", "1.2", 38));
    pen.note(RUNNING, day(20), "order", &order("Feast", "20", "6", 38));
    pen.note(RUNNING, day(20), "order", &order("Late", "20", "1", 25));
    let sale = Sale::read(&pen.fold(), RUNNING, running::today());
    let orders = Orders::of(&sale).unwrap();
    let of = |buyer: &str| orders.orders.iter().find(|order| order.wanted.buyer == buyer).unwrap();
    assert_eq!((of("School").birds, of("School").short), (100, None));
    assert!(of("School").mean_kg >= 1.2 && of("School").day.unwrap() <= 38);
    assert!((of("School").pays - 15_000.0).abs() < 1e-6);
    assert_eq!((of("Feast").birds, of("Feast").short), (0, Some(Short::NoBird)));
    assert_eq!(of("Late").short, Some(Short::Over));
    let page = said(&sale);
    assert!(page.contains("Feast: no bird can meet this order. It asks for 6.00 and over kg"), "{page}");
    let best = sale.selling().unwrap().best_for_house().unwrap();
    assert_eq!(f64::from(orders.left) + 100.0, best.birds.floor());
}

/// An order up to a day within a wait gets nothing, and says so.
#[test]
fn an_order_within_a_wait_is_held() {
    let latest = day(35).to_string();
    let sale = with(&[
        (27, "medicine-given", &[("medicine", "powder"), ("hour_h", "18"), ("withdrawal_d", "10")]),
        (27, "order", &[("buyer", "School"), ("birds", "50"), ("latest", &latest)]),
    ]);
    let orders = Orders::of(&sale).unwrap();
    assert_eq!((orders.orders[0].birds, orders.orders[0].short), (0, Some(Short::Held)));
    assert!(said(&sale).contains("School: no bird may be sold up to"));
}

/// What was sold to a buyer since comes off what the buyer ordered.
#[test]
fn what_was_delivered_is_not_owed_any_more() {
    let sale = with(&[
        (27, "order", &[("buyer", "School"), ("birds", "50")]),
        (28, "sale", &[("buyer", "school "), ("birds", "20"), ("income", "1900")]),
    ]);
    assert_eq!(Orders::of(&sale).unwrap().orders[0].wanted.birds, 30);
}

/// The price seen last is taken, where it is for what birds are sold by.
#[test]
fn the_price_seen_last_is_todays() {
    let planned = number(&with(&[]), "sale.price").unwrap();
    let seen = [("what", "live-bird"), ("price", "71"), ("per", "kg")];
    assert_eq!(number(&with(&[(26, "price-seen", &seen)]), "sale.price"), Some(71.0));
    let old = [("what", "live-bird"), ("price", "71"), ("per", "kg")];
    assert_eq!(number(&with(&[(3, "price-seen", &old)]), "sale.price"), Some(planned));
}

#[test]
fn hidden_money_shows_no_amount() {
    let viewer = Viewer { money_shown: false, ..Viewer::plain() };
    let sale = with(&[]);
    let page = text::write(&sale::document(&sale, &viewer), &viewer, false);
    assert!(!page.contains("XTS") && page.contains("Sell on"), "{page}");
    let view = serde_json::to_string(&sale::view(&sale, &viewer)).unwrap();
    assert!(!view.contains("\"profit\":") && !view.contains("\"pays\":"), "{view}");
}

#[test]
fn without_chicks_a_plan_or_an_end_it_says_why_not() {
    let empty = Pen::default().fold();
    assert!(said(&Sale::read(&empty, RUNNING, running::today())).contains("before the chicks come"));
    let mut pen = running::pen();
    pen.note(RUNNING, day(28), "batch-closed", &[("birds_left", "0".to_owned())]);
    assert!(said(&Sale::read(&pen.fold(), RUNNING, running::today())).contains("This batch is closed"));
}

/// Of luck that hardly hangs together, shares alone and with others are nearly the same and nearly all there is.
#[test]
fn what_matters_adds_up_to_about_all() {
    let sale = with(&[]);
    let matters = &sale.selling().unwrap().matters;
    assert_eq!(matters.len(), 5);
    let (alone, all): (f64, f64) =
        matters.iter().fold((0.0, 0.0), |sum, (_, share)| (sum.0 + share.alone, sum.1 + share.with_others));
    assert!((0.8..1.2).contains(&alone) && (0.9..1.3).contains(&all), "{alone} {all}");
    assert!(matters.is_sorted_by(|one, other| one.1.with_others >= other.1.with_others));
}

/// The catching of a plan that sells on one day moves to the day that is best, under the same name; orders and clear days stand
/// beside it. Read by a reader that shares no code with the writer.
#[test]
fn the_calendar_follows_the_sale() {
    let sale = with(&[
        (27, "medicine-given", &[("medicine", "powder"), ("hour_h", "18"), ("withdrawal_d", "4")]),
        (27, "order", &[("buyer", "School"), ("birds", "50")]),
    ]);
    let written = present::calendar::Written { at_millis: 1_810_000_000_000, sequence: Some(7) };
    let text = sale::calendar(&sale, &Viewer::plain(), written).unwrap();
    let unfolded = icalendar::parser::unfold(&text);
    let read = icalendar::parser::read_calendar(&unfolded).expect("a calendar");
    let starts = |name: &str| {
        let uid = format!("{name}.{}", RUNNING.0);
        let of = |event: &icalendar::parser::Component, key: &str| {
            let found = event.properties.iter().find(|one| one.name.as_str() == key);
            found.map(|one| one.val.as_str().to_owned())
        };
        let event = read.components.iter().find(|event| of(event, "UID").as_deref() == Some(uid.as_str()));
        of(event.unwrap_or_else(|| panic!("no {name}")), "DTSTART").unwrap()
    };
    let date = |age: i32| day(age).to_string().replace('-', "");
    let best = number(&sale, "sale.best_day_house").unwrap() as i32;
    assert_eq!(starts("delivery-0"), date(best));
    assert_eq!(starts("clear-0"), date(32));
    let moved = sale.moved_plan();
    let catching = moved.tasks.iter().find(|task| task.name == "catching").unwrap();
    let planned = sale.walk.plan.tasks.iter().find(|task| task.name == "catching").unwrap();
    let sells_on_one_day = sale.walk.plan.answers.schedule("sale.days").is_none()
        && sale.walk.plan.answers.number("sale.first_age_d").is_none();
    assert_eq!(catching.day, if sells_on_one_day { day(best) } else { planned.day });
    assert_eq!(starts("heavy-enough"), date(number(&sale, "outlook.day_of_target").unwrap() as i32));
}

/// What the store room still lacks is ordered in time; an order that came keeps its event, and the next has its own.
#[test]
fn the_calendar_orders_what_the_store_room_lacks() {
    let written = present::calendar::Written { at_millis: 1_810_000_000_000, sequence: Some(7) };
    let orders = |age: i32| {
        let sale = Sale::read(&running::state(), RUNNING, day(age));
        let text = sale::calendar(&sale, &Viewer::plain(), written).unwrap();
        let unfolded = icalendar::parser::unfold(&text);
        let read = icalendar::parser::read_calendar(&unfolded).expect("a calendar");
        let value = |event: &icalendar::parser::Component, key: &str| {
            let found = event.properties.iter().find(|one| one.name.as_str() == key);
            found.map_or_else(String::new, |one| one.val.as_str().to_owned())
        };
        let events = read.components.iter().map(|event| {
            (
                value(event, "UID"),
                (value(event, "DTSTART"), value(event, "DTEND"), value(event, "DESCRIPTION")),
            )
        });
        (sale, events.collect::<std::collections::BTreeMap<_, _>>())
    };
    let (sale, events) = orders(20);
    let found = advice::buying::of_book(&sale.walk).unwrap();
    let date = |age: i32| day(age).to_string().replace('-', "");
    let came = sale.walk.diary.of_kind("feed-delivered").map(|note| note.day);
    let came = came.collect::<std::collections::BTreeSet<_>>().len();
    assert!(came > 0 && !found.days().is_empty());
    for (at, comes) in found.days().into_iter().enumerate() {
        let (start, end, _) = &events[&format!("feed-order-{}.{}", came + at, RUNNING.0)];
        assert_eq!(*start, date(comes - found.lead_d));
        assert_eq!(*end, date(comes - found.lead_d + 1));
    }
    let count = events.keys().filter(|uid| uid.starts_with("feed-order-")).count();
    assert_eq!(count, found.days().len());
    let (_, _, sure) = &events[&format!("heavy-enough.{}", RUNNING.0)];
    assert!(sure.contains("Nine times in ten between day "), "{sure}");
}

fn asked(kind: &str, typed: &[(&str, &str)]) -> Vec<&'static str> {
    let kind = advice::record::kind(kind).unwrap();
    let raw = |(key, text): &(&str, &str)| quantity::Raw {
        key: (*key).to_owned(),
        text: vec![(*text).to_owned()],
        line: None,
    };
    let raws: Vec<quantity::Raw> = typed.iter().map(raw).collect();
    let checked = advice::record::check(kind, &raws, quantity::Source::Hand);
    let diary = advice::diary::Diary::read(&running::state(), RUNNING, running::today());
    let answers = checked.answers;
    let problems = checked.problems.into_iter().map(|_| "fault");
    let asks = advice::record::asks(&diary, kind, running::today(), &answers).into_iter().map(|ask| ask.name);
    problems.chain(asks).collect()
}

/// More birds than are alive, birds for nothing, birds that are nowhere, a price of nothing, another currency, a band upside down.
#[test]
fn what_cannot_be_is_asked_about_or_refused() {
    assert_eq!(asked("sale", &[("birds", "5000"), ("income", "100")]), ["more-gone-than-alive"]);
    assert_eq!(asked("sale", &[("birds", "5"), ("income", "0")]), ["sold-for-nothing"]);
    assert_eq!(asked("sale", &[("birds", "5"), ("income", "100")]), [""; 0]);
    assert_eq!(asked("batch-closed", &[("birds_left", "3")]), ["birds-not-accounted"]);
    assert_eq!(asked("order", &[("buyer", "A"), ("birds", "5"), ("price", "0")]), ["fault"]);
    assert_eq!(asked("cost", &[("what", "other"), ("cost", "12 EUR")]), ["fault"]);
    let band = [("buyer", "A"), ("birds", "5"), ("least_kg", "2"), ("most_kg", "1.5")];
    assert_eq!(asked("order", &band), ["fault"]);
}
