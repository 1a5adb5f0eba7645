//! What of a batch is watched, and how closely.
//!
//! The thresholds were designed by `cargo run --example whole_watch -p model`, which prints them again with how often steady
//! batches reach them; so were the two limits of the losses added up. All other numbers are our judgement: how batches of
//! small open houses usually differ from their plan, and from one day to the next.

use crate::deaths::Level;
use crate::surprise::{Side, Tuning};

/// A watched signal.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Watched {
    /// Its stable name.
    pub name: &'static str,
    /// How it is watched.
    pub tuning: Tuning,
    /// From one measurement to the next, days.
    pub every_d: i32,
    /// The variance of a measurement that is known beforehand, as usual.
    pub error: f64,
}

const fn daily(name: &'static str, tuning: Tuning) -> Watched {
    Watched { name, tuning, every_d: 1, error: 0.0 }
}

const fn weekly(name: &'static str, tuning: Tuning, error: f64) -> Watched {
    Watched { name, tuning, every_d: 7, error }
}

/// Taken off each surprise: by this much days that hang together and wild days are kept from piling up.
const ALLOWANCE: f64 = 1.25;

/// The logarithm of water drunk, over what is expected for age, birds and heat. The level follows fast: birds that a bad day set
/// back drink less than the plan says for the rest of their days, and that is no news by then.
pub static WATER: Watched = daily(
    "water",
    Tuning {
        expected: 0.0,
        start: 0.15,
        drift: 0.02,
        noise: 0.08,
        noise_days: 10.0,
        allowance: ALLOWANCE,
        look: 3.5,
        act: 7.1,
        side: Side::Both,
    },
);

/// The logarithm of feed given, over what is expected for age and birds.
pub static FEED: Watched = daily(
    "feed",
    Tuning {
        expected: 0.0,
        start: 0.15,
        drift: 0.02,
        noise: 0.10,
        noise_days: 10.0,
        allowance: ALLOWANCE,
        look: 3.5,
        act: 7.4,
        side: Side::Both,
    },
);

/// The logarithm of water to feed, over what is expected for heat.
pub static WATER_TO_FEED: Watched = daily(
    "water-to-feed",
    Tuning {
        expected: 0.0,
        start: 0.20,
        drift: 0.02,
        noise: 0.13,
        noise_days: 10.0,
        allowance: ALLOWANCE,
        look: 3.7,
        act: 7.1,
        side: Side::Both,
    },
);

/// The coldest in the house less the temperature wanted, K. It is held against the target and never against itself.
pub static COLD: Watched = daily(
    "cold",
    Tuning {
        expected: -1.0,
        start: 0.0,
        drift: 0.0,
        noise: 1.5,
        noise_days: 1000.0,
        allowance: ALLOWANCE,
        look: 4.4,
        act: 11.4,
        side: Side::Down,
    },
);

/// The warmest in the house less the temperature wanted, K. An open house is as warm as its noon: it is held against its own
/// days before. What heat is dangerous, whatever the house is used to, the fixed rules say.
pub static WARM: Watched = daily(
    "warm",
    Tuning {
        expected: 3.0,
        start: 4.0,
        drift: 0.5,
        noise: 1.5,
        noise_days: 10.0,
        allowance: ALLOWANCE,
        look: 2.9,
        act: 6.3,
        side: Side::Up,
    },
);

/// Warmest less coldest, K. It grows from a few to many degrees while the brooders are let go out, so the level follows fast.
pub static SWING: Watched = daily(
    "swing",
    Tuning {
        expected: 8.0,
        start: 3.0,
        drift: 1.0,
        noise: 2.0,
        noise_days: 10.0,
        allowance: ALLOWANCE,
        look: 2.7,
        act: 6.4,
        side: Side::Up,
    },
);

/// The dampest air of the day, percent.
pub static HUMIDITY: Watched = daily(
    "humidity",
    Tuning {
        expected: 75.0,
        start: 12.0,
        drift: 1.0,
        noise: 6.0,
        noise_days: 10.0,
        allowance: ALLOWANCE,
        look: 3.0,
        act: 7.0,
        side: Side::Up,
    },
);

/// The logarithm of the mean weight, over what is expected for age.
pub static WEIGHT: Watched = weekly(
    "weight",
    Tuning {
        expected: 0.0,
        start: 0.08,
        drift: 0.006,
        noise: 0.015,
        noise_days: 20.0,
        allowance: ALLOWANCE,
        look: 1.5,
        act: 5.8,
        side: Side::Down,
    },
    0.0002,
);

/// The logarithm of the gain from one weighing to the next, over what is expected between them.
pub static GAIN: Watched = weekly(
    "gain",
    Tuning {
        expected: 0.0,
        start: 0.08,
        drift: 0.006,
        noise: 0.06,
        noise_days: 20.0,
        allowance: ALLOWANCE,
        look: 1.6,
        act: 3.5,
        side: Side::Down,
    },
    0.002,
);

/// The logarithm of the spread of weights (CV) of a weighing bird by bird; 0.10 is usual.
pub static UNEVENNESS: Watched = weekly(
    "unevenness",
    Tuning {
        expected: -std::f64::consts::LN_10,
        start: 0.2,
        drift: 0.01,
        noise: 0.05,
        noise_days: 20.0,
        allowance: ALLOWANCE,
        look: 1.4,
        act: 3.6,
        side: Side::Up,
    },
    0.01,
);

/// A handful of litter: 0 falls apart or is dust, 1 holds together, 2 cakes. It is never held against itself.
pub static LITTER: Watched = daily(
    "litter",
    Tuning {
        expected: 0.3,
        start: 0.0,
        drift: 0.0,
        noise: 0.6,
        noise_days: 1000.0,
        allowance: ALLOWANCE,
        look: 4.4,
        act: 11.4,
        side: Side::Up,
    },
);

/// All that is watched by its surprise.
pub static WATCHED: [&Watched; 11] =
    [&WATER, &FEED, &WATER_TO_FEED, &COLD, &WARM, &SWING, &HUMIDITY, &WEIGHT, &GAIN, &UNEVENNESS, &LITTER];

/// So many standard deviations of all losses above those expected up to a day: look.
pub const LOSSES_LOOK: f64 = 3.1;
/// The same: act.
pub const LOSSES_ACT: f64 = 4.7;

/// How all losses up to a day stand.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Losses {
    /// Lost on the days that were written.
    pub lost: f64,
    /// Expected on the same days.
    pub expected: f64,
    /// The standard deviation of all losses around those expected.
    pub deviation: f64,
    /// Above expectation in standard deviations.
    pub surprise: f64,
    /// How the day stands.
    pub level: Level,
}

/// The losses added up, day by day, against those expected on the days that were written.
///
/// - `days`: losses, none where they were not written, and those expected, above 0
/// - `size`: of the negative binomial law of a day, none for Poisson
///
/// The variance of each day is m + m² / size, and the days know nothing of each other.
pub fn losses(days: &[(Option<u32>, f64)], size: Option<f64>) -> Vec<Losses> {
    let (mut lost, mut all, mut variance) = (0.0, 0.0, 0.0);
    let mut next = |(found, expected): &(Option<u32>, f64)| {
        if let Some(found) = found {
            lost += f64::from(*found);
            all += expected;
            variance += expected + size.map_or(0.0, |size| expected.powi(2) / size);
        }
        let deviation = variance.sqrt();
        let surprise = if variance > 0.0 { (lost - all) / deviation } else { 0.0 };
        let level = match surprise {
            above if above >= LOSSES_ACT => Level::Act,
            above if above >= LOSSES_LOOK => Level::Look,
            _ => Level::Steady,
        };
        Losses { lost, expected: all, deviation, surprise, level }
    };
    days.iter().map(&mut next).collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn thresholds_are_in_order() {
        for watched in WATCHED {
            assert!(0.0 < watched.tuning.look && watched.tuning.look < watched.tuning.act, "{watched:?}");
        }
        const { assert!(0.0 < LOSSES_LOOK && LOSSES_LOOK < LOSSES_ACT) };
    }

    #[test]
    fn losses_that_pile_up_reach_look_and_a_day_not_written_counts_for_nothing() {
        let piled = losses(&[(Some(3), 1.0); 30], Some(2.0));
        assert_eq!((piled[0].level, piled[29].level), (Level::Steady, Level::Act));
        let gap = losses(&[(Some(3), 1.0), (None, 1.0), (Some(0), 1.0)], Some(2.0));
        assert_eq!((gap[1].lost, gap[1].expected, gap[1].surprise), (3.0, 1.0, gap[0].surprise));
        assert_eq!((gap[2].lost, gap[2].expected), (3.0, 2.0));
        // 2 above 2, of which each day has a variance of 1 + 1/2.
        assert!((piled[0].surprise - 2.0 / 1.5f64.sqrt()).abs() < 1e-12);
    }
}
