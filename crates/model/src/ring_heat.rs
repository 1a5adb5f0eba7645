//! The heat of one brooder ring by itself: what its cover or its open top, its sheet and its floor let out.
//!
//! A cover of cloth or film adds nothing itself: the air on its two sides does (5.9 W/m2K as for a curtain). Without a cover
//! the warm litter meets the air of the house at one face alone: 1 / 0.10 W/m2K, the surface of ISO 6946 for heat that goes up.

use std::f64::consts::PI;

/// Litter under open air, W/m2K: ISO 6946, surface resistance 0.10 m2K/W for heat going up (from memory).
pub const OPEN_TOP_W_PER_M2K: f64 = 10.0;

/// A ring.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Ring {
    /// Across, m.
    pub diameter_m: f64,
    /// Of its sheet, m.
    pub height_m: f64,
}

impl Ring {
    /// Floor in it, m2.
    pub fn floor_m2(self) -> f64 {
        PI * self.diameter_m.powi(2) / 4.0
    }

    /// Its sheet, m2.
    pub fn sheet_m2(self) -> f64 {
        PI * self.diameter_m * self.height_m
    }

    /// Heat let out for each degree that it is warmer than the house, W/K, by what top, sheet and floor let through, W/m2K.
    pub fn loss_w_per_k(self, top: f64, sheet: f64, floor: f64) -> f64 {
        self.floor_m2() * (top + floor) + self.sheet_m2() * sheet
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// 3 m across, 0.45 m high: 7.07 m2 and 4.24 m2 by a table of circles (from memory).
    #[test]
    fn a_ring_of_three_metres() {
        let ring = Ring { diameter_m: 3.0, height_m: 0.45 };
        assert!((ring.floor_m2() - 7.07).abs() < 0.005);
        assert!((ring.sheet_m2() - 4.24).abs() < 0.005);
        let covered = ring.loss_w_per_k(5.9, 3.8, 0.4);
        assert!((covered - (7.07 * 6.3 + 4.24 * 3.8)).abs() < 0.1);
        assert!(ring.loss_w_per_k(OPEN_TOP_W_PER_M2K, 3.8, 0.4) > covered);
    }
}
