//! How many birds a floor carries.

use quantity::physical::{round_down, round_up};
use quantity::{Area, DayOfAge, Length, Mass, StockingDensity};

/// Floor that birds can use: length times width, less what pillars, stores and passages take.
///
/// - `usable_share`: 0 to 1
pub fn usable_floor(length: Length, width: Length, usable_share: f64) -> Area {
    length * width * usable_share
}

/// Birds still alive at an age, when `losses` (0 to 1) of those placed are lost by then; rounded down.
pub fn birds_left(placed: f64, losses: f64) -> f64 {
    round_down(placed * (1.0 - losses))
}

/// Live weight on the floor.
///
/// Source: definition of stocking density in Directive 2007/43/EC, Article 2: total live weight of birds present
/// in a house at the same time per square metre of usable area.
pub fn density(birds: f64, weight: Mass, floor: Area) -> StockingDensity {
    weight * birds / floor
}

/// The most birds of a weight that a floor carries under a limit, rounded down.
///
/// Checked against: limit 33 kg/m2, 2.2 kg, 100 m2 gives 1500 birds (derived from Directive 2007/43/EC).
pub fn birds_allowed(limit: StockingDensity, floor: Area, weight: Mass) -> f64 {
    round_down(limit * floor / weight)
}

/// Chicks to order so that `birds` are alive at sale after losses of a share 0 to 1 (below 1); rounded down, so that
/// the floor still carries them if the losses stay as expected.
pub fn chicks_to_order(birds: f64, losses: f64) -> f64 {
    round_down(birds / (1.0 - losses))
}

/// The last day of age up to `sale` on which all birds placed would fit, given their weight by day; losses are not
/// counted on, so the day errs early. `None` when not even the first day fits. Weights ascend by day.
pub fn last_day_that_fits(
    limit: StockingDensity,
    floor: Area,
    birds: f64,
    weights: impl Iterator<Item = (DayOfAge, Mass)>,
    sale: DayOfAge,
) -> Option<DayOfAge> {
    weights
        .take_while(|&(day, weight)| day <= sale && density(birds, weight, floor) <= limit)
        .last()
        .map(|(day, _)| day)
}

/// Birds to sell early so that the others fit at sale; rounded up, never negative.
pub fn birds_to_sell_early(birds: f64, allowed: f64) -> f64 {
    round_up((birds - allowed).max(0.0))
}

/// The hottest quarter of the year, as months 1 to 12, assumed from latitude alone.
///
/// Between the tropics the heat comes before the rains (September to November south, March to May north); outside
/// them it follows the high sun (December to February south, June to August north). Our judgement: rains, altitude
/// and sea shift it, so a grower's own months always go first.
pub fn hottest_months(latitude_deg: f64) -> [i8; 3] {
    const TROPIC_DEG: f64 = 23.44;
    match (latitude_deg < 0.0, latitude_deg.abs() <= TROPIC_DEG) {
        (true, true) => [9, 10, 11],
        (false, true) => [3, 4, 5],
        (true, false) => [12, 1, 2],
        (false, false) => [6, 7, 8],
    }
}

/// Feeders or drinkers for so many birds when one serves `serves`, with `more` times as many in heat.
pub fn pieces(birds: f64, serves: f64, more: f64) -> f64 {
    round_up(birds * more / serves)
}

/// How many times the drinkers are wanted when the hottest day is this hot: one more in four from 30 degrees on (common
/// practice, no source).
pub fn more_drinkers(hottest_day_c: f64) -> f64 {
    if hottest_day_c >= 30.0 { 1.25 } else { 1.0 }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn limit(kg_m2: f64) -> StockingDensity {
        StockingDensity::kilograms_per_square_metre(kg_m2)
    }

    #[test]
    fn a_bird_too_many_does_not_fit() {
        let (floor, weight) = (Area::square_metres(162.0), Mass::kilograms(2.99));
        let birds = birds_allowed(limit(20.0), floor, weight);
        assert!(density(birds, weight, floor) <= limit(20.0));
        assert!(density(birds + 1.0, weight, floor) > limit(20.0));
    }

    #[test]
    fn the_day_the_floor_is_full() {
        let weights = || (0..=42).map(|day| (DayOfAge(day), Mass::grams(f64::from(day * 50))));
        let full = |kg_m2| {
            last_day_that_fits(limit(kg_m2), Area::square_metres(100.0), 1000.0, weights(), DayOfAge(42))
        };
        assert_eq!(full(10.0), Some(DayOfAge(20)));
        assert_eq!(full(30.0), Some(DayOfAge(42)));
        assert_eq!(full(-1.0), None);
    }

    #[test]
    fn seasons_turn_with_the_hemisphere() {
        assert_eq!(hottest_months(-13.6), [9, 10, 11]);
        assert_eq!(hottest_months(13.6), [3, 4, 5]);
        assert_eq!(hottest_months(-34.0), [12, 1, 2]);
        assert_eq!(hottest_months(52.0), [6, 7, 8]);
    }
}
