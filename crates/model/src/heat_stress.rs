//! How hot it is to a broiler: temperature, water in the air and air that moves.

use quantity::Temperature;

use crate::moist_air::MoistAir;

/// How hard the heat is.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Band {
    /// Comfort.
    Comfort,
    /// Warm.
    Warm,
    /// Hot.
    Hot,
    /// Birds die where nothing is done.
    Danger,
    /// Birds die.
    Emergency,
}

impl Band {
    /// All, from cool to hot.
    pub const ALL: [Band; 5] = [Band::Comfort, Band::Warm, Band::Hot, Band::Danger, Band::Emergency];

    /// The stable name.
    pub fn name(self) -> &'static str {
        match self {
            Band::Comfort => "comfort",
            Band::Warm => "warm",
            Band::Hot => "hot",
            Band::Danger => "danger",
            Band::Emergency => "emergency",
        }
    }
}

/// Air speeds at which the index was measured, m/s; outside it is taken at the nearer end.
pub const MEASURED_M_PER_S: (f64, f64) = (0.2, 1.2);

/// Index of heat for broilers, °C: (0.85 dry bulb + 0.15 wet bulb) × speed^-0.058.
///
/// Source: Tao and Xin, Transactions of the ASAE 46(2), 2003: birds of 46 days and 2.8 kg, 35 to 41 °C. `None` for air that
/// cannot be.
pub fn index(air_c: f64, humidity: f64, pressure_pa: f64, speed_m_per_s: f64) -> Option<f64> {
    let wet_bulb = MoistAir::new(Temperature::celsius(air_c), humidity, pressure_pa)?.wet_bulb().in_celsius();
    let speed = speed_m_per_s.clamp(MEASURED_M_PER_S.0, MEASURED_M_PER_S.1);
    Some((0.85 * air_c + 0.15 * wet_bulb) * speed.powf(-0.058))
}

/// A grown bird's comfort, °C: what an index is held against for younger ones.
const GROWN_COMFORT_C: f64 = 21.0;
/// Where each band begins for birds of 2 to 3 kg. Our judgement, on the safe side.
const BEGINS: [(f64, Band); 4] =
    [(36.0, Band::Emergency), (33.0, Band::Danger), (30.0, Band::Hot), (27.0, Band::Warm)];

/// The band of an index for birds that are comfortable at some temperature, °C: young ones want it warmer.
pub fn band(index: f64, comfort_c: f64) -> Band {
    let held = index - (comfort_c - GROWN_COMFORT_C).max(0.0);
    BEGINS.into_iter().find(|(from, _)| held >= *from).map_or(Band::Comfort, |(_, band)| band)
}

/// Share of feed that birds leave on an hour so warm, lower and upper end: 1 to 1.5 % for each K above 25 °C, 2.5 to 5 % above
/// 30 °C; nothing for birds under three weeks. From memory, wide.
pub fn feed_left(air_c: f64, age_d: i32) -> (f64, f64) {
    if age_d < 21 {
        return (0.0, 0.0);
    }
    let (warm, hot) = ((air_c - 25.0).clamp(0.0, 5.0), (air_c - 30.0).max(0.0));
    ((0.01 * warm + 0.025 * hot).min(1.0), (0.015 * warm + 0.05 * hot).min(1.0))
}

#[cfg(test)]
mod tests {
    use super::*;

    /// facts of the index, derived: 35 °C at half humidity, wet bulb 26.1 at sea level: 33.7 × 0.5^-0.058 = 35.1; at 1.2 m/s 33.3.
    #[test]
    fn moving_air_helps() {
        let at = |speed| index(35.0, 0.5, 101_325.0, speed).unwrap();
        assert!((at(0.5) - 35.1).abs() < 0.1 && (at(1.2) - 33.3).abs() < 0.1, "{} {}", at(0.5), at(1.2));
        assert_eq!(at(0.0), at(0.2), "never measured in still air");
        assert_eq!(index(35.0, 1.4, 101_325.0, 0.5), None);
    }

    #[test]
    fn young_birds_want_it_warm() {
        assert_eq!(band(34.0, 21.0), Band::Danger);
        assert_eq!(band(34.0, 33.0), Band::Comfort);
        assert_eq!(band(36.0, 21.0), Band::Emergency);
        assert_eq!(band(26.9, 21.0), Band::Comfort);
    }

    #[test]
    fn hot_birds_leave_feed() {
        assert_eq!(feed_left(24.0, 35), (0.0, 0.0));
        assert_eq!(feed_left(33.0, 10), (0.0, 0.0));
        let (low, high) = feed_left(33.0, 35);
        assert!((low - 0.125).abs() < 1e-12 && (high - 0.225).abs() < 1e-12);
    }
}
