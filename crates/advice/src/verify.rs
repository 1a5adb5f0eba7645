//! Works out the outputs of tables of check values from their inputs, so that anybody can hold the models against
//! numbers of their own.

use quantity::CivilDay;
use serde_json::{Map, Number, Value};

use crate::families;

/// A shape of table: known by its input columns. A family declares the shapes of its models.
pub struct Shape {
    /// Its name.
    pub name: &'static str,
    /// Columns that must be there with a value in every row.
    pub inputs: &'static [&'static str],
    /// Columns that this shape computes.
    pub outputs: &'static [&'static str],
    /// The outputs of every row, in the order of `outputs`. It sees all rows at once, since rows can hang together (the
    /// days of one case, the purchases of one plan).
    pub work_out: fn(&[Row]) -> TableOutputs,
}

/// The outputs of every row of a table, in the order of the shape's outputs.
pub type TableOutputs = Result<Vec<Vec<Value>>, VerifyFault>;

/// The outputs of a row; `None` is one that does not exist, such as a sunrise at the pole.
pub type RowOutputs = Result<Vec<Option<f64>>, CellFault>;

/// The input cells of one row, in the order of the shape's inputs.
pub struct Row<'a> {
    /// The row of data, from 1.
    pub number: usize,
    /// Its input cells.
    pub cells: Vec<Cell<'a>>,
    /// The comment lines above the table, where some shapes keep what holds for all rows of a case.
    pub notes: &'a [String],
}

/// A cell of an input column.
pub struct Cell<'a> {
    /// The column.
    pub column: &'a str,
    /// The text.
    pub text: &'a str,
}

impl Cell<'_> {
    /// The cell as a number within a range.
    ///
    /// # Errors
    /// [`CellFault`] with the range.
    pub fn number(&self, low: f64, high: f64) -> Result<f64, CellFault> {
        let number = self.text.parse::<f64>().ok().filter(|number| (low..=high).contains(number));
        number.ok_or_else(|| self.fault(format!("{low} … {high}")))
    }

    /// The cell as a day.
    ///
    /// # Errors
    /// [`CellFault`] with the pattern.
    pub fn day(&self) -> Result<CivilDay, CellFault> {
        CivilDay::parse(self.text).ok_or_else(|| self.fault("YYYY-MM-DD".to_owned()))
    }

    /// A fault of this cell.
    pub fn fault(&self, allowed: String) -> CellFault {
        CellFault { column: self.column.to_owned(), typed: self.text.to_owned(), allowed }
    }
}

/// A cell that cannot be.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
#[error("{column} is {typed:?}, not {allowed}")]
pub struct CellFault {
    /// Its column.
    pub column: String,
    /// Its text.
    pub typed: String,
    /// What it can be: a range or a pattern, the same in every language.
    pub allowed: String,
}

/// Why a table cannot be worked out.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
pub enum VerifyFault {
    /// Not a CSV of even rows.
    #[error(transparent)]
    Table(#[from] reference::TableError),
    /// No shape has these columns.
    #[error("columns {columns:?} are of no known shape")]
    UnknownShape {
        /// The columns found.
        columns: Vec<String>,
    },
    /// A cell that cannot be.
    #[error("row {row}: {fault}")]
    Cell {
        /// The row of data, from 1.
        row: usize,
        /// What is wrong with it.
        fault: CellFault,
    },
}

/// Works out rows that do not hang together, one after the other.
///
/// # Errors
/// The first row with a cell that cannot be.
pub fn each(rows: &[Row], outputs: fn(&[Cell]) -> RowOutputs) -> TableOutputs {
    let value = |number: Option<f64>| number.and_then(Number::from_f64).map_or(Value::Null, Value::Number);
    rows.iter()
        .map(|row| match outputs(&row.cells) {
            Ok(numbers) => Ok(numbers.into_iter().map(value).collect()),
            Err(fault) => Err(VerifyFault::Cell { row: row.number, fault }),
        })
        .collect()
}

/// The table with every computed column filled in, a row a row; other columns are passed on as they are.
///
/// # Errors
/// [`VerifyFault`].
pub fn verify(text: &str) -> Result<Vec<Map<String, Value>>, VerifyFault> {
    let table = reference::Table::read("input", text)?;
    let has = |input: &&str| table.columns.iter().any(|column| column == input);
    let shape = families::shapes()
        .find(|shape| shape.inputs.iter().all(has))
        .ok_or_else(|| VerifyFault::UnknownShape { columns: table.columns.clone() })?;
    let at = shape.inputs.iter().map(|input| table.column(input)).collect::<Result<Vec<_>, _>>()?;
    let mut rows = Vec::new();
    for (index, row) in table.rows.iter().enumerate() {
        let cells = at.iter().map(|&at| Cell { column: &table.columns[at], text: &row[at] });
        rows.push(Row { number: index + 1, cells: cells.collect(), notes: &table.notes });
    }
    let outputs = (shape.work_out)(&rows)?;
    Ok(table
        .rows
        .iter()
        .zip(outputs)
        .map(|(row, outputs)| fill(shape, &table.columns, row, outputs))
        .collect())
}

fn fill(shape: &Shape, columns: &[String], row: &[String], outputs: Vec<Value>) -> Map<String, Value> {
    let mut filled: Map<String, Value> =
        columns.iter().zip(row).map(|(column, text)| (column.clone(), as_json(text))).collect();
    filled.extend(shape.outputs.iter().map(|name| (*name).to_owned()).zip(outputs));
    filled
}

fn as_json(text: &str) -> Value {
    match text.parse::<f64>().ok().and_then(Number::from_f64) {
        _ if text.is_empty() => Value::Null,
        Some(number) => Value::Number(number),
        None => Value::String(text.to_owned()),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn expected_columns_may_be_absent() {
        let rows = verify("latitude_deg,longitude_deg,date\n-13.6,0,2025-01-15\n").unwrap();
        assert!(
            (rows[0]["daylength_spencer_horizon_0_833_h"].as_f64().unwrap() - 12.8439404341).abs() < 1e-6
        );
        assert!((rows[0]["sunrise_utc_h"].as_f64().unwrap() - 5.738).abs() < 1.0 / 60.0);
    }

    #[test]
    fn bad_cells_and_shapes_are_named() {
        assert!(matches!(verify("a,b\n1,2\n"), Err(VerifyFault::UnknownShape { .. })));
        let fault = verify("latitude_deg,longitude_deg,date\n95,0,2025-01-15\n").unwrap_err();
        assert_eq!(fault.to_string(), "row 1: latitude_deg is \"95\", not -90 … 90");
        assert!(verify("latitude_deg,longitude_deg,date\n1,0,15.1.2025\n").is_err());
    }
}
