//! What a house's own batches say of the next one, shrunk by how few they are.
//!
//! Credibility of Bühlmann ([buhlmann-1967], from memory): where batches of one house differ among themselves, in variance, so
//! many times as much as houses do, the usual value counts as that many batches.

/// The usual value counts as so many batches: batches of one house differ three times as much, in variance, as houses do (our
/// judgement).
pub const USUAL_COUNTS_AS: f64 = 3.0;

/// What is expected of the next batch.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Expected {
    /// The value.
    pub value: f64,
    /// The share of it that one's own batches make, 0 to 1.
    pub own_share: f64,
}

/// What is expected of the next batch.
///
/// - `usual`: what is held without any batch
/// - `own`: value of each batch, and how far it counts: 1 for one like the next, less for one of another season or another growth
pub fn expected(usual: f64, own: &[(f64, f64)]) -> Expected {
    let count: f64 = own.iter().map(|(_, counts)| counts).sum();
    let sum: f64 = own.iter().map(|(value, counts)| value * counts).sum();
    let all = USUAL_COUNTS_AS + count;
    Expected { value: (USUAL_COUNTS_AS * usual + sum) / all, own_share: count / all }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// One batch moves it by a quarter of the way, six by two thirds, none not at all.
    #[test]
    fn one_batch_moves_little_and_six_move_much() {
        let after = |batches: usize| expected(4.0, &vec![(8.0, 1.0); batches]);
        assert_eq!((after(0).value, after(0).own_share), (4.0, 0.0));
        assert_eq!((after(1).value, after(1).own_share), (5.0, 0.25));
        assert!((after(6).value - (4.0 + 4.0 * 2.0 / 3.0)).abs() < 1e-12);
        assert_eq!(expected(4.0, &[(8.0, 0.5), (8.0, 0.5)]), after(1), "two half alike are one");
    }
}
