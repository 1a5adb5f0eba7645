//! The birds of a batch: how many are left, how many are sold on a day.

use quantity::physical::round_down;

/// The share alive when `part` of the expected losses is met, `losses` being the share lost in all.
///
/// Losses act on the birds that are left, so that birds sold early no longer die: survival is (1 - losses)^part, with part
/// from 0 at placement to 1 at sale.
pub fn survival(losses: f64, part: f64) -> f64 {
    (1.0 - losses).powf(part)
}

/// Whole birds out of an expected number.
pub fn whole_birds(expected: f64) -> f64 {
    round_down(expected)
}

/// Birds sold on day `day` when the `alive` are sold in even parts from day `first` to day `last`.
pub fn sold_evenly(alive: f64, last: f64, day: f64, first: f64) -> f64 {
    if day < first { 0.0 } else { round_down(alive / (last - day + 1.0)) }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn losses_add_up_to_what_was_expected() {
        assert!((survival(0.04, 1.0) - 0.96).abs() < 1e-12);
        assert_eq!(survival(0.04, 0.0), 1.0);
        let half = survival(0.04, 0.5);
        assert!((half * half - 0.96).abs() < 1e-12);
    }

    #[test]
    fn all_are_sold_by_the_last_day() {
        let mut alive = 1000.0;
        for day in 40..=46 {
            alive -= sold_evenly(alive, 46.0, f64::from(day), 40.0);
        }
        assert_eq!(alive, 0.0);
        assert_eq!(sold_evenly(1000.0, 46.0, 39.0, 40.0), 0.0);
    }
}
