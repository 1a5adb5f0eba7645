//! A worked flock with made-up prices (derived: pencil arithmetic): 500 chicks, 22 dead, 478 sold at 2.05 kg; 36 bags of
//! 50 kg at 260, the 12 kg left over not credited; 17 a kg. Tolerances are the rounding of the printed value.

use model::budget::{
    break_even_bag_price, break_even_fcr, break_even_livability, break_even_price, break_even_weight_kg,
    cash_break_even_price, per, value_of_fcr,
};

use super::near;

const PLACED: f64 = 500.0;
const SOLD: f64 = 478.0;
const WEIGHT_KG: f64 = 2.05;
const PRICE: f64 = 17.0;
const CHICKS: f64 = 3500.0;
const FEED: f64 = 36.0 * 260.0;
const FEED_PRICE: f64 = 260.0 / 50.0;
const LABOUR: f64 = 1200.0;
/// Litter, charcoal, vaccine, transport, other.
const REST: f64 = 300.0 + 450.0 + 350.0 + 400.0 + 250.0;
const TOTAL: f64 = CHICKS + FEED + LABOUR + REST;
const KG: f64 = SOLD * WEIGHT_KG;
const INCOME: f64 = KG * PRICE;

#[test]
fn costs_and_income() {
    near(KG, 979.9, 1e-9);
    near(TOTAL, 15_810.0, 0.0);
    near(INCOME, 16_658.30, 1e-9);
    near(INCOME - TOTAL, 848.30, 1e-9);
    near(INCOME - TOTAL + LABOUR, 2048.30, 1e-9);
    near(per(INCOME - TOTAL, TOTAL).unwrap(), 0.054, 0.0005);
    near(per(FEED, TOTAL).unwrap(), 0.592, 0.0005);
    near(per(CHICKS, TOTAL).unwrap(), 0.221, 0.0005);
    near(per(TOTAL, PLACED).unwrap(), 31.62, 0.005);
    near(per(TOTAL, SOLD).unwrap(), 33.08, 0.005);
}

#[test]
fn where_it_breaks_even() {
    near(break_even_price(TOTAL, KG, 0.0).unwrap(), 16.13, 0.005);
    near(break_even_price(TOTAL + 0.1 * FEED, KG, 0.0).unwrap(), 17.09, 0.005);
    near(break_even_bag_price(INCOME, TOTAL - FEED, 36.0).unwrap(), 283.56, 0.005);
    near(cash_break_even_price(TOTAL, 0.0, LABOUR, KG).unwrap(), 14.91, 0.005);
    near(break_even_weight_kg(TOTAL, PRICE, SOLD).unwrap(), 1.946, 0.0005);
    near(break_even_livability(TOTAL, PRICE, WEIGHT_KG, PLACED).unwrap(), 0.907, 0.0005);
}

/// 0.10 of feed conversion is 98 kg of feed and 509.5 of money; the conversion may go to 2.003 before nothing is left, as
/// the feed bought may rise by 848.30 / 5.20 = 163 kg over 1800 kg.
#[test]
fn what_feed_conversion_is_worth() {
    near(value_of_fcr(KG, 0.10, FEED_PRICE), 509.5, 0.1);
    let other_per_kg = per(TOTAL - FEED, KG).unwrap();
    near(break_even_fcr(PRICE, other_per_kg, FEED_PRICE).unwrap(), (1800.0 + 163.13) / 979.9, 0.0005);
}
