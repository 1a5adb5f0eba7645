//! What steady warmth takes from birds past three weeks: a published trial at two temperatures.

use crate::table::{Table, TableError};

/// A number of the trial of days 21 to 35 (row H1) by its column: `cool_c` and `warm_c` in C, `gain_cool_g`, `gain_warm_g`,
/// `feed_cool_g` and `feed_warm_g` in g a bird.
///
/// # Errors
/// [`TableError`] when the table does not hold what it should.
pub fn trial(column: &str) -> Result<Option<f64>, TableError> {
    number("H1", column)
}

fn number(row: &str, column: &str) -> Result<Option<f64>, TableError> {
    let table = Table::shipped("growth_in_heat")?;
    table.number(table.row("id", row)?, column)
}

#[cfg(test)]
mod tests {
    use super::*;

    /// As the header of growth_tropical.csv sums the two trials up: gain -18, feed -12, feed a kilogram of gain +7 %; weight
    /// -13, feed -8.5, feed conversion +5 %.
    #[test]
    fn the_trials_as_they_are_summed_up() {
        for (row, gain, feed, conversion) in [("H1", -18.0, -12.0, 7.0), ("H2", -13.0, -8.5, 5.0)] {
            let at = |column| number(row, column).unwrap().unwrap();
            let (gains, feeds) =
                (at("gain_warm_g") / at("gain_cool_g"), at("feed_warm_g") / at("feed_cool_g"));
            for (share, want) in [(gains, gain), (feeds, feed), (feeds / gains, conversion)] {
                assert!((100.0 * (share - 1.0) - want).abs() < 0.6, "{row}: {share}, wanted {want}");
            }
        }
    }
}
