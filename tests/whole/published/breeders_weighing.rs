//! Breeders' weighing pages (published): a layer breeder's example of evenness, and a broiler breeder's mean.

use super::{near, sum};

/// Hy-Line: the mean of 105 birds is 1.320 kg, so those from 1.188 to 1.452 kg count; the limits are counted in.
#[test]
fn a_tenth_either_way_of_their_own_mean() {
    let evenness = |weights: &str| {
        sum("uniformity", &[("weights", weights)]).outcome.number("weighing.uniformity").unwrap()
    };
    near(evenness("1188 1452 1320 1320"), 100.0, 0.0);
    near(evenness("1187 1453 1320 1320"), 50.0, 0.0);
}

/// Cobb: 100 birds of 59.5 kg together weigh 595 g each.
#[test]
fn a_mean_of_a_hundred_birds() {
    let sum = sum("break-even", &[("cost_total", "100"), ("live_kg", "59.5"), ("birds_sold", "100")]);
    near(sum.outcome.number("performance.mean_weight").unwrap(), 0.595, 1e-12);
}
