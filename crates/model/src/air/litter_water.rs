//! Water in the litter: how eagerly it leaves, and what the birds put in.

/// How near to saturated the air at the face of litter is, by its moisture on a wet basis, share by share (our judgement).
const ACTIVITY: [(f64, f64); 8] = [
    (0.0, 0.0),
    (0.10, 0.45),
    (0.15, 0.70),
    (0.20, 0.85),
    (0.25, 0.93),
    (0.30, 0.97),
    (0.35, 1.0),
    (1.0, 1.0),
];
/// What crust and depth leave of the evaporation of a free face: 0.3 to 0.6 (our judgement).
pub(crate) const CRUST: f64 = 0.4;
/// Moisture from which litter cakes and gives off ammonia, share of its whole mass (common practice, no source).
pub const WET: f64 = 0.30;
/// Moisture below which litter is dusty, share (common practice, no source).
pub const DUSTY: f64 = 0.15;

/// Water over water and dry matter.
pub fn moisture(water_kg: f64, dry_kg: f64) -> f64 {
    water_kg / (water_kg + dry_kg)
}

/// Water activity of litter of a moisture, 0 to 1.
pub fn water_activity(moisture: f64) -> f64 {
    let after = ACTIVITY.iter().position(|point| point.0 >= moisture).unwrap_or(ACTIVITY.len() - 1).max(1);
    let (low, high) = (ACTIVITY[after - 1], ACTIVITY[after]);
    low.1 + (high.1 - low.1) * ((moisture - low.0) / (high.0 - low.0)).clamp(0.0, 1.0)
}

/// Evaporation for each unit of humidity ratio between the face of the litter and the air, kg/s for the whole floor.
///
/// - `speed_m_s`: of air over the litter
///
/// Lewis relation: what carries heat carries vapour, h/1006; h is 4 W/m2K in still air and 3.8 more for each m/s.
pub fn conductance(floor_m2: f64, speed_m_s: f64) -> f64 {
    CRUST * floor_m2 * free_conductance(speed_m_s)
}

/// The same of a free wet face, kg/s for each m2.
pub(crate) fn free_conductance(speed_m_s: f64) -> f64 {
    film_w_per_m2k(speed_m_s) / 1006.0
}

/// Heat between the air and a level face, W/m2K: 4 in still air, 3.8 more for each m/s.
pub(crate) fn film_w_per_m2k(speed_m_s: f64) -> f64 {
    4.0 + 3.8 * speed_m_s
}

/// What a bird takes in, in a day, kg.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Intake {
    /// Feed.
    pub feed_kg: f64,
    /// Water drunk.
    pub water_kg: f64,
    /// Weight gained.
    pub gain_kg: f64,
}

/// Share of drunk water spilt beside, 2 to 5 % (from memory).
const SPILT: f64 = 0.03;
/// Share of feed that is water, and water made from feed (0.35 to 0.45; from memory).
const WATER_OF_FEED: f64 = 0.11 + 0.40;
/// Water of what is gained, 0.65 to 0.70 (from memory).
const WATER_OF_GAIN: f64 = 0.67;
/// Dry matter of droppings for each kg of feed (from memory).
const DRY_OF_FEED: f64 = 0.25;

impl Intake {
    /// Water that a bird takes in or makes and does not keep, and what it spills, kg a day: it leaves with the breath or
    /// goes into the litter.
    pub fn water_to_lose(self) -> f64 {
        self.water_kg * (1.0 + SPILT) + WATER_OF_FEED * self.feed_kg - WATER_OF_GAIN * self.gain_kg
    }

    /// Dry matter of droppings, kg a day.
    pub fn dry_droppings(self) -> f64 {
        DRY_OF_FEED * self.feed_kg
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn activity_rises_to_one() {
        assert_eq!(water_activity(0.0), 0.0);
        assert!((water_activity(0.10) - 0.45).abs() < 1e-12);
        assert!((water_activity(0.175) - 0.775).abs() < 1e-12);
        assert_eq!(water_activity(0.5), 1.0);
        assert_eq!(water_activity(1.0), 1.0);
    }

    /// 60 m2 at 25 °C, 60 %, a film of 4 W/m2K: 3.1e-5 kg/m2s from a free wet face, 110 g/m2h (derived).
    #[test]
    fn a_wet_floor_dries() {
        use crate::moist_air::{humidity_ratio, saturation_pressure};
        let saturated = saturation_pressure(quantity::Temperature::celsius(25.0));
        let difference = humidity_ratio(saturated, 101_325.0) - humidity_ratio(0.6 * saturated, 101_325.0);
        let free = conductance(1.0, 0.0) / CRUST * difference;
        assert!((free * 3.6e6 - 110.0).abs() < 8.0, "{}", free * 3.6e6);
    }

    #[test]
    fn water_of_a_day() {
        let intake = Intake { feed_kg: 0.1, water_kg: 0.2, gain_kg: 0.06 };
        assert!((intake.water_to_lose() - (0.206 + 0.051 - 0.0402)).abs() < 1e-12);
    }
}
