//! The accounts of a batch, against a worked flock and against rules that any accounts follow.

use advice::closing::Closing;
use book::BatchId;
use quantity::CivilDay;
use uuid::Uuid;

use crate::running::Pen;
use crate::sample;

const BATCH: BatchId = BatchId(Uuid::from_u128(0xc1));

fn day(age: i32) -> CivilDay {
    CivilDay::new(2027, 9, 14).unwrap().plus_days(age)
}

/// A sale: day of age, birds, kilograms where they were weighed, and income.
type Sale = (i32, u32, Option<f64>, f64);

/// The worked flock: 500 placed, 22 dead, 478 sold at 2.05 kg and 42 days; its prices are invented.
const SOLD: [Sale; 1] = [(42, 478, Some(979.9), 16_658.3)];

/// Its accounts with other sales, and with all money some times as much.
fn closing(sales: &[Sale], times: f64) -> Closing {
    let mut pen = Pen::default();
    pen.adopt(BATCH, &sample::complete().replace("chicks = 1600", "chicks = 500"));
    let money = |amount: f64| format!("{:.4}", amount * times);
    pen.note(BATCH, day(0), "chicks-placed", &[("counted", "500".into()), ("cost", money(3500.0))]);
    pen.note(BATCH, day(3), "deaths", &[("dead", "20".into()), ("culled", "2".into())]);
    let bags = |bags: &str| {
        [
            ("phase", "grower".to_owned()),
            ("bags", bags.to_owned()),
            ("bag_kg", "50".to_owned()),
            ("price_each", money(260.0)),
        ]
    };
    pen.note(BATCH, day(0), "feed-delivered", &bags("16"));
    pen.note(BATCH, day(20), "feed-delivered", &bags("20"));
    pen.note(BATCH, day(41), "feed-given", &[("phase", "grower".into()), ("feed_kg", "1788".into())]);
    let bought = [("litter", 300.0), ("fuel", 450.0), ("vaccine", 350.0)];
    for (what, cost) in bought {
        pen.note(BATCH, day(0), "purchase", &[("what", what.into()), ("cost", money(cost))]);
    }
    for (what, cost) in [("own-labour", 1200.0), ("transport", 400.0), ("other", 250.0)] {
        pen.note(BATCH, day(42), "cost", &[("what", what.into()), ("cost", money(cost))]);
    }
    for (age, birds, kilograms, income) in sales {
        let mut sale = vec![("birds", birds.to_string()), ("income", money(*income))];
        sale.extend(kilograms.map(|kilograms| ("live_kg", format!("{kilograms:.3}"))));
        pen.note(BATCH, day(*age), "sale", &sale);
    }
    Closing::read(&pen.fold(), BATCH, day(60))
}

fn number(closing: &Closing, id: &str) -> f64 {
    closing.walk.plan.outcome.number(id).unwrap_or_else(|| panic!("{id} is not known"))
}

/// Derived by hand from the definitions (livability, feed conversion on what was sold, the index as S. Shane writes it).
#[test]
fn the_worked_flock_closes_as_worked_by_hand() {
    let closing = closing(&SOLD, 1.0);
    for (id, expected, within) in [
        ("closing.livability", 95.6, 1e-9),
        ("closing.sold_kg", 979.9, 1e-9),
        ("closing.fcr", 1.825, 0.001),
        ("closing.epef", 255.7, 0.2),
        ("closing.cost", 15_810.0, 1e-9),
        ("closing.cost_per_kg", 16.13, 0.01),
        ("closing.income", 16_658.3, 1e-9),
        ("closing.profit", 848.3, 1e-9),
        ("closing.profit_with_own_work", 2048.3, 1e-9),
        ("closing.daily_gain", 48.8, 0.05),
    ] {
        let found = number(&closing, id);
        assert!((found - expected).abs() <= within, "{id} is {found} and not {expected}");
    }
}

#[test]
fn the_causes_add_up_to_the_difference_from_the_plan_to_the_cent() {
    for sales in [
        &SOLD[..],
        &[(30, 100, Some(110.0), 2_000.0), (42, 300, None, 11_000.33)],
        &[(42, 478, Some(979.9), 0.01)],
    ] {
        let closing = closing(sales, 1.0);
        let planned = closing.planned.as_ref().unwrap().outcome.number("money.profit").unwrap();
        let cents = |amount: f64| (amount * 100.0).round() as i64;
        let difference = cents(number(&closing, "closing.profit")) - cents(planned);
        assert!(closing.causes.len() > 8, "{:?}", closing.causes);
        assert_eq!(closing.causes.iter().map(|cause| cause.units).sum::<i64>(), difference);
    }
}

#[test]
fn a_batch_as_planned_but_for_the_price_has_one_cause_in_income() {
    let once = closing(&SOLD, 1.0);
    let dearer = closing(&[(42, 478, Some(979.9), 16_658.3 * 1.1)], 1.0);
    let of = |closing: &Closing, name: &str| {
        closing.causes.iter().find(|cause| cause.name == name).map_or(0.0, |cause| cause.amount)
    };
    let more: f64 = number(&dearer, "closing.profit") - number(&once, "closing.profit");
    assert!((more - 1665.83).abs() < 0.01);
    assert!(of(&dearer, "sale-price") > of(&once, "sale-price"));
    for name in ["feed-price", "feed-amount", "chick-price", "litter", "transport"] {
        assert!((of(&dearer, name) - of(&once, name)).abs() < 0.011, "{name}");
    }
}

#[test]
fn selling_in_two_parts_on_one_day_is_selling_once() {
    let once = closing(&SOLD, 1.0);
    let parts = closing(&[(42, 200, Some(410.0), 6_970.0), (42, 278, Some(569.9), 9_688.3)], 1.0);
    for id in ["closing.profit", "closing.fcr", "closing.epef", "closing.livability", "closing.age"] {
        assert!((number(&once, id) - number(&parts, id)).abs() < 1e-9, "{id}");
    }
}

#[test]
fn all_prices_times_three_are_all_money_times_three() {
    let (once, thrice) = (closing(&SOLD, 1.0), closing(&SOLD, 3.0));
    for id in ["closing.profit", "closing.cost_per_kg", "closing.price_per_kg", "closing.profit_per_m2"] {
        // Each is rounded to the cent.
        assert!((3.0 * number(&once, id) - number(&thrice, id)).abs() <= 0.0201, "{id}");
    }
    for id in ["closing.fcr", "closing.epef"] {
        assert_eq!(number(&once, id), number(&thrice, id));
    }
}

/// Nothing sold has no feed conversion, no index and no cost a kilogram; and nobody divides by nothing.
#[test]
fn nothing_sold_has_no_cost_a_kilogram() {
    let closing = closing(&[], 1.0);
    for id in ["closing.fcr", "closing.epef", "closing.cost_per_kg", "closing.profit", "closing.livability"] {
        assert_eq!(closing.walk.plan.outcome.number(id), None, "{id}");
    }
    assert!(closing.causes.is_empty());
    assert_eq!(number(&closing, "closing.cost"), 15_810.0);
    assert_eq!(closing.birds_unaccounted(), 478.0);
}
