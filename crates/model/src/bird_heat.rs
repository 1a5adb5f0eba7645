//! What broilers give off: heat, water, carbon dioxide.
//!
//! Source: Pedersen and Sällvik (eds.), Climatization of Animal Houses: heat and moisture production at animal and house
//! levels, 4th report of the CIGR working group, 2002; coefficients from memory. House level and bird level are two ways
//! to split the same heat: the house level already pays for the water that litter gives up. Never use both in one balance.
//! Good for about 0.04 to 3.5 kg and 10 to 38 °C.

use quantity::{Mass, Temperature};

/// Heat bound in water given off, Wh/g (from memory; 2448 kJ/kg).
const WATER_HEAT_WH_PER_G: f64 = 0.680;
/// Carbon dioxide for each 1000 W of total heat, m3/h: the customary figure; broilers lie below it.
const CO2_M3_PER_KWH: f64 = 0.185;

/// Total heat of one broiler in air of 20 °C, W.
pub fn total_at_20c(bird: Mass) -> f64 {
    10.62 * bird.in_kilograms().powf(0.75)
}

/// How much more heat than at 20 °C a feathered bird gives off in this air: 2 % for each degree colder.
pub fn correction(air: Temperature) -> f64 {
    1.0 + 0.020 * (20.0 - air.in_celsius())
}

/// The correction of chicks of less than about ten days in air below their comfort temperature: not yet warm-blooded in
/// full, they cannot burn more to keep warm, so nothing is added or taken off (our judgement).
pub const CORRECTION_OF_COLD_CHICKS: f64 = 1.0;

/// Heat that warms the house, W for each W of total heat at 20 °C, by the house-level split; none from 40 °C on.
///
/// `correction` is that of [`correction`], or [`CORRECTION_OF_COLD_CHICKS`].
pub fn sensible_share(air: Temperature, correction: f64) -> f64 {
    (0.61 * 1000.0 * correction - 0.228 * air.in_celsius().powi(2)).max(0.0) / 1000.0
}

/// Sensible heat of one broiler by the bird-level split, W, for models that let the litter evaporate by themselves.
pub fn sensible_of_bird_alone(bird: Mass, air: Temperature) -> f64 {
    total_at_20c(bird) * sensible_share_of_bird_alone(air, correction(air))
}

/// Heat that warms the air by the bird-level split, W for each W of total heat at 20 °C; below 0 where the bird is too hot
/// to warm anything (from about 40 °C on), not clamped.
///
/// `correction` is that of [`correction`], or [`CORRECTION_OF_COLD_CHICKS`].
pub fn sensible_share_of_bird_alone(air: Temperature, correction: f64) -> f64 {
    0.67 * correction - 9.8e-11 * air.in_celsius().powi(6)
}

/// Heat at an hour of the day over the mean of the day: least at `least_at_h`, greatest twelve hours later, mean 1.
///
/// - `amplitude`: 0 to 1; 0.08 under near-continuous light, 0.15 to 0.25 with a real dark period (our judgement)
///
/// Source: the sine of the CIGR working group, from memory.
pub fn activity(hour: f64, amplitude: f64, least_at_h: f64) -> f64 {
    1.0 - amplitude * (std::f64::consts::TAU / 24.0 * (hour + 6.0 - least_at_h)).sin()
}

/// Sensible heat of one broiler on straw, W: Pedersen and Thomsen, J. agric. Engng Res. 75, 2000. The shortfall of 17 % is
/// published, the bracket from memory. Below 0 beyond 35 °C, where it was not measured.
pub fn sensible_on_straw(bird: Mass, air: Temperature) -> f64 {
    let share = 0.8 - 1.85e-7 * (air.in_celsius() + 10.0).powi(4);
    0.83 * total_at_20c(bird) * correction(air) * share
}

/// Water that goes with latent heat, g/h.
pub fn moisture_g_per_h(latent_w: f64) -> f64 {
    latent_w / WATER_HEAT_WH_PER_G
}

/// Carbon dioxide that goes with total heat, m3/h.
pub fn carbon_dioxide_m3_per_h(total_w: f64) -> f64 {
    CO2_M3_PER_KWH * total_w / 1000.0
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn two_percent_for_each_degree() {
        assert!((correction(Temperature::celsius(10.0)) - 1.2).abs() < 1e-12);
        assert!((correction(Temperature::celsius(30.0)) - 0.8).abs() < 1e-12);
    }

    #[test]
    fn birds_are_stillest_at_their_hour() {
        assert!((activity(2.0, 0.08, 2.0) - 0.92).abs() < 1e-12);
        assert!((activity(14.0, 0.08, 2.0) - 1.08).abs() < 1e-12);
        let mean = (0..24).map(|hour| activity(f64::from(hour), 0.2, 1.5)).sum::<f64>() / 24.0;
        assert!((mean - 1.0).abs() < 1e-12);
    }

    /// Both parts of the split vanish at 40 °C, a fair sign that its coefficients were recalled rightly.
    #[test]
    fn a_very_hot_bird_warms_nothing() {
        let share = |celsius| {
            let air = Temperature::celsius(celsius);
            sensible_share(air, correction(air))
        };
        assert!(share(30.0) > 0.2 && share(40.0) < 0.002);
        assert_eq!(share(41.0), 0.0);
    }
}
