//! A feed firm's advice for broilers in a hot climate, open-sided houses (Caribbean, undated; published).
//! Tolerances are the rounding of the printed value.

use model::space;
use quantity::{Area, Mass, StockingDensity};

use super::near;

/// A Caribbean feed firm's advice for open houses (published): 21.5 kg/m2 at 2.0 kg is 10.75 birds/m2.
#[test]
fn birds_a_square_metre() {
    let limit = StockingDensity::kilograms_per_square_metre(21.5);
    near(space::birds_allowed(limit, Area::square_metres(100.0), Mass::kilograms(2.0)), 1075.0, 0.0);
}
