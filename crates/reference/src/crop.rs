//! Crop fill: how many chicks should have eaten and drunk, by hours after they were placed.

use crate::table::{Table, TableError};

/// The share of chicks that should have a full crop, percent, so many hours after placement: what the last of the checks
/// that are usual (2, 4, 8, 12, 24 and 48 hours) asks. `None` before 2 hours, when nobody can tell.
///
/// Source: [crop-fill], the table `crop_fill`.
///
/// # Errors
/// [`TableError`], for a table that cannot be read.
pub fn full_percent(hours: f64) -> Result<Option<f64>, TableError> {
    let table = Table::shipped("crop_fill")?;
    let mut wanted = None;
    for row in &table.rows {
        let from = table.number(row, "hours_h")?;
        if from.is_some_and(|from| from <= hours) {
            wanted = table.number(row, "full_percent")?;
        }
    }
    Ok(wanted)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_last_usual_check_counts() {
        let at = |hours: f64| full_percent(hours).unwrap();
        assert_eq!([1.0, 2.0, 3.0, 4.0, 8.0].map(at), [None, Some(75.0), Some(75.0), Some(80.0), Some(80.0)]);
        assert_eq!([12.0, 24.0, 47.0, 60.0].map(at), [Some(85.0), Some(95.0), Some(95.0), Some(100.0)]);
    }
}
