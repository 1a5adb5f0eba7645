//! Catch and crate: floor for birds as Regulation (EC) 1/2005 asks (from memory), weight lost without feed as a trade review of
//! several papers has it (published).

use super::sum;

fn number(typed: &[(&str, &str)], id: &str) -> f64 {
    sum("catching", typed).outcome.number(id).unwrap_or_else(|| panic!("{id}"))
}

/// 2.1 kg at 160 cm² a kilogram, and 1.5 kg at 190, in a crate of 80 by 50 cm: 11 and 14 birds. Exact.
#[test]
fn birds_in_a_crate_of_80_by_50() {
    assert_eq!(number(&[("birds", "100"), ("weight_kg", "2.1")], "catching.birds_a_crate"), 11.0);
    assert_eq!(number(&[("birds", "100"), ("weight_kg", "1.5")], "catching.birds_a_crate"), 14.0);
    assert_eq!(number(&[("birds", "100"), ("weight_kg", "2.1")], "catching.crates"), 10.0);
}

/// 2.00 kg after 10 h at 0.18 and 0.43 % an hour: 1.964 and 1.914 kg. Within 1 g.
#[test]
fn a_bird_of_two_kilograms_after_ten_hours() {
    let sum = sum("catching", &[("birds", "100"), ("weight_kg", "2.0"), ("without_feed_h", "10")]);
    let band = sum.outcome.get("catching.weight_after").unwrap().figure.band.unwrap();
    assert!((band.high - 1.964).abs() < 0.001 && (band.low - 1.914).abs() < 0.001, "{band:?}");
}
