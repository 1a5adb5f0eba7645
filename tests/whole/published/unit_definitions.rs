//! Definitions of pound and foot (exact).
//! Tolerances are the rounding of the printed value.

use super::{near, sum};

/// 6 lb/ft2 is 29.29 kg/m2 (unit conversion, derived), typed as a grower would.
#[test]
fn six_pounds_a_square_foot() {
    let by_sum =
        sum("space", &[("length_m", "10"), ("width_m", "10"), ("weight_kg", "2"), ("limit_lb_ft2", "6")]);
    near(by_sum.outcome.number("space.birds_allowed").unwrap(), (29.29f64 * 100.0 / 2.0).floor(), 1.0);
}
