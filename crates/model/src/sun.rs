//! Where the sun stands, and what of it falls on a flat roof.
//!
//! Spencer's short series: within half a degree of an almanac.

use crate::light::{declination_deg, equation_of_time_min};

/// The sun as seen from a place.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Sun {
    /// From straight up, degrees; above 90 it is night.
    pub zenith_deg: f64,
    /// From north by east, degrees.
    pub azimuth_deg: f64,
}

/// The sun over a place.
///
/// - `latitude_deg`: -90 to 90, north positive; `longitude_deg`: -180 to 180, east positive
/// - `day_of_year`: 1 to 366; `utc_h`: hours since midnight UTC
///
/// Source: declination and equation of time of Spencer 1971; spherical triangle.
pub fn position(latitude_deg: f64, longitude_deg: f64, day_of_year: f64, utc_h: f64) -> Sun {
    let solar_h = utc_h + longitude_deg / 15.0 + equation_of_time_min(day_of_year) / 60.0;
    at_solar_hour(latitude_deg, day_of_year, solar_h)
}

/// The sun at an hour by the sun itself: it is highest at 12.
pub fn at_solar_hour(latitude_deg: f64, day_of_year: f64, solar_h: f64) -> Sun {
    let turned = (15.0 * (solar_h - 12.0)).to_radians();
    let (latitude, declination) = (latitude_deg.to_radians(), declination_deg(day_of_year).to_radians());
    let up = latitude.sin() * declination.sin() + latitude.cos() * declination.cos() * turned.cos();
    let east = -declination.cos() * turned.sin();
    let north = latitude.cos() * declination.sin() - latitude.sin() * declination.cos() * turned.cos();
    Sun {
        zenith_deg: up.clamp(-1.0, 1.0).acos().to_degrees(),
        azimuth_deg: east.atan2(north).to_degrees().rem_euclid(360.0),
    }
}

impl Sun {
    /// How far the air lifts the sun's picture above where it stands, degrees, at sea level and 12 °C; none far below the
    /// horizon. Source: Bennett 1982 in the form of Reda and Andreas 2004.
    pub fn lifted_deg(self) -> f64 {
        let height = 90.0 - self.zenith_deg;
        if height < -0.84 {
            return 0.0;
        }
        let bent = (height + 10.3 / (height + 5.11)).to_radians().tan();
        1013.25 / 1010.0 * 283.0 / (273.0 + 12.0) * 1.02 / (60.0 * bent)
    }

    /// Sun and sky on flat ground under a clear sky, W/m2. Source: Haurwitz 1945.
    pub fn clear_sky_w_per_m2(self) -> f64 {
        let high = (self.zenith_deg - self.lifted_deg()).to_radians().cos();
        if high > 0.0 { 1098.0 * high * (-0.059 / high).exp() } else { 0.0 }
    }
}

/// What clouds leave of a clear sky's sun. Source: Kasten and Czeplak 1980, from memory.
///
/// - `cloud`: share of the sky, 0 to 1
pub fn through_cloud(clear_w_per_m2: f64, cloud: f64) -> f64 {
    clear_w_per_m2 * (1.0 - 0.75 * cloud.powf(3.4))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn noon_is_highest_and_due_north_or_south() {
        let south = at_solar_hour(-30.0, 80.0, 12.0);
        let north = at_solar_hour(45.0, 80.0, 12.0);
        assert!(south.azimuth_deg.min(360.0 - south.azimuth_deg) < 1e-6, "{south:?}");
        assert!((north.azimuth_deg - 180.0).abs() < 1e-6);
        assert!(at_solar_hour(45.0, 80.0, 9.0).zenith_deg > north.zenith_deg);
        assert!(at_solar_hour(45.0, 80.0, 9.0).azimuth_deg < 180.0, "the morning sun is in the east");
    }

    #[test]
    fn there_is_no_sun_at_night_and_less_under_cloud() {
        assert_eq!(at_solar_hour(0.0, 80.0, 0.0).clear_sky_w_per_m2(), 0.0);
        assert_eq!(through_cloud(1000.0, 0.0), 1000.0);
        assert_eq!(through_cloud(1000.0, 1.0), 250.0);
    }
}
