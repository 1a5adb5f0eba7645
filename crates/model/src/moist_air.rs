//! Moist air: what it weighs, holds and carries.
//!
//! Source: ASHRAE Handbook Fundamentals 2017, chapter 1 (equations as recalled; every row of a table made with a general
//! psychrometric library agrees). Saturation changes from ice to water at 0.01 °C, the triple point.

use quantity::Temperature;

/// Mass of water vapour over mass of dry air of the same pressure and temperature: the ratio of molar masses.
pub(crate) const WATER_TO_AIR: f64 = 0.621_945;
/// Gas constant of dry air, J/(kg K).
const GAS_CONSTANT: f64 = 287.042;
/// 0 °C in kelvin.
const ZERO_C_IN_K: f64 = 273.15;
/// The triple point of water, °C: below it vapour is in balance with ice.
const TRIPLE_POINT_C: f64 = 0.01;
/// Colder than any air this formula was made for, °C.
const COLDEST_C: f64 = -100.0;

/// Pressure of the standard atmosphere at a height above the sea, Pa.
///
/// - `height_m`: -5000 to 11 000 m
pub fn pressure_at(height_m: f64) -> f64 {
    101_325.0 * (1.0 - 2.25577e-5 * height_m).powf(5.2559)
}

/// Density of dry air, kg/m3, at a pressure in Pa.
pub fn dry_density(air: Temperature, pressure_pa: f64) -> f64 {
    pressure_pa / (GAS_CONSTANT * (air.in_celsius() + ZERO_C_IN_K))
}

/// Pressure of saturated water vapour, Pa: over ice below 0.01 °C, over water from there on.
///
/// - `air`: -100 to 200 °C
pub fn saturation_pressure(air: Temperature) -> f64 {
    let t = air.in_celsius() + ZERO_C_IN_K;
    let ln = if air.in_celsius() < TRIPLE_POINT_C {
        -5.674_535_9e3 / t + 6.392_524_7 - 9.677_843_0e-3 * t
            + 6.221_570_1e-7 * t.powi(2)
            + 2.074_782_5e-9 * t.powi(3)
            - 9.484_024_0e-13 * t.powi(4)
            + 4.163_501_9 * t.ln()
    } else {
        -5.800_220_6e3 / t + 1.391_499_3 - 4.864_023_9e-2 * t + 4.176_476_8e-5 * t.powi(2)
            - 1.445_209_3e-8 * t.powi(3)
            + 6.545_967_3 * t.ln()
    };
    ln.exp()
}

/// Air with the water in it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct MoistAir {
    air: Temperature,
    pressure_pa: f64,
    vapour_pa: f64,
}

impl MoistAir {
    /// Air at a relative humidity (0 to 1) and a pressure in Pa.
    ///
    /// `None` where that cannot be: humidity outside 0 to 1, or vapour alone at or above the whole pressure.
    pub fn new(air: Temperature, humidity_share: f64, pressure_pa: f64) -> Option<MoistAir> {
        let vapour_pa = humidity_share * saturation_pressure(air);
        ((0.0..=1.0).contains(&humidity_share) && vapour_pa < pressure_pa).then_some(MoistAir {
            air,
            pressure_pa,
            vapour_pa,
        })
    }

    /// Pressure of the water vapour, Pa.
    pub fn vapour_pressure(self) -> f64 {
        self.vapour_pa
    }

    /// Water, kg for each kg of dry air.
    pub fn humidity_ratio(self) -> f64 {
        humidity_ratio(self.vapour_pa, self.pressure_pa)
    }

    /// Heat content above dry air at 0 °C, J for each kg of dry air.
    pub fn enthalpy(self) -> f64 {
        let t = self.air.in_celsius();
        1006.0 * t + self.humidity_ratio() * (2_501_000.0 + 1860.0 * t)
    }

    /// Heat that a kg of dry air with its water takes for each degree, J/(kg K).
    pub fn heat_capacity(self) -> f64 {
        1006.0 + 1860.0 * self.humidity_ratio()
    }

    /// Volume of a kg of dry air with its water, m3.
    pub fn specific_volume(self) -> f64 {
        (1.0 + 1.607_858 * self.humidity_ratio()) / dry_density(self.air, self.pressure_pa)
    }

    /// Mass of a cubic metre, water included, kg.
    pub fn density(self) -> f64 {
        (1.0 + self.humidity_ratio()) / self.specific_volume()
    }

    /// The temperature at which dew (below 0.01 °C: frost) begins. Saturation only ever rises, so there is one.
    pub fn dew_point(self) -> Temperature {
        zero_between(COLDEST_C, self.air.in_celsius(), |t| {
            saturation_pressure(Temperature::celsius(t)) - self.vapour_pa
        })
    }

    /// The temperature of a wetted bulb in moving air. Just about 0 °C a wet and an iced bulb can both stand still: the wet one
    /// is taken, and the iced one only where no wet one could.
    pub fn wet_bulb(self) -> Temperature {
        let (humidity, air) = (self.humidity_ratio(), self.air.in_celsius());
        if self.humidity_at_wet_bulb(0.0) <= humidity {
            zero_between(0.0, air, |bulb| self.humidity_at_wet_bulb(bulb) - humidity)
        } else {
            zero_between(COLDEST_C, air.min(0.0), |bulb| self.humidity_at_iced_bulb(bulb) - humidity)
        }
    }

    /// The water in air of this temperature whose wetted bulb stands at `bulb`, °C.
    fn humidity_at_wet_bulb(self, bulb: f64) -> f64 {
        let t = self.air.in_celsius();
        ((2501.0 - 2.326 * bulb) * self.saturated_at(bulb) - 1.006 * (t - bulb))
            / (2501.0 + 1.86 * t - 4.186 * bulb)
    }

    /// The same for a bulb of ice.
    fn humidity_at_iced_bulb(self, bulb: f64) -> f64 {
        let t = self.air.in_celsius();
        ((2830.0 - 0.24 * bulb) * self.saturated_at(bulb) - 1.006 * (t - bulb))
            / (2830.0 + 1.86 * t - 2.1 * bulb)
    }

    fn saturated_at(self, celsius: f64) -> f64 {
        humidity_ratio(saturation_pressure(Temperature::celsius(celsius)), self.pressure_pa)
    }
}

/// Relative humidity of air with a humidity ratio, share; above 1 where such air would be fog.
pub fn relative_humidity(air: Temperature, humidity_ratio: f64, pressure_pa: f64) -> f64 {
    pressure_pa * humidity_ratio / (WATER_TO_AIR + humidity_ratio) / saturation_pressure(air)
}

/// Heat that a kg of water takes to evaporate, J: from memory, within 0.3 % from 0 to 50 °C.
pub fn evaporation_heat(water: Temperature) -> f64 {
    2_501_000.0 - 2361.0 * water.in_celsius()
}

/// Water for each kg of dry air, kg, from the pressure of the vapour and the whole pressure, Pa.
pub fn humidity_ratio(vapour_pa: f64, pressure_pa: f64) -> f64 {
    WATER_TO_AIR * vapour_pa / (pressure_pa - vapour_pa)
}

/// The temperature between two at which a rising function passes zero, to a thousand-millionth of a degree: false position
/// with the stale end pulled in (Illinois), halved where that gains too little.
fn zero_between(mut low: f64, mut high: f64, rising: impl Fn(f64) -> f64) -> Temperature {
    const CLOSE_K: f64 = 1e-9;
    let (mut at_low, mut at_high) = (rising(low), rising(high));
    if at_low >= 0.0 {
        return Temperature::celsius(low);
    }
    if at_high <= 0.0 {
        return Temperature::celsius(high);
    }
    let mut halve = false;
    while high - low > CLOSE_K {
        let width = high - low;
        let middle = if halve { low + width / 2.0 } else { low - at_low * width / (at_high - at_low) };
        // A step that lands on an end would never narrow the other side.
        let middle = middle.clamp(low + CLOSE_K / 4.0, high - CLOSE_K / 4.0);
        let at = rising(middle);
        if at < 0.0 {
            (low, at_low) = (middle, at);
            at_high /= 2.0;
        } else {
            (high, at_high) = (middle, at);
            at_low /= 2.0;
        }
        halve = high - low > width / 2.0;
    }
    Temperature::celsius(f64::midpoint(low, high))
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Hand check (derived): 25 °C, 50 %, 101 325 Pa. Tolerances are the rounding of the printed values.
    #[test]
    fn a_mild_day() {
        let warm = Temperature::celsius(25.0);
        let air = MoistAir::new(warm, 0.5, 101_325.0).unwrap();
        assert!((saturation_pressure(warm) - 3169.2).abs() < 0.05);
        assert!((air.humidity_ratio() - 0.009_881).abs() < 1e-6);
        assert!((air.wet_bulb().in_celsius() - 17.89).abs() < 0.01);
        assert!((air.dew_point().in_celsius() - 13.86).abs() < 0.01);
        assert!((air.enthalpy() - 50_320.0).abs() < 10.0);
        assert!((air.specific_volume() - 0.8580).abs() < 1e-4);
    }

    #[test]
    fn what_cannot_be_is_refused() {
        let hot = Temperature::celsius(90.0);
        assert!(MoistAir::new(hot, 1.01, 101_325.0).is_none());
        assert!(MoistAir::new(hot, 1.0, 60_000.0).is_none(), "it would boil");
        assert!(MoistAir::new(hot, 1.0, 101_325.0).is_some());
    }

    #[test]
    fn saturated_air_is_at_its_own_dew_point_and_wet_bulb() {
        for celsius in [-8.0, 0.0, 12.0, 40.0] {
            let air = MoistAir::new(Temperature::celsius(celsius), 1.0, 90_000.0).unwrap();
            assert!((air.dew_point().in_celsius() - celsius).abs() < 1e-6);
            assert!((air.wet_bulb().in_celsius() - celsius).abs() < 1e-6);
        }
    }

    /// Below 0 °C and across it, where the bulb goes from ice to water: what is found gives the humidity back.
    #[test]
    fn a_wet_bulb_gives_the_humidity_back() {
        for celsius in [-15.0, -0.5, 0.5, 6.0, 33.0, 55.0] {
            for share in [0.02, 0.3, 0.8] {
                let air = MoistAir::new(Temperature::celsius(celsius), share, 90_000.0).unwrap();
                let bulb = air.wet_bulb().in_celsius();
                let of_bulb =
                    if bulb < 0.0 { air.humidity_at_iced_bulb(bulb) } else { air.humidity_at_wet_bulb(bulb) };
                let back = of_bulb - air.humidity_ratio();
                assert!(back.abs() < 1e-11, "{celsius} {share}: {bulb} {back}");
                let dew = saturation_pressure(air.dew_point());
                assert!((dew - air.vapour_pressure()).abs() < 1e-6, "{celsius} {share}");
            }
        }
    }

    #[test]
    fn air_thins_with_height() {
        assert_eq!(pressure_at(0.0), 101_325.0);
        // ASHRAE Fundamentals 2017, chapter 1, table 1, from memory: 89.875 kPa at 1000 m.
        assert!((pressure_at(1000.0) - 89_875.0).abs() < 5.0);
    }
}
