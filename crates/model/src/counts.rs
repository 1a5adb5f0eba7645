//! Laws of counts, such as the dead of a day: Poisson for rare and independent ones, negative binomial where they clump,
//! beta-binomial where the share itself is uncertain. And the interval of a rate.

use statrs::function::beta::ln_beta;
use statrs::function::gamma::ln_gamma;

use crate::quantile;
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
}
