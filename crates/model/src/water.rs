//! Drinking water: more in heat, in cans, and sanitised from a label.

use std::f64::consts::PI;

use quantity::physical::round_up;

/// Nothing is known of birds that drink more than this many times the water of a mild day.
const MOST_IN_HEAT: f64 = 2.5;

/// How many times the water of a mild day is drunk at `mean_c`: 6.5 % more for each degree above 21 (breeders' handbooks,
/// between published 4 % and 7 %).
pub fn heat_factor(mean_c: f64) -> f64 {
    (1.0 + 0.065 * (mean_c - 21.0).max(0.0)).min(MOST_IN_HEAT)
}

/// The lowest published: 4 % for each degree above 24.
pub fn heat_factor_low(mean_c: f64) -> f64 {
    1.0 + 0.04 * (mean_c - 24.0).max(0.0)
}

/// The highest: 7 % on top of each other for each degree above 21, never more than two and a half times.
pub fn heat_factor_high(mean_c: f64) -> f64 {
    1.07f64.powf((mean_c - 21.0).max(0.0)).min(MOST_IN_HEAT)
}

/// Whole cans for an amount of water.
pub fn cans(litres: f64, can_l: f64) -> f64 {
    round_up(litres / can_l)
}

/// Product for a tank, mL, at `ppm` of active substance from a product that holds `percent` of it (weight in volume, 1 %
/// being 10 000 mg/L).
pub fn sanitiser_ml(ppm: f64, tank_l: f64, percent: f64) -> f64 {
    ppm * tank_l / (10.0 * percent)
}

/// Water in a pipe, L, of inner diameter in millimetres and length in metres.
pub fn line_l(diameter_mm: f64, length_m: f64) -> f64 {
    PI * (diameter_mm / 1000.0).powi(2) / 4.0 * length_m * 1000.0
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_middle_lies_between_the_ends() {
        for degrees in 22..=40 {
            let mean = f64::from(degrees);
            assert!(heat_factor_low(mean) <= heat_factor(mean));
            assert!(heat_factor(mean) <= heat_factor_high(mean) + 1e-12, "{mean}");
        }
        assert_eq!(heat_factor(15.0), 1.0);
    }

    /// A pipe of 20 mm holds 0.314 L a metre: plane geometry.
    #[test]
    fn a_pipe_holds_its_cross_section_times_its_length() {
        assert!((line_l(20.0, 100.0) - 31.4159).abs() < 1e-4);
        assert!((line_l(40.0, 25.0) - line_l(20.0, 100.0)).abs() < 1e-9);
    }

    #[test]
    fn a_litre_of_half_a_part_in_ten_thousand() {
        // 3 mg/L in 1 000 L are 3 g; 3.5 % holds 35 g/L.
        assert!((sanitiser_ml(3.0, 1000.0, 3.5) - 3.0 / 35.0 * 1000.0).abs() < 1e-9);
    }
}
