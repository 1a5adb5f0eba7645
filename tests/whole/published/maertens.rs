//! L. Maertens (ILVO), World Poultry 2016 (published), and the older industry note (published) that it warns of:
//! feed conversion corrected to a common weight. Tolerances are one in the last printed place.

use model::performance::fcr_at_weight;
use quantity::Mass;

use super::{near, sum};

/// The newer way: 1.60 at 2 300 g is 1.64 at 2 500 g, valid from 2 300 to 2 700 g.
#[test]
fn corrected_near_two_and_a_half_kilograms() {
    let at =
        |weight| sum("feed-conversion", &[("feed_kg", "1600"), ("live_kg", "1000"), ("weight_g", weight)]);
    near(at("2300").outcome.number("performance.fcr_at_2500").unwrap(), 1.64, 0.001);
    near(at("2700").outcome.number("performance.fcr_at_2500").unwrap(), 1.56, 0.001);
}

/// The older way: 1.46 at 1 700 g is 1.38 at 1 500 g.
#[test]
fn the_older_correction_near_one_and_a_half() {
    let old = sum("feed-conversion", &[("feed_kg", "1460"), ("live_kg", "1000"), ("weight_g", "1700")]);
    near(old.outcome.number("performance.fcr_at_1500").unwrap(), 1.38, 0.001);
}

/// The older way makes 1.00 of 1.60 at 3 000 g, which no bird does: outside its weights no correction is shown.
#[test]
fn a_correction_that_misleads_is_refused() {
    let misled = fcr_at_weight(1.60, Mass::grams(3_000.0), Mass::grams(1_500.0), 0.04);
    near(misled, 1.00, 0.001);
    for weight in ["1000", "1299", "1701", "2299", "2701", "3000"] {
        let inputs = [("feed_kg", "1600"), ("live_kg", "1000"), ("weight_g", weight)];
        let sum = sum("feed-conversion", &inputs);
        for id in ["performance.fcr_at_1500", "performance.fcr_at_2500"] {
            assert!(sum.outcome.get(id).is_none(), "{id} at {weight}");
        }
        assert!(sum.findings.iter().any(|finding| finding.name == "correction-misleads"), "{weight}");
    }
}
