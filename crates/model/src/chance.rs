//! Chance without a state: a draw is a pure function of where it is used.
//!
//! Nothing is consumed, so a draw does not depend on which others were made, in which order or by which thread, and two
//! choices that are compared meet the same luck.

use std::f64::consts::TAU;

/// Where a draw is used. Each place has its own luck, and keeps it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Draw {
    /// Names the whole set of futures.
    pub seed: u64,
    /// Which future.
    pub scenario: u32,
    /// What the draw is for: losses, weight, a price.
    pub stream: u32,
    /// The day of age, or 0 for what falls once a batch.
    pub day: u32,
    /// Which draw of several for the same thing on the same day.
    pub n: u32,
}

impl Draw {
    /// A standard normal number, by the transform of Box and Muller 1958 (its cosine half).
    pub fn normal(self) -> f64 {
        let [a, b, c, d] = philox([self.scenario, self.stream, self.day, self.n], self.seed);
        let (radius, turn) = (open_unit(a, b), open_unit(c, d));
        (-2.0 * radius.ln()).sqrt() * (TAU * turn).cos()
    }
}

impl Draw {
    /// Four numbers between 0 and 1, neither of them, in steps of 2^-32: what a day of a future hangs on, at one price.
    pub fn units(self) -> [f64; 4] {
        self.units_side_by_side().map(|[unit]| unit)
    }

    /// The same of this future and those numbered after it, each of the four for all of them: side by side they cost less.
    pub fn units_side_by_side<const FUTURES: usize>(self) -> [[f64; FUTURES]; 4] {
        let mut units = [[0.0; FUTURES]; 4];
        for after in 0..FUTURES {
            let scenario = self.scenario.wrapping_add(after as u32);
            let words = philox([scenario, self.stream, self.day, self.n], self.seed);
            for (unit, word) in units.iter_mut().zip(words) {
                unit[after] = (f64::from(word) + 0.5) * (1.0 / (1u64 << 32) as f64);
            }
        }
        units
    }
}

/// The point of a bell curve below which `share` lies, within 1e-6: quick, for many draws. [`crate::quantile::normal`] is exact.
///
/// Source: Wichura, The percentage points of the normal distribution, AS 241 (1988), its shorter form; constants from memory.
pub fn bell_point(share: f64) -> f64 {
    let [point] = bell_points([share]);
    point
}

/// [`bell_point`] of each share: side by side they cost less.
pub fn bell_points<const SHARES: usize>(shares: [f64; SHARES]) -> [f64; SHARES] {
    let mut points = shares;
    for point in &mut points {
        let off = *point - 0.5;
        let r = 0.180_625 - off * off;
        let over = ((59.109_374_72 * r + 159.291_132_02) * r + 50.434_271_938) * r + 3.387_132_717_9;
        let under = ((67.187_563_6 * r + 78.757_757_664) * r + 17.895_169_469) * r + 1.0;
        *point = off * over / under;
    }
    for (point, share) in points.iter_mut().zip(shares) {
        if (share - 0.5).abs() > 0.425 {
            *point = far_bell_point(share);
        }
    }
    points
}

/// The same beyond the middle 85 of 100.
fn far_bell_point(share: f64) -> f64 {
    let off = share - 0.5;
    let tail = if off < 0.0 { share } else { 1.0 - share };
    let far = (-tail.ln()).sqrt();
    let (over, under) = if far <= 5.0 {
        let r = far - 1.6;
        let over = ((0.170_238_211_03 * r + 1.306_728_481_6) * r + 2.756_815_39) * r + 1.423_437_277_7;
        (over, (0.120_211_329_75 * r + 0.737_001_642_5) * r + 1.0)
    } else {
        let r = far - 5.0;
        let over = ((0.017_337_203_997 * r + 0.428_682_943_37) * r + 3.081_226_386) * r + 6.657_905_115;
        (over, (0.012_258_202_635 * r + 0.241_978_942_25) * r + 1.0)
    };
    (over / under).copysign(off)
}

/// A number between 0 and 1, neither of them, from the upper 52 of 64 bits.
fn open_unit(high: u32, low: u32) -> f64 {
    let bits = (u64::from(high) << 32 | u64::from(low)) >> 12;
    (bits as f64 + 0.5) / (1u64 << 52) as f64
}

/// Four words of 32 random bits for a counter of four words and a key: Philox4x32-10.
///
/// Source: Salmon, Moraes, Dror and Shaw, Parallel random numbers: as easy as 1, 2, 3 (2011), section 3.3 and table 2;
/// constants and known answers from memory, which agree with each other.
fn philox(mut counter: [u32; 4], seed: u64) -> [u32; 4] {
    const MULTIPLIERS: [u32; 2] = [0xD251_1F53, 0xCD9E_8D57];
    const KEY_STEPS: [u32; 2] = [0x9E37_79B9, 0xBB67_AE85];
    let mut key = [seed as u32, (seed >> 32) as u32];
    for _ in 0..10 {
        let [c0, c1, c2, c3] = counter;
        let (high0, low0) = wide_product(MULTIPLIERS[0], c0);
        let (high1, low1) = wide_product(MULTIPLIERS[1], c2);
        counter = [high1 ^ c1 ^ key[0], low1, high0 ^ c3 ^ key[1], low0];
        key = [key[0].wrapping_add(KEY_STEPS[0]), key[1].wrapping_add(KEY_STEPS[1])];
    }
    counter
}

/// The upper and the lower half of a product.
fn wide_product(a: u32, b: u32) -> (u32, u32) {
    let product = u64::from(a) * u64::from(b);
    ((product >> 32) as u32, product as u32)
}

#[cfg(test)]
mod tests {
    use super::*;

    /// The known answers that came with the generator (from memory): counter, key, result.
    #[test]
    fn the_generator_gives_its_known_answers() {
        assert_eq!(philox([0; 4], 0), [0x6627_E8D5, 0xE169_C58D, 0xBC57_AC4C, 0x9B00_DBD8]);
        assert_eq!(philox([u32::MAX; 4], u64::MAX), [0x408F_276D, 0x41C8_3B0E, 0xA20B_C7C6, 0x6D54_51FD]);
        assert_eq!(
            philox([0x243F_6A88, 0x85A3_08D3, 0x1319_8A2E, 0x0370_7344], 0x299F_31D0_A409_3822),
            [0xD16C_FE09, 0x94FD_CCEB, 0x5001_E420, 0x2412_6EA1]
        );
    }

    #[test]
    fn the_quick_point_is_next_to_the_exact_one() {
        for share in [1e-10, 1e-7, 0.001, 0.05, 0.075, 0.3, 0.5, 0.77, 0.925, 0.95, 0.999_9] {
            let exact = crate::quantile::normal(share).unwrap();
            assert!((bell_point(share) - exact).abs() < 1e-6, "{share}: {} {exact}", bell_point(share));
        }
    }

    #[test]
    fn side_by_side_is_one_after_the_other() {
        let place = Draw { seed: 5, scenario: 40, stream: 3, day: 4, n: 5 };
        let all = place.units_side_by_side::<7>();
        for after in 0..7 {
            let alone = Draw { scenario: 40 + after as u32, ..place }.units();
            assert_eq!(all.map(|of| of[after]), alone);
            assert_eq!(all.map(bell_points).map(|of| of[after]), alone.map(bell_point));
        }
    }

    #[test]
    fn the_ends_of_the_unit_are_never_met() {
        assert!(open_unit(0, 0) > 0.0);
        assert!(open_unit(u32::MAX, u32::MAX) < 1.0);
    }

    #[test]
    fn every_part_of_the_place_matters() {
        let place = Draw { seed: 1, scenario: 2, stream: 3, day: 4, n: 5 };
        let others = [
            Draw { seed: 2, ..place },
            Draw { seed: 1 + (1 << 32), ..place },
            Draw { scenario: 3, ..place },
            Draw { stream: 4, ..place },
            Draw { day: 5, ..place },
            Draw { n: 6, ..place },
        ];
        assert_eq!(place.normal(), place.normal());
        assert!(others.iter().all(|other| other.normal() != place.normal()));
    }

    /// Mean, variance and the fourth moment within four standard errors (1, sqrt 2 and sqrt 96, over sqrt M), whether the
    /// draws run along scenarios, streams, days or n.
    #[test]
    fn draws_are_standard_normal_along_every_part() {
        let first = Draw { seed: 7, scenario: 0, stream: 0, day: 0, n: 0 };
        let along: [fn(Draw, u32) -> Draw; 4] = [
            |draw, i| Draw { scenario: i, ..draw },
            |draw, i| Draw { stream: i, ..draw },
            |draw, i| Draw { day: i, ..draw },
            |draw, i| Draw { n: i, ..draw },
        ];
        let count = 40_000;
        for step in along {
            let moment = |power: i32| {
                (0..count).map(|i| step(first, i).normal().powi(power)).sum::<f64>() / f64::from(count)
            };
            let near = |power, want: f64, one_draw: f64| {
                let error = 4.0 * one_draw / f64::from(count).sqrt();
                assert!((moment(power) - want).abs() < error, "moment {power} is {}", moment(power));
            };
            near(1, 0.0, 1.0);
            near(2, 1.0, 2f64.sqrt());
            near(4, 3.0, 96f64.sqrt());
        }
    }
}
