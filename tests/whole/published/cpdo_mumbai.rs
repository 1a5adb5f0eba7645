//! Govt of India, Central Poultry Development Organisation, Mumbai, answers to frequent questions (undated; published).
//! Tolerances are the rounding of the printed value.

use quantity::Unit;

use super::near;

/// Govt of India CPDO Mumbai FAQ, published: 0.25 ft2 a chick is 43.1 chicks/m2.
#[test]
fn a_quarter_square_foot_a_chick() {
    near(Unit::PerSquareFoot.convert(4.0, Unit::PerSquareMetre).unwrap(), 43.1, 0.1);
}
