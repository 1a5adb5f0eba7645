//! What a set of futures says: chance of loss, quantiles, the average of the worst.
//!
//! Each is a plain function of one column, so that anybody who has the column in a spreadsheet gets the same number.

/// The share of the futures counted as the worst.
pub const WORST: f64 = 0.1;

/// A share of futures, 0 to 1, with the standard error that their number leaves.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Share {
    /// Futures of the kind over all.
    pub share: f64,
    /// sqrt(share × (1 - share) / all). 0 where none or all are of the kind: say then "fewer than 3 in `count`" (the upper
    /// end of 95 %, by the rule of three).
    pub standard_error: f64,
}

/// What a column of futures says.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Summary {
    /// How many futures.
    pub count: usize,
    /// Their mean.
    pub mean: f64,
    /// Standard deviation / sqrt(count): how far the mean would move with another seed. 0 for one future.
    pub mean_standard_error: f64,
    /// The share of them below nothing.
    pub loss: Share,
    /// Nine futures of ten lie between this and `p95`.
    pub p05: f64,
    /// Half of the futures lie between this and `p75`.
    pub p25: f64,
    /// The middle one.
    pub p50: f64,
    /// The upper end of the middle half.
    pub p75: f64,
    /// The upper end of the middle nine tenths.
    pub p95: f64,
    /// The mean of the worst tenth.
    pub worst_tenth_mean: f64,
}

/// Sums a column of futures up, in any order; `None` without any.
pub fn summary(values: &[f64]) -> Option<Summary> {
    let sorted = sorted(values);
    Some(Summary {
        count: values.len(),
        mean: mean(values)?,
        mean_standard_error: mean_standard_error(values)?,
        loss: chance_of_loss(values)?,
        p05: quantile(&sorted, 0.05)?,
        p25: quantile(&sorted, 0.25)?,
        p50: quantile(&sorted, 0.5)?,
        p75: quantile(&sorted, 0.75)?,
        p95: quantile(&sorted, 0.95)?,
        worst_tenth_mean: worst_mean(&sorted, WORST)?,
    })
}

/// The values, ascending.
pub fn sorted(values: &[f64]) -> Vec<f64> {
    let mut sorted = values.to_vec();
    sorted.sort_unstable_by(f64::total_cmp);
    sorted
}

/// The mean, added in the order given; `None` without any.
pub fn mean(values: &[f64]) -> Option<f64> {
    crate::budget::per(values.iter().sum(), values.len() as f64)
}

/// The share of profits below nothing, with its standard error; `None` without any.
pub fn chance_of_loss(profits: &[f64]) -> Option<Share> {
    let count = profits.len() as f64;
    let losing = profits.iter().filter(|profit| **profit < 0.0).count() as f64;
    let share = crate::budget::per(losing, count)?;
    Some(Share { share, standard_error: (share * (1.0 - share) / count).sqrt() })
}

/// The quantile of ascending values at share `p`, 0 to 1: the value at place p × (count - 1), counted from 0, and between
/// two places on the straight line between them.
///
/// Source: Hyndman and Fan, Sample quantiles in statistical packages (1996), type 7 (from memory), which spreadsheets give
/// as PERCENTILE. `None` without values or for a share outside 0 to 1.
pub fn quantile(ascending: &[f64], p: f64) -> Option<f64> {
    if !(0.0..=1.0).contains(&p) {
        return None;
    }
    let place = p * ascending.len().checked_sub(1)? as f64;
    let (below, above) = (ascending[place.floor() as usize], ascending[place.ceil() as usize]);
    Some(below + (above - below) * place.fract())
}

/// The mean of the lowest share `worst` of ascending values (expected shortfall): of the first worst × count, rounded up.
///
/// `None` without values or for a share outside 0 to 1.
pub fn worst_mean(ascending: &[f64], worst: f64) -> Option<f64> {
    if !(0.0..=1.0).contains(&worst) {
        return None;
    }
    let count = quantity::physical::round_up(worst * ascending.len() as f64);
    mean(ascending.get(..count as usize)?)
}

/// Standard deviation (divisor count - 1) over sqrt(count); 0 for one value, `None` without any.
fn mean_standard_error(values: &[f64]) -> Option<f64> {
    let mean = mean(values)?;
    let squares: f64 = values.iter().map(|value| (value - mean).powi(2)).sum();
    let count = values.len() as f64;
    Some((squares / (count - 1.0).max(1.0) / count).sqrt())
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Type 7 of 1, 2, 4, 8: places 0 to 3.
    #[test]
    fn quantiles_lie_on_the_line_between_places() {
        let values = [1.0, 2.0, 4.0, 8.0];
        for (p, want) in [(0.0, 1.0), (0.25, 1.75), (0.5, 3.0), (0.75, 5.0), (1.0, 8.0)] {
            assert_eq!(quantile(&values, p), Some(want), "at {p}");
        }
        assert_eq!(
            (quantile(&values, 1.1), quantile(&values, f64::NAN), quantile(&[], 0.5)),
            (None, None, None)
        );
        assert_eq!(quantile(&[5.0], 0.3), Some(5.0));
    }

    #[test]
    fn the_worst_tenth_is_counted_upwards() {
        let values: Vec<f64> = (1..=20).map(f64::from).collect();
        assert_eq!(worst_mean(&values, 0.1), Some(1.5));
        assert_eq!(worst_mean(&values, 0.12), Some(2.0), "2.4 values are 3");
        assert_eq!(worst_mean(&values, 1.0), Some(10.5));
        assert_eq!((worst_mean(&values, 1.1), worst_mean(&[], 0.1)), (None, None));
    }

    #[test]
    fn a_summary_takes_futures_in_any_order() {
        let summary = summary(&[30.0, -10.0, 20.0, -20.0, 10.0]).unwrap();
        assert_eq!((summary.count, summary.mean, summary.p50), (5, 6.0, 10.0));
        assert_eq!((summary.p25, summary.p75), (-10.0, 20.0));
        assert_eq!(summary.loss.share, 0.4);
        assert!((summary.loss.standard_error - (0.4f64 * 0.6 / 5.0).sqrt()).abs() < 1e-15);
        assert_eq!(summary.worst_tenth_mean, -20.0);
        let sd = (1720.0f64 / 4.0).sqrt();
        assert!((summary.mean_standard_error - sd / 5f64.sqrt()).abs() < 1e-12);
    }

    #[test]
    fn nothing_sums_up_to_nothing() {
        assert_eq!(summary(&[]), None);
    }

    #[test]
    fn to_break_even_is_no_loss() {
        assert_eq!(chance_of_loss(&[0.0, 0.0]).unwrap().share, 0.0);
    }
}
