//! Sun and daylength from latitude and day of the year.
//!
//! Two ways: Spencer's short series (good to 0.03 h between the tropics) and the solar position algorithm of Reda and
//! Andreas (2004) through a library, for the minute.

use std::f64::consts::PI;

use quantity::CivilDay;

/// Angle of the year, radians: 2π (N − 1) / 365 for day of the year N.
fn day_angle(day_of_year: f64) -> f64 {
    2.0 * PI * (day_of_year - 1.0) / 365.0
}

/// Declination of the sun, degrees, from the day of the year (1 to 366).
///
/// Source: Spencer 1971, in the form printed by general solar libraries; good to about 0.035°.
pub fn declination_deg(day_of_year: f64) -> f64 {
    let b = day_angle(day_of_year);
    (0.006918 - 0.399912 * b.cos() + 0.070257 * b.sin() - 0.006758 * (2.0 * b).cos()
        + 0.000907 * (2.0 * b).sin()
        - 0.002697 * (3.0 * b).cos()
        + 0.00148 * (3.0 * b).sin())
    .to_degrees()
}

/// Equation of time, minutes: sundial less clock. Source: Spencer 1971.
pub fn equation_of_time_min(day_of_year: f64) -> f64 {
    let b = day_angle(day_of_year);
    1440.0 / (2.0 * PI)
        * (0.0000075 + 0.001868 * b.cos()
            - 0.032077 * b.sin()
            - 0.014615 * (2.0 * b).cos()
            - 0.040849 * (2.0 * b).sin())
}

/// Sunshine above the air on a plane facing the sun, W/m2, for a solar constant of 1361 W/m2. Source: Spencer 1971.
pub fn extraterrestrial_w_per_m2(day_of_year: f64) -> f64 {
    let b = day_angle(day_of_year);
    1361.0
        * (1.00011
            + 0.034221 * b.cos()
            + 0.00128 * b.sin()
            + 0.000719 * (2.0 * b).cos()
            + 0.000077 * (2.0 * b).sin())
}

/// Hours from sunrise to sunset by the sunrise equation with Spencer's declination.
///
/// - `latitude_deg`: -90 to 90, north positive
/// - `horizon_deg`: how far below the horizon the sun's centre stands then; 0.8333 for the upper limb with refraction
///
/// 24 in the polar day, 0 in the polar night. Against an almanac: within 0.025 h up to 15° of latitude, 0.08 h at 45°.
pub fn daylength_h(latitude_deg: f64, day_of_year: f64, horizon_deg: f64) -> f64 {
    let (latitude, declination) = (latitude_deg.to_radians(), declination_deg(day_of_year).to_radians());
    let cosine = (-horizon_deg.to_radians().sin() - latitude.sin() * declination.sin())
        / (latitude.cos() * declination.cos());
    2.0 * cosine.clamp(-1.0, 1.0).acos().to_degrees() / 15.0
}

/// Sunrise, noon and sunset of an almanac, in hours UTC counted from 0:00 of the day.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct SunTimes {
    /// Upper limb on the horizon in the morning.
    pub sunrise_utc_h: f64,
    /// Highest sun.
    pub transit_utc_h: f64,
    /// Upper limb on the horizon in the evening.
    pub sunset_utc_h: f64,
}

impl SunTimes {
    /// Hours from sunrise to sunset.
    pub fn daylength_h(&self) -> f64 {
        self.sunset_utc_h - self.sunrise_utc_h
    }
}

/// Sun times by the solar position algorithm, for the civil day around local solar noon; `None` in polar day or night,
/// or for coordinates out of range.
///
/// - `latitude_deg`: -90 to 90; `longitude_deg`: -180 to 180, east positive
///
/// Source: Reda and Andreas 2004, through the library `solar-positioning`. Sea level, standard refraction.
pub fn sun_times(latitude_deg: f64, longitude_deg: f64, day: CivilDay) -> Option<SunTimes> {
    use solar_positioning::time::JulianDate;
    use solar_positioning::{Horizon, Location, SolarEvents};
    /// Earth's clock behind the atom's, seconds; 69.2 in 2020 to 2026, and a minute of error moves the sun by 0.003 s of arc.
    const DELTA_T_S: f64 = 69.2;
    let (month, date) = (day.month().unsigned_abs().into(), day.day().unsigned_abs().into());
    let midnight =
        JulianDate::from_utc(day.year().into(), month, date, 0, 0, 0.0, DELTA_T_S).ok()?.julian_date();
    let noon = midnight + 0.5 - longitude_deg / 360.0;
    let sun = SolarEvents::new();
    let place = Location { latitude: latitude_deg, longitude: longitude_deg };
    let transit = sun.next_transit_from_julian(noon - 0.05, noon + 0.05, longitude_deg, DELTA_T_S).ok()??;
    let (before, after) = (transit - 0.5, transit + 0.5);
    let rise =
        sun.next_rise_from_julian(before, transit, place, DELTA_T_S, Horizon::SunriseSunset).ok()??;
    let set = sun.next_set_from_julian(transit, after, place, DELTA_T_S, Horizon::SunriseSunset).ok()??;
    let hours = |instant: f64| (instant - midnight) * 24.0;
    Some(SunTimes { sunrise_utc_h: hours(rise), transit_utc_h: hours(transit), sunset_utc_h: hours(set) })
}

/// Where the sun stands.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct SunPosition {
    /// From straight up, degrees, without refraction.
    pub zenith_deg: f64,
    /// From north by east, 0 to 360 degrees.
    pub azimuth_deg: f64,
}

/// The sun by Spencer's series at an hour UTC of a day of the year; within half a degree of an almanac.
///
/// - `latitude_deg`: -90 to 90, north positive; `longitude_deg`: -180 to 180, east positive
pub fn sun_position(latitude_deg: f64, longitude_deg: f64, day_of_year: f64, hour_utc: f64) -> SunPosition {
    // The series is of the day's beginning: the hour moves it on.
    let day = day_of_year + hour_utc / 24.0;
    let solar_hour = hour_utc + longitude_deg / 15.0 + equation_of_time_min(day) / 60.0;
    let hour_angle = (15.0 * (solar_hour - 12.0)).to_radians();
    let (latitude, declination) = (latitude_deg.to_radians(), declination_deg(day).to_radians());
    let up = latitude.sin() * declination.sin() + latitude.cos() * declination.cos() * hour_angle.cos();
    let east = -declination.cos() * hour_angle.sin();
    let north = latitude.cos() * declination.sin() - latitude.sin() * declination.cos() * hour_angle.cos();
    SunPosition {
        zenith_deg: up.clamp(-1.0, 1.0).acos().to_degrees(),
        azimuth_deg: east.atan2(north).to_degrees().rem_euclid(360.0),
    }
}

/// Sun on level ground below a clear sky, W/m2; 0 at night. Source: Haurwitz 1945.
pub fn clear_sky_w_per_m2(zenith_deg: f64) -> f64 {
    let up = zenith_deg.to_radians().cos();
    if up > 0.0 { 1098.0 * up * (-0.059 / up).exp() } else { 0.0 }
}

/// What clouds let through of it, by their share of the sky. Source: Kasten and Czeplak 1980, from memory.
pub fn through_clouds(cloud_share: f64) -> f64 {
    1.0 - 0.75 * cloud_share.powf(3.4)
}

/// Day length in hours at a latitude on a day counted from 1970-01-01: sunrise to sunset of the upper limb, by Spencer's
/// declination.
pub fn daylength_on(latitude_deg: f64, day_number: f64) -> f64 {
    let of_year = f64::from(CivilDay::from_number(day_number as i32).day_of_year());
    daylength_h(latitude_deg, of_year, UPPER_LIMB_DEG)
}

/// The upper limb on the horizon with standard refraction, degrees.
pub const UPPER_LIMB_DEG: f64 = 0.8333;

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_pole_has_no_sunrise_and_the_series_still_answers() {
        let midsummer = CivilDay::new(2025, 6, 21).unwrap();
        assert_eq!(sun_times(80.0, 0.0, midsummer), None);
        assert_eq!(daylength_h(80.0, 172.0, 0.8333), 24.0);
        assert_eq!(daylength_h(-80.0, 172.0, 0.8333), 0.0);
    }

    #[test]
    fn hemispheres_mirror_half_a_year_apart() {
        let north = daylength_h(13.6, 172.0, 0.8333);
        let south = daylength_h(-13.6, 355.0, 0.8333);
        assert!((north - south).abs() < 2.0 / 60.0);
    }

    #[test]
    fn noon_moves_with_longitude() {
        let day = CivilDay::new(2027, 9, 14).unwrap();
        let here = sun_times(-13.6, 32.6, day).unwrap();
        let there = sun_times(-13.6, 170.0, day).unwrap();
        assert!((here.transit_utc_h - there.transit_utc_h - (170.0 - 32.6) / 15.0).abs() < 0.01);
        assert!((here.daylength_h() - there.daylength_h()).abs() < 0.01);
    }
}
