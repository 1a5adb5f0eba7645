//! What forecasts are worth once the truth is known.

use model::chance::Draw;
use model::quantile;
use model::risk;
use model::scores::{crps_lognormal, crps_normal};

/// What was forecast.
#[derive(Clone, Copy)]
pub enum Law {
    /// The logarithm follows a bell curve: its middle and its deviation.
    OfLogarithm(f64, f64),
    /// The weight does.
    OfWeight(f64, f64),
}

impl Law {
    /// Where the truth lies: the share of the law below it.
    fn below(self, seen: f64) -> f64 {
        quantile::normal_share_below(match self {
            Law::OfLogarithm(middle, deviation) => (seen.ln() - middle) / deviation,
            Law::OfWeight(middle, deviation) => (seen - middle) / deviation,
        })
    }

    fn crps(self, seen: f64) -> f64 {
        match self {
            Law::OfLogarithm(middle, deviation) => crps_lognormal(middle, deviation, seen),
            Law::OfWeight(middle, deviation) => crps_normal(middle, deviation, seen),
        }
    }

    fn median(self) -> f64 {
        match self {
            Law::OfLogarithm(middle, _) => middle.exp(),
            Law::OfWeight(middle, _) => middle,
        }
    }
}

/// A forecast held against the truth.
#[derive(Clone, Copy)]
pub struct Scored {
    in_half: f64,
    in_nine_tenths: f64,
    /// Continuous ranked probability score, g.
    pub crps: f64,
    off: f64,
}

impl Scored {
    pub fn of(law: Law, seen: f64) -> Scored {
        let from_middle = (law.below(seen) - 0.5).abs();
        let within = |half: f64| f64::from(u8::from(from_middle <= half));
        Scored {
            in_half: within(0.25),
            in_nine_tenths: within(0.45),
            crps: law.crps(seen),
            off: (law.median() - seen).abs(),
        }
    }
}

pub const HEAD: &str =
    "| forecast | n | 50 % band, % | 90 % band, % | CRPS, g | off, g |\n|---|---|---|---|---|---|";

/// A line of a table: how often the bands held the truth, with 95 % of resampled tables, and the scores.
///
/// - `groups`: forecasts that hang together, such as all of one batch, are drawn together
pub fn line(name: &str, groups: &[Vec<Scored>]) -> String {
    let all = |read: fn(&Scored) -> f64| resampled(groups, read);
    let percent = |(mean, low, high): (f64, f64, f64)| {
        format!("{:.0} ({:.0} … {:.0})", 100.0 * mean, 100.0 * low, 100.0 * high)
    };
    let count: usize = groups.iter().map(Vec::len).sum();
    let grams = |(mean, low, high): (f64, f64, f64)| format!("{mean:.1} ({low:.1} … {high:.1})");
    format!(
        "| {name} | {count} | {} | {} | {} | {:.1} |",
        percent(all(|one| one.in_half)),
        percent(all(|one| one.in_nine_tenths)),
        grams(all(|one| one.crps)),
        all(|one| one.off).0,
    )
}

/// How much less one way of forecasting scores than another, in g of CRPS, with its range: below 0 is better.
pub fn better(one: &[Vec<Scored>], other: &[Vec<Scored>]) -> (f64, f64, f64) {
    let pairs: Vec<Vec<f64>> = one
        .iter()
        .zip(other)
        .map(|(one, other)| one.iter().zip(other).map(|(one, other)| one.crps - other.crps).collect())
        .collect();
    resampled(&pairs, |difference| *difference)
}

/// Mean, and the 2.5 % and 97.5 % points of the means of 2 000 tables drawn from the groups with replacement.
fn resampled<T>(groups: &[Vec<T>], read: impl Fn(&T) -> f64) -> (f64, f64, f64) {
    let sums: Vec<(f64, f64)> =
        groups.iter().map(|group| (group.iter().map(&read).sum(), group.len() as f64)).collect();
    let mean = |sums: &mut dyn Iterator<Item = (f64, f64)>| {
        let (sum, count) = sums.fold((0.0, 0.0), |(sum, count), (more, of)| (sum + more, count + of));
        sum / count
    };
    let drawn = |scenario: u32| {
        let mut picks = (0..sums.len() as u32).map(|n| {
            let normal = Draw { seed: 7, scenario, stream: 0, day: 0, n }.normal();
            sums[(quantile::normal_share_below(normal) * sums.len() as f64) as usize % sums.len()]
        });
        mean(&mut picks)
    };
    let tables = risk::sorted(&(0..2_000).map(drawn).collect::<Vec<f64>>());
    let point = |share| risk::quantile(&tables, share).unwrap_or(f64::NAN);
    (mean(&mut sums.iter().copied()), point(0.025), point(0.975))
}
