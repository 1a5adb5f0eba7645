//! Drying of a washed floor and of spread litter before chicks come.
//!
//! A floor that takes the heat for it from the air alone cools to the wet bulb and dries slowest; one that the ground keeps as
//! warm as the air dries fastest. What carries heat carries vapour (Lewis relation).

use quantity::Temperature;

use crate::air::litter_water;
use crate::moist_air::{self, MoistAir};

/// Water that leaves a wet face that cools to the wet bulb, g/m2h; 0 in saturated air.
///
/// The heat that the air hands over, 4 W/m2K still and 3.8 more for each m/s, all goes into vapour.
pub fn from_cooled_face(dry_bulb_c: f64, wet_bulb_c: f64, speed_m_per_s: f64) -> f64 {
    let heat = litter_water::film_w_per_m2k(speed_m_per_s) * (dry_bulb_c - wet_bulb_c).max(0.0);
    3.6e6 * heat / moist_air::evaporation_heat(Temperature::celsius(wet_bulb_c))
}

/// Water that leaves a wet face as warm as the air, g/m2h; `None` for air that cannot be.
///
/// - `humidity`: share, 0 to 1
pub fn from_warm_face(dry_bulb_c: f64, humidity: f64, pressure_pa: f64, speed_m_per_s: f64) -> Option<f64> {
    let warm = Temperature::celsius(dry_bulb_c);
    let saturated = moist_air::humidity_ratio(moist_air::saturation_pressure(warm), pressure_pa);
    let air = MoistAir::new(warm, humidity, pressure_pa)?;
    Some(3.6e6 * litter_water::free_conductance(speed_m_per_s) * (saturated - air.humidity_ratio()))
}

/// Water that leaves a wet face of a temperature into air of a dew point, g/m2h; 0 where it would dew.
pub fn from_face(face: Temperature, dew_point: Temperature, pressure_pa: f64, speed_m_per_s: f64) -> f64 {
    let water = |at| moist_air::humidity_ratio(moist_air::saturation_pressure(at), pressure_pa);
    3.6e6 * litter_water::free_conductance(speed_m_per_s) * (water(face) - water(dew_point)).max(0.0)
}

/// Water to leave litter on its way from one moisture on a wet basis to another, kg/m2; 0 where it is drier already.
///
/// - `spread_kg_per_m2`: of the litter as it is spread, at the moisture it comes with
pub fn water_to_lose(spread_kg_per_m2: f64, from: f64, to: f64) -> f64 {
    (spread_kg_per_m2 * (from - to) / (1.0 - to)).max(0.0)
}

/// How much of a free wet face's evaporation litter of a moisture gives where it is spread and left: crust and depth, and
/// its water activity.
pub fn share_of_free(moisture: f64) -> f64 {
    litter_water::CRUST * litter_water::water_activity(moisture)
}

#[cfg(test)]
mod tests {
    use super::*;

    /// 25 °C, 60 %, a film of 4 W/m2K at sea level: 110 g/m2h from a face as warm as the air (derived). From one at the wet
    /// bulb the two ways to reckon it, by heat and by vapour, must agree.
    #[test]
    fn a_wet_floor() {
        let warm = from_warm_face(25.0, 0.6, 101_325.0, 0.0).unwrap();
        assert!((warm - 110.0).abs() < 8.0, "{warm}");
        let air = MoistAir::new(Temperature::celsius(25.0), 0.6, 101_325.0).unwrap();
        let bulb = air.wet_bulb();
        let by_heat = from_cooled_face(25.0, bulb.in_celsius(), 0.0);
        let saturated = moist_air::humidity_ratio(moist_air::saturation_pressure(bulb), 101_325.0);
        let by_vapour = 3.6e6 * litter_water::free_conductance(0.0) * (saturated - air.humidity_ratio());
        assert!((by_heat - by_vapour).abs() < 0.03 * by_vapour, "{by_heat} {by_vapour}");
        assert_eq!(from_cooled_face(25.0, 25.0, 1.0), 0.0);
        let same = from_face(Temperature::celsius(25.0), air.dew_point(), 101_325.0, 0.0);
        assert!((same - warm).abs() < 1e-6 * warm, "{same} {warm}");
        assert_eq!(from_face(air.dew_point(), bulb, 101_325.0, 0.0), 0.0, "there it dews");
    }

    /// 10 kg at 20 % hold 2 kg of water and 8 of the rest; at 0 % all of it is gone.
    #[test]
    fn litter_loses_what_it_held_beyond() {
        assert!((water_to_lose(10.0, 0.2, 0.0) - 2.0).abs() < 1e-12);
        assert_eq!(water_to_lose(8.0, 0.1, 0.2), 0.0);
        assert!(share_of_free(0.15) < share_of_free(0.3));
    }
}
