//! How hard heat bears on broilers, and what it costs them.
//!
//! Source: Tao and Xin, Trans. ASAE 46(2), 2003: males of 46 days and 2.8 kg at 35 to 41 °C, 0.2 to 1.2 m/s. For birds of
//! other ages and sizes it gives bands, no verdict.

use super::HouseHour;
use crate::moist_air::{self, MoistAir};
use quantity::Temperature;

/// Air speeds that were measured, m/s.
pub const MEASURED_SPEED: (f64, f64) = (0.2, 1.2);

/// Temperature, humidity and velocity index, °C: (0.85 dry bulb + 0.15 wet bulb) v^−0.058, the speed held within what was
/// measured.
pub fn index(dry_bulb_c: f64, wet_bulb_c: f64, speed_m_s: f64) -> f64 {
    let speed = speed_m_s.clamp(MEASURED_SPEED.0, MEASURED_SPEED.1);
    (0.85 * dry_bulb_c + 0.15 * wet_bulb_c) * speed.powf(-0.058)
}

/// How hard, for birds of 2 to 3 kg over hours (our judgement, conservative).
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Band {
    /// Below 27.
    Comfort,
    /// 27 to 30.
    Warm,
    /// 30 to 33.
    Alert,
    /// 33 to 36.
    Danger,
    /// From 36.
    Emergency,
}

impl Band {
    /// The stable name.
    pub fn name(self) -> &'static str {
        match self {
            Band::Comfort => "comfort",
            Band::Warm => "warm",
            Band::Alert => "alert",
            Band::Danger => "danger",
            Band::Emergency => "emergency",
        }
    }
}

/// Where the bands begin, °C of the index.
const BEGIN: [(f64, Band); 4] =
    [(36.0, Band::Emergency), (33.0, Band::Danger), (30.0, Band::Alert), (27.0, Band::Warm)];
/// What a grown bird likes, °C: younger ones like it warmer, and their index is banded that much lower (our judgement).
const LIKED_BY_GROWN_C: f64 = 21.0;

/// The band of an index at an age whose comfort temperature is `comfort_c`.
pub fn band(index: f64, comfort_c: f64) -> Band {
    let as_grown = index - (comfort_c - LIKED_BY_GROWN_C).max(0.0);
    BEGIN.iter().find(|(from, _)| as_grown >= *from).map_or(Band::Comfort, |(_, band)| *band)
}

/// Most that young birds are allowed of that in the wet bulb, K: damp heat is left by the breath alone (our judgement).
pub const YOUNGER_BY_IN_DAMP_K: f64 = 4.0;

/// How hard an index bears, 0 for comfort to 4 for an emergency, on birds that like it warmer than grown ones by `younger_by`.
pub fn step_of_index(index: f64, younger_by: f64) -> f64 {
    f64::from(band(index, LIKED_BY_GROWN_C + younger_by) as u8)
}

/// How hard the dry bulb alone bears: 1 from 28 °C, 2 from 32, 4 from 35 (common practice, no source).
pub fn step_of_dry_bulb(dry_bulb_c: f64, younger_by: f64) -> f64 {
    step(dry_bulb_c - younger_by, [28.0, 32.0, 35.0])
}

/// How hard the wet bulb alone bears: 1 from 26 °C, 2 from 28, 4 from 30 (common practice, no source).
pub fn step_of_wet_bulb(wet_bulb_c: f64, younger_by: f64) -> f64 {
    step(wet_bulb_c - younger_by.min(YOUNGER_BY_IN_DAMP_K), [26.0, 28.0, 30.0])
}

fn step(celsius: f64, [look, act, emergency]: [f64; 3]) -> f64 {
    if celsius >= emergency {
        4.0
    } else if celsius >= act {
        2.0
    } else {
        f64::from(u8::from(celsius >= look))
    }
}

/// Heat stress of an hour of a house at a pressure in Pa: the index, and the [`worst`] of what is known; `None` before anything
/// is wanted of it.
pub fn of_hour(hour: &HouseHour, pressure_pa: f64) -> Option<(f64, Band)> {
    let air = MoistAir::new(Temperature::celsius(hour.inside_c), hour.humidity, pressure_pa)?;
    let wet_bulb_c = air.wet_bulb().in_celsius();
    let index = index(hour.inside_c, wet_bulb_c, hour.air_speed_m_s);
    Some((index, worst(index, hour.inside_c, wet_bulb_c, hour.target_c?)))
}

/// The worst of what index, dry bulb and wet bulb say each: none of them alone may calm.
pub fn worst(index: f64, dry_bulb_c: f64, wet_bulb_c: f64, comfort_c: f64) -> Band {
    let younger_by = (comfort_c - LIKED_BY_GROWN_C).max(0.0);
    let steps = [
        step_of_index(index, younger_by),
        step_of_dry_bulb(dry_bulb_c, younger_by),
        step_of_wet_bulb(wet_bulb_c, younger_by),
    ];
    const BANDS: [Band; 5] = [Band::Comfort, Band::Warm, Band::Alert, Band::Danger, Band::Emergency];
    BANDS[(steps.into_iter().fold(0.0, f64::max) as usize).min(4)]
}

/// Hours in each band, comfort first.
pub fn hours_in_bands(hours: &[HouseHour], altitude_m: f64) -> [usize; 5] {
    let pressure = moist_air::pressure_at(altitude_m);
    let mut counts = [0; 5];
    for (_, band) in hours.iter().filter_map(|hour| of_hour(hour, pressure)) {
        counts[band as usize] += 1;
    }
    counts
}

/// Share of feed that birds of more than three weeks leave, low to high, by the mean temperature of the day: 1 to 1.5 % for
/// each K from 25 to 30 °C, 2.5 to 5 % beyond (from memory, wide). Gain falls by at least as much.
pub fn feed_left(day_mean_c: f64) -> (f64, f64) {
    let warm = (day_mean_c.min(30.0) - 25.0).max(0.0);
    let hot = (day_mean_c - 30.0).max(0.0);
    let share = |each_warm: f64, each_hot: f64| (each_warm * warm + each_hot * hot).min(1.0);
    (share(0.01, 0.025), share(0.015, 0.05))
}

#[cfg(test)]
mod tests {
    use super::*;

    /// 35 °C, 50 % (wet bulb 26.1 °C): 33.7 without speed; 35.1 at 0.5 m/s; 33.3 at 1.2 m/s (derived; printed rounding).
    #[test]
    fn a_hot_afternoon() {
        assert!((0.85 * 35.0 + 0.15 * 26.1 - 33.7_f64).abs() < 0.05);
        // Worked on from 33.7, so rounded twice.
        assert!((index(35.0, 26.1, 0.5) - 35.1).abs() < 0.1);
        assert!((index(35.0, 26.1, 1.2) - 33.3).abs() < 0.1);
        assert_eq!(index(35.0, 26.1, 4.0), index(35.0, 26.1, 1.2), "not measured beyond");
        assert_eq!(index(35.0, 26.1, 0.0), index(35.0, 26.1, 0.2));
    }

    #[test]
    fn bands_follow_the_age() {
        assert_eq!(band(26.9, 21.0), Band::Comfort);
        assert_eq!(band(30.0, 21.0), Band::Alert);
        assert_eq!(band(36.0, 18.0), Band::Emergency);
        assert_eq!(band(36.0, 33.0), Band::Comfort, "day-olds like it warm");
    }

    /// 32 °C and 90 %: an index that reads as "act" beside a wet bulb of 30.6 °C that is an emergency.
    #[test]
    fn damp_heat_is_seen_by_the_wet_bulb_alone() {
        let air = MoistAir::new(Temperature::celsius(32.0), 0.9, 101_325.0).unwrap();
        let wet = air.wet_bulb().in_celsius();
        assert!((wet - 30.6).abs() < 0.1, "{wet}");
        assert_eq!(step_of_dry_bulb(32.0, 0.0), 2.0);
        assert_eq!(step_of_wet_bulb(wet, 0.0), 4.0);
        assert_eq!(step_of_wet_bulb(wet, 12.0), 1.0, "day-olds, but not all of it");
        assert_eq!(step_of_index(33.5, 0.0), 3.0);
    }

    /// 32 °C and 90 %: the index alone says alert, the wet bulb emergency. 35 °C in dry moving air: the dry bulb says it.
    #[test]
    fn the_worst_is_said() {
        assert_eq!(band(31.8, 21.0), Band::Alert);
        assert_eq!(worst(31.8, 32.0, 30.6, 21.0), Band::Emergency);
        assert_eq!(worst(31.0, 35.0, 20.0, 21.0), Band::Emergency);
        assert_eq!(worst(33.5, 31.0, 25.0, 21.0), Band::Danger);
        assert_eq!(worst(26.0, 27.0, 22.0, 21.0), Band::Comfort);
        assert_eq!(worst(36.0, 33.0, 26.0, 33.0), Band::Comfort, "day-olds like it warm");
    }

    #[test]
    fn heat_takes_the_appetite() {
        assert_eq!(feed_left(22.0), (0.0, 0.0));
        let (low, high) = feed_left(33.0);
        assert!((low - 0.125).abs() < 1e-12 && (high - 0.225).abs() < 1e-12);
    }
}
