//! Hours of light by age.

use crate::table::{Table, TableError};

/// Hours of light that chicks of an age should have; the last step of the programme holds to the end.
///
/// # Errors
/// [`TableError`] when the table does not hold what it should.
pub fn programme_h(age_d: f64) -> Result<Option<f64>, TableError> {
    let table = Table::shipped("light_programme")?;
    let mut hours = None;
    for row in &table.rows {
        let from = table.number(row, "from_age_d")?;
        if from.is_some_and(|from| from <= age_d) {
            hours = table.number(row, "light_h")?;
        }
    }
    Ok(hours)
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Council Directive 2007/43/EC, Annex I: from day 7 at least six hours of dark.
    #[test]
    fn six_hours_of_dark_from_day_seven() {
        for day in 7..=60 {
            assert!(programme_h(f64::from(day)).unwrap().unwrap() <= 18.0);
        }
        assert_eq!(programme_h(0.0).unwrap(), Some(24.0));
    }
}
