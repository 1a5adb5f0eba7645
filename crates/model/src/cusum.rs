//! A running sum that notices a rise of day counts (CUSUM), and exactly how often it rings falsely and how soon it notices.
//!
//! The sum starts at `start`, adds each day's score, never falls below 0, and signals when it reaches the threshold; to
//! reach it exactly is a signal. It is kept in whole points: a day's score is rounded to points BEFORE it is added, by the
//! grower's sheet and by the chain below alike, so the chain is exact for the sum that is really kept. What the rounding
//! changes against an unrounded sum is at most half a point a day.
//!
//! Source: [page-1954]; chain: [brook-evans-1972]; for counts: [lucas-1985].

use crate::counts::Law;

/// Points to a unit of log likelihood ratio: a day's score is within 0.02 of the unrounded one. The chain is exact for the
/// rounded sum; finer points only make it slower.
pub const POINTS_PER_LOG_UNIT: f64 = 25.0;

/// The reference value of a plain sum of counts: between the count expected and the one to detect.
///
/// - `expected`, `to_detect`: cases a day, both above 0, the second greater
/// - `size`: of the negative binomial law; none for Poisson
///
/// Poisson (m1 - m0) / ln(m1 / m0); negative binomial size ln((size + m1) / (size + m0)) /
/// ln(m1 (size + m0) / (m0 (size + m1))). Source: [lucas-1985] for Poisson; the other by the same likelihood ratio.
pub fn reference_value(expected: f64, to_detect: f64, size: Option<f64>) -> Option<f64> {
    let (weight, threshold) = log_ratio(expected, to_detect, size)?;
    Some(threshold / weight)
}

/// The sum after a day of `count` cases, of a plain sum of counts: max(0, sum + count - reference).
pub fn next(sum: f64, count: f64, reference: f64) -> f64 {
    (sum + count - reference).max(0.0)
}

/// The log likelihood ratio of a count is weight × count - offset.
fn log_ratio(expected: f64, to_detect: f64, size: Option<f64>) -> Option<(f64, f64)> {
    if !(expected > 0.0 && to_detect > expected && to_detect.is_finite()) {
        return None;
    }
    let ratio = (to_detect / expected).ln();
    let Some(size) = size else { return Some((ratio, to_detect - expected)) };
    let widened = ((size + to_detect) / (size + expected)).ln();
    (size > 0.0 && size.is_finite()).then_some((ratio - widened, size * widened))
}

/// What a day's count adds to the sum, in points.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Score {
    /// Points a case.
    per_case: f64,
    /// Points less, whatever the count.
    offset: f64,
}

impl Score {
    /// The score of a plain sum of counts: count - reference, at so many points a case.
    ///
    /// Exact where the reference is a whole number of points.
    pub fn plain(reference: f64, points_per_case: u32) -> Score {
        let per_case = f64::from(points_per_case);
        Score { per_case, offset: reference * per_case }
    }

    /// The score of the log likelihood ratio of a day on which `expected` cases were expected, against `rise` times as
    /// many: so days of different expectation add up.
    ///
    /// - `expected`: above 0; `rise`: above 1; `size`: of the negative binomial law, none for Poisson
    pub fn likelihood_ratio(expected: f64, rise: f64, size: Option<f64>) -> Option<Score> {
        let (weight, offset) = log_ratio(expected, rise * expected, size)?;
        Some(Score { per_case: POINTS_PER_LOG_UNIT * weight, offset: POINTS_PER_LOG_UNIT * offset })
    }

    /// The points of a count.
    pub fn of(self, count: u32) -> i64 {
        (f64::from(count) * self.per_case - self.offset).round() as i64
    }

    /// The sum after a day of `count` cases.
    pub fn next(self, sum: u32, count: u32) -> u32 {
        u32::try_from((i64::from(sum) + self.of(count)).max(0)).unwrap_or(u32::MAX)
    }
}

/// Points and their chances.
type Steps = Vec<(i64, f64)>;

/// A day of the chain: how it is scored, and by which law its cases really come.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Day {
    /// The score.
    pub score: Score,
    /// The law of the cases, which need not be the one that the score believes in.
    pub law: Law,
}

impl Day {
    /// The chance of each score below `threshold`, ascending, scores that give the same points taken together.
    ///
    /// `None` for a law that cannot be.
    fn steps(self, threshold: u32) -> Option<Steps> {
        let law = self.law.checked()?;
        let mut steps: Steps = Vec::new();
        for count in 0u32.. {
            let (points, chance) = (self.score.of(count), law.chance(u64::from(count)));
            let spent = chance < NO_CHANCE && f64::from(count) > law.mean();
            if points >= i64::from(threshold) || spent {
                break;
            }
            match steps.last_mut() {
                Some((last, total)) if *last == points => *total += chance,
                _ => steps.push((points, chance)),
            }
        }
        Some(steps)
    }
}

/// The chances of each sum below the threshold, after a day; what is missing from 1 has signalled.
fn advance(chances: &[f64], steps: &[(i64, f64)]) -> Vec<f64> {
    let mut after = vec![0.0; chances.len()];
    for (sum, chance) in (0i64..).zip(chances).filter(|(_, chance)| **chance > 0.0) {
        for (points, step) in steps {
            match after.get_mut((sum + points).max(0) as usize) {
                Some(place) => *place += chance * step,
                None => break,
            }
        }
    }
    after
}

/// The greatest threshold that is worked with, in points.
const MOST_POINTS: u32 = 1 << 12;
/// Chances below this are lost beside 1 in any case.
const NO_CHANCE: f64 = 1e-18;

fn at_start(threshold: u32, start: u32) -> Option<Vec<f64>> {
    (start < threshold && threshold <= MOST_POINTS).then(|| {
        let mut chances = vec![0.0; threshold as usize];
        chances[start as usize] = 1.0;
        chances
    })
}

/// The chance that the sum has signalled by the end of each day, for days of changing expectation.
///
/// - `threshold`: points, above `start` and up to 4096
///
/// Exact (a chain over whole points; no tail of the law is cut that could stay below the threshold).
/// `None` for a threshold outside and a law without chances.
pub fn signalled_by(days: &[Day], threshold: u32, start: u32) -> Option<Vec<f64>> {
    let steps: Vec<Steps> = days.iter().map(|day| day.steps(threshold)).collect::<Option<_>>()?;
    along(&steps, threshold, start)
}

/// The same, from the points of each day and their chances; points past the threshold may stand among them.
fn along(days: &[Steps], threshold: u32, start: u32) -> Option<Vec<f64>> {
    let mut chances = at_start(threshold, start)?;
    let after = |steps: &Steps| {
        chances = advance(&chances, steps);
        1.0 - chances.iter().sum::<f64>()
    };
    Some(days.iter().map(after).collect())
}

/// The chance of a signal within all the days; arguments as in [`signalled_by`].
pub fn signal_chance(days: &[Day], threshold: u32, start: u32) -> Option<f64> {
    signalled_by(days, threshold, start)?.last().copied().or(Some(0.0))
}

/// The chance that the sum signals by the end of each of `risen`, given that it did not before, on the `steady` days.
pub fn noticed_by(steady: &[Day], risen: &[Day], threshold: u32) -> Option<Vec<f64>> {
    let days: Vec<Day> = steady.iter().chain(risen).copied().collect();
    let signalled = signalled_by(&days, threshold, 0)?;
    let before = steady.len().checked_sub(1).map_or(0.0, |last| signalled[last]);
    Some(signalled[steady.len()..].iter().map(|by| (by - before) / (1.0 - before)).collect())
}

/// The least threshold, in points, at which the chance of a false signal within all the days is at most `at_most`.
///
/// - `days`: the law of each is that of steady days
///
/// `None` where even the greatest threshold rings oftener, and for laws without chances.
pub fn least_threshold(days: &[Day], at_most: f64) -> Option<u32> {
    let steps: Vec<Steps> = days.iter().map(|day| day.steps(MOST_POINTS)).collect::<Option<_>>()?;
    let rare = |threshold| Some(along(&steps, threshold, 0)?.last().is_none_or(|chance| *chance <= at_most));
    let mut enough = 64;
    while !rare(enough)? {
        enough = Some(enough * 2).filter(|points| *points <= MOST_POINTS)?;
    }
    let mut too_low = 0;
    while enough - too_low > 1 {
        let middle = u32::midpoint(too_low, enough);
        if rare(middle)? {
            enough = middle;
        } else {
            too_low = middle;
        }
    }
    Some(enough)
}

/// How long a sum runs over days that are all alike, the day of the signal counted.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct RunLength {
    /// The average day of the signal.
    pub average: f64,
    /// The first day by which half of the sums have signalled.
    pub median: u64,
}

/// The run length over days that are all alike, from a start in points.
///
/// Exact, by a system of `threshold` linear equations; meant for coarse points, a threshold up to 1000.
/// `None` for a threshold outside, a law without chances, and a sum that practically never signals.
pub fn run_length(day: Day, threshold: u32, start: u32) -> Option<RunLength> {
    let from = at_start(threshold, start).filter(|_| threshold <= 1000)?;
    let steps = day.steps(threshold)?;
    let chain = Square::of_rows(threshold as usize, |row| {
        let mut chances = vec![0.0; threshold as usize];
        chances[row] = 1.0;
        advance(&chances, &steps)
    });
    let average = chain.days_to_absorption()?[start as usize];
    Some(RunLength { average, median: median(chain, from)? })
}

/// The first day by which half have signalled: doubled powers of the chain, then down them again.
fn median(chain: Square, mut chances: Vec<f64>) -> Option<u64> {
    const MOST_DOUBLINGS: usize = 40;
    let left = |chances: &[f64]| chances.iter().sum::<f64>();
    let mut powers = vec![chain];
    while left(&powers.last()?.after(&chances)) > 0.5 {
        let last = powers.last().filter(|_| powers.len() < MOST_DOUBLINGS)?;
        powers.push(last.squared());
    }
    let mut days = 0;
    for (doublings, power) in powers.iter().enumerate().rev() {
        let after = power.after(&chances);
        if left(&after) > 0.5 {
            chances = after;
            days += 1 << doublings;
        }
    }
    Some(days + 1)
}

/// A square matrix by rows.
struct Square {
    order: usize,
    cells: Vec<f64>,
}

impl Square {
    fn of_rows(order: usize, row_of: impl Fn(usize) -> Vec<f64>) -> Square {
        Square { order, cells: (0..order).flat_map(row_of).collect() }
    }

    fn row(&self, row: usize) -> &[f64] {
        &self.cells[row * self.order..(row + 1) * self.order]
    }

    /// The chances after the days of this matrix.
    fn after(&self, chances: &[f64]) -> Vec<f64> {
        let mut after = vec![0.0; self.order];
        for (row, chance) in chances.iter().enumerate().filter(|(_, chance)| **chance != 0.0) {
            for (place, cell) in after.iter_mut().zip(self.row(row)) {
                *place += chance * cell;
            }
        }
        after
    }

    fn squared(&self) -> Square {
        Square::of_rows(self.order, |row| self.after(self.row(row)))
    }

    /// For each state the average number of days until it is left for good: (I - self) days = 1, by elimination.
    ///
    /// No pivot is needed, since I - self is diagonally dominant by rows.
    fn days_to_absorption(&self) -> Option<Vec<f64>> {
        let order = self.order;
        let mut rows: Vec<Vec<f64>> = (0..order)
            .map(|row| {
                let mut cells: Vec<f64> = self.row(row).iter().map(|cell| -cell).collect();
                cells[row] += 1.0;
                cells.push(1.0);
                cells
            })
            .collect();
        for pivot in 0..order {
            let (done, below) = rows.split_at_mut(pivot + 1);
            let top = done.last()?;
            for row in below.iter_mut().filter(|row| row[pivot] != 0.0) {
                let factor = row[pivot] / top[pivot];
                row[pivot..].iter_mut().zip(&top[pivot..]).for_each(|(cell, above)| *cell -= factor * above);
            }
        }
        let mut days = vec![0.0; order];
        for row in (0..order).rev() {
            let known: f64 = (row + 1..order).map(|column| rows[row][column] * days[column]).sum();
            days[row] = (rows[row][order] - known) / rows[row][row];
        }
        days.iter().all(|days| days.is_finite() && *days > 0.0).then_some(days)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn poisson(mean: f64, reference: f64) -> Day {
        Day { score: Score::plain(reference, 4), law: Law::Poisson { mean } }
    }

    #[test]
    fn references_lie_between_the_means() {
        assert!((reference_value(1.0, 2.0, None).unwrap() - 1.0 / 2f64.ln()).abs() < 1e-15);
        let clumped = reference_value(1.0, 2.5, Some(2.0)).unwrap();
        assert!((clumped - 2.0 * 1.5f64.ln() / (5.0f64 / 3.0).ln()).abs() < 1e-14);
        let wide = reference_value(1.0, 2.0, Some(1e8)).unwrap();
        assert!((wide - 1.0 / 2f64.ln()).abs() < 1e-6);
        for (expected, to_detect, size) in
            [(0.0, 1.0, None), (2.0, 2.0, None), (1.0, f64::NAN, None), (1.0, 2.0, Some(0.0))]
        {
            assert_eq!(reference_value(expected, to_detect, size), None);
        }
    }

    /// Derived: with a threshold of one point any count above the reference signals, and the sum forgets; the run is
    /// geometric.
    #[test]
    fn a_sum_without_memory_is_geometric() {
        let day = poisson(1.0, 1.0);
        let rings = day.law.at_least(2);
        let run = run_length(day, 1, 0).unwrap();
        assert!((run.average - 1.0 / rings).abs() < 1e-12);
        assert_eq!(run.median, (0.5f64.ln() / (1.0 - rings).ln()).ceil() as u64);
        let three = signal_chance(&[day; 3], 1, 0).unwrap();
        assert!((three - (1.0 - (1.0 - rings).powi(3))).abs() < 1e-14);
    }

    #[test]
    fn to_reach_the_threshold_exactly_is_a_signal() {
        // 4 points a case, reference 1 case: 3 cases are 8 points.
        let day = poisson(1.0, 1.0);
        let chance = |threshold| signal_chance(&[day], threshold, 0).unwrap();
        assert!((chance(8) - day.law.at_least(3)).abs() < 1e-14);
        assert!((chance(9) - day.law.at_least(4)).abs() < 1e-14);
        assert_eq!(day.score.next(0, 3), 8);
        assert_eq!((day.score.next(2, 0), next(0.5, 0.0, 1.0), next(0.5, 3.0, 1.0)), (0, 0.0, 2.5));
    }

    #[test]
    fn points_hold_the_likelihood_ratio_within_half_a_point() {
        for size in [None, Some(3.0)] {
            let score = Score::likelihood_ratio(1.7, 2.0, size).unwrap();
            for count in 0..20 {
                let (low, high) = (Law::of(1.7, size), Law::of(3.4, size));
                let exact = (high.chance(count.into()) / low.chance(count.into())).ln();
                assert!((score.of(count) as f64 / POINTS_PER_LOG_UNIT - exact).abs() <= 0.02 + 1e-9);
            }
        }
        assert_eq!(Score::likelihood_ratio(0.0, 2.0, None), None);
    }

    /// A batch whose expectation changes by day: the threshold found is enough and one point less is not.
    #[test]
    fn the_least_threshold_is_enough_and_one_less_is_not() {
        let day = |age: u32| {
            let expected = if age < 7 { 2.4 } else { 0.5 + 0.02 * f64::from(age) };
            let score = Score::likelihood_ratio(expected, 2.0, Some(3.0)).unwrap();
            Day { score, law: Law::of(expected, Some(3.0)) }
        };
        let days: Vec<Day> = (0..42).map(day).collect();
        for at_most in [0.3, 0.05, 0.01] {
            let threshold = least_threshold(&days, at_most).unwrap();
            assert!(signal_chance(&days, threshold, 0).unwrap() <= at_most);
            assert!(signal_chance(&days, threshold - 1, 0).unwrap() > at_most);
        }
    }

    #[test]
    fn a_rise_is_noticed_sooner_than_chance_rings() {
        let score = Score::likelihood_ratio(2.0, 3.0, Some(4.0)).unwrap();
        let day = |mean| Day { score, law: Law::of(mean, Some(4.0)) };
        let threshold = least_threshold(&[day(2.0); 42], 0.05).unwrap();
        let noticed = noticed_by(&[day(2.0); 20], &[day(6.0); 10], threshold).unwrap();
        let steady = noticed_by(&[day(2.0); 20], &[day(2.0); 10], threshold).unwrap();
        assert!(noticed.windows(2).all(|pair| pair[0] < pair[1]));
        assert!(noticed[9] > 0.9 && steady[9] < 0.02, "{noticed:?} {steady:?}");
        let at_once = noticed_by(&[], &[day(6.0); 10], threshold).unwrap();
        assert!(at_once[3] < noticed[3], "a running sum has a start");
    }

    #[test]
    fn outside_there_is_no_answer() {
        let day = poisson(1.0, 1.5);
        assert_eq!((signal_chance(&[day], 4, 4), signal_chance(&[day], MOST_POINTS + 1, 0)), (None, None));
        assert_eq!(signal_chance(&[], 4, 0), Some(0.0));
        assert_eq!(run_length(day, 1001, 0), None);
        assert_eq!(run_length(poisson(0.0, 1.5), 24, 0), None, "no cases, no signal");
        assert_eq!(least_threshold(&[poisson(-1.0, 1.5)], 0.1), None);
        // A count far above its reference rings whatever the threshold.
        assert_eq!(least_threshold(&[poisson(600.0, 0.0); 42], 0.1), None);
    }
}
