//! C. F. Hamra, MSc paper, University of Tennessee at Martin 2010 (published; a kilogram's cost derived): a rented farm in
//! Lebanon, November and December 2009. Tolerances are the printed rounding.

use super::{near, sum};

/// 10 479 dollars for 4 428 kg at 3.10: sales of 13 726.80, profit 3 247.80, cost 2.367 a kg.
#[test]
fn the_rented_farm() {
    let inputs = [("cost_total", "10479"), ("live_kg", "4428"), ("price_per_kg", "3.10")];
    let sum = sum("break-even", &inputs);
    near(sum.outcome.number("performance.profit").unwrap(), 3247.80, 0.01);
    near(sum.outcome.number("performance.break_even_price").unwrap(), 2.3665, 0.0005);
}
