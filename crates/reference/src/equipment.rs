//! How many birds one feeder or drinker serves.

use crate::table::{Table, TableError};

/// The lowest and the highest count met for one piece.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Serves {
    /// Birds by the most cautious source.
    pub low: f64,
    /// Birds by the boldest source.
    pub high: f64,
}

/// What one piece of a kind serves; `None` for a kind the table does not hold.
///
/// # Errors
/// [`TableError`] when the table does not hold what it should.
pub fn serves(kind: &str) -> Result<Option<Serves>, TableError> {
    let table = Table::shipped("equipment_serves")?;
    let Ok(row) = table.row("kind", kind) else {
        return Ok(None);
    };
    let (low, high) = (table.number(row, "low")?, table.number(row, "high")?);
    Ok(low.zip(high).map(|(low, high)| Serves { low, high }))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_fount_serves_few_in_heat() {
        assert_eq!(serves("fount").unwrap(), Some(Serves { low: 50.0, high: 80.0 }));
        assert_eq!(serves("bathtub").unwrap(), None);
    }
}
