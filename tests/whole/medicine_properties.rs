//! What must hold of doses, withdrawals and vaccine programmes whatever the numbers.

use advice::finding::Weight;
use advice::programme::{ArrivalDay, Flock, days, read};
use advice::sums::{SumResult, by_name};
use model::medicine::{Clear, Withdrawal, blocks, clear_of_all};
use proptest::prelude::*;
use quantity::{CivilDay, Raw};

fn work_out(name: &str, typed: &[(&str, String)]) -> SumResult {
    let raw =
        |(key, text): &(&str, String)| Raw { key: (*key).to_owned(), text: vec![text.clone()], line: None };
    let result = by_name(name).unwrap().work_out(&typed.iter().map(raw).collect::<Vec<_>>(), true);
    assert!(result.checked.problems.is_empty(), "{:?}", result.checked.problems);
    result
}

/// One flock and one label, each a number.
#[derive(Clone, Copy, Debug)]
struct Label {
    birds: u32,
    weight_kg: f64,
    drunk_l: f64,
    dose: f64,
    strength: f64,
}

fn any_label() -> impl Strategy<Value = Label> {
    (1..5_000u32, 0.05..4.0f64, 1.0..2_000.0f64, 0.1..200.0f64, 1.0..500.0f64).prop_map(
        |(birds, weight_kg, drunk_l, dose, strength)| Label { birds, weight_kg, drunk_l, dose, strength },
    )
}

impl Label {
    /// What the label's water line says where it agrees with the weight line.
    fn per_litre(&self) -> f64 {
        f64::from(self.birds) * self.weight_kg * self.dose / self.strength / self.drunk_l
    }

    /// The sum for a liquid or a powder, with a water line that is so many times what would agree; none where it lies
    /// outside what can be typed.
    fn work_out(&self, form: &str, times: f64) -> Option<SumResult> {
        let per_litre = self.per_litre() * times;
        (0.001..50.0).contains(&per_litre).then(|| {
            let (sum, strength, line) = match form {
                "ml" => ("dose", "strength_mg_per_ml", "label_ml_per_l"),
                _ => ("dose-powder", "strength_mg_per_g", "label_g_per_l"),
            };
            work_out(
                sum,
                &[
                    ("birds", self.birds.to_string()),
                    ("weight_kg", self.weight_kg.to_string()),
                    ("drunk_l", self.drunk_l.to_string()),
                    ("dose_mg_per_kg", self.dose.to_string()),
                    (strength, self.strength.to_string()),
                    (line, format!("{per_litre:.15}")),
                ],
            )
        })
    }
}

fn product(result: &SumResult) -> Option<f64> {
    result.outcome.number("medicine.product_ml").or(result.outcome.number("medicine.product_g"))
}

fn refuses(result: &SumResult) -> bool {
    result
        .findings
        .iter()
        .any(|finding| finding.weight == Weight::Problem && finding.name.starts_with("medicine-water-gives-"))
}

fn withdrawal((last, hour, days): (i32, Option<u8>, Option<u16>)) -> Withdrawal {
    Withdrawal { product: String::new(), last: CivilDay::from_number(21_000 + last), hour, days }
}

fn any_withdrawal() -> impl Strategy<Value = Withdrawal> {
    (0..400i32, prop::option::of(0..=24u8), prop::option::weighted(0.9, 0..120u16)).prop_map(withdrawal)
}

/// Hours since the first of days; a withdrawal without days never ends.
fn hours(clear: Clear) -> i64 {
    match clear {
        Clear::On { day, hour } => i64::from(day.number()) * 24 + i64::from(hour),
        Clear::Unknown => i64::MAX,
    }
}

proptest! {
    /// A consistent label is answered, by the weight of the birds, and twice the birds take twice as much.
    #[test]
    fn a_dose_is_linear_in_birds(label in any_label(), powder in any::<bool>()) {
        let form = if powder { "g" } else { "ml" };
        let twice = Label { birds: 2 * label.birds, ..label };
        if let (Some(one), Some(two)) = (label.work_out(form, 1.0), twice.work_out(form, 1.0)) {
            let (one, two) = (product(&one).unwrap(), product(&two).unwrap());
            prop_assert!((two - 2.0 * one).abs() <= 1e-9 * two);
            prop_assert!((one - label.per_litre() * label.drunk_l).abs() <= 1e-9 * one);
        }
    }

    /// Up to a fifth apart there is an amount; beyond there is none, nor any figure that rests on it.
    #[test]
    fn lines_that_disagree_give_no_amount(label in any_label(), times in 0.2..5.0f64, powder in any::<bool>()) {
        prop_assume!((times.max(1.0 / times) - 1.2).abs() > 1e-6);
        let form = if powder { "g" } else { "ml" };
        if let Some(result) = label.work_out(form, times) {
            let agree = times.max(1.0 / times) < 1.2;
            prop_assert_eq!(product(&result).is_some(), agree);
            prop_assert_eq!(refuses(&result), !agree);
            let per_litre = result.outcome.get("medicine.per_litre_ml").or(result.outcome.get("medicine.per_litre_g"));
            prop_assert_eq!(per_litre.is_some(), agree);
        }
    }

    /// More birds, heavier birds, a higher dose and a weaker product never take less.
    #[test]
    fn a_dose_only_rises(label in any_label(), by in 1.0..1.5f64) {
        let Some(less) = label.work_out("ml", 1.0) else { return Ok(()) };
        for more in [
            Label { weight_kg: label.weight_kg * by, ..label },
            Label { dose: label.dose * by, ..label },
            Label { strength: label.strength / by, ..label },
        ] {
            if let Some(more) = more.work_out("ml", 1.0) {
                prop_assert!(product(&more).unwrap() >= product(&less).unwrap() * (1.0 - 1e-9));
            }
        }
    }

    /// A later last hour, and a longer wait, never clear sooner; an hour not known is the latest.
    #[test]
    fn the_clock_only_runs_on(last in 0..400i32, hour in 0..24u8, days in 0..120u16) {
        let clear = |hour, days| hours(withdrawal((last, hour, Some(days))).clear());
        let at = clear(Some(hour), days);
        prop_assert_eq!(at - (i64::from(21_000 + last) * 24 + i64::from(hour)), i64::from(days) * 24);
        prop_assert_eq!(clear(Some(hour + 1), days), at + 1);
        prop_assert_eq!(clear(Some(hour), days + 1), at + 24);
        prop_assert!(clear(None, days) > at);
    }

    /// Birds are held on a day until every withdrawal ended at or before its first hour.
    #[test]
    fn the_latest_holds_the_birds(all in prop::collection::vec(any_withdrawal(), 1..6), day in 0..600i32) {
        let day = CivilDay::from_number(21_000 + day);
        let latest = all.iter().map(|one| hours(one.clear())).max().unwrap();
        prop_assert_eq!(hours(clear_of_all(&all).unwrap()), latest);
        prop_assert_eq!(blocks(day, &all).is_empty(), latest <= i64::from(day.number()) * 24);
    }

    /// Whole vials hold at least a dose for each bird, and one vial fewer would not.
    #[test]
    fn vials_are_enough_and_no_more(birds in 1..60_000u32, doses in 1..5_000u32, day in 1..=84i32) {
        let flock = Flock { placement: CivilDay::from_number(21_000), arrival: ArrivalDay::One, birds };
        let rows = read(&format!("A vaccine; {day}; spray; {doses}"), ArrivalDay::One).unwrap();
        let planned = &days(&rows, &flock)[0];
        prop_assert!(planned.doses >= birds && planned.doses - doses < birds);
        prop_assert_eq!(planned.date.days_since(flock.placement), day - 1);
    }
}

/// Whatever is typed as a programme, it is read or its faults are told; never a panic.
#[test]
fn any_text_is_a_programme_or_its_faults() {
    for text in [
        "",
        ";",
        ";;;",
        "a;1;spray;10;",
        "💩;💩;💩;💩",
        "a;-1;spray;10",
        "a;1;spray;99999999999",
        "a;1e1;spray;1",
    ] {
        for arrival in [ArrivalDay::Zero, ArrivalDay::One] {
            if let Err(faults) = read(text, arrival) {
                assert!(!faults.is_empty(), "{text}");
            }
        }
    }
    assert_eq!(read("\n \n", ArrivalDay::Zero), Ok(Vec::new()));
}
