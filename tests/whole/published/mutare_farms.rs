//! 110 farms in Mutare, Zimbabwe: Cogent Economics and Finance 11:2242660, 2023 (published): a gross margin of 65.25 USD per
//! 100 birds, 1.15 back per 1 spent, feed 56.8 % of variable cost. Variable cost of 435 and income of 500.25 are derived
//! from the first two, so they carry the rounding of 1.15: 1.145 to 1.155 is 421 to 450.

use model::budget::{break_even_price, per};

use super::near;

const COST: f64 = 435.0;
const MARGIN: f64 = 65.25;

#[test]
fn a_dollar_spent_brings_back_one_dollar_fifteen() {
    near(per(COST + MARGIN, COST).unwrap(), 1.15, 0.005);
    near(per(COST + MARGIN, 100.0).unwrap(), 5.0025, 0.001);
}

/// A bird brings 5.00 and costs 4.35: the batch breaks even at that price a bird, and feed may rise by 26 % (derived).
#[test]
fn what_the_margin_carries() {
    let price = break_even_price(COST, 100.0, 0.0).unwrap();
    near(price, 4.35, 0.001);
    near(per(MARGIN, 0.568 * COST).unwrap(), 0.264, 0.001);
}
