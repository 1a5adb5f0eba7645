//! Laws of counts, such as the dead of a day: Poisson for rare and independent ones, negative binomial where they clump,
//! beta-binomial where the share itself is uncertain. And the interval of a rate, and what day counts say of their clumping.

use statrs::function::beta::ln_beta;
use statrs::function::gamma::ln_gamma;

use crate::quantile;
use crate::search::{crossing, highest_between};
use crate::weighing::Interval;

/// A law of counts.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Law {
    /// Independent and rare.
    Poisson {
        /// Expected count, above 0.
        mean: f64,
    },
    /// Clumped: variance = mean + mean² / size.
    NegativeBinomial {
        /// Expected count, above 0.
        mean: f64,
        /// The less, the more clumped; above 0.
        size: f64,
    },
    /// Of `n`, each with a share drawn once from a beta law.
    BetaBinomial {
        /// How many there are.
        n: f64,
        /// First shape of the beta law, above 0.
        alpha: f64,
        /// Second shape, above 0.
        beta: f64,
    },
}

impl Law {
    /// The law of a mean: clumped with a size, else Poisson.
    pub fn of(mean: f64, size: Option<f64>) -> Law {
        size.map_or(Law::Poisson { mean }, |size| Law::NegativeBinomial { mean, size })
    }

    /// The law with its numbers held to their ranges; `None` outside.
    pub fn checked(self) -> Option<Law> {
        let positive = |numbers: &[f64]| numbers.iter().all(|number| *number > 0.0 && number.is_finite());
        match self {
            Law::Poisson { mean } => positive(&[mean]),
            Law::NegativeBinomial { mean, size } => positive(&[mean, size]),
            Law::BetaBinomial { n, alpha, beta } => positive(&[n, alpha, beta]),
        }
        .then_some(self)
    }

    /// Expected count.
    pub fn mean(self) -> f64 {
        match self {
            Law::Poisson { mean } | Law::NegativeBinomial { mean, .. } => mean,
            Law::BetaBinomial { n, alpha, beta } => n * alpha / (alpha + beta),
        }
    }

    /// Variance of the count.
    pub fn variance(self) -> f64 {
        match self {
            Law::Poisson { mean } => mean,
            Law::NegativeBinomial { mean, size } => mean + mean * mean / size,
            Law::BetaBinomial { n, alpha, beta } => {
                let (all, share) = (alpha + beta, alpha / (alpha + beta));
                n * share * (1.0 - share) * (1.0 + (n - 1.0) / (all + 1.0))
            }
        }
    }

    /// Chance of just `count`.
    pub fn chance(self, count: u64) -> f64 {
        let x = count as f64;
        let ln = match self {
            Law::Poisson { mean } => x * mean.ln() - mean - ln_gamma(x + 1.0),
            Law::NegativeBinomial { mean, size } => {
                ln_gamma(x + size) - ln_gamma(size) - ln_gamma(x + 1.0)
                    + size * (size / (size + mean)).ln()
                    + x * (mean / (size + mean)).ln()
            }
            Law::BetaBinomial { n, .. } if x > n => return 0.0,
            Law::BetaBinomial { n, alpha, beta } => {
                ln_beta(x + alpha, n - x + beta)
                    - ln_beta(alpha, beta)
                    - (n + 1.0).ln()
                    - ln_beta(x + 1.0, n - x + 1.0)
            }
        };
        ln.exp()
    }

    /// Chance of at most `count`.
    pub fn at_most(self, count: u64) -> f64 {
        (0..=count).map(|count| self.chance(count)).sum()
    }

    /// Chance of `count` or more, added from there up, so that a small one keeps its digits.
    pub fn at_least(self, count: u64) -> f64 {
        let mut total = 0.0;
        for count in count.. {
            let chance = self.chance(count);
            total += chance;
            if count as f64 > self.mean() && chance <= 1e-17 * total {
                break;
            }
        }
        total
    }

    /// The least count that is not passed with a chance of `share`, 0 to 1, 1 left out.
    pub fn quantile(self, share: f64) -> Option<u64> {
        if !(0.0..1.0).contains(&share) {
            return None;
        }
        let mut total = 0.0;
        // No farm has more; beyond, the sum has met its last digit.
        (0..1_000_000).find(|count| {
            total += self.chance(*count);
            total >= share
        })
    }
}

/// Interval of a rate: `count` seen in `exposure` (bird-days), in counts a unit of exposure.
///
/// Source: [garwood-1936], from the Poisson law; never too short.
pub fn rate_interval(count: f64, exposure: f64, confidence: f64) -> Option<Interval> {
    let above = 0.5 + confidence / 2.0;
    let low = if count == 0.0 { 0.0 } else { quantile::chi_square(1.0 - above, 2.0 * count)? / 2.0 };
    let high = quantile::chi_square(above, 2.0 * count + 2.0)? / 2.0;
    (exposure > 0.0).then(|| (low / exposure, high / exposure))
}

/// A day's count and what was expected of it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Counted {
    /// Cases.
    pub cases: u32,
    /// Cases expected, above 0.
    pub expected: f64,
}

/// What day counts say of their clumping. A clumping is 1 / size: 0 is Poisson, 0.25 is a size of 4.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Clumping {
    /// Told.
    Told {
        /// The most likely 1 / size.
        best: f64,
        /// Where the log likelihood is within 1.92 of the best: 95 %, by profile likelihood.
        interval: Interval,
    },
    /// These counts fit no clumping and strong clumping alike: take the usual size.
    NotEnoughToTell,
}

impl Clumping {
    /// The most likely size; `None` where it cannot be told and where the counts are Poisson.
    pub fn size(self) -> Option<f64> {
        match self {
            Clumping::Told { best, .. } if best > 0.0 => Some(1.0 / best),
            _ => None,
        }
    }
}

/// The most clumping that is looked for: a size of 0.2.
const MOST_CLUMPING: f64 = 5.0;
/// Strong clumping: a size of 1. Counts that allow for all from none to this tell nothing.
const STRONG_CLUMPING: f64 = 1.0;
/// Half the 95 % point of chi-square with one degree of freedom.
const HALF_CHI_SQUARE_95: f64 = 1.920_729_410_347_062;

/// The most likely clumping of day counts with given expectations, and how sure it is.
///
/// Maximum likelihood of the negative binomial law over 1 / size from 0 to 5. It takes the expectations as right: where all
/// days run above plan, that reads as clumping too.
///
/// - `days`: days without an expectation above 0 say nothing and are left out
///
/// The rule of "not enough" is our judgement: the 95 % interval reaches from none to a size of 1 or less.
/// Checked against a general optimiser within 1e-6.
pub fn clumping(days: &[Counted]) -> Clumping {
    let told: Vec<Counted> = days.iter().copied().filter(|day| day.expected > 0.0).collect();
    let drop = |clumping: f64| log_likelihood(&told, clumping);
    let best = highest(drop, MOST_CLUMPING);
    let within = |clumping: f64| drop(best) - drop(clumping) - HALF_CHI_SQUARE_95;
    let low = if within(0.0) <= 0.0 { 0.0 } else { crossing(within, best, 0.0) };
    let high =
        if within(MOST_CLUMPING) <= 0.0 { MOST_CLUMPING } else { crossing(within, best, MOST_CLUMPING) };
    if low == 0.0 && high >= STRONG_CLUMPING {
        return Clumping::NotEnoughToTell;
    }
    Clumping::Told { best, interval: (low, high) }
}

/// Log likelihood of a clumping a, without what does not hang on it: Σ over days of
/// Σ_{i < x} ln(1 + a i) - (x + 1/a) ln(1 + a m), whose limit at a = 0 is -m.
fn log_likelihood(days: &[Counted], clumping: f64) -> f64 {
    let of_day = |day: &Counted| {
        let grown: f64 = (0..day.cases).map(|i| (clumping * f64::from(i)).ln_1p()).sum();
        let spread = (clumping * day.expected).ln_1p();
        let by_clumping = if clumping == 0.0 { day.expected } else { spread / clumping };
        grown - f64::from(day.cases) * spread - by_clumping
    };
    days.iter().map(of_day).sum()
}

/// Where a function of 0 to `most` is highest: a grid, finer near 0, then the golden section of the best grid step.
fn highest(function: impl Fn(f64) -> f64, most: f64) -> f64 {
    const STEPS: u32 = 60;
    let at = |step: u32| most * (f64::from(step) / f64::from(STEPS)).powi(3);
    let better = |a: &u32, b: &u32| function(at(*a)).total_cmp(&function(at(*b)));
    // Of equals the last is taken; without any day every clumping is as good.
    let step = (0..=STEPS).max_by(better).unwrap_or(0);
    let (low, high) = (at(step.saturating_sub(1)), at((step + 1).min(STEPS)));
    let inside = highest_between(&function, low, high);
    [0.0, most].into_iter().fold(inside, |best, end| if function(end) >= function(best) { end } else { best })
}

#[cfg(test)]
mod tests {
    use super::*;

    const LAWS: [Law; 3] = [
        Law::Poisson { mean: 3.0 },
        Law::NegativeBinomial { mean: 3.0, size: 2.0 },
        Law::BetaBinomial { n: 120.0, alpha: 2.0, beta: 78.0 },
    ];

    #[test]
    fn chances_add_up_and_tails_meet() {
        for law in LAWS {
            assert!((law.at_least(0) - 1.0).abs() < 1e-9, "{law:?}");
            assert!((law.at_most(4) + law.at_least(5) - 1.0).abs() < 1e-9, "{law:?}");
            let mean: f64 = (0..400).map(|x| x as f64 * law.chance(x)).sum();
            assert!((mean - law.mean()).abs() < 1e-6, "{law:?}");
            let median = law.quantile(0.5).unwrap();
            assert!(law.at_most(median) >= 0.5 && (median == 0 || law.at_most(median - 1) < 0.5));
            assert_eq!(law.quantile(1.0), None);
        }
        assert_eq!(Law::Poisson { mean: 0.0 }.checked(), None);
    }

    /// Derived: none seen leaves 3.69 by the exposure as the upper end at 95 %.
    #[test]
    fn none_seen_is_not_none_possible() {
        let (low, high) = rate_interval(0.0, 1.0, 0.95).unwrap();
        assert!(low == 0.0 && (high - 3.689).abs() < 1e-3);
        assert_eq!(rate_interval(1.0, 0.0, 0.95), None);
    }

    fn days(cases: &[u32], expected: f64) -> Vec<Counted> {
        cases.iter().map(|&cases| Counted { cases, expected }).collect()
    }

    #[test]
    fn clumped_counts_are_told_from_even_ones() {
        let clumped = clumping(&days(&[0, 3, 6, 0, 1, 1, 9, 0, 2, 5, 0, 0, 1, 0, 7, 2, 0, 2, 0, 1], 2.0));
        let Clumping::Told { best, interval: (low, high) } = clumped else { panic!("{clumped:?}") };
        assert!(low > 0.0 && low < best && best < high, "{clumped:?}");
        assert!(clumped.size().unwrap() < 2.0);
        let even = clumping(&days(&[5; 40], 5.0));
        let Clumping::Told { best, interval: (low, high) } = even else { panic!("{even:?}") };
        assert!((best, low) == (0.0, 0.0) && high < 0.1, "{even:?}");
        assert_eq!(even.size(), None);
    }

    #[test]
    fn few_counts_do_not_tell() {
        assert_eq!(clumping(&[]), Clumping::NotEnoughToTell);
        assert_eq!(clumping(&days(&[1, 0, 2, 0, 1], 0.8)), Clumping::NotEnoughToTell);
        assert_eq!(clumping(&days(&[4, 1, 0], 0.0)), Clumping::NotEnoughToTell);
    }
}
