//! Gas out of a cylinder: how long it lasts, and how much of it a cold cylinder gives.
//!
//! Liquid gas takes the heat to become vapour through the wall of its cylinder. Asked for more, it cools until frost stands on
//! the steel and the flame starves.

/// Heat that a kilogram of liquid gas takes to become vapour, kJ: propane 375, butane 385 at 0 °C (NIST Chemistry WebBook, from
/// memory).
const VAPOUR_KJ_PER_KG: f64 = 380.0;
/// From still air through the wall, W/m2K: free air and radiation (from memory).
const WALL_W_PER_M2K: f64 = 10.0;
/// Wall that liquid touches in a half-full cylinder of 13 kg (0.31 m across, 25 L of liquid when full), m2; derived.
const WETTED_M2: f64 = 0.24;
const OF_KG: f64 = 13.0;

/// Hours that cylinders last.
///
/// - `kg_per_h`: burnt by all burners; above 0
pub fn hours(cylinders: f64, kg: f64, kg_per_h: f64) -> f64 {
    cylinders * kg / kg_per_h
}

/// Gas that half-full cylinders joined to one pipe give for hours on end, kg/h; none in air as cold as the gas may get.
///
/// - `kg`: what one holds when full; those of other sizes are taken as of the same shape
/// - `coldest_gas_c`: at which what is left has just the pressure that the regulator wants
pub fn steady_kg_per_h(joined: f64, kg: f64, air_c: f64, coldest_gas_c: f64) -> f64 {
    let wetted_m2 = WETTED_M2 * (kg / OF_KG).powf(2.0 / 3.0);
    let watts = WALL_W_PER_M2K * wetted_m2 * (air_c - coldest_gas_c).max(0.0);
    joined * 3.6 * watts / VAPOUR_KJ_PER_KG
}

#[cfg(test)]
mod tests {
    use super::*;

    /// About half a kilogram an hour from a cylinder of 13 kg on a mild day: rule of thumb of gas sellers, from memory.
    #[test]
    fn a_rule_of_thumb() {
        let mild = steady_kg_per_h(1.0, 13.0, 15.0, -10.0);
        assert!((0.4..0.7).contains(&mild), "{mild}");
        assert_eq!(steady_kg_per_h(2.0, 13.0, -12.0, -10.0), 0.0);
        assert_eq!(steady_kg_per_h(2.0, 13.0, 15.0, -10.0), 2.0 * mild);
        assert!((hours(2.0, 13.0, 0.65) - 40.0).abs() < 1e-12);
    }

    /// A third across, so 0.31 m: 12.5 L of liquid stand 0.166 m high on 0.0755 m2.
    #[test]
    fn the_wetted_wall() {
        let across: f64 = 0.31;
        let bottom = std::f64::consts::PI * across.powi(2) / 4.0;
        let wetted = bottom + std::f64::consts::PI * across * (0.0125 / bottom);
        assert!((wetted - WETTED_M2).abs() < 0.01, "{wetted}");
    }
}
