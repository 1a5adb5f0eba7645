//! A house fitted to the grower's own temperatures: leaks, sun through the roof, walls.
//!
//! Least squares with priors, by Gauss and Newton. A thermometer's neighbouring hours are wrong alike (its place, a curtain not
//! where it was written), so readings are compared as means of half a day, each taken as wrong by one kelvin on its own (our
//! judgement): two days are four comparisons, and leave the priors nearly as they were.

use super::{AirFault, Flock, Hour, House, Management, run};

/// Hours that are compared as one mean.
const BLOCK: usize = 12;
/// Standard deviation of the difference of such means, K.
const BLOCK_SD_K: f64 = 1.0;
/// Standard deviations of the priors, of the logarithm of a factor: leaks, sun on the roof, walls and curtains and roof.
const PRIOR_SD: [f64; 3] = [0.69, 0.30, 0.20];
const ROUNDS: usize = 6;

/// A temperature that the grower read.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Reading {
    /// The hour of weather, from 0.
    pub hour: usize,
    /// Where the birds are, °C.
    pub inside_c: f64,
}

/// A factor on what the house was thought to be: 1 before.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Factor {
    /// The likeliest.
    pub best: f64,
    /// 90 % interval, low.
    pub low: f64,
    /// High.
    pub high: f64,
    /// Standard deviation of the logarithm over that of the prior: near 1, the readings said little.
    pub left_of_prior: f64,
}

/// What the readings say of a house.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Fit {
    /// Leaks.
    pub leakage: Factor,
    /// Sun that the roof takes up.
    pub sun: Factor,
    /// Walls, curtains, roof, edge.
    pub through: Factor,
    /// Root mean square of the differences before and after, K.
    pub before_k: f64,
    /// After.
    pub after_k: f64,
    /// Means that were compared.
    pub compared: usize,
}

/// The house with logarithms of factors on its leaks, sun and walls, held within what a house can be.
pub fn with(house: &House, logs: [f64; 3]) -> House {
    let through = logs[2].exp();
    House {
        leakage_per_h: (house.leakage_per_h * logs[0].exp()).clamp(0.01, 100.0),
        roof_absorptance: (house.roof_absorptance * logs[1].exp()).clamp(0.0, 1.0),
        walls_w_per_k: house.walls_w_per_k * through,
        curtain_w_per_k: house.curtain_w_per_k * through,
        roof_w_per_k: house.roof_w_per_k * through,
        perimeter_w_per_k: house.perimeter_w_per_k * through,
        ..*house
    }
}

/// Fits a house to readings; readings beyond the weather are left out.
///
/// # Errors
/// The first figure out of range.
pub fn fit(
    house: &House,
    flock: &Flock,
    management: &Management,
    weather: &[Hour],
    readings: &[Reading],
) -> Result<Fit, AirFault> {
    let blocks = weather.len().div_ceil(BLOCK);
    let off = |logs: [f64; 3]| -> Result<Vec<f64>, AirFault> {
        let run = run(&with(house, logs), flock, management, weather)?;
        let mut sums = vec![(0.0, 0.0); blocks];
        for reading in readings {
            if let Some(hour) = run.hours.get(reading.hour) {
                let sum = &mut sums[reading.hour / BLOCK];
                *sum = (sum.0 + reading.inside_c - hour.inside_c, sum.1 + 1.0);
            }
        }
        Ok(sums.into_iter().filter(|sum| sum.1 > 0.0).map(|sum| sum.0 / sum.1 / BLOCK_SD_K).collect())
    };
    let root_mean_square = |off: &[f64]| {
        BLOCK_SD_K * (off.iter().map(|off| off * off).sum::<f64>() / (off.len() as f64).max(1.0)).sqrt()
    };
    const STEP: f64 = 0.02;
    let before = off([0.0; 3])?;
    let mut at = [0.0; 3];
    let mut covariance = [[0.0; 3]; 3];
    for _ in 0..ROUNDS {
        let here = off(at)?;
        let mut slopes = Vec::new();
        for axis in 0..3 {
            let mut moved = at;
            moved[axis] += STEP;
            slopes.push(off(moved)?.iter().zip(&here).map(|(a, b)| (b - a) / STEP).collect::<Vec<_>>());
        }
        let product = |a: &[f64], b: &[f64]| a.iter().zip(b).map(|(a, b)| a * b).sum::<f64>();
        let mut information = [[0.0; 3]; 3];
        let mut pull = [0.0; 3];
        for row in 0..3 {
            for column in 0..3 {
                information[row][column] = product(&slopes[row], &slopes[column]);
            }
            let prior = PRIOR_SD[row].powi(-2);
            information[row][row] += prior;
            pull[row] = product(&slopes[row], &here) - prior * at[row];
        }
        covariance = inverse(information);
        for row in 0..3 {
            // No further in one round than a prior allows, so that a bad start does not run away.
            let step: f64 = (0..3).map(|column| covariance[row][column] * pull[column]).sum();
            at[row] += step.clamp(-PRIOR_SD[row], PRIOR_SD[row]);
        }
    }
    let after = off(at)?;
    let factor = |axis: usize| {
        let sd = covariance[axis][axis].sqrt();
        // 90 % of a normal law lies within 1.6449 standard deviations.
        let end = |side: f64| (at[axis] + side * 1.6449 * sd).exp();
        Factor { best: at[axis].exp(), low: end(-1.0), high: end(1.0), left_of_prior: sd / PRIOR_SD[axis] }
    };
    Ok(Fit {
        leakage: factor(0),
        sun: factor(1),
        through: factor(2),
        before_k: root_mean_square(&before),
        after_k: root_mean_square(&after),
        compared: before.len(),
    })
}

/// Of a symmetric positive matrix, by cofactors.
fn inverse(m: [[f64; 3]; 3]) -> [[f64; 3]; 3] {
    let cofactor = |row: usize, column: usize| {
        let (a, b) = ((row + 1) % 3, (row + 2) % 3);
        let (c, d) = ((column + 1) % 3, (column + 2) % 3);
        m[a][c] * m[b][d] - m[a][d] * m[b][c]
    };
    let determinant = (0..3).map(|column| m[0][column] * cofactor(0, column)).sum::<f64>();
    let mut inverse = [[0.0; 3]; 3];
    for (row, values) in inverse.iter_mut().enumerate() {
        for (column, value) in values.iter_mut().enumerate() {
            *value = cofactor(column, row) / determinant;
        }
    }
    inverse
}
