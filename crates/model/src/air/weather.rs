//! A day of weather by the hour from what a grower knows: the coldest and the warmest.

use quantity::Temperature;

use super::Hour;
use crate::light::{self, daylength_h};
use crate::moist_air::saturation_pressure;

/// A day that has both the coldest night and the warmest afternoon.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Day {
    /// Coldest of the night, °C.
    pub coldest_c: f64,
    /// Warmest of the day, °C; not below the coldest.
    pub warmest_c: f64,
    /// How far below the coldest dew would begin, K: 0 where dew falls, 2 to 5 in dry months (FAO-56, from memory).
    pub dew_below_k: f64,
    /// Mean wind at the height of the opening, m/s.
    pub wind_m_per_s: f64,
    /// Share of the sky in cloud, 0 to 1.
    pub cloud: f64,
    /// Latitude, degrees, north positive.
    pub latitude_deg: f64,
    /// Day of the year, 1 to 366.
    pub day_of_year: f64,
}

/// How long after noon it is warmest, h, and how fast the evening cools. Source: Parton and Logan 1981, for air at 1.5 m; from
/// memory.
const LAG_H: f64 = 1.86;
const COOLING: f64 = 2.2;
/// Wind of the night as a share of the day's mean: our judgement.
const NIGHT_WIND: f64 = 0.4;

impl Day {
    /// The middles of its 24 hours, by the sun: the first is half past midnight.
    ///
    /// Temperature by a sine in daylight and an exponential after sunset, joined without a step (Parton and Logan 1981);
    /// the water in the air stays what it is at the coldest; wind is calm at night and strongest at 15 h (our judgement).
    pub fn hours(&self) -> [Hour; 24] {
        let light_h = daylength_h(self.latitude_deg, self.day_of_year, 0.8333).clamp(1.0, 23.0);
        let vapour = saturation_pressure(Temperature::celsius(self.coldest_c - self.dew_below_k));
        // By the sun, so at longitude 0 less what the sundial is ahead of the clock.
        let ahead_h = light::equation_of_time_min(self.day_of_year) / 60.0;
        std::array::from_fn(|hour| {
            let solar_h = hour as f64 + 0.5;
            let air_c = self.air_at(solar_h, light_h);
            let sun = light::sun_position(self.latitude_deg, 0.0, self.day_of_year, solar_h - ahead_h);
            Hour {
                outside_c: air_c,
                humidity: (vapour / saturation_pressure(Temperature::celsius(air_c))).min(1.0),
                wind_m_s: self.wind_m_per_s * wind_share(solar_h, light_h),
                sun_w_per_m2: light::clear_sky_w_per_m2(sun.zenith_deg) * light::through_clouds(self.cloud),
                pressure_pa: None,
            }
        })
    }

    fn air_at(&self, solar_h: f64, light_h: f64) -> f64 {
        let range = self.warmest_c - self.coldest_c;
        let (sunrise, sunset) = (12.0 - light_h / 2.0, 12.0 + light_h / 2.0);
        let of_day = |since: f64| {
            self.coldest_c + range * (std::f64::consts::PI * since / (light_h + 2.0 * LAG_H)).sin()
        };
        if (sunrise..=sunset).contains(&solar_h) {
            return of_day(solar_h - sunrise);
        }
        let dark = 24.0 - light_h;
        let since = (solar_h - sunset).rem_euclid(24.0);
        let left = |since: f64| (-COOLING * since / dark).exp();
        // Scaled so that it is the coldest just at sunrise.
        self.coldest_c + (of_day(light_h) - self.coldest_c) * (left(since) - left(dark)) / (1.0 - left(dark))
    }
}

/// Wind of an hour over the mean of the day.
fn wind_share(solar_h: f64, light_h: f64) -> f64 {
    let since = solar_h - (12.0 - light_h / 2.0);
    if !(0.0..=light_h).contains(&since) {
        return NIGHT_WIND;
    }
    // A hump over the day, highest at 15 h, of such a height that the mean of 24 hours is 1.
    let top = (3.0 + light_h / 2.0) / light_h;
    let place = since / light_h;
    let hump = if place < top { place / top } else { (1.0 - place) / (1.0 - top) };
    NIGHT_WIND + hump.max(0.0) * (1.0 - NIGHT_WIND) * 24.0 / (light_h / 2.0)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn day() -> Day {
        Day {
            coldest_c: 12.0,
            warmest_c: 31.0,
            dew_below_k: 2.0,
            wind_m_per_s: 2.0,
            cloud: 0.0,
            latitude_deg: -13.6,
            day_of_year: 265.0,
        }
    }

    #[test]
    fn it_is_coldest_at_sunrise_and_warmest_after_noon() {
        let hours = day().hours();
        let at = |order: fn(&f64, &f64) -> std::cmp::Ordering, first: bool| {
            let mut by: Vec<(usize, f64)> = hours.iter().map(|hour| hour.outside_c).enumerate().collect();
            by.sort_by(|one, other| order(&one.1, &other.1));
            if first { by[0] } else { by[23] }
        };
        let (coldest, warmest) = (at(f64::total_cmp, true), at(f64::total_cmp, false));
        assert!((5..=6).contains(&coldest.0) && (12.0..12.8).contains(&coldest.1), "{coldest:?}");
        assert!((13..=14).contains(&warmest.0) && (30.9..=31.0).contains(&warmest.1), "{warmest:?}");
        assert!(hours.iter().all(|hour| (12.0..=31.0).contains(&hour.outside_c)));
        // No step from one hour to the next, over midnight too.
        for at in 0..24 {
            assert!((hours[at].outside_c - hours[(at + 1) % 24].outside_c).abs() < 4.0);
        }
    }

    #[test]
    fn water_stays_and_wind_has_its_mean() {
        let hours = day().hours();
        let vapour = |hour: &Hour| hour.humidity * saturation_pressure(Temperature::celsius(hour.outside_c));
        assert!(hours.iter().all(|hour| (vapour(hour) - vapour(&hours[12])).abs() < 1e-6));
        let wind = hours.iter().map(|hour| hour.wind_m_s).sum::<f64>() / 24.0;
        assert!((wind - 2.0).abs() < 0.1, "{wind}");
        assert!(hours[0].sun_w_per_m2 == 0.0 && hours[12].sun_w_per_m2 > 950.0);
    }
}
