//! Pesti, Amato and Minear, Poultry Science 64:803-808, 1985: 1.77 g of water for a g of feed, 24 commercial flocks.

use quantity::Unit;

#[test]
fn a_bird_that_eats_110_g_drinks_195_ml() {
    let plan = crate::sample::plan(
        &crate::sample::complete()
            .replace("to_feed = 1.8", "to_feed = 1.77")
            .replace("mean_c = 26", "mean_c = 20"),
    );
    let feed = plan.series("feed.per_bird_by_day").unwrap();
    let water = plan.series("water.per_bird_by_day").unwrap();
    for (feed, water) in feed.values.iter().zip(&water.values) {
        assert!((water - 1.77 * feed).abs() < 1e-9);
    }
    assert!((1.77f64 * 110.0 - 195.0).abs() < 1.0);
    assert_eq!(
        advice::families::series_named("water.per_bird_by_day").unwrap().unit,
        Unit::MillilitrePerBird
    );
}
