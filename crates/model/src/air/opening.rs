//! Air through a curtain that is let down along both long sides: by wind, and by warm air that rises.
//!
//! Source: ASHRAE Handbook Fundamentals, ventilation chapter; coefficients from memory.

use crate::search::crossing;

/// Share of the wind that goes through when it blows slantwise: 0.25 to 0.35, and 0.5 to 0.6 square on.
pub const WIND_THROUGH: f64 = 0.4;
/// Share of the flow that friction and the narrowing stream leave.
const DISCHARGE: f64 = 0.65;
/// Earth's pull, m/s2.
const GRAVITY: f64 = 9.81;

/// What drives air through.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Drive {
    /// Wind at the opening, m/s.
    pub wind_m_per_s: f64,
    /// How much warmer it is inside, K.
    pub warmer_k: f64,
    /// Inside, °C.
    pub inside_c: f64,
}

impl Drive {
    /// Flow, m3/s.
    ///
    /// - `area_m2`: open on each long side
    /// - `length_m`: over so long a slot
    ///
    /// Wind in on one side and out on the other; each slot of its own also lets warm air out above and cold air in below. Both
    /// together by the root of squares.
    pub fn flow(self, area_m2: f64, length_m: f64) -> f64 {
        if area_m2 <= 0.0 || length_m <= 0.0 {
            return 0.0;
        }
        let wind = WIND_THROUGH * area_m2 * self.wind_m_per_s;
        let height = area_m2 / length_m;
        let rise = GRAVITY * height * self.warmer_k.max(0.0) / (self.inside_c + 273.15);
        let stack = DISCHARGE * 2.0 * area_m2 / 3.0 * rise.sqrt();
        wind.hypot(stack)
    }

    /// The area on each side through which so much goes, m2, at most `most_m2`.
    pub fn area_for(self, flow_m3_per_s: f64, length_m: f64, most_m2: f64) -> f64 {
        if flow_m3_per_s <= 0.0 {
            return 0.0;
        }
        if self.flow(most_m2, length_m) <= flow_m3_per_s {
            return most_m2;
        }
        crossing(|area| self.flow(area, length_m) - flow_m3_per_s, 0.0, most_m2)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn an_opening_lets_through_what_it_was_found_for() {
        let drive = Drive { wind_m_per_s: 1.5, warmer_k: 3.0, inside_c: 30.0 };
        let area = drive.area_for(2.53, 15.0, 40.0);
        assert!((drive.flow(area, 15.0) - 2.53).abs() < 1e-9);
        assert_eq!(drive.area_for(1e6, 15.0, 40.0), 40.0, "no more than there is");
        assert_eq!(drive.area_for(0.0, 15.0, 40.0), 0.0);
        let calm = Drive { wind_m_per_s: 0.0, warmer_k: 0.0, inside_c: 30.0 };
        assert_eq!(calm.flow(10.0, 15.0), 0.0, "nothing drives it");
    }

    /// Hand: 1.5 m/s over 3.4 m2 at 0.4 is 2.04 m3/s.
    #[test]
    fn wind_alone() {
        let drive = Drive { wind_m_per_s: 1.5, warmer_k: 0.0, inside_c: 27.0 };
        assert!((drive.flow(3.4, 15.0) - 2.04).abs() < 1e-12);
    }
}
