//! Feed: bags, the store room, and what heat takes away.

use quantity::physical::{round_down, round_up};
use quantity::{Area, Mass};

/// Whole bags for an amount of feed.
pub fn bags(feed: Mass, bag: Mass) -> f64 {
    round_up(feed.in_kilograms() / bag.in_kilograms())
}

/// The share of a store room's floor that holds feed: the rest is the gap to the walls and the way to the oldest bag.
const STACKED_SHARE: f64 = 0.6;
/// Floor under one bag of 50 kg, square metres.
const BAG_FLOOR_M2: f64 = 0.4;
/// Bags on top of each other, on a pallet.
const BAGS_HIGH: f64 = 8.0;

/// Bags that a store room's floor holds in stacks with a gap to the walls (common practice, no source).
pub fn bags_on_floor(floor: Area) -> f64 {
    round_down(STACKED_SHARE * floor.in_square_metres() / BAG_FLOOR_M2) * BAGS_HIGH
}

/// The share of feed left uneaten at a mean temperature: `per_degree` for each degree above `above`.
pub fn lost_in_heat(mean_c: f64, above: f64, per_degree: f64) -> f64 {
    per_degree * (mean_c - above).max(0.0)
}

/// How many days an amount lasts when so much of it is eaten on each day to come: whole days, and the part of the day on which
/// it runs out. What is left over when all days are fed lasts to their end, and no longer is said.
pub fn days_lasting(left_kg: f64, eaten_kg: &[f64]) -> f64 {
    let mut left = left_kg.max(0.0);
    let mut days = 0.0;
    for eaten in eaten_kg {
        if *eaten > left {
            return days + left / eaten;
        }
        left -= eaten;
        days += 1.0;
    }
    days
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn an_amount_lasts_until_a_day_eats_more_than_is_left() {
        assert_eq!(days_lasting(25.0, &[10.0, 12.0, 12.0]), 2.25);
        assert_eq!(days_lasting(22.0, &[10.0, 12.0, 12.0]), 2.0);
        assert_eq!(days_lasting(900.0, &[10.0, 12.0]), 2.0);
        assert_eq!(days_lasting(-3.0, &[10.0]), 0.0);
        assert_eq!(days_lasting(0.0, &[0.0, 5.0]), 1.0);
    }

    /// 500 birds at 4.0 kg in bags of 50 kg are 40 bags.
    #[test]
    fn forty_bags() {
        assert_eq!(bags(Mass::kilograms(500.0 * 4.0), Mass::kilograms(50.0)), 40.0);
        assert_eq!(bags(Mass::kilograms(2000.01), Mass::kilograms(50.0)), 41.0);
        assert_eq!(bags(Mass::kilograms(0.0), Mass::kilograms(50.0)), 0.0);
    }

    #[test]
    fn a_small_room_holds_little() {
        assert_eq!(bags_on_floor(Area::square_metres(6.0)), 72.0);
        assert_eq!(bags_on_floor(Area::square_metres(0.5)), 0.0);
    }
}
