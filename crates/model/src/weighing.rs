//! Weighing birds one by one: mean, spread, evenness, how sure each is, and how many birds to weigh.
//!
//! Shares and coefficients of variation are 0 to 1 here. An interval is two-sided at a `confidence` of 0 to 1.

use quantity::physical::round_up;

use crate::quantile;

pub mod groups;
pub mod scale;
pub mod sexes;
pub mod slips;
pub mod stopping;
pub mod trial;

/// A lower and an upper end.
pub type Interval = (f64, f64);

/// Mean of some numbers; `None` of none.
pub fn mean(numbers: &[f64]) -> Option<f64> {
    (!numbers.is_empty()).then(|| numbers.iter().sum::<f64>() / numbers.len() as f64)
}

/// Standard deviation of a sample, with n - 1 below: 1 number has none.
pub fn standard_deviation(numbers: &[f64]) -> Option<f64> {
    let mean = mean(numbers).filter(|_| numbers.len() > 1)?;
    let squares: f64 = numbers.iter().map(|number| (number - mean).powi(2)).sum();
    Some((squares / (numbers.len() - 1) as f64).sqrt())
}

/// Coefficient of variation: standard deviation by mean, a share. `None` for fewer than 2 numbers and a mean of 0.
pub fn variation(numbers: &[f64]) -> Option<f64> {
    let mean = mean(numbers).filter(|mean| *mean > 0.0)?;
    Some(standard_deviation(numbers)? / mean)
}

/// How many numbers lie from `low` to `high`, both counted in.
///
/// A hair of rounding in the arithmetic (one part in 10⁹) does not put a bird outside.
pub fn count_between(numbers: &[f64], low: f64, high: f64) -> usize {
    let hair = 1e-9 * high.abs();
    numbers.iter().filter(|number| (low - hair..=high + hair).contains(*number)).count()
}

/// Evenness: the share of birds within a tenth of the mean of these very birds, both limits counted in.
///
/// Source: the way of breeders' guides, which use the flock's own mean and not the target.
pub fn uniformity(numbers: &[f64]) -> Option<f64> {
    let mean = mean(numbers)?;
    Some(count_between(numbers, 0.9 * mean, 1.1 * mean) as f64 / numbers.len() as f64)
}

/// Evenness of a flock whose weights follow a bell curve with this coefficient of variation: the share within a tenth
/// of the mean, 2 Φ(0.1 / CV) - 1. All alike is 1.
pub fn uniformity_of_bell_curve(variation: f64, within: f64) -> Option<f64> {
    match variation {
        0.0 => Some(1.0),
        above if above > 0.0 => Some(2.0 * quantile::normal_share_below(within / above) - 1.0),
        _ => None,
    }
}

/// Interval of a mean by Student's t: mean ± t(n - 1) sd √(1 - n / N) / √n, for a flock of N where that is known.
///
/// Source: [student-1908]; holds for weights that are not too lopsided, of birds caught by chance.
pub fn mean_interval(n: f64, mean: f64, sd: f64, flock: Option<f64>, confidence: f64) -> Option<Interval> {
    let half = mean_error(sd, n, flock, confidence)?;
    Some((mean - half, mean + half))
}

/// Interval of a standard deviation by chi-square. Holds for bell curves only; heavy tails break it.
pub fn deviation_interval(n: f64, sd: f64, confidence: f64) -> Option<Interval> {
    let end = |share| Some(sd * ((n - 1.0) / quantile::chi_square(share, n - 1.0)?).sqrt());
    Some((end(upper(confidence))?, end(1.0 - upper(confidence))?))
}

/// Interval of a coefficient of variation: McKay's of 1932, modified.
///
/// - `n`: numbers, from 2; `variation`: a share, good below 0.33
///
/// `None` where the approximation has no end (a very large variation of very few). Within 0.005 % of the exact interval
/// at the sizes of a flock's weighing.
///
/// Source: [vangel-1996].
pub fn variation_interval(n: f64, variation: f64, confidence: f64) -> Option<Interval> {
    let end = |share| {
        let u = quantile::chi_square(share, n - 1.0)?;
        let below = ((u + 2.0) / n - 1.0) * variation.powi(2) + u / (n - 1.0);
        (below > 0.0).then(|| variation / below.sqrt())
    };
    Some((end(upper(confidence))?, end(1.0 - upper(confidence))?))
}

/// McKay's interval of 1932, before it was modified: a little less near the exact one. To compare with.
pub fn variation_interval_of_mckay(n: f64, variation: f64, confidence: f64) -> Option<Interval> {
    let end = |share| {
        let u = quantile::chi_square(share, n - 1.0)?;
        let below = (u / n - 1.0) * variation.powi(2) + u / (n - 1.0);
        (below > 0.0).then(|| variation / below.sqrt())
    };
    Some((end(upper(confidence))?, end(1.0 - upper(confidence))?))
}

/// The exact interval of a coefficient of variation of a bell curve: the true ones under which √n / CV, which follows the
/// noncentral t with noncentrality √n by the true one, lies at the ends of its usual range. To hold the short form
/// against; it takes thousands of times as long.
pub fn variation_interval_exact(n: f64, variation: f64, confidence: f64) -> Option<Interval> {
    let seen = n.sqrt() / variation;
    let below = |truly: f64| quantile::noncentral_student_share_below(seen, n - 1.0, n.sqrt() / truly);
    let end = |share: f64| {
        // The share below rises with the true variation, so its place can be found by halving.
        let (mut low, mut high) = (variation / 4.0, variation * 6.0);
        for _ in 0..60 {
            let middle = (low * high).sqrt();
            if below(middle)? < share { low = middle } else { high = middle }
        }
        Some((low * high).sqrt())
    };
    Some((end(1.0 - upper(confidence))?, end(upper(confidence))?))
}

/// How many standard deviations lie between the least and the greatest of `n` from a bell curve, on average: the integral
/// of 1 - Φⁿ - (1 - Φ)ⁿ. A range divided by it is a quick guess of the deviation. `None` below 2.
pub fn range_factor(n: f64) -> Option<f64> {
    const STEP: f64 = 0.005;
    let outside = |x: f64| {
        let (below, above) = (quantile::normal_share_below(x), quantile::normal_share_below(-x));
        1.0 - below.powf(n) - above.powf(n)
    };
    (n >= 2.0).then(|| (-2_000..=2_000).map(|at| outside(f64::from(at) * STEP)).sum::<f64>() * STEP)
}

/// The exact interval of a share counted as `hits` of `n`, from the binomial law: never too short, often too wide.
///
/// Source: [clopper-pearson-1934].
pub fn share_interval_exact(hits: f64, n: f64, confidence: f64) -> Option<Interval> {
    if !(n > 0.0 && (0.0..=n).contains(&hits)) {
        return None;
    }
    let (least, most) = (1.0 - upper(confidence), upper(confidence));
    let low = if hits == 0.0 { 0.0 } else { quantile::beta(least, hits, n - hits + 1.0)? };
    let high = if hits == n { 1.0 } else { quantile::beta(most, hits + 1.0, n - hits)? };
    Some((low, high))
}

/// Interval of a share counted as `hits` of `n`, by Wilson's score.
///
/// Source: [wilson-1927]. For evenness it is valid within 2 to 3 points, since the mean is estimated too.
pub fn share_interval(hits: f64, n: f64, confidence: f64) -> Option<Interval> {
    let z = quantile::normal(upper(confidence)).filter(|_| n > 0.0 && (0.0..=n).contains(&hits))?;
    let (share, square) = (hits / n, z * z);
    let centre = (share + square / (2.0 * n)) / (1.0 + square / n);
    let half = z * (share * (1.0 - share) / n + square / (4.0 * n * n)).sqrt() / (1.0 + square / n);
    Some(((centre - half).max(0.0), (centre + half).min(1.0)))
}

/// The upper share of a two-sided interval: 0.975 for 0.95.
fn upper(confidence: f64) -> f64 {
    0.5 + confidence / 2.0
}

/// What a sample is wanted for.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Wanted {
    /// Coefficient of variation of the flock, a share above 0.
    pub variation: f64,
    /// How far off the mean may be either way, a share above 0.
    pub error: f64,
    /// Birds in the flock; `None` for so many that it does not matter.
    pub flock: Option<f64>,
    /// Confidence, 0 to 1.
    pub confidence: f64,
}

/// Birds to weigh by the bell curve: n0 = (z CV / e)², less for a small flock: n0 / (1 + n0 / N). Rounded up.
///
/// Source: [cochran-1977], chapter 4.
pub fn sample_size_by_bell_curve(wanted: Wanted) -> Option<f64> {
    let Wanted { variation, error, flock, confidence } = wanted;
    let n0 = (quantile::normal(upper(confidence))? * variation / error).powi(2);
    Some(round_up(flock.map_or(n0, |flock| n0 / (1.0 + n0 / flock))))
}

/// Birds to weigh by Student's t: the fewest, from `from` and at least 2, whose mean is within the wanted error.
///
/// A few birds more than by the bell curve, since the spread is not known but estimated. `None` where even the whole
/// flock, or a million birds, would not do, or `from` is above the flock.
///
/// Source: [cochran-1977], chapter 4, with the correction √(1 - n / N) for a flock of N.
pub fn sample_size(wanted: Wanted, from: f64) -> Option<f64> {
    fewest(round_up(from).max(2.0), wanted.flock, |n| good_enough(wanted, n))
}

/// The least whole number of birds, from `from` up to the flock or a million, that is good; more birds are never worse, so
/// it can be found by halving. `None` where none is.
fn fewest(from: f64, flock: Option<f64>, good: impl Fn(f64) -> Option<bool>) -> Option<f64> {
    const MANY: f64 = 1e6;
    let most = flock.unwrap_or(MANY);
    let (mut low, mut high) = (from, from);
    if low > most {
        return None;
    }
    while !good(high)? {
        if high >= most {
            return None;
        }
        low = high + 1.0;
        high = (high * 2.0).min(most.floor());
    }
    while low < high {
        let middle = ((low + high) / 2.0).floor();
        if good(middle)? {
            high = middle;
        } else {
            low = middle + 1.0;
        }
    }
    Some(high)
}

fn good_enough(wanted: Wanted, n: f64) -> Option<bool> {
    let half = mean_error(wanted.variation, n, wanted.flock, wanted.confidence)?;
    Some(half <= wanted.error * (1.0 + 1e-9))
}

/// How far the mean of `n` birds can be off either way: t(n - 1) CV √(1 - n / N) / √n; a share of the mean for a
/// coefficient of variation, a weight for a standard deviation.
///
/// `None` below 2 birds and for more birds than the flock has.
pub fn mean_error(variation: f64, n: f64, flock: Option<f64>, confidence: f64) -> Option<f64> {
    let left = flock.map_or(1.0, |flock| 1.0 - n / flock);
    let t = quantile::student(upper(confidence), n - 1.0).filter(|_| left >= 0.0)?;
    Some(t * variation * (left / n).sqrt())
}

/// The standard deviation of a bell curve as told by the median distance from the median, times 1.4826, which a few wild
/// numbers do not move. `None` of none.
pub fn robust_deviation(numbers: &[f64]) -> Option<f64> {
    /// One over the point of a bell curve below which three quarters lie, 0.674 489 75.
    const TO_DEVIATION: f64 = 1.482_602_218_505_602;
    let middle = median(numbers)?;
    let distances: Vec<f64> = numbers.iter().map(|number| (number - middle).abs()).collect();
    Some(TO_DEVIATION * median(&distances)?)
}

/// Numbers that stand far from the others: more than 3.5 robust deviations from the median. None where more than half of the numbers are alike.
///
/// Source: [iglewicz-hoaglin-1993]. A reason to ask, never to drop.
pub fn odd_ones(numbers: &[f64]) -> Vec<f64> {
    let Some(middle) = median(numbers) else { return Vec::new() };
    let spread = robust_deviation(numbers).unwrap_or_default();
    let odd = |number: &&f64| spread > 0.0 && (**number - middle).abs() > 3.5 * spread;
    numbers.iter().filter(odd).copied().collect()
}

/// The number in the middle, or the mean of the two there; `None` of none.
pub fn median(numbers: &[f64]) -> Option<f64> {
    let mut sorted = numbers.to_vec();
    sorted.sort_by(f64::total_cmp);
    let half = sorted.len() / 2;
    let upper = *sorted.get(half)?;
    Some(if sorted.len() % 2 == 1 { upper } else { (sorted[half - 1] + upper) / 2.0 })
}

/// The mean without the lowest and the highest tenth (whole numbers, rounded down, left out at each end). `None` of none.
pub fn trimmed_mean(numbers: &[f64]) -> Option<f64> {
    let mut sorted = numbers.to_vec();
    sorted.sort_by(f64::total_cmp);
    let cut = numbers.len() / 10;
    mean(sorted.get(cut..numbers.len() - cut)?)
}

/// How lopsided numbers are: above 0 where a few are far heavier than the rest. Fisher's, for a sample. `None` for fewer
/// than 3, or all alike.
pub fn skewness(numbers: &[f64]) -> Option<f64> {
    let (n, mean) = (numbers.len() as f64, mean(numbers)?);
    let moment = |power| numbers.iter().map(|number| (number - mean).powi(power)).sum::<f64>() / n;
    let spread = moment(2);
    (n > 2.0 && spread > 0.0).then(|| moment(3) / spread.powf(1.5) * (n * (n - 1.0)).sqrt() / (n - 2.0))
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Derived: all alike have no spread and are all even; one bird has a mean and nothing else.
    #[test]
    fn edges() {
        let alike = [2000.0; 5];
        assert_eq!((variation(&alike), uniformity(&alike)), (Some(0.0), Some(1.0)));
        assert_eq!(
            (mean(&[2000.0]), standard_deviation(&[2000.0]), variation(&[2000.0])),
            (Some(2000.0), None, None)
        );
        assert_eq!((mean(&[]), median(&[]), uniformity(&[])), (None, None, None));
        assert_eq!(uniformity_of_bell_curve(0.0, 0.1), Some(1.0));
        assert_eq!(uniformity_of_bell_curve(-0.1, 0.1), None);
        assert!(odd_ones(&alike).is_empty());
    }

    #[test]
    fn limits_are_counted_in() {
        // A mean of 1000: 900 and 1100 are in, whatever the last bit of the arithmetic says.
        assert_eq!(uniformity(&[900.0, 1100.0, 1000.0, 1000.0]), Some(1.0));
        assert_eq!(uniformity(&[899.0, 1101.0, 1000.0, 1000.0]), Some(0.5));
    }

    #[test]
    fn the_fewest_birds_are_enough_and_one_less_is_not() {
        for flock in [None, Some(300.0), Some(1600.0)] {
            for (variation, error) in [(0.08, 0.02), (0.1, 0.01), (0.16, 0.05), (0.05, 0.2)] {
                let wanted = Wanted { variation, error, flock, confidence: 0.95 };
                let n = sample_size(wanted, sample_size_by_bell_curve(wanted).unwrap()).unwrap();
                assert!(mean_error(variation, n, flock, 0.95).unwrap() <= error);
                assert!(n == 2.0 || mean_error(variation, n - 1.0, flock, 0.95).unwrap() > error);
            }
        }
        let wanted = Wanted { variation: 0.1, error: 0.02, flock: Some(50.0), confidence: 0.95 };
        assert_eq!(sample_size(wanted, 51.0), None);
    }

    #[test]
    fn a_slip_of_the_pen_stands_out() {
        let typed = [1820.0, 1950.0, 2010.0, 2080.0, 1760.0, 2150.0, 20100.0];
        assert_eq!(odd_ones(&typed), [20100.0]);
    }
}
