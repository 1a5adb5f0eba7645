//! What walls, roofs, curtains and ceilings let through.

use crate::table::{Table, TableError};

/// Heat through a square metre for each degree, W/m2K, of an element (`wall`, `roof`, `curtain`, `floor`) named as in a
/// plan file; `None` where the table has none.
///
/// # Errors
/// [`TableError`] when the table does not hold what it should.
pub fn transmittance(element: &str, name: &str) -> Result<Option<f64>, TableError> {
    number(element, name, "u_w_per_m2k")
}

/// What a ceiling with the still air above it resists, m2K/W; `None` where the table has none.
///
/// # Errors
/// [`TableError`] when the table does not hold what it should.
pub fn resistance_of_ceiling(name: &str) -> Result<Option<f64>, TableError> {
    number("ceiling", name, "r_m2k_per_w")
}

fn number(element: &str, name: &str, column: &str) -> Result<Option<f64>, TableError> {
    let table = Table::shipped("heat_loss")?;
    let (element_at, name_at) = (table.column("element")?, table.column("name")?);
    let row = table.rows.iter().find(|row| row[element_at] == element && row[name_at] == name);
    row.map_or(Ok(None), |row| table.number(row, column))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn iron_is_a_bad_roof_and_a_mat_helps() {
        assert_eq!(transmittance("roof", "iron").unwrap(), Some(7.1));
        assert_eq!(resistance_of_ceiling("mat").unwrap(), Some(0.35));
        assert_eq!(resistance_of_ceiling("none").unwrap(), Some(0.0));
        assert_eq!(transmittance("wall", "reed").unwrap(), None);
        assert_eq!(transmittance("ceiling", "mat").unwrap(), None);
    }
}
