//! Stocking limits: the rows of the density table that a plan takes.

use quantity::Status;

use crate::table::{Table, TableError};

/// A stocking limit in kg/m2, with its range where the source gives one.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct StockingLimit {
    /// The figure a plan takes: the single figure, or the middle of the range.
    pub kg_m2: f64,
    /// The lower end of the source's range.
    pub low: f64,
    /// The upper end of the source's range.
    pub high: f64,
    /// How far it can be trusted.
    pub status: Status,
}

/// Which limit of the density table.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum House {
    /// Open-sided, no fans: 20 kg/m2.
    OpenSided,
    /// Open-sided with fans: 20 to 25 kg/m2.
    OpenSidedWithFans,
    /// Open-sided in the hottest quarter of the year: 16 to 18 kg/m2.
    HottestQuarter,
}

/// The advised limit, read from the table `density`.
///
/// # Errors
/// [`TableError`] when the table does not hold what it should.
pub fn limit(house: House) -> Result<StockingLimit, TableError> {
    let table = Table::shipped("density")?;
    let id = match house {
        House::OpenSided | House::OpenSidedWithFans => "OPEN_sided",
        House::HottestQuarter => "OPEN_peak_heat",
    };
    let row = table.row("id", id)?;
    let missing = || TableError::NoRow { name: table.name.clone(), row: id.to_owned() };
    let value = table.number(row, "value")?.ok_or_else(missing)?;
    let range = range_in(&row[table.column("range")?]).ok_or_else(missing)?;
    let (low, high) = match house {
        House::OpenSided => (value, value),
        House::OpenSidedWithFans | House::HottestQuarter => range,
    };
    Ok(StockingLimit { kg_m2: (low + high) / 2.0, low, high, status: Status::FromMemory })
}

/// The last "a-b" of a text such as "20 without fans; 20-25 with fans".
fn range_in(text: &str) -> Option<(f64, f64)> {
    text.split_whitespace().rev().find_map(|word| {
        let (low, high) = word.split_once('-')?;
        Some((low.parse().ok()?, high.parse().ok()?))
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_limits_of_open_houses() {
        assert_eq!(limit(House::OpenSided).unwrap().kg_m2, 20.0);
        let hot = limit(House::HottestQuarter).unwrap();
        assert_eq!((hot.low, hot.kg_m2, hot.high), (16.0, 17.0, 18.0));
        let fans = limit(House::OpenSidedWithFans).unwrap();
        assert_eq!((fans.low, fans.high), (20.0, 25.0));
    }
}
