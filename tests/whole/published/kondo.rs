//! Kondo et al., GARJAS 4(8) 396-403, 2015 (published): eight batches in Accra, 8 379 chicks placed, 7 905 birds out.

use super::{near, sum};

/// The paper prints a mortality of 5.99 %, which is deaths by survivors; by chicks placed it is 5.66 %. Tolerance: the last
/// printed place.
#[test]
fn deaths_are_counted_from_the_chicks_placed() {
    let inputs = [("cost_total", "1"), ("live_kg", "15000"), ("birds_sold", "7905"), ("chicks", "8379")];
    let survival = sum("break-even", &inputs).outcome.number("performance.livability").unwrap();
    near(100.0 - survival, 5.66, 0.01);
}
