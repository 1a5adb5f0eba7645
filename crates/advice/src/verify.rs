//! Works out the outputs of tables of check values from their inputs, so that anybody can hold the models against
//! numbers of their own.

use serde_json::{Map, Number, Value};

use quantity::CivilDay;

/// A shape of table: known by its input columns.
pub struct Shape {
    /// Its name.
    pub name: &'static str,
    /// Columns that must be there with a value in every row.
    pub inputs: &'static [&'static str],
    /// Columns that this shape computes.
    pub outputs: &'static [&'static str],
    /// The outputs of one row, in the order of `outputs`; `None` where one does not exist (no sunrise at the pole).
    row: fn(&[Cell]) -> RowOutputs,
}

/// The outputs of a row, or what is wrong with one of its cells.
type RowOutputs = Result<Vec<Option<f64>>, CellFault>;

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

/// A cell of an input column.
pub struct Cell<'a> {
    /// The column.
    pub column: &'a str,
    /// The text.
    pub text: &'a str,
}

impl Cell<'_> {
    fn number(&self, low: f64, high: f64) -> Result<f64, CellFault> {
        let number = self.text.parse::<f64>().ok().filter(|number| (low..=high).contains(number));
        number.ok_or_else(|| self.fault(format!("{low} … {high}")))
    }

    fn day(&self) -> Result<CivilDay, CellFault> {
        CivilDay::parse(self.text).ok_or_else(|| self.fault("YYYY-MM-DD".to_owned()))
    }

    fn fault(&self, allowed: String) -> CellFault {
        CellFault { column: self.column.to_owned(), typed: self.text.to_owned(), allowed }
    }
}

/// The shapes known. A model that learns a new one adds a line here.
pub static SHAPES: &[Shape] = &[Shape {
    name: "daylength",
    inputs: &["latitude_deg", "longitude_deg", "date"],
    outputs: &[
        "day_of_year",
        "sunrise_utc_h",
        "sunset_utc_h",
        "transit_utc_h",
        "daylength_spa_h",
        "declination_spencer_deg",
        "daylength_spencer_horizon_0_833_h",
        "daylength_spencer_horizon_0_h",
        "equation_of_time_spencer_min",
        "extraterrestrial_spencer_w_per_m2",
    ],
    row: daylength,
}];

fn daylength(cells: &[Cell]) -> RowOutputs {
    use model::light;
    /// The sun's upper limb on the horizon with standard refraction, degrees.
    const UPPER_LIMB_DEG: f64 = 0.8333;
    let latitude = cells[0].number(-90.0, 90.0)?;
    let longitude = cells[1].number(-180.0, 180.0)?;
    let day = cells[2].day()?;
    let of_year = f64::from(day.day_of_year());
    let sun = light::sun_times(latitude, longitude, day);
    Ok(vec![
        Some(of_year),
        sun.map(|sun| sun.sunrise_utc_h),
        sun.map(|sun| sun.sunset_utc_h),
        sun.map(|sun| sun.transit_utc_h),
        sun.map(|sun| sun.daylength_h()),
        Some(light::declination_deg(of_year)),
        Some(light::daylength_h(latitude, of_year, UPPER_LIMB_DEG)),
        Some(light::daylength_h(latitude, of_year, 0.0)),
        Some(light::equation_of_time_min(of_year)),
        Some(light::extraterrestrial_w_per_m2(of_year)),
    ])
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

/// The table with every computed column filled in, a row a row; other columns are passed on as they are.
///
/// # Errors
/// [`VerifyFault`].
pub fn verify(text: &str) -> Result<Vec<Map<String, Value>>, VerifyFault> {
    let table = reference::Table::read("input", text)?;
    let shape = SHAPES
        .iter()
        .find(|shape| shape.inputs.iter().all(|input| table.columns.iter().any(|column| column == input)))
        .ok_or_else(|| VerifyFault::UnknownShape { columns: table.columns.clone() })?;
    let at = shape.inputs.iter().map(|input| table.column(input)).collect::<Result<Vec<_>, _>>()?;
    table
        .rows
        .iter()
        .enumerate()
        .map(|(index, row)| fill(shape, &at, &table.columns, row, index + 1))
        .collect()
}

fn fill(
    shape: &Shape,
    at: &[usize],
    columns: &[String],
    row: &[String],
    number: usize,
) -> Result<Map<String, Value>, VerifyFault> {
    let cells: Vec<Cell> =
        shape.inputs.iter().zip(at).map(|(column, &at)| Cell { column, text: &row[at] }).collect();
    let outputs = (shape.row)(&cells).map_err(|fault| VerifyFault::Cell { row: number, fault })?;
    let mut filled: Map<String, Value> =
        columns.iter().zip(row).map(|(column, text)| (column.clone(), as_json(text))).collect();
    for (name, output) in shape.outputs.iter().zip(outputs) {
        let value = output.and_then(Number::from_f64).map_or(Value::Null, Value::Number);
        filled.insert((*name).to_owned(), value);
    }
    Ok(filled)
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
