//! Two pages of advice to farmers (published): 2.5 kg of feed for a bird of 1.8 kg is 1.389; 350 kg for 250 kg is 1.40.

use super::{near, sum};

#[test]
fn feed_divided_by_weight() {
    for (feed, live, fcr, tolerance) in [("2.5", "1.8", 1.389, 0.001), ("350", "250", 1.40, 1e-12)] {
        let sum = sum("feed-conversion", &[("feed_kg", feed), ("live_kg", live)]);
        near(sum.outcome.number("performance.fcr_sold").unwrap(), fcr, tolerance);
    }
}
