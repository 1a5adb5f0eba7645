//! A week on a sheet: a column a day, rows to read and rows to write in with a pencil.

use std::ops::RangeInclusive;

use serde::{Deserialize, Serialize};

/// More columns than this would be too narrow for a hand.
const MOST_COLUMNS: usize = 8;

/// Heights of a box to write in, mm: less than 9 is too low for a pencil, more than 60 leaves no room for others.
const HEIGHT_MM: RangeInclusive<f64> = 9.0..=60.0;

/// More boxes than this side by side within a day would be too narrow.
const MOST_PARTS: usize = 4;

/// The grid.
#[derive(Debug, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct DayGrid {
    /// Words above the labels of the rows.
    #[serde(default)]
    corner: String,
    columns: Vec<Day>,
    rows: Vec<Row>,
    /// Words at the head of the room beside fewer than seven days.
    #[serde(default)]
    rest: String,
}

#[derive(Debug, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
struct Day {
    title: String,
    #[serde(default)]
    note: String,
}

#[derive(Debug, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
struct Row {
    label: String,
    #[serde(default)]
    note: String,
    /// Whether its cells are boxes to write in, with their words small below; else they are words to read.
    write: bool,
    #[serde(default = "least_height")]
    height_mm: f64,
    /// Boxes side by side within a day, by their words.
    #[serde(default)]
    parts: Vec<String>,
    /// Squares to tick within a day, by their words.
    #[serde(default)]
    ticks: Vec<String>,
    cells: Vec<String>,
    /// Small drawings to mark, side by side below the cell.
    #[serde(default)]
    pictures: Vec<Picture>,
    /// So many of the first columns have them.
    #[serde(default)]
    pictured: usize,
}

/// A small drawing to mark with a pencil.
#[derive(Debug, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
struct Picture {
    name: String,
    alternative: String,
}

fn least_height() -> f64 {
    *HEIGHT_MM.start()
}

impl DayGrid {
    /// The names of the drawings it calls for.
    pub(crate) fn drawings(&self) -> impl Iterator<Item = &str> {
        self.rows.iter().flat_map(|row| &row.pictures).map(|picture| picture.name.as_str())
    }

    /// What the types alone cannot hold.
    pub(crate) fn check(&self) -> Result<(), String> {
        let columns = self.columns.len();
        if !(1..=MOST_COLUMNS).contains(&columns) {
            return Err(format!("{columns} columns are not from 1 to {MOST_COLUMNS}"));
        }
        self.rows.iter().enumerate().try_for_each(|(index, row)| {
            row.check(columns).map_err(|reason| format!("row {index} ({:?}) {reason}", row.label))
        })
    }
}

impl Row {
    fn check(&self, columns: usize) -> Result<(), String> {
        if self.cells.len() != columns {
            return Err(format!("has {} cells where the grid has {columns} columns", self.cells.len()));
        }
        if !HEIGHT_MM.contains(&self.height_mm) {
            return Err(format!("has a height_mm of {}, which is not from 9 to 60", self.height_mm));
        }
        if self.parts.len().max(self.ticks.len()).max(self.pictures.len()) > MOST_PARTS {
            return Err(format!("has more than {MOST_PARTS} parts, ticks or pictures in a day"));
        }
        if self.pictured > columns {
            return Err(format!("has {} columns with pictures where the grid has {columns}", self.pictured));
        }
        let kinds = usize::from(!self.parts.is_empty()) + usize::from(!self.ticks.is_empty());
        match (self.write, kinds) {
            (false, 1..) => Err("has parts or ticks but is not to be written in".to_owned()),
            (true, 2) => Err("has both parts and ticks".to_owned()),
            _ => Ok(()),
        }
    }
}
