//! How many chicks a square metre of ring holds as they grow.

use crate::table::{Table, TableError};

/// One step of a widening schedule.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Step {
    /// The first day of age it holds on.
    pub from_day: i32,
    /// Chicks a square metre; `None` is the whole house.
    pub chicks_per_m2: Option<f64>,
}

/// The usual widening schedule, youngest first.
///
/// # Errors
/// [`TableError`] when the table does not hold what it should.
pub fn usual_schedule() -> Result<Vec<Step>, TableError> {
    let table = Table::shipped("ring_density")?;
    let series = table.column("series")?;
    let mut steps = Vec::new();
    for row in table.rows.iter().filter(|row| row[series] == "usual") {
        if let Some(from) = table.number(row, "from_day")? {
            steps.push(Step { from_day: from as i32, chicks_per_m2: table.number(row, "chicks_per_m2")? });
        }
    }
    Ok(steps)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_usual_schedule_only_ever_widens() {
        let steps = usual_schedule().unwrap();
        assert_eq!(steps[0], Step { from_day: 0, chicks_per_m2: Some(40.0) });
        assert_eq!(steps.last().unwrap().chicks_per_m2, None);
        for pair in steps.windows(2) {
            assert!(pair[1].from_day > pair[0].from_day);
            assert!(pair[1].chicks_per_m2.unwrap_or(0.0) < pair[0].chicks_per_m2.unwrap_or(0.0));
        }
    }
}
