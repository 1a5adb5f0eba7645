//! UK NOAH Compendium product entry and a Zoetis South Africa product sheet (published): water and milk powder for a
//! vaccine that is drunk.

use super::{near, sum};

fn water(birds: &str, age_d: &str) -> advice::sums::SumResult {
    sum("vaccine-water", &[("birds", birds), ("age_d", age_d)])
}

/// NOAH: 1 000 birds on day 10 drink 10 L with 20 to 40 g of milk powder. Exact.
#[test]
fn ten_litres_on_day_ten() {
    let sum = water("1000", "10");
    near(sum.outcome.number("vaccine.water").unwrap(), 10.0, 0.0);
    let powder = sum.outcome.get("vaccine.milk_powder").unwrap().figure.band.unwrap();
    assert_eq!((powder.low, powder.high), (20.0, 40.0));
}

/// Zoetis: never more than 40 L for 1 000 birds. Exact.
#[test]
fn forty_litres_are_the_most() {
    near(water("1000", "45").outcome.number("vaccine.water").unwrap(), 40.0, 0.0);
}

/// Every day of the table of the rule (published rule, derived values). Exact.
#[test]
fn every_day_of_the_table() {
    let table = reference::Table::shipped("vaccination_water").unwrap();
    for row in &table.rows {
        let sum = water("1000", &row[0]);
        let want = table.number(row, "litres_per_1000").unwrap().unwrap();
        near(sum.outcome.number("vaccine.water").unwrap(), want, 0.0);
    }
    assert_eq!(table.rows.len(), 56);
}

/// Of a measured 2 hours the birds' own goes first, and the rule stands beside it.
#[test]
fn the_birds_own_two_hours_go_first() {
    let sum = sum("vaccine-water", &[("birds", "1000"), ("age_d", "21"), ("measured_2h_l", "12")]);
    near(sum.outcome.number("vaccine.water").unwrap(), 12.0, 0.0);
    near(sum.outcome.number("vaccine.water_by_age").unwrap(), 21.0, 0.0);
    assert!(sum.findings.iter().any(|finding| finding.name == "vaccine-water-far-from-rule"));
}

/// NOAH: never fewer doses than birds, and no vial is split: 1 001 birds open two vials of 1 000. Exact.
#[test]
fn one_bird_more_opens_a_vial() {
    for (birds, vials) in [("1000", 1.0), ("1001", 2.0)] {
        let sum = sum("vaccine-water", &[("birds", birds), ("age_d", "14"), ("doses_per_vial", "1000")]);
        near(sum.outcome.number("vaccine.vials").unwrap(), vials, 0.0);
    }
}
