//! Council Directive 2007/43/EC, Article 3: base stocking limit.
//! Tolerances are the rounding of the printed value.

use model::space;
use quantity::{Area, Mass, StockingDensity};

use super::{near, sum};

/// Directive 2007/43/EC base limit 33 kg/m2 (published), 2.2 kg birds on 100 m2: 1500 birds (derived).
#[test]
fn fifteen_hundred_birds_at_33() {
    let limit = StockingDensity::kilograms_per_square_metre(33.0);
    let birds = space::birds_allowed(limit, Area::square_metres(100.0), Mass::kilograms(2.2));
    near(birds, 1500.0, 0.0);
    let by_sum =
        sum("space", &[("length_m", "20"), ("width_m", "5"), ("weight_kg", "2.2"), ("limit_kg_m2", "33")]);
    near(by_sum.outcome.number("space.birds_allowed").unwrap(), 1500.0, 0.0);
}
