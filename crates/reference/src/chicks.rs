//! Open data on single chicks, to hold methods against: 50 chicks of an old strain on four diets, weighed every other day for
//! three weeks. No standard for today's birds.

use std::sync::OnceLock;

use crate::table::{Table, TableError};

/// A chick weighed.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Weighed {
    /// Its number, 1 to 50.
    pub chick: u32,
    /// Its diet, 1 to 4.
    pub diet: u32,
    /// Day of age.
    pub day: i32,
    /// g.
    pub weight_g: f64,
}

/// All weighings, chick by chick, in the order of days.
///
/// # Errors
/// [`TableError`] when the table does not hold what it should.
pub fn weighed() -> Result<&'static [Weighed], TableError> {
    static READ: OnceLock<Result<Vec<Weighed>, TableError>> = OnceLock::new();
    READ.get_or_init(read).as_ref().map(Vec::as_slice).map_err(Clone::clone)
}

fn read() -> Result<Vec<Weighed>, TableError> {
    let table = Table::shipped("chickweight")?;
    let mut weighed = Vec::new();
    for row in &table.rows {
        let number = |column: &str| Ok(table.number(row, column)?.unwrap_or_default());
        weighed.push(Weighed {
            chick: number("chick")? as u32,
            diet: number("diet")? as u32,
            day: number("time_d")? as i32,
            weight_g: number("weight_g")?,
        });
    }
    Ok(weighed)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn fifty_chicks_on_four_diets() {
        let weighed = weighed().unwrap();
        assert_eq!(weighed.len(), 578);
        assert!(weighed.iter().all(|one| (1..=50).contains(&one.chick) && (1..=4).contains(&one.diet)));
        assert!(weighed.is_sorted_by_key(|one| (one.chick, one.day)));
    }
}
