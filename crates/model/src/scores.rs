//! Scores of forecasts once the truth is known: less is better. They tell whether ranges are honest.
//!
//! Source: [gneiting-raftery-2007].

use crate::quantile::{normal_density, normal_share_below};

/// Continuous ranked probability score of a bell curve: sd (z (2 Φ(z) - 1) + 2 φ(z) - 1 / √π), in the unit of what is
/// forecast. `sd` above 0.
pub fn crps_normal(mean: f64, sd: f64, seen: f64) -> f64 {
    let z = (seen - mean) / sd;
    let part = z * (2.0 * normal_share_below(z) - 1.0) + 2.0 * normal_density(z);
    sd * (part - 1.0 / std::f64::consts::PI.sqrt())
}

/// The same for a number whose ln follows a bell curve about `mu` with deviation `sigma`; `seen` above 0.
pub fn crps_lognormal(mu: f64, sigma: f64, seen: f64) -> f64 {
    let z = (seen.ln() - mu) / sigma;
    let tail = normal_share_below(z - sigma) + normal_share_below(sigma / std::f64::consts::SQRT_2) - 1.0;
    seen * (2.0 * normal_share_below(z) - 1.0) - 2.0 * (mu + sigma * sigma / 2.0).exp() * tail
}

/// The same for draws: mean |x - y| less half the mean |x - x'|. `fair` leaves a draw's distance to itself out, as
/// befits draws from a forecast and not all of it. `None` of no draws, or of one that should be fair.
pub fn crps_of_draws(draws: &[f64], seen: f64, fair: bool) -> Option<f64> {
    let count = draws.len() as f64;
    let pairs = if fair { count * (count - 1.0) } else { count * count };
    let off: f64 = draws.iter().map(|draw| (draw - seen).abs()).sum::<f64>();
    let apart: f64 = draws.iter().flat_map(|one| draws.iter().map(move |other| (one - other).abs())).sum();
    (pairs > 0.0).then(|| off / count - apart / (2.0 * pairs))
}

/// Loss of a forecast point below which `share` should lie.
pub fn pinball(share: f64, point: f64, seen: f64) -> f64 {
    (share - f64::from(u8::from(seen < point))) * (seen - point)
}

/// Score of a range of a confidence: its width, and 2 / (1 - confidence) times how far the truth lies outside.
pub fn interval_score(low: f64, high: f64, confidence: f64, seen: f64) -> f64 {
    high - low + 2.0 / (1.0 - confidence) * ((low - seen).max(0.0) + (seen - high).max(0.0))
}

/// Minus ln of the density of a bell curve where the truth lies.
pub fn log_score_normal(mean: f64, sd: f64, seen: f64) -> f64 {
    let z = (seen - mean) / sd;
    sd.ln() + std::f64::consts::TAU.ln() / 2.0 + z * z / 2.0
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_truth_in_the_middle_scores_best() {
        for seen in [1.0, -1.0, 3.0] {
            assert!(crps_normal(0.0, 1.0, seen) > crps_normal(0.0, 1.0, 0.0));
            assert!(log_score_normal(0.0, 1.0, seen) > log_score_normal(0.0, 1.0, 0.0));
        }
        assert_eq!(crps_of_draws(&[4.0], 6.0, false), Some(2.0));
        assert_eq!((crps_of_draws(&[4.0], 6.0, true), crps_of_draws(&[], 6.0, false)), (None, None));
        assert_eq!(interval_score(1.0, 3.0, 0.8, 2.0), 2.0);
    }
}
