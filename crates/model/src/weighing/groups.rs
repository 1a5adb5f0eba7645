//! Weighing birds by the crate, the bucket or the sack, and birds penned together: what hangs together is weighed, so
//! what is counted is groups.

use crate::quantile;

use super::{Interval, deviation_interval, upper};

/// What groups of birds say of the mean and of the spread of single birds.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct OfGroups {
    /// Groups.
    pub groups: f64,
    /// Birds in all of them.
    pub birds: f64,
    /// Mean weight of a bird: all weights by all birds.
    pub mean: f64,
    /// Standard error of that mean.
    pub standard_error: f64,
    /// Standard deviation of single birds, true only where birds fell into their groups by chance.
    pub bird_sd: f64,
}

/// Mean of a bird by the ratio of totals; `None` of no birds.
///
/// - `totals`: weight of each group; `counts`: birds in each, as many numbers, each above 0
pub fn ratio_mean(totals: &[f64], counts: &[f64]) -> Option<f64> {
    let birds: f64 = counts.iter().sum();
    (birds > 0.0 && totals.len() == counts.len()).then(|| totals.iter().sum::<f64>() / birds)
}

/// The ratio estimator R = ΣT / Σn with se = √(g / (g - 1) Σ(T - R n)²) / Σn, and the spread of single birds,
/// s = √(Σ (T - R n)² / n / (g - 1)). `None` for fewer than two groups.
///
/// Source: [cochran-1977], chapters 6 and 9 (ratio of totals over clusters).
pub fn of_groups(totals: &[f64], counts: &[f64]) -> Option<OfGroups> {
    let mean = ratio_mean(totals, counts).filter(|_| totals.len() > 1 && counts.iter().all(|n| *n > 0.0))?;
    let (groups, birds) = (totals.len() as f64, counts.iter().sum::<f64>());
    let off = || totals.iter().zip(counts).map(|(total, n)| ((total - mean * n).powi(2), n));
    let squares: f64 = off().map(|(square, _)| square).sum();
    let by_bird: f64 = off().map(|(square, n)| square / n).sum();
    Some(OfGroups {
        groups,
        birds,
        mean,
        standard_error: (groups / (groups - 1.0) * squares).sqrt() / birds,
        bird_sd: (by_bird / (groups - 1.0)).sqrt(),
    })
}

impl OfGroups {
    /// How far the mean may be off either way, by Student's t with g - 1 degrees of freedom.
    pub fn mean_error(&self, confidence: f64) -> Option<f64> {
        Some(quantile::student(upper(confidence), self.groups - 1.0)? * self.standard_error)
    }

    /// Interval of the mean.
    pub fn mean_interval(&self, confidence: f64) -> Option<Interval> {
        let half = self.mean_error(confidence)?;
        Some((self.mean - half, self.mean + half))
    }

    /// Interval of the spread of single birds by chi-square with g - 1 degrees of freedom: with six groups from 0.62 to
    /// 2.45 times.
    pub fn sd_interval(&self, confidence: f64) -> Option<Interval> {
        deviation_interval(self.groups, self.bird_sd, confidence)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn groups_of_one_bird_are_birds() {
        let weights = [1820.0, 1950.0, 2010.0, 2080.0, 1760.0];
        let of = of_groups(&weights, &[1.0; 5]).unwrap();
        let sd = super::super::standard_deviation(&weights).unwrap();
        assert!((of.bird_sd - sd).abs() < 1e-9 && (of.standard_error - sd / 5f64.sqrt()).abs() < 1e-9);
        let (low, high) = super::super::mean_interval(5.0, of.mean, sd, None, 0.95).unwrap();
        let ours = of.mean_interval(0.95).unwrap();
        assert!((ours.0 - low).abs() < 1e-9 && (ours.1 - high).abs() < 1e-9);
    }

    #[test]
    fn one_group_has_a_mean_and_no_error() {
        assert_eq!(ratio_mean(&[19_000.0], &[10.0]), Some(1900.0));
        assert_eq!(of_groups(&[19_000.0], &[10.0]), None);
        assert_eq!(of_groups(&[19_000.0, 100.0], &[10.0, 0.0]), None);
        assert_eq!(ratio_mean(&[], &[]), None);
    }
}
