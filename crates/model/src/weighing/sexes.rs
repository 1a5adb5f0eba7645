//! Cocks and hens weighed together: what a mixture of two sexes does to evenness, and whether weights alone can tell two
//! sexes apart.

use std::f64::consts::TAU;

use crate::quantile::normal_share_below;

/// One sex in a flock.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Part {
    /// Its share of the birds, 0 to 1.
    pub share: f64,
    /// Its mean weight.
    pub mean: f64,
    /// Its coefficient of variation, a share.
    pub variation: f64,
}

/// Mean weight of a flock made of parts whose shares add up to 1.
pub fn mixed_mean(parts: &[Part]) -> f64 {
    parts.iter().map(|part| part.share * part.mean).sum()
}

/// Coefficient of variation of such a flock: CV² m² = Σ w (s² + (m_i - m)²).
pub fn mixed_variation(parts: &[Part]) -> f64 {
    let mean = mixed_mean(parts);
    let square =
        |part: &Part| part.share * ((part.variation * part.mean).powi(2) + (part.mean - mean).powi(2));
    parts.iter().map(square).sum::<f64>().sqrt() / mean
}

/// Share of such a flock within `within` (a share) of its own mean, where each part follows a bell curve.
pub fn mixed_uniformity(parts: &[Part], within: f64) -> f64 {
    let mean = mixed_mean(parts);
    let below =
        |part: &Part, limit: f64| normal_share_below((limit - part.mean) / (part.variation * part.mean));
    let inside =
        |part: &Part| part.share * (below(part, (1.0 + within) * mean) - below(part, (1.0 - within) * mean));
    parts.iter().map(inside).sum()
}

/// Two bell curves with one coefficient of variation, fitted to weights.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct TwoCurves {
    /// Share of birds in the heavier one.
    pub heavy_share: f64,
    /// Mean of the lighter.
    pub light: f64,
    /// Mean of the heavier.
    pub heavy: f64,
    /// The coefficient of variation of both, a share.
    pub variation: f64,
    /// ln of the likelihood of the weights under them.
    pub log_likelihood: f64,
}

impl TwoCurves {
    /// From mean to mean, in standard deviations (of a bird of the mean between).
    pub fn gap_in_deviations(&self) -> f64 {
        (self.heavy - self.light) / (self.variation * (self.heavy + self.light) / 2.0)
    }
}

/// ln of the likelihood of weights under one bell curve fitted to them; `None` of fewer than two or all alike.
pub fn log_likelihood_of_one(weights: &[f64]) -> Option<f64> {
    let n = weights.len() as f64;
    let square = super::standard_deviation(weights)?.powi(2) * (n - 1.0) / n;
    (square > 0.0).then(|| -n / 2.0 * ((TAU * square).ln() + 1.0))
}

/// Rounds of fitting at most, and the gain of likelihood below which they end.
const ROUNDS: usize = 2_000;
const LEAST_GAIN: f64 = 1e-10;

/// The likeliest two bell curves sharing one coefficient of variation, by expectation and conditional maximisation from
/// several starts. `None` of fewer than four weights, or all alike.
///
/// Given the weights' chances of belonging to a curve (sums R of chances, S1 of chance times weight, S2 of chance times
/// weight squared) and c, a mean is the root of R c² m² + S1 m - S2 = 0; given the means, c² is the mean of chance times
/// (x - m)² / m². Each step raises the likelihood.
///
/// Source: [meng-rubin-1993] for the method; the two steps are our arithmetic.
pub fn two_curves(weights: &[f64]) -> Option<TwoCurves> {
    let (mean, sd) = (super::mean(weights)?, super::standard_deviation(weights)?);
    if weights.len() < 4 || sd <= 1e-9 * mean || weights.iter().any(|weight| *weight <= 0.0) {
        return None;
    }
    let start = |(share, apart): (f64, f64)| TwoCurves {
        heavy_share: share,
        light: (mean - apart * share * sd).max(0.2 * mean),
        heavy: mean + apart * (1.0 - share) * sd,
        variation: (1.0 - share * (1.0 - share) * apart.powi(2)).max(0.1).sqrt() * sd / mean,
        log_likelihood: f64::NEG_INFINITY,
    };
    let starts = [(0.5, 1.7), (0.3, 1.9), (0.7, 1.9), (0.5, 1.0)];
    let fits = starts.into_iter().map(|one| climb(weights, start(one)));
    fits.max_by(|a, b| a.log_likelihood.total_cmp(&b.log_likelihood))
}

fn climb(weights: &[f64], mut at: TwoCurves) -> TwoCurves {
    for _ in 0..ROUNDS {
        let next = step(weights, at);
        let gain = next.log_likelihood - at.log_likelihood;
        at = next;
        if gain.abs() < LEAST_GAIN * at.log_likelihood.abs().max(1.0) {
            break;
        }
    }
    if at.light > at.heavy {
        (at.light, at.heavy, at.heavy_share) = (at.heavy, at.light, 1.0 - at.heavy_share);
    }
    at
}

/// One round: chances, then shares and means, then the coefficient of variation. The likelihood is that before the round.
fn step(weights: &[f64], at: TwoCurves) -> TwoCurves {
    let (mut heavy, mut light) = ([0.0; 3], [0.0; 3]);
    let mut log_likelihood = 0.0;
    for &x in weights {
        let (h, l) =
            (density(x, at.heavy, at) * at.heavy_share, density(x, at.light, at) * (1.0 - at.heavy_share));
        // Where both underflow the bird lies beyond any doubt with neither; it is shared out evenly.
        let chance = if h + l > 0.0 { h / (h + l) } else { 0.5 };
        log_likelihood += (h + l).max(f64::MIN_POSITIVE).ln();
        for (sums, chance) in [(&mut heavy, chance), (&mut light, 1.0 - chance)] {
            sums[0] += chance;
            sums[1] += chance * x;
            sums[2] += chance * x * x;
        }
    }
    let square = at.variation.powi(2);
    let (heavy_mean, light_mean) = (root(heavy, square, at.heavy), root(light, square, at.light));
    let part = |[r, s1, s2]: [f64; 3], m: f64| s2 / (m * m) - 2.0 * s1 / m + r;
    let variation =
        ((part(heavy, heavy_mean) + part(light, light_mean)).max(0.0) / weights.len() as f64).sqrt();
    TwoCurves {
        heavy_share: heavy[0] / weights.len() as f64,
        light: light_mean,
        heavy: heavy_mean,
        variation: variation.max(1e-4),
        log_likelihood,
    }
}

/// The likeliest mean for chances that sum up so; the mean before where a curve has lost all its birds.
fn root([r, s1, s2]: [f64; 3], square: f64, before: f64) -> f64 {
    let lead = r * square;
    if lead <= 1e-12 { before } else { (-s1 + (s1 * s1 + 4.0 * lead * s2).sqrt()) / (2.0 * lead) }
}

fn density(x: f64, mean: f64, at: TwoCurves) -> f64 {
    let sd = at.variation * mean;
    (-((x - mean) / sd).powi(2) / 2.0).exp() / (sd * TAU.sqrt())
}

/// Two sexes found by weights alone: only where the means lie more than two standard deviations apart, neither is less
/// than a fifth of the birds, and the weights prefer two curves to one by [schwarz-1978]'s criterion with `MARGIN` to
/// spare. `None` says that weights alone cannot tell them apart.
///
/// How often one sex is taken for two, and two are found, is measured by `examples/sexes.rs`. Of very many weights
/// `MOST`, at even ranks, stand for all.
pub fn found_apart(weights: &[f64]) -> Option<TwoCurves> {
    /// What the criterion must gain beyond a tie: our judgement, so that false claims are rare.
    const MARGIN: f64 = 3.0;
    let weights = &at_even_ranks(weights);
    let two = two_curves(weights)?;
    let one = log_likelihood_of_one(weights)?;
    // Two more numbers are fitted: a second mean and a share.
    let gain = 2.0 * (two.log_likelihood - one) - 2.0 * (weights.len() as f64).ln();
    let shares = (0.2..=0.8).contains(&two.heavy_share);
    (two.gap_in_deviations() > 2.0 && shares && gain > MARGIN).then_some(two)
}

/// Weights that are looked at for two sexes.
const MOST: usize = 2_000;

fn at_even_ranks(weights: &[f64]) -> Vec<f64> {
    let mut sorted = weights.to_vec();
    if sorted.len() <= MOST {
        return sorted;
    }
    sorted.sort_by(f64::total_cmp);
    (0..MOST).map(|at| sorted[(2 * at + 1) * sorted.len() / (2 * MOST)]).collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::chance::Draw;

    /// Cocks and hens turn by turn, each sex with a CV of 5 %.
    fn flock(birds: u32, gap: f64) -> Vec<f64> {
        let weight = |n: u32| {
            let z = Draw { seed: 5, scenario: 0, stream: 0, day: 0, n }.normal();
            let side = if n.is_multiple_of(2) { 1.0 } else { -1.0 };
            2000.0 * (1.0 + side * gap / 2.0) * (1.0 + 0.05 * z)
        };
        (0..birds).map(weight).collect()
    }

    #[test]
    fn two_sexes_are_found_where_they_stand_apart_and_not_else() {
        for birds in [200, 8_000] {
            let found = found_apart(&flock(birds, 0.2)).unwrap();
            assert!((found.light - 1800.0).abs() < 25.0 && (found.heavy - 2200.0).abs() < 25.0, "{found:?}");
            assert!(
                (found.heavy_share - 0.5).abs() < 0.06 && (found.variation - 0.05).abs() < 0.008,
                "{found:?}"
            );
        }
        for gap in [0.0, 0.05] {
            assert_eq!(found_apart(&flock(200, gap)), None);
        }
        assert_eq!((found_apart(&[2000.0; 50]), found_apart(&[1800.0, 2200.0])), (None, None));
    }

    /// Derived: equal numbers, CV 8 in each sex and a gap of 15 % make 11.0 %; of one part alone nothing is added.
    #[test]
    fn a_mixture_is_less_even_than_its_parts() {
        let part = |mean| Part { share: 0.5, mean, variation: 0.08 };
        let mixed = mixed_variation(&[part(1.075), part(0.925)]);
        assert!((mixed - 0.1101).abs() < 5e-4, "{mixed}");
        let alone = [Part { share: 1.0, ..part(2000.0) }];
        assert!((mixed_variation(&alone) - 0.08).abs() < 1e-12);
        assert!((mixed_uniformity(&alone, 0.1) - 0.7887).abs() < 1e-4);
    }
}
