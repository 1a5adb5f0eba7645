//! What earlier batches teach: the law and the first day of the next one, shrunk by how few they were.
//!
//! Empirical Bayes: every number has a documented prior for open houses, and moves from it as far as earlier batches
//! outweigh it. Spreads are found where the likelihood of all earlier weighings times the prior is greatest; the house's own
//! mean of the first level and slope is worked out exactly beside them and keeps its doubt.

use super::filter::{Law, Seen, State};
use crate::simplex;

/// The numbers of a house, each as a standard deviation but for the damping.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct House {
    /// What is left of a slope on the next day, 0 to 1, both left out.
    pub damping: f64,
    /// What a day adds to the level.
    pub level_noise: f64,
    /// What a day adds to the slope.
    pub slope_noise: f64,
    /// How far batches of one house differ in their first level.
    pub first_level: f64,
    /// How far they differ in their first slope.
    pub first_slope: f64,
    /// What a scale and the way of catching add to every weighing.
    pub scale: f64,
}

/// What is held before any earlier batch is seen.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Prior {
    /// The numbers of the usual house.
    pub house: House,
    /// How far houses differ in their mean first level.
    pub houses_level: f64,
    /// How far they differ in their mean first slope, a day.
    pub houses_slope: f64,
    /// How well the numbers are known: standard deviation of the logarithm of each spread, and of
    /// ln(damping / (1 - damping)). The less, the more batches it takes to move them.
    pub known: f64,
}

/// For the mean weight of batches in open houses. Our judgement, held to one published range: open houses differ by 13 % either
/// way at 42 days ([`crate::scenarios::WEIGHT_SPREAD`]). Of that variance chicks as they come make a quarter (3.9 %), and what
/// happens to a batch day by day nearly all the rest: heat, a dry line, late feed come and go, and a batch that fell behind
/// one week does not fall further behind the next.
pub const OPEN_HOUSE: Prior = Prior {
    house: House {
        damping: 0.95,
        level_noise: 0.010,
        slope_noise: 0.000_1,
        first_level: 0.03,
        first_slope: 0.000_8,
        scale: 0.007,
    },
    houses_level: 0.025,
    houses_slope: 0.000_6,
    known: 0.5,
};

/// What is known of a batch before its first weighing.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Learnt {
    /// How it goes on.
    pub law: Law,
    /// What is known of its first day.
    pub first: State,
    /// Variance that the scale adds to every weighing.
    pub scale_variance: f64,
    /// How many earlier batches taught it.
    pub batches: usize,
}

/// What a prior and earlier batches say together. The weighings of a batch stand in the order of their days;
/// batches without any teach nothing.
pub fn learn(prior: &Prior, past: &[Vec<Seen>]) -> Learnt {
    let taught: Vec<&[Seen]> = past.iter().map(Vec::as_slice).filter(|batch| !batch.is_empty()).collect();
    let house = match taught.is_empty() {
        true => prior.house,
        false => house(simplex::least(numbers(&prior.house), 0.4, 600, |at| -fitness(at, prior, &taught))),
    };
    let mean = Mean::of(prior, &house, &taught);
    let [level, slope] = mean.middle;
    let [level_doubt, both, slope_doubt] = mean.doubt;
    Learnt {
        law: law(&house),
        first: State {
            level,
            slope,
            level_variance: house.first_level.powi(2) + level_doubt,
            covariance: both,
            slope_variance: house.first_slope.powi(2) + slope_doubt,
        },
        scale_variance: house.scale.powi(2),
        batches: taught.len(),
    }
}

/// How many numbers are sought.
const NUMBERS: usize = 6;

/// The numbers without bounds: logarithms, and ln(damping / (1 - damping)).
fn numbers(house: &House) -> [f64; NUMBERS] {
    let House { damping, level_noise, slope_noise, first_level, first_slope, scale } = *house;
    let [a, b, c, d, e] = [level_noise, slope_noise, first_level, first_slope, scale].map(f64::ln);
    [(damping / (1.0 - damping)).ln(), a, b, c, d, e]
}

fn house([damping, rest @ ..]: [f64; NUMBERS]) -> House {
    let [level_noise, slope_noise, first_level, first_slope, scale] = rest.map(f64::exp);
    let damping = 1.0 / (1.0 + (-damping).exp());
    House { damping, level_noise, slope_noise, first_level, first_slope, scale }
}

fn law(house: &House) -> Law {
    let House { damping, level_noise, slope_noise, .. } = *house;
    Law { damping, level_noise: level_noise.powi(2), slope_noise: slope_noise.powi(2) }
}

/// ln of the likelihood of all weighings and of the prior.
fn fitness(at: &[f64; NUMBERS], prior: &Prior, past: &[&[Seen]]) -> f64 {
    let usual = numbers(&prior.house);
    let off: f64 = at.iter().zip(usual).map(|(at, usual)| ((at - usual) / prior.known).powi(2)).sum();
    Mean::of(prior, &house(*at), past).log_likelihood - 0.5 * off
}

/// The house's mean first level and slope, and the likelihood of all weighings whatever that mean is.
struct Mean {
    middle: [f64; 2],
    /// Variance of the level, covariance, variance of the slope.
    doubt: [f64; 3],
    log_likelihood: f64,
}

impl Mean {
    /// The likelihood is a bell curve in the mean, so its middle and width follow from six of its values.
    fn of(prior: &Prior, house: &House, past: &[&[Seen]]) -> Mean {
        let (level_unit, slope_unit) = (prior.houses_level, prior.houses_slope);
        let value = |level: f64, slope: f64| {
            let weighings = log_likelihood(house, level * level_unit, slope * slope_unit, past);
            weighings - 0.5 * (level * level + slope * slope)
        };
        let middle = value(0.0, 0.0);
        let [right, left, up, down, both] =
            [(1.0, 0.0), (-1.0, 0.0), (0.0, 1.0), (0.0, -1.0), (1.0, 1.0)].map(|(x, y)| value(x, y));
        let (gx, gy) = ((right - left) / 2.0, (up - down) / 2.0);
        // The curvatures, their signs turned.
        let (xx, yy) = (2.0 * middle - right - left, 2.0 * middle - up - down);
        let xy = -(both - middle - gx - gy + xx / 2.0 + yy / 2.0);
        let whole = xx * yy - xy * xy;
        let (x, y) = ((yy * gx - xy * gy) / whole, (xx * gy - xy * gx) / whole);
        Mean {
            middle: [x * level_unit, y * slope_unit],
            doubt: [
                yy / whole * level_unit.powi(2),
                -xy / whole * level_unit * slope_unit,
                xx / whole * slope_unit.powi(2),
            ],
            log_likelihood: middle + 0.5 * (gx * x + gy * y) - 0.5 * whole.ln(),
        }
    }
}

fn log_likelihood(house: &House, level: f64, slope: f64, past: &[&[Seen]]) -> f64 {
    past.iter().map(|batch| of_batch(house, level, slope, batch)).sum()
}

fn of_batch(house: &House, level: f64, slope: f64, batch: &[Seen]) -> f64 {
    let law = law(house);
    let mut state = State {
        level,
        slope,
        level_variance: house.first_level.powi(2),
        covariance: 0.0,
        slope_variance: house.first_slope.powi(2),
    };
    let (mut day, mut sum) = (0, 0.0);
    for seen in batch {
        state = state.ahead(&law, u32::try_from(seen.day - day).unwrap_or_default());
        day = day.max(seen.day);
        let update = state.see(seen.log_ratio, seen.variance + house.scale.powi(2));
        state = update.state;
        sum += update.log_likelihood;
    }
    sum
}

#[cfg(test)]
mod tests {
    use super::*;

    fn batch(level: f64) -> Vec<Seen> {
        (0..6).map(|week| Seen { day: 7 * week, log_ratio: level, variance: 1e-4 }).collect()
    }

    #[test]
    fn without_earlier_batches_the_prior_stands() {
        let known = learn(&OPEN_HOUSE, &[]);
        assert_eq!((known.batches, known.first.level, known.law), (0, 0.0, law(&OPEN_HOUSE.house)));
        assert!((known.first.slope_variance.sqrt() - 0.001).abs() < 1e-9);
        assert_eq!(learn(&OPEN_HOUSE, &[vec![]]), known);
        let at_sale = known.first.ahead(&known.law, 42).level_variance.sqrt();
        assert!((at_sale - crate::scenarios::WEIGHT_SPREAD.value).abs() < 0.002, "{at_sale}");
    }

    #[test]
    fn the_more_batches_agree_the_more_they_count() {
        let of = |count: usize| learn(&OPEN_HOUSE, &vec![batch(-0.1); count]).first;
        let (one, three, eight) = (of(1), of(3), of(8));
        assert!(0.0 > one.level && one.level > three.level && three.level > eight.level);
        assert!(eight.level > -0.1 && (eight.level + 0.1).abs() < 0.02, "{}", eight.level);
        assert!(eight.level_variance < three.level_variance && three.level_variance < one.level_variance);
    }

    #[test]
    fn batches_that_differ_keep_the_doubt() {
        let differing: Vec<Vec<Seen>> = [-0.15, 0.12, -0.02, 0.15, -0.1].map(batch).to_vec();
        let alike = vec![batch(0.0); 5];
        assert!(
            learn(&OPEN_HOUSE, &differing).first.level_variance
                > 2.0 * learn(&OPEN_HOUSE, &alike).first.level_variance
        );
    }
}
