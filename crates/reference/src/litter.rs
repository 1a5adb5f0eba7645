//! What a cubic metre of fresh litter weighs.

use crate::table::{Table, TableError};

/// Lowest and highest bulk density of a litter named as in a plan file, kg/m3; `None` where the table has none.
///
/// # Errors
/// [`TableError`] when the table does not hold what it should.
pub fn bulk_density(litter: &str) -> Result<Option<(f64, f64)>, TableError> {
    let table = Table::shipped("litter_density")?;
    let Ok(row) = table.row("litter", litter) else {
        return Ok(None);
    };
    Ok(table.number(row, "low")?.zip(table.number(row, "high")?))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn shavings_and_husk() {
        assert_eq!(bulk_density("wood-shavings").unwrap(), Some((90.0, 150.0)));
        assert_eq!(bulk_density("rice-husk").unwrap(), Some((100.0, 120.0)));
        assert_eq!(bulk_density("other").unwrap(), None);
    }
}
