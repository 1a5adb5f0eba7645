//! How expected losses spread over the ages.

use std::sync::OnceLock;

use crate::table::{Table, TableError};

/// The share of losses met by the end of a day of age, in parts of which only the shape counts; `None` outside the table.
///
/// # Errors
/// [`TableError`] when the table does not hold what it should.
pub fn to_date(age_d: f64) -> Result<Option<f64>, TableError> {
    static READ: OnceLock<Result<Vec<f64>, TableError>> = OnceLock::new();
    let shape = READ.get_or_init(read).as_ref().map_err(Clone::clone)?;
    Ok((age_d >= 0.0).then(|| shape.get(age_d.round() as usize).copied()).flatten())
}

/// One number a day of age from day 0 on.
fn read() -> Result<Vec<f64>, TableError> {
    let table = Table::shipped("loss_shape")?;
    let rows = table.rows.iter().map(|row| table.number(row, "to_date"));
    Ok(rows.collect::<Result<Vec<_>, _>>()?.into_iter().flatten().collect())
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
