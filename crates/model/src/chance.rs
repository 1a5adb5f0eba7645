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
