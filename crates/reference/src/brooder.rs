//! How many chicks one brooder keeps warm.

use crate::table::{Table, TableError};

/// The lowest and the highest figure met for a kind of brooder.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Rating {
    /// Chicks by the most cautious source.
    pub low: f64,
    /// Chicks by the boldest source.
    pub high: f64,
}

/// The rating of a kind of brooder named as in a plan file; `None` for a kind the table does not hold.
///
/// # Errors
/// [`TableError`] when the table does not hold what it should.
pub fn rating(kind: &str) -> Result<Option<Rating>, TableError> {
    let table = Table::shipped("brooder_chicks")?;
    let Ok(row) = table.row("brooder", kind) else {
        return Ok(None);
    };
    let low = table.number(row, "chicks_low")?;
    let high = table.number(row, "chicks_high")?;
    Ok(low.zip(high).map(|(low, high)| Rating { low, high }))
}

/// Heat that one brooder of a kind gives inside the house, kW; `None` for a kind the table does not hold.
///
/// # Errors
/// [`TableError`] when the table does not hold what it should.
pub fn useful_kw(kind: &str) -> Result<Option<f64>, TableError> {
    let table = Table::shipped("brooder_chicks")?;
    table.row("brooder", kind).map_or(Ok(None), |row| table.number(row, "useful_kw"))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_charcoal_pot_is_rated_by_the_cautious() {
        assert_eq!(rating("charcoal-pot").unwrap(), Some(Rating { low: 300.0, high: 500.0 }));
        assert_eq!(rating("other").unwrap(), None);
        assert_eq!((useful_kw("charcoal-pot").unwrap(), useful_kw("other").unwrap()), (Some(2.1), None));
    }
}
