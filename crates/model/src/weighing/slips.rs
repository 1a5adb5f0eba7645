//! What slip of the hand may stand behind an odd weight. A reason to ask, never to change.

use super::{median, robust_deviation};

/// A slip that would make an odd weight an ordinary one.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Slip {
    /// A digit too many or too few.
    Ten,
    /// Kilograms typed where grams are asked.
    Kilograms,
    /// Pounds typed where kilograms are meant, or the other way round.
    Pounds,
    /// Two digits in the wrong order.
    Swapped,
    /// The same bird written down twice in a row.
    Twice,
    /// Two birds on the scale at once.
    TwoBirds,
}

impl Slip {
    /// The stable name used in message keys.
    pub fn name(self) -> &'static str {
        match self {
            Slip::Ten => "ten",
            Slip::Kilograms => "kilograms",
            Slip::Pounds => "pounds",
            Slip::Swapped => "swapped",
            Slip::Twice => "twice",
            Slip::TwoBirds => "two-birds",
        }
    }
}

/// An odd weight.
#[derive(Clone, Debug, PartialEq)]
pub struct Odd {
    /// Its place in the list, from 0.
    pub at: usize,
    /// The weight as it stands.
    pub weight: f64,
    /// The slips that would explain it, likeliest first, each with the weight that would then be meant; none for a bird
    /// that may truly be so.
    pub slips: Vec<(Slip, f64)>,
}

/// Pounds in a kilogram.
const POUNDS: f64 = 2.204_622_621_848_776;

/// Every odd weight (as [`super::odd_ones`] finds them) in the order of the list, with the slips that explain it: those by
/// which the weight meant lies within 3.5 robust deviations of the median.
pub fn suspects(weights: &[f64]) -> Vec<Odd> {
    let (Some(middle), Some(spread)) = (median(weights), robust_deviation(weights)) else {
        return Vec::new();
    };
    if spread <= 0.0 {
        return Vec::new();
    }
    let fits = |weight: f64| (weight - middle).abs() <= 3.5 * spread;
    let odd = weights.iter().enumerate().filter(|(_, weight)| !fits(**weight));
    odd.map(|(at, &weight)| {
        let before = at.checked_sub(1).map(|at| weights[at]);
        Odd { at, weight, slips: explain(weight, before, fits) }
    })
    .collect()
}

fn explain(weight: f64, before: Option<f64>, fits: impl Fn(f64) -> bool) -> Vec<(Slip, f64)> {
    let by_factor = [
        (Slip::Kilograms, 1000.0),
        (Slip::Ten, 0.1),
        (Slip::Ten, 10.0),
        (Slip::Pounds, 1.0 / POUNDS),
        (Slip::Pounds, POUNDS),
        (Slip::TwoBirds, 0.5),
    ];
    let factors = by_factor.map(|(slip, times)| (slip, weight * times)).into_iter();
    let swapped = swaps(weight).into_iter().map(|meant| (Slip::Swapped, meant));
    let explained: Vec<_> = factors.chain(swapped).filter(|(_, meant)| fits(*meant)).collect();
    let twice = (before == Some(weight)).then_some((Slip::Twice, weight));
    twice.into_iter().chain(explained).collect()
}

/// The weight in whole grams with each pair of neighbouring digits swapped.
fn swaps(weight: f64) -> Vec<f64> {
    let digits = format!("{weight:.0}").into_bytes();
    let swap = |at: usize| {
        let mut swapped = digits.clone();
        swapped.swap(at, at + 1);
        String::from_utf8(swapped).ok()?.parse().ok()
    };
    (0..digits.len().saturating_sub(1)).filter_map(swap).collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn slips_are_suspected_first() {
        let flock = [1820.0, 1950.0, 2010.0, 2080.0, 1760.0, 2150.0, 1990.0, 1900.0, 2060.0, 1880.0];
        let slips_of = |odd: f64| {
            let weights: Vec<f64> = flock.into_iter().chain([odd]).collect();
            let found = suspects(&weights);
            assert_eq!((found.len(), found[0].at, found[0].weight), (1, 10, odd));
            found[0].slips.iter().map(|(slip, meant)| (*slip, meant.round())).collect::<Vec<_>>()
        };
        assert_eq!(slips_of(19_800.0), [(Slip::Ten, 1980.0)]);
        assert_eq!(slips_of(198.0), [(Slip::Ten, 1980.0)]);
        assert_eq!(slips_of(1.98), [(Slip::Kilograms, 1980.0)]);
        // Twice and 2.2 times lie too near each other to choose between.
        assert_eq!(slips_of(4365.0), [(Slip::Pounds, 1980.0), (Slip::TwoBirds, 2183.0)]);
        assert_eq!(slips_of(9180.0), [(Slip::Swapped, 1980.0)]);
        assert_eq!(slips_of(3333.0), [(Slip::TwoBirds, 1667.0)]);
        assert_eq!(slips_of(1000.0), [(Slip::Pounds, 2205.0)]);
        assert_eq!(slips_of(500.0), []);
    }

    #[test]
    fn one_bird_twice() {
        let weights = [1820.0, 1950.0, 2010.0, 2080.0, 1760.0, 2150.0, 500.0, 500.0, 1900.0, 2060.0, 1990.0];
        let slips: Vec<_> = suspects(&weights).into_iter().map(|odd| odd.slips).collect();
        assert_eq!(slips, [vec![], vec![(Slip::Twice, 500.0)]]);
        assert!(suspects(&[2000.0; 8]).is_empty() && suspects(&[]).is_empty());
    }
}
