//! How a batch did: feed conversion, the European index, and the prices and weights at which it breaks even.

use quantity::Mass;

/// Survival (livability), %: birds sold alive of all chicks *placed*. `None` where none were placed.
///
/// Deaths are the rest to 100. Deaths divided by the survivors look larger and are wrong, though they are met in print.
pub fn livability_percent(sold: f64, placed: f64) -> Option<f64> {
    (placed > 0.0).then(|| 100.0 * sold / placed)
}

/// European production efficiency factor, points: survival % × live kg × 100 ÷ (days × feed conversion).
///
/// - `survival_percent`: 0 to 100; `age_d`: mean age at sale, days, above 0; `fcr`: kg of feed a kg, above 0
///
/// `None` where the age or the feed conversion is not above 0.
///
/// Source: [shane-pef].
pub fn epef(survival_percent: f64, weight: Mass, age_d: f64, fcr: f64) -> Option<f64> {
    let below = age_d * fcr;
    (below > 0.0).then(|| survival_percent * weight.in_kilograms() * 100.0 / below)
}

/// Gain a day over `age_d` days; without the chick's weight, the whole weight counts as gain (about 2 % more).
pub fn daily_gain(weight: Mass, chick: Mass, age_d: f64) -> Option<Mass> {
    (age_d > 0.0).then(|| Mass::kilograms((weight.in_kilograms() - chick.in_kilograms()) / age_d))
}

/// Feed conversion: kg of feed a kg of live weight. `None` for no weight: nothing sold has no conversion.
pub fn feed_conversion(feed: Mass, live: Mass) -> Option<f64> {
    let kilograms = live.in_kilograms();
    (kilograms > 0.0).then(|| feed.in_kilograms() / kilograms)
}

/// Feed conversion as it would be at another weight: `per_100_g` more for every 100 g that `to` is heavier.
///
/// It holds only near the weight it was made for; far from it, it flatters heavy birds.
///
/// Sources of `per_100_g`: 0.02 to 2 500 g, valid from 2 300 to 2 700 g [maertens-2016]; 0.04 to 1 500 g, the older way.
pub fn fcr_at_weight(fcr: f64, weight: Mass, to: Mass, per_100_g: f64) -> f64 {
    fcr - per_100_g * (weight.in_grams() - to.in_grams()) / 100.0
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn nothing_sold_has_no_conversion() {
        assert_eq!(feed_conversion(Mass::kilograms(100.0), Mass::kilograms(0.0)), None);
        assert_eq!(epef(95.0, Mass::kilograms(2.0), 0.0, 1.8), None);
        assert_eq!(livability_percent(0.0, 0.0), None);
        assert_eq!(daily_gain(Mass::kilograms(2.0), Mass::kilograms(0.04), 0.0), None);
    }

    /// From memory: a breeder's handbook adds (2.5 - kg) ÷ 4.5, about 0.022 a 100 g: 1.80 at 2.05 kg is 1.90 at 2.50 kg.
    #[test]
    fn a_lighter_flock_is_corrected_upwards() {
        let per_100_g = 0.1 / 4.5;
        let fcr = fcr_at_weight(1.80, Mass::kilograms(2.05), Mass::kilograms(2.5), per_100_g);
        assert!((fcr - 1.90).abs() < 0.001);
    }
}
