//! Which uncertainty matters most: the share of the variance of an answer that each thing not known alone accounts for, and the
//! share that it has a part in.
//!
//! Sources: [saltelli-2010] for the share alone (first-order index), [jansen-1999] for the share with others (total index), from
//! memory; checked against a function whose shares are known exactly.

use crate::budget::per;

/// So many blocks are left out one after the other to see how far the shares may be off.
const BLOCKS: usize = 20;

/// How much one thing that is not known matters, as shares of the variance of the answer, each with its standard error.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Share {
    /// What it accounts for alone; by chance a little below 0.
    pub alone: f64,
    /// How far that may be off.
    pub alone_error: f64,
    /// What it has a part in, alone or with others.
    pub with_others: f64,
    /// How far that may be off.
    pub with_others_error: f64,
}

/// Answers of one sample, and of each of its members with one thing taken from another sample.
#[derive(Clone, Copy, Debug)]
pub struct Answers<'a> {
    /// Of the first sample.
    pub first: &'a [f64],
    /// Of the second, with as many members.
    pub second: &'a [f64],
    /// Of the first with the thing of the second.
    pub mixed: &'a [f64],
}

impl Answers<'_> {
    /// The shares; `None` where the lengths differ, where there are fewer than two members a block, or where nothing varies.
    pub fn share(&self) -> Option<Share> {
        let count = self.first.len();
        if count < 2 * BLOCKS || self.second.len() != count || self.mixed.len() != count {
            return None;
        }
        let (alone, with_others) = self.without(None)?;
        let left_out: Vec<(f64, f64)> =
            (0..BLOCKS).map(|block| self.without(Some(block))).collect::<Option<_>>()?;
        // The jackknife: Efron and Stein (1981), from memory.
        let error = |whole: f64, of: fn(&(f64, f64)) -> f64| {
            let squares: f64 = left_out.iter().map(|one| (of(one) - whole).powi(2)).sum();
            (squares * (BLOCKS - 1) as f64 / BLOCKS as f64).sqrt()
        };
        Some(Share {
            alone,
            alone_error: error(alone, |one| one.0),
            with_others,
            with_others_error: error(with_others, |one| one.1),
        })
    }

    /// Both shares, of all members or of all but those of a block.
    fn without(&self, block: Option<usize>) -> Option<(f64, f64)> {
        let members = || (0..self.first.len()).filter(move |at| block.is_none_or(|left| at % BLOCKS != left));
        let count = members().count() as f64;
        let both = || members().flat_map(|at| [self.first[at], self.second[at]]);
        let mean = per(both().sum(), 2.0 * count)?;
        let variance = per(both().map(|answer| (answer - mean).powi(2)).sum(), 2.0 * count)?;
        let (mut alone, mut with_others) = (0.0, 0.0);
        for at in members() {
            let moved = self.mixed[at] - self.first[at];
            alone += (self.second[at] - mean) * moved;
            with_others += moved * moved;
        }
        (variance > 0.0).then(|| (alone / count / variance, with_others / 2.0 / count / variance))
    }
}

#[cfg(test)]
mod tests {
    use std::f64::consts::PI;

    use super::*;
    use crate::chance::Draw;

    const A: f64 = 7.0;
    const B: f64 = 0.1;

    /// Ishigami and Homma 1990 (from memory).
    fn ishigami(x: [f64; 3]) -> f64 {
        x[0].sin() + A * x[1].sin().powi(2) + B * x[2].powi(4) * x[0].sin()
    }

    fn point(scenario: u32, stream: u32) -> [f64; 3] {
        let units = Draw { seed: 11, scenario, stream, day: 0, n: 0 }.units();
        std::array::from_fn(|at| PI * (2.0 * units[at] - 1.0))
    }

    /// Its shares by integration: the variance is a²/8 + bπ⁴/5 + b²π⁸/18 + 1/2.
    fn exact() -> [(f64, f64); 3] {
        let (p4, p8) = (PI.powi(4), PI.powi(8));
        let whole = A * A / 8.0 + B * p4 / 5.0 + B * B * p8 / 18.0 + 0.5;
        let (one, two) = (0.5 * (1.0 + B * p4 / 5.0).powi(2), A * A / 8.0);
        let together = B * B * p8 * (1.0 / 18.0 - 1.0 / 50.0);
        [(one / whole, (one + together) / whole), (two / whole, two / whole), (0.0, together / whole)]
    }

    #[test]
    fn a_function_with_known_shares_gets_them() {
        const COUNT: u32 = 20_000;
        let (first, second): (Vec<_>, Vec<_>) = (0..COUNT).map(|at| (point(at, 1), point(at, 2))).unzip();
        let answers = |points: &[[f64; 3]]| points.iter().map(|x| ishigami(*x)).collect::<Vec<f64>>();
        for (thing, (alone, with_others)) in exact().into_iter().enumerate() {
            let mixed: Vec<[f64; 3]> = first
                .iter()
                .zip(&second)
                .map(|(own, other)| std::array::from_fn(|at| if at == thing { other[at] } else { own[at] }))
                .collect();
            let (first, second, mixed) = (answers(&first), answers(&second), answers(&mixed));
            let share = Answers { first: &first, second: &second, mixed: &mixed }.share().unwrap();
            assert!((share.alone - alone).abs() < 4.0 * share.alone_error, "{thing}: {share:?} {alone}");
            assert!((share.with_others - with_others).abs() < 4.0 * share.with_others_error.max(1e-3));
            assert!(share.alone_error < 0.02 && share.with_others_error < 0.02, "{share:?}");
            assert!((share.alone - alone).abs() < 0.03 && (share.with_others - with_others).abs() < 0.03);
        }
        // Printed to three digits wherever the function is used: 0.314, 0.442, 0 and 0.558, 0.442, 0.244 (from memory).
        let rounded = exact().map(|(alone, all)| ((1e3 * alone).round(), (1e3 * all).round()));
        assert_eq!(rounded, [(314.0, 558.0), (442.0, 442.0), (0.0, 244.0)]);
    }

    #[test]
    fn nothing_that_varies_has_no_shares() {
        let same = [1.0; 100];
        assert_eq!(Answers { first: &same, second: &same, mixed: &same }.share(), None);
        assert_eq!(Answers { first: &same, second: &same[1..], mixed: &same }.share(), None);
        assert_eq!(Answers { first: &[], second: &[], mixed: &[] }.share(), None);
    }
}
