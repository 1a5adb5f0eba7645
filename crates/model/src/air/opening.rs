//! Air through an opening by wind and by warmth, and the opening for a wanted flow.
//!
//! Source: ASHRAE Handbook Fundamentals, ventilation chapter, coefficients from memory. Areas are of the free inlet on one
//! side, with as much outlet.

/// Gravity, m/s2.
const GRAVITY: f64 = 9.80665;
/// Share of the ideal flow that passes a sharp-edged opening.
pub const DISCHARGE: f64 = 0.65;

/// Speed of air through an opening by warmth alone, m/s.
///
/// - `height_m`: from the middle of the low opening to the level where nothing flows
///
/// In whichever direction: a house colder than outside drains through its low opening.
pub fn stack_speed(inside_c: f64, outside_c: f64, height_m: f64) -> f64 {
    let warmer_k = inside_c.max(outside_c) + 273.15;
    DISCHARGE * (2.0 * GRAVITY * height_m * (inside_c - outside_c).abs() / warmer_k).sqrt()
}

/// Speed of air through an opening by wind and warmth together, m/s: the flows add as squares.
///
/// - `effectiveness`: 0.5 to 0.6 for wind square on, 0.25 to 0.35 slanting
pub fn speed(effectiveness: f64, wind_m_s: f64, stack_m_s: f64) -> f64 {
    (effectiveness * wind_m_s).hypot(stack_m_s)
}

/// Opening that lets a flow through, m2; `None` where air stands still and no opening would do.
///
/// - `flow_m3_s`: of outside air
pub fn area_for(flow_m3_s: f64, speed_m_s: f64) -> Option<f64> {
    if flow_m3_s <= 0.0 {
        return Some(0.0);
    }
    (speed_m_s > 0.0).then(|| flow_m3_s / speed_m_s)
}

/// Share of the wind square on, by the angle off square, degrees from 0 to 90 (our judgement).
pub fn effectiveness_at(angle_deg: f64) -> f64 {
    (0.55 - 0.25 * angle_deg.abs() / 45.0).max(0.30)
}

/// Wind at a height from that at 10 m.
///
/// - `power`: 0.14 open land, 0.22 scrub, 0.33 village (from memory)
pub fn wind_at(height_m: f64, wind_at_10m: f64, power: f64) -> f64 {
    wind_at_10m * (height_m / 10.0).powf(power)
}

#[cfg(test)]
mod tests {
    use super::*;

    /// 2.53 m3/s, wind 1.5 m/s square on: 3.4 m2. No wind, 3 K, 0.8 m: 0.26 m/s, 9.9 m2 (derived; printed rounding).
    #[test]
    fn openings_of_a_warm_afternoon() {
        let flow = 9124.0 / 3600.0;
        assert!((area_for(flow, speed(0.5, 1.5, 0.0)).unwrap() - 3.4).abs() < 0.05);
        let still = stack_speed(30.0, 27.0, 0.8);
        assert!((still - 0.26).abs() < 0.005 && (area_for(flow, still).unwrap() - 9.9).abs() < 0.05);
        assert_eq!(area_for(flow, speed(0.5, 0.0, 0.0)), None);
        assert_eq!(area_for(0.0, 0.0), Some(0.0));
    }

    #[test]
    fn slanting_and_low_wind_is_less() {
        assert_eq!(effectiveness_at(0.0), 0.55);
        assert!((effectiveness_at(45.0) - 0.30).abs() < 1e-12 && effectiveness_at(80.0) == 0.30);
        assert_eq!(wind_at(10.0, 3.0, 0.22), 3.0);
        assert!((wind_at(1.25, 3.0, 1.0 / 3.0) - 1.5).abs() < 1e-12);
    }

    #[test]
    fn a_colder_house_drains_as_fast() {
        assert_eq!(stack_speed(20.0, 28.0, 1.0), stack_speed(28.0, 20.0, 1.0));
    }
}
