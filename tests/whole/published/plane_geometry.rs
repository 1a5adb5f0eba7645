//! Plane geometry: circles by their area and circumference (exact).
//! Tolerances are the rounding of the printed value.

use model::guard;
use quantity::Length;

use super::near;

/// Geometry, derived: 500 chicks at 50/m2 need 10.0 m2: a ring 3.57 m across, a guard of 11.2 m.
#[test]
fn five_hundred_chicks_at_fifty() {
    let area = guard::asked_area(500.0, 50.0);
    near(area.in_square_metres(), 10.0, 0.0);
    near(guard::circumference(area).in_metres() / std::f64::consts::PI, 3.57, 0.02);
    near(guard::circumference(area).in_metres(), 11.2, 0.1);
}

/// Geometry, derived: 300 chicks at 40/m2 need 7.5 m2, 3.09 m across; a ring of 3.0 m holds 7.07 m2.
#[test]
fn three_hundred_chicks_at_forty() {
    let area = guard::asked_area(300.0, 40.0);
    near(area.in_square_metres(), 7.5, 0.0);
    near(guard::circumference(area).in_metres() / std::f64::consts::PI, 3.09, 0.02);
    let three_metres = Length::metres(3.0 * std::f64::consts::PI);
    near(guard::ring_area(1.0, three_metres, guard::Shape::Circle).in_square_metres(), 7.07, 0.01);
}
