//! What the scale adds to the error of a mean: it reads in steps, and it may read too much or too little.

use super::upper;
use crate::quantile;

/// What a scale reads in one step spread evenly has this share of the step as its standard deviation: 1 / √12.
const OF_A_STEP: f64 = 0.288_675_134_594_812_9;

/// How far a mean can be off either way by the step of the scale alone: z × step / √12.
///
/// - `step`: g from mark to mark; `readings_by_birds`: readings taken over birds weighed, 1 for birds one by one, a tenth
///   for ten a crate
///
/// One and the same zero and one and the same rounding go through all readings, so it does not shrink with more birds.
/// Source: uniform rounding; that all of it stays is our judgement, on the safe side.
pub fn step_error(step: f64, readings_by_birds: f64, confidence: f64) -> Option<f64> {
    Some(quantile::normal(upper(confidence))? * OF_A_STEP * step * readings_by_birds)
}

/// What the scale shows by what is truly on it: above 1 it shows too much. `None` where a test weight is no weight.
pub fn bias(truly: f64, shown: f64) -> Option<f64> {
    (truly > 0.0 && shown > 0.0).then(|| shown / truly)
}

/// A mean put right for what the scale shows too much.
pub fn corrected(mean: f64, truly: f64, shown: f64) -> Option<f64> {
    Some(mean / bias(truly, shown)?)
}

/// Two errors that have nothing to do with each other.
pub fn together(one: f64, other: f64) -> f64 {
    one.hypot(other)
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Derived: a step of 20 g leaves 1.96 × 5.77 = 11.3 g; ten birds a crate a tenth of that each.
    #[test]
    fn a_step_and_a_test_weight() {
        assert!((step_error(20.0, 1.0, 0.95).unwrap() - 11.316).abs() < 1e-3);
        assert!((step_error(20.0, 0.1, 0.95).unwrap() - 1.1316).abs() < 1e-4);
        assert_eq!(corrected(2020.0, 1000.0, 1010.0), Some(2000.0));
        assert_eq!(bias(0.0, 1000.0), None);
        assert_eq!(together(3.0, 4.0), 5.0);
    }
}
