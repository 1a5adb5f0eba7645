//! Sun on a roof: the air temperature that would give the same heat.
//!
//! Source: ASHRAE Handbook Fundamentals, sol-air temperature, coefficients from memory.

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

#[cfg(test)]
mod tests {
    use super::*;

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
