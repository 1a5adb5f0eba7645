//! eXtension poultry biosecurity course (undated; published).
//! Tolerances are the rounding of the printed value.

use super::{near, sum};

/// eXtension poultry course, published: 3/4 US cup (177 mL) in a US gallon (3.785 L) is 46.8 mL/L, about 1:21, not the
/// 1:10 that the same leaflet prints beside it.
#[test]
fn a_leaflet_that_disagrees_with_itself() {
    let poured = sum(
        "dilution",
        &[("ratio", "1:10"), ("tank_l", "3.785"), ("means", "parts-total"), ("poured_ml", "177")],
    );
    near(poured.outcome.number("disinfectant.true_ratio").unwrap(), 21.4, 0.5);
    assert!(poured.outcome.number("disinfectant.times_label").unwrap() < 0.5);
}
