//! A Gompertz curve through some weights: asymptote × exp(-exp(-rate × (day - inflection))), by least squares.
//!
//! A curve for what is past. From weights before its inflection the asymptote is anybody's guess, so no forecast rests on it.
//!
//! Source: the method of [marquardt-1963] (from memory), within bounds, from several starts.

/// A Gompertz curve.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Gompertz {
    /// The weight it nears, g.
    pub asymptote_g: f64,
    /// Its rate, a day.
    pub rate: f64,
    /// The day of its greatest gain.
    pub inflection_d: f64,
}

/// The bounds of a search, for asymptote, rate and inflection: without them the asymptote of birds that still grow runs away.
pub const BOUNDS: [(f64, f64); 3] = [(10.0, 6_000.0), (0.002, 0.6), (-20.0, 200.0)];

/// A curve fitted.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Fit {
    /// The curve.
    pub curve: Gompertz,
    /// Sum of squares of what is left over, g².
    pub rss: f64,
    /// How many weights it went by.
    pub count: usize,
    /// Covariance of asymptote, rate and inflection; `None` where the weights do not tell it, or too few are left over.
    pub covariance: Option<[[f64; 3]; 3]>,
    /// Whether one of the three lies on its bound.
    pub at_bound: bool,
}

impl Gompertz {
    /// The weight on a day, g.
    pub fn weight_g(&self, day: f64) -> f64 {
        self.asymptote_g * (-(-self.rate * (day - self.inflection_d)).exp()).exp()
    }

    /// How the weight on a day answers to asymptote, rate and inflection.
    fn partials(&self, day: f64) -> [f64; 3] {
        let left = (-self.rate * (day - self.inflection_d)).exp();
        let weight = self.weight_g(day);
        [weight / self.asymptote_g, weight * left * (day - self.inflection_d), -weight * left * self.rate]
    }

    fn values(&self) -> [f64; 3] {
        [self.asymptote_g, self.rate, self.inflection_d]
    }

    fn within([asymptote, rate, inflection]: [f64; 3]) -> Gompertz {
        let [a, k, t] = BOUNDS;
        Gompertz {
            asymptote_g: asymptote.clamp(a.0, a.1),
            rate: rate.clamp(k.0, k.1),
            inflection_d: inflection.clamp(t.0, t.1),
        }
    }
}

impl Fit {
    /// Standard errors of asymptote, rate and inflection.
    pub fn standard_errors(&self) -> Option<[f64; 3]> {
        let covariance = self.covariance?;
        Some([0, 1, 2].map(|at| covariance[at][at].sqrt()))
    }

    /// Whether the asymptote can be gone by: on no bound, and known to a quarter of itself.
    pub fn is_well_determined(&self) -> bool {
        let known = self.standard_errors().is_some_and(|errors| errors[0] <= 0.25 * self.curve.asymptote_g);
        known && !self.at_bound
    }

    /// Standard deviation of a new weight on a day, g: of the curve there and of a weight about it.
    pub fn deviation_g(&self, day: f64) -> Option<f64> {
        let (covariance, partials) = (self.covariance?, self.curve.partials(day));
        let pairs = (0..3).flat_map(|row| (0..3).map(move |column| (row, column)));
        let of_curve: f64 =
            pairs.map(|(row, column)| partials[row] * covariance[row][column] * partials[column]).sum();
        Some((of_curve.max(0.0) + self.rss / (self.count as f64 - 3.0)).sqrt())
    }
}

/// The curve with the least sum of squares through weights, g, by day; `None` of fewer than three.
pub fn fit(weighed: &[(f64, f64)]) -> Option<Fit> {
    if weighed.len() < 3 {
        return None;
    }
    let heaviest = weighed.iter().map(|(_, weight)| *weight).fold(0.0, f64::max);
    let last = weighed.iter().map(|(day, _)| *day).fold(0.0, f64::max);
    let starts = [1.1, 2.0, 5.0, 20.0].into_iter().flat_map(|times| [0.02, 0.05, 0.1].map(|k| (times, k)));
    let from = starts.map(|(times, rate)| {
        // The inflection that leads the curve through the heaviest weight.
        let inflection = last + f64::ln(f64::ln(times)) / rate;
        walk(Gompertz::within([times * heaviest, rate, inflection]), weighed)
    });
    let (rss, curve) = from.min_by(|one, other| one.0.total_cmp(&other.0))?;
    let at_bound = curve.values().iter().zip(BOUNDS).any(|(value, (low, high))| {
        let near = 1e-6 * (high - low);
        *value - low < near || high - *value < near
    });
    let count = weighed.len();
    let squares = normal_matrix(&curve, weighed).0;
    let covariance = (count > 3).then(|| inverse(&squares)).flatten();
    let variance = rss / (count as f64 - 3.0);
    let covariance = covariance.map(|matrix| matrix.map(|row| row.map(|cell| cell * variance)));
    Some(Fit { curve, rss, count, covariance, at_bound })
}

fn rss(curve: &Gompertz, weighed: &[(f64, f64)]) -> f64 {
    weighed.iter().map(|(day, weight)| (weight - curve.weight_g(*day)).powi(2)).sum()
}

type Matrix = [[f64; 3]; 3];

/// J'J and J'r.
fn normal_matrix(curve: &Gompertz, weighed: &[(f64, f64)]) -> (Matrix, [f64; 3]) {
    let (mut squares, mut slope) = ([[0.0; 3]; 3], [0.0; 3]);
    for (day, weight) in weighed {
        let (partials, left) = (curve.partials(*day), weight - curve.weight_g(*day));
        for row in 0..3 {
            slope[row] += partials[row] * left;
            for column in 0..3 {
                squares[row][column] += partials[row] * partials[column];
            }
        }
    }
    (squares, slope)
}

/// Downhill from a start, step by damped step; a value on its bound that wants beyond stays there.
fn walk(start: Gompertz, weighed: &[(f64, f64)]) -> (f64, Gompertz) {
    let (mut curve, mut least, mut damping) = (start, rss(&start, weighed), 1e-3);
    for _ in 0..2_000 {
        let (squares, slope) = normal_matrix(&curve, weighed);
        let next = step(&curve, squares, slope, damping);
        let value = next.map_or(f64::INFINITY, |next| rss(&next, weighed));
        let Some(next) = next.filter(|_| value <= least) else {
            damping *= 4.0;
            if damping > 1e16 {
                break;
            }
            continue;
        };
        let gained = least - value;
        (curve, least, damping) = (next, value, (damping / 5.0).max(1e-15));
        if gained <= 1e-15 * least {
            break;
        }
    }
    (least, curve)
}

fn step(curve: &Gompertz, mut squares: Matrix, mut slope: [f64; 3], damping: f64) -> Option<Gompertz> {
    let values = curve.values();
    for at in 0..3 {
        let (low, high) = BOUNDS[at];
        let wants_out = (values[at] <= low && slope[at] < 0.0) || (values[at] >= high && slope[at] > 0.0);
        if wants_out {
            squares[at] = [0.0; 3];
            for row in &mut squares {
                row[at] = 0.0;
            }
            (squares[at][at], slope[at]) = (1.0, 0.0);
        }
        squares[at][at] *= 1.0 + damping;
    }
    let inverse = inverse(&squares)?;
    let moved = [0, 1, 2].map(|row| {
        values[row] + inverse[row].iter().zip(slope).map(|(cell, slope)| cell * slope).sum::<f64>()
    });
    moved.iter().all(|value| value.is_finite()).then(|| Gompertz::within(moved))
}

/// The inverse of a symmetric matrix, its rows and columns first brought to one size.
fn inverse(matrix: &Matrix) -> Option<Matrix> {
    let size = [0, 1, 2].map(|at| matrix[at][at].sqrt());
    if size.iter().any(|size| !(*size > 0.0 && size.is_finite())) {
        return None;
    }
    let scaled = |row: usize, column: usize| matrix[row][column] / (size[row] * size[column]);
    let minor = |row: usize, column: usize| {
        let (a, b) = ((row + 1) % 3, (row + 2) % 3);
        let (c, d) = ((column + 1) % 3, (column + 2) % 3);
        scaled(a, c) * scaled(b, d) - scaled(a, d) * scaled(b, c)
    };
    let whole: f64 = (0..3).map(|column| scaled(0, column) * minor(0, column)).sum();
    if whole.abs() < f64::MIN_POSITIVE {
        return None;
    }
    let cell = |row: usize, column: usize| minor(column, row) / whole / (size[row] * size[column]);
    Some([0, 1, 2].map(|row| [0, 1, 2].map(|column| cell(row, column))))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_curve_is_found_again() {
        let truth = Gompertz { asymptote_g: 4_950.0, rate: 0.04, inflection_d: 39.06 };
        let weighed: Vec<(f64, f64)> =
            (0..9).map(|week| f64::from(7 * week)).map(|day| (day, truth.weight_g(day))).collect();
        let fit = fit(&weighed).unwrap();
        assert!((fit.curve.asymptote_g - 4_950.0).abs() < 0.01 && (fit.curve.rate - 0.04).abs() < 1e-6);
        assert!(!fit.at_bound && fit.is_well_determined() && fit.rss < 1e-6);
    }

    #[test]
    fn weights_before_the_inflection_do_not_tell_the_asymptote() {
        let early: Vec<(f64, f64)> =
            [(0.0, 42.0), (2.0, 51.0), (4.0, 58.0), (6.0, 72.0), (8.0, 85.0)].to_vec();
        assert!(!fit(&early).unwrap().is_well_determined());
        assert_eq!(fit(&early[..2]), None);
        assert_eq!(fit(&early[..3]).unwrap().covariance, None);
    }
}
