//! A table as shipped: comment lines with source and status on top, one header row, cells as text.

use std::sync::OnceLock;

/// Why a table cannot be used.
#[derive(Debug, Clone, PartialEq, thiserror::Error)]
pub enum TableError {
    /// The table is not shipped under this name.
    #[error("no table {name}")]
    NoTable {
        /// The name asked for.
        name: String,
    },
    /// It is not a CSV of even rows.
    #[error("table {name}, line {line}: {why}")]
    Unreadable {
        /// The table.
        name: String,
        /// The line, counted from 1.
        line: u64,
        /// What the reader of CSV says.
        why: String,
    },
    /// A column is missing.
    #[error("table {name} has no column {column}")]
    NoColumn {
        /// The table.
        name: String,
        /// The column.
        column: String,
    },
    /// A row is missing.
    #[error("table {name} has no row {row}")]
    NoRow {
        /// The table.
        name: String,
        /// What was looked for.
        row: String,
    },
    /// A cell is no number.
    #[error("table {name}, column {column}: {text} is no number")]
    NotANumber {
        /// The table.
        name: String,
        /// The column.
        column: String,
        /// The cell.
        text: String,
    },
}

/// A table: where it comes from, its columns, its rows.
#[derive(Clone, Debug, PartialEq)]
pub struct Table {
    /// Its name, without ending.
    pub name: String,
    /// The comment lines on top, without their `#`.
    pub notes: Vec<String>,
    /// The names of its columns.
    pub columns: Vec<String>,
    /// Its rows, each as long as `columns`. An empty cell is "not known", never zero.
    pub rows: Vec<Vec<String>>,
}

macro_rules! shipped {
    ($($name:literal),+ $(,)?) => {
        /// The tables shipped with the program, by name.
        pub const SHIPPED: &[(&str, &str)] =
            &[$(($name, include_str!(concat!("../tables/", $name, ".csv")))),+];
    };
}

shipped!(
    "bibliography",
    "brooder_chicks",
    "chickweight",
    "crop_fill",
    "density",
    "energy",
    "equipment_serves",
    "fuels",
    "growth_fast",
    "growth_sex",
    "growth_slow",
    "growth_tropical",
    "heat_loss",
    "ingredients",
    "light_programme",
    "lighting",
    "litter_density",
    "growth_in_heat",
    "loss_shape",
    "requirements",
    "ring_density",
    "temperature",
    "uniformity",
    "uniformity_samples",
    "vaccination_water",
    "water",
);

impl Table {
    /// A shipped table, read once and kept: it is a constant of the program that happens to be written as CSV.
    ///
    /// # Errors
    /// [`TableError::NoTable`] for a name that is not shipped.
    pub fn shipped(name: &str) -> Result<&'static Table, TableError> {
        static READ: [OnceLock<Result<Table, TableError>>; SHIPPED.len()] =
            [const { OnceLock::new() }; SHIPPED.len()];
        let at = SHIPPED.iter().position(|(known, _)| *known == name);
        let at = at.ok_or_else(|| TableError::NoTable { name: name.to_owned() })?;
        READ[at].get_or_init(|| Table::read(name, SHIPPED[at].1)).as_ref().map_err(Clone::clone)
    }

    /// Reads a table from CSV text with `#` comment lines on top.
    ///
    /// # Errors
    /// [`TableError::Unreadable`] with the line.
    pub fn read(name: &str, text: &str) -> Result<Table, TableError> {
        let is_note = |line: &&str| line.starts_with('#');
        let notes: Vec<String> = text
            .lines()
            .take_while(is_note)
            .map(|line| line.trim_start_matches('#').trim().to_owned())
            .collect();
        let unreadable = |error: csv::Error| TableError::Unreadable {
            name: name.to_owned(),
            line: error.position().map_or(0, csv::Position::line),
            why: error.to_string(),
        };
        let mut reader = csv::ReaderBuilder::new().comment(Some(b'#')).from_reader(text.as_bytes());
        let columns = reader.headers().map_err(unreadable)?.iter().map(str::to_owned).collect();
        let rows = reader
            .records()
            .map(|record| record.map(|cells| cells.iter().map(|cell| cell.trim().to_owned()).collect()))
            .collect::<Result<_, _>>()
            .map_err(unreadable)?;
        Ok(Table { name: name.to_owned(), notes, columns, rows })
    }

    /// The place of a column.
    ///
    /// # Errors
    /// [`TableError::NoColumn`].
    pub fn column(&self, name: &str) -> Result<usize, TableError> {
        self.columns
            .iter()
            .position(|column| column == name)
            .ok_or_else(|| TableError::NoColumn { name: self.name.clone(), column: name.to_owned() })
    }

    /// The row whose `column` says `value`.
    ///
    /// # Errors
    /// [`TableError::NoColumn`], [`TableError::NoRow`].
    pub fn row(&self, column: &str, value: &str) -> Result<&[String], TableError> {
        let at = self.column(column)?;
        self.rows
            .iter()
            .find(|row| row[at] == value)
            .map(Vec::as_slice)
            .ok_or_else(|| TableError::NoRow { name: self.name.clone(), row: value.to_owned() })
    }

    /// A cell as a number; `None` where it is empty.
    ///
    /// # Errors
    /// [`TableError::NoColumn`], [`TableError::NotANumber`].
    pub fn number(&self, row: &[String], column: &str) -> Result<Option<f64>, TableError> {
        let text = &row[self.column(column)?];
        if text.is_empty() {
            return Ok(None);
        }
        text.parse().map(Some).map_err(|_| TableError::NotANumber {
            name: self.name.clone(),
            column: column.to_owned(),
            text: text.clone(),
        })
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_shipped_table_reads_and_says_where_it_is_from() {
        for (name, _) in SHIPPED {
            let table = Table::shipped(name).unwrap();
            assert!(!table.notes.is_empty(), "{name} has no source header");
            assert!(!table.rows.is_empty(), "{name} is empty");
        }
    }

    #[test]
    fn a_ragged_row_is_named_by_its_line() {
        let error = Table::read("own", "# mine\na,b\n1,2\n3\n").unwrap_err();
        assert!(matches!(error, TableError::Unreadable { line: 4, .. }), "{error}");
    }

    /// Rules that the tables' own documentation promises.
    #[test]
    fn the_tables_agree_with_themselves() {
        let fast = Table::shipped("growth_fast").unwrap();
        let (mut weight, mut eaten) = (44.0, 0.0);
        for row in &fast.rows[1..] {
            let number = |column| fast.number(row, column).unwrap().unwrap();
            weight += number("daily_gain_g");
            eaten += number("daily_feed_g");
            assert_eq!(number("body_weight_g"), weight);
            assert_eq!(number("cum_feed_g"), eaten);
            assert!((number("fcr") - eaten / weight).abs() < 6e-4);
        }
        let ingredients = Table::shipped("ingredients").unwrap();
        for row in &ingredients.rows {
            let number = |column| ingredients.number(row, column).unwrap().unwrap_or_default();
            assert!(number("met_plus_cys") >= number("methionine"), "{}", row[0]);
            assert!(number("available_P") <= number("total_P"), "{}", row[0]);
        }
    }
}
