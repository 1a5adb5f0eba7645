//! Worked examples of rules of money (derived: our arithmetic on the rule as stated).
//! Tolerances are the rounding of the printed value.

use model::budget::{batches_a_year, day_margin, depreciation_per_batch, dressed_price};

use super::near;

#[test]
fn batches_that_a_house_takes_in_a_year() {
    for (grow, downtime, want) in
        [(42.0, 14.0, 6.52), (35.0, 14.0, 7.45), (42.0, 21.0, 5.79), (49.0, 14.0, 5.79)]
    {
        near(batches_a_year(grow, downtime).unwrap(), want, 0.01);
    }
}

/// Live at 16.13 a kg, 1.50 of dressing a live kg, 70 % yield: 25.19 a dressed kg (less 0.004 of rounding).
#[test]
fn dressed_birds_must_bring_more_a_kilogram() {
    near(dressed_price(16.13, 1.50, 0.70).unwrap(), 25.19, 0.01);
}

/// A gain of 70 g at 17 and 140 g of feed at 5.20 leave 0.46 a bird: keep it if the day costs less.
#[test]
fn one_more_day() {
    near(day_margin(0.070, 17.0, 0.140, 5.20), 0.46, 0.005);
}

/// A tool of 600 with a scrap of 60 over 3 years of 6 batches: 30 a batch.
#[test]
fn wear_of_a_tool() {
    near(depreciation_per_batch(600.0, 60.0, 3.0, 6.0).unwrap(), 30.0, 1e-12);
}
