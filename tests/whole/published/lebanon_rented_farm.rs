//! C. F. Hamra, MSc paper, University of Tennessee at Martin, 2010: a rented farm in Lebanon, November and December 2009,
//! 39 days (published). Tolerances are the rounding of the printed value.

use model::budget::{Cash, CashDay, CashItem, break_even_price};

use super::near;

const COST: f64 = 10_479.0;
const KG_SOLD: f64 = 4428.0;
const PRICE: f64 = 3.10;

/// Sales of 13 726.80 and a profit of 3247.80 USD. The paper dates no payment: all spent on the first day and all sold on
/// the last is the widest that cash can swing.
#[test]
fn the_cash_of_a_batch_ends_with_its_profit() {
    let sales = KG_SOLD * PRICE;
    near(sales, 13_726.80, 0.01);
    let items = [CashItem { day: 0, amount: -COST }, CashItem { day: 39, amount: sales }];
    let cash = Cash::of(0.0, &items);
    near(cash.end().unwrap(), 3247.80, 0.01);
    assert_eq!(cash.low_point(), Some(CashDay { day: 0, balance: -COST }));
    assert_eq!(Cash::of(COST, &items).first_shortage(), None);
}

/// 2.367 USD a kg (derived from the printed totals).
#[test]
fn below_its_cost_a_kilogram_loses() {
    near(break_even_price(COST, KG_SOLD, 0.0).unwrap(), 2.3665, 0.0005);
}
