//! Stocking rules of directives and feed firms. Source and status beside each value.

use model::space;
use quantity::{Area, Mass, StockingDensity};

use super::brooding_handbooks::sum;

fn near(got: f64, want: f64, tolerance: f64) {
    assert!((got - want).abs() <= tolerance, "{got}, wanted {want} within {tolerance}");
}

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

/// 6 lb/ft2 is 29.29 kg/m2 (unit conversion, derived), typed as a grower would.
#[test]
fn six_pounds_a_square_foot() {
    let by_sum =
        sum("space", &[("length_m", "10"), ("width_m", "10"), ("weight_kg", "2"), ("limit_lb_ft2", "6")]);
    near(by_sum.outcome.number("space.birds_allowed").unwrap(), (29.29f64 * 100.0 / 2.0).floor(), 1.0);
}

/// A Caribbean feed firm's advice for open houses (published): 21.5 kg/m2 at 2.0 kg is 10.75 birds/m2.
#[test]
fn birds_a_square_metre() {
    let limit = StockingDensity::kilograms_per_square_metre(21.5);
    near(space::birds_allowed(limit, Area::square_metres(100.0), Mass::kilograms(2.0)), 1075.0, 0.0);
}

/// Rule, derived: 420 birds of 2.1 kg on 40 m2 are 22.05 kg/m2: over 20, under 33.
#[test]
fn four_hundred_and_twenty_birds_on_forty_square_metres() {
    let density = space::density(420.0, Mass::kilograms(2.1), Area::square_metres(40.0));
    near(density.in_kilograms_per_square_metre(), 22.05, 0.01);
}
