//! Sun on a roof: the air temperature that would give the same heat.
//!
//! Source: ASHRAE Handbook Fundamentals, sol-air temperature, coefficients from memory.

use quantity::Temperature;

use crate::moist_air;

/// Heat that a flat dark roof below a clear sky radiates beyond what air of its temperature would send back, W/m2.
pub const CLEAR_SKY_W_PER_M2: f64 = 63.0;

/// What the outer face of a roof gives to the air, W/m2K, by the wind over it, up to 5 m/s.
pub fn outer_film(wind_m_s: f64) -> f64 {
    5.7 + 3.8 * wind_m_s.clamp(0.0, 5.0)
}

/// How much warmer than the air the roof seems, K.
///
/// - `absorptance`: 0 to 1, of sunshine
/// - `sun_w_per_m2`: on the roof; below 15° of slope that on level ground is within 10 % over a day
/// - `film`: of [`outer_film`], with what it radiates to things of air temperature in it; 17 in a light wind
pub fn sun_above_air(absorptance: f64, sun_w_per_m2: f64, film: f64) -> f64 {
    absorptance * sun_w_per_m2 / film
}

/// How much colder than the air a clear sky makes the roof seem, K.
///
/// - `emittance`: 0.25 for bright metal, 0.9 for nearly all else
pub fn sky_below_air(emittance: f64, sky_w_per_m2: f64, film: f64) -> f64 {
    emittance * sky_w_per_m2 / film
}

/// How much warmer or colder than the air a roof seems that is kept wet, K.
///
/// - `dry_k`: how much warmer it would seem dry
/// - `outside_c`, `outside_w`, `pressure_pa`: the air, with its humidity ratio in kg/kg
///
/// The sheet gives heat to the air by its film, and water by the same film at a Lewis number of 1 (ASHRAE Fundamentals, from
/// memory): in the shade it is as cold as the wet bulb. Water that the roof gets is taken as warm as the roof.
pub fn wet_above_air(dry_k: f64, outside_c: f64, outside_w: f64, pressure_pa: f64) -> f64 {
    let heat_of_air = 1006.0 + 1860.0 * outside_w;
    // Heat left over on the sheet for each W/m2K of film, at so much above the air; falls as it gets warmer.
    let left_over = |above_k: f64| {
        let sheet = Temperature::celsius(outside_c + above_k);
        let face = moist_air::humidity_ratio(moist_air::saturation_pressure(sheet), pressure_pa);
        let evaporating = (face - outside_w) / heat_of_air * moist_air::evaporation_heat(sheet);
        dry_k - above_k - evaporating
    };
    let (mut low, mut high) = (dry_k.min(0.0) - 40.0, dry_k.max(0.0));
    for _ in 0..40 {
        let middle = f64::midpoint(low, high);
        if left_over(middle) > 0.0 { low = middle } else { high = middle }
    }
    f64::midpoint(low, high)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::moist_air::MoistAir;

    /// A wet thing in the shade is as cold as the wet bulb of ASHRAE; in the sun it throws off a few hundred W/m2 (300 to 500 while
    /// it is wet: from memory).
    #[test]
    fn a_wet_roof_is_a_wet_bulb() {
        let pressure = 101_325.0;
        for (celsius, humidity) in [(35.0, 0.4), (30.0, 0.8), (38.0, 0.2)] {
            let air = MoistAir::new(Temperature::celsius(celsius), humidity, pressure).unwrap();
            let above = wet_above_air(0.0, celsius, air.humidity_ratio(), pressure);
            let wet_bulb = air.wet_bulb().in_celsius();
            assert!((celsius + above - wet_bulb).abs() < 0.5, "{} beside {wet_bulb}", celsius + above);
        }
        let dry = sun_above_air(0.70, 900.0, 17.0) - sky_below_air(1.0, CLEAR_SKY_W_PER_M2, 17.0);
        let air = MoistAir::new(Temperature::celsius(30.0), 0.5, pressure).unwrap();
        let wet = wet_above_air(dry, 30.0, air.humidity_ratio(), pressure);
        let thrown_off = 17.0 * (dry - wet);
        assert!((300.0..=600.0).contains(&thrown_off), "{thrown_off} W/m2");
    }

    /// 30 °C, 900 W/m2, absorptance 0.70, film 17: 63.4 °C (derived; a clear sky above it, emittance 1).
    #[test]
    fn iron_in_the_sun() {
        let above = sun_above_air(0.70, 900.0, 17.0) - sky_below_air(1.0, CLEAR_SKY_W_PER_M2, 17.0);
        assert!((30.0 + above - 63.4).abs() < 0.05);
        // Limewashed, 0.25: 39.5 °C.
        let white = sun_above_air(0.25, 900.0, 17.0) - sky_below_air(1.0, CLEAR_SKY_W_PER_M2, 17.0);
        assert!((30.0 + white - 39.5).abs() < 0.05);
        assert!((outer_film(3.0) - 17.1).abs() < 1e-12);
    }
}
