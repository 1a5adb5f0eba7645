//! Water to carry a vaccine that is drunk.

use quantity::Volume;
use quantity::physical::round_up;

/// The most litres for 1 000 birds, whatever their age.
const MOST_L_PER_1000: f64 = 40.0;

/// Skimmed milk powder in a litre of vaccine water, g.
const LEAST_POWDER_G: f64 = 2.0;
const MOST_POWDER_G: f64 = 4.0;

/// Water for a vaccine that is drunk: as many litres for 1 000 birds as they are days old, at most 40.
///
/// - `birds`: above 0; `age_d`: day of age, the day of placement is day 0
///
/// Source: [vaccine-water]: the litres of a compendium's product entry, the most of another maker's product sheet.
/// Agrees with two hours of drinking at 21 days (22.5 L). The leaflet and the birds' own two hours go before it.
pub fn water_by_age(birds: f64, age_d: f64) -> Volume {
    Volume::litres(age_d.min(MOST_L_PER_1000) * birds / 1000.0)
}

/// Skimmed milk powder for vaccine water, least and most, g: 2 to 4 g to a litre, below 1 % fat.
///
/// Source: [vaccine-water], a compendium's product entry.
pub fn milk_powder_g(water_l: f64) -> (f64, f64) {
    (water_l * LEAST_POWDER_G, water_l * MOST_POWDER_G)
}

/// Whole vials for a flock: never fewer doses than birds, and no vial is split.
///
/// - `doses`: in one vial by its label, above 0
///
/// Source: [vaccine-water], a compendium's product entry.
pub fn vials(birds: f64, doses: f64) -> f64 {
    round_up(birds / doses)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_cap_holds_from_day_forty() {
        assert_eq!(water_by_age(500.0, 39.0).in_litres(), 19.5);
        assert_eq!(water_by_age(500.0, 40.0), water_by_age(500.0, 56.0));
    }
}
