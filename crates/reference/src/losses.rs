//! How expected losses spread over the ages.

use crate::table::{Table, TableError};

/// The share of losses met by the end of a day of age, in parts of which only the shape counts; `None` outside the table.
///
/// # Errors
/// [`TableError`] when the table does not hold what it should.
pub fn to_date(age_d: f64) -> Result<Option<f64>, TableError> {
    let table = Table::shipped("loss_shape")?;
    let Ok(row) = table.row("age_d", &format!("{age_d:.0}")) else {
        return Ok(None);
    };
    table.number(row, "to_date")
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_first_week_takes_more_than_its_share() {
        let at = |day: f64| to_date(day).unwrap().unwrap();
        assert!(at(6.0) / 7.0 > at(42.0) / 43.0);
        assert_eq!(to_date(85.0).unwrap(), None);
    }
}
