//! Litter: how much, in bags, and what it weighs.

use quantity::physical::round_up;
use quantity::{Area, Length, Volume};

/// Loose litter for a floor at a depth.
///
/// Checked against: 160 m2 at 5 cm is 8.0 m3.
pub fn volume(floor: Area, depth: Length) -> Volume {
    floor * depth
}

/// Bags to buy, rounded up.
pub fn bags(litter: Volume, bag: Volume) -> f64 {
    round_up(litter / bag)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn bags_never_fall_short() {
        assert_eq!(bags(Volume::cubic_metres(11.34), Volume::litres(120.0)), 95.0);
        assert_eq!(bags(Volume::cubic_metres(12.0), Volume::litres(120.0)), 100.0);
    }
}
