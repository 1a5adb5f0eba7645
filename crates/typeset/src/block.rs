//! The kinds of block and what must hold within each.

use std::ops::RangeInclusive;

use serde::{Deserialize, Serialize};
use serde_json::Value;

use crate::TypesetError;
use crate::columns::{self, Plan};
use crate::day_grid::DayGrid;
use crate::geometry::Geometry;

/// Widths a block may ask for, in percent of the page between its margins. Less could not be read or written on.
const WIDTH_PERCENT: RangeInclusive<f64> = 10.0..=100.0;

/// Size of the text in a table, of that of running text.
const TABLE_SIZE: f64 = 0.95;

/// Size of the text in the inputs of a working, of that of running text.
const WORKING_SIZE: f64 = 0.92;

/// One block of a document. What each looks like is told in the crate's front page.
#[derive(Debug, Serialize, Deserialize)]
#[serde(tag = "kind", rename_all = "snake_case", deny_unknown_fields)]
pub(crate) enum Block {
    Heading {
        level: u8,
        text: String,
    },
    Paragraph {
        text: String,
    },
    Lead(Figure),
    Figures {
        rows: Vec<Figure>,
    },
    Table {
        #[serde(default)]
        caption: String,
        columns: Vec<Column>,
        rows: Vec<Vec<String>>,
        #[serde(default)]
        emphasis: Vec<usize>,
    },
    Drawing {
        name: String,
        #[serde(default)]
        caption: String,
        alternative: String,
        #[serde(default = "full_width")]
        width_percent: f64,
    },
    Steps {
        ordered: bool,
        ticks: bool,
        items: Vec<Step>,
    },
    Caution {
        level: Level,
        title: String,
        items: Vec<String>,
    },
    Note {
        text: String,
        /// Set upside down.
        #[serde(default)]
        turned: bool,
    },
    Blanks {
        rows: Vec<Blank>,
    },
    Working(Working),
    DayGrid(DayGrid),
    Beside {
        parts: Vec<Part>,
    },
    PageBreak {},
    /// From here on pages lie this way.
    Page {
        #[serde(default)]
        landscape: bool,
        #[serde(default)]
        bare: bool,
    },
    /// Stands for any kind not listed above, so that it can be told apart from a block with bad fields.
    #[serde(other, skip_serializing)]
    Unknown,
}

/// A labelled value, with a remark that may be empty.
#[derive(Debug, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct Figure {
    label: String,
    value: String,
    #[serde(default)]
    note: String,
}

#[derive(Debug, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct Column {
    title: String,
    align: Align,
    #[serde(default)]
    fill: Fill,
}

/// What stands in the cells of a column.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "lowercase")]
enum Fill {
    #[default]
    Words,
    /// A square to tick.
    Tick,
    /// A line to write on.
    Line,
}

impl Fill {
    /// Letters as wide as what is drawn, so that the planner leaves room for it.
    fn stand_in(self) -> Option<&'static str> {
        match self {
            Fill::Words => None,
            Fill::Tick => Some("mm"),
            Fill::Line => Some("mmmmmmm"),
        }
    }
}

/// A part of the page beside others.
#[derive(Debug, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct Part {
    width_percent: f64,
    blocks: Vec<Block>,
}

#[derive(Debug, Serialize, Deserialize)]
#[serde(rename_all = "lowercase")]
enum Align {
    Start,
    End,
}

#[derive(Debug, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct Step {
    text: String,
    #[serde(default)]
    why: String,
}

#[derive(Debug, Serialize, Deserialize)]
#[serde(rename_all = "lowercase")]
pub(crate) enum Level {
    Danger,
    Care,
}

#[derive(Debug, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct Blank {
    label: String,
    #[serde(default = "full_width")]
    width_percent: f64,
}

/// How a figure comes about.
#[derive(Debug, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct Working {
    title: String,
    formula: String,
    #[serde(default)]
    substituted: String,
    #[serde(default)]
    rounded: String,
    inputs: Vec<Input>,
    result: String,
    source: String,
}

#[derive(Debug, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct Input {
    symbol: String,
    label: String,
    value: String,
    origin: String,
}

fn full_width() -> f64 {
    *WIDTH_PERCENT.end()
}

impl Block {
    /// Reads and checks the block at `index`.
    pub(crate) fn read(index: usize, value: &Value) -> Result<Self, TypesetError> {
        let kind = || value.get("kind").and_then(Value::as_str).unwrap_or_default().to_owned();
        let bad = |reason| TypesetError::BadBlock { index, kind: kind(), reason };
        let block = Self::deserialize(value).map_err(|error| bad(error.to_string()))?;
        if matches!(block, Self::Unknown) {
            return Err(TypesetError::UnknownKind { index, kind: kind() });
        }
        block.check().map_err(bad)?;
        Ok(block)
    }

    /// The names of the drawings this block calls for, those of its parts too.
    pub(crate) fn drawings(&self) -> Vec<&str> {
        match self {
            Self::Drawing { name, .. } => vec![name],
            Self::DayGrid(grid) => grid.drawings().collect(),
            Self::Beside { parts } => {
                parts.iter().flat_map(|part| &part.blocks).flat_map(Self::drawings).collect()
            }
            _ => Vec::new(),
        }
    }

    /// How wide its columns are, for a block that has some.
    pub(crate) fn plan(&self, geometry: Geometry) -> Option<Plan> {
        let Geometry { full, framed, line, base, .. } = geometry;
        match self {
            Self::Table { columns, rows, emphasis, .. } => {
                let columns = table_columns(columns, rows, emphasis);
                Some(Plan::new(&columns, full, base * TABLE_SIZE).spread(full))
            }
            Self::Figures { rows } => Some(Plan::new(&figure_columns(rows), line, base)),
            Self::Working(working) => Some(Plan::new(&working.columns(), framed, base * WORKING_SIZE)),
            _ => None,
        }
    }

    /// What the types alone cannot hold.
    fn check(&self) -> Result<(), String> {
        match self {
            Self::Heading { level, .. } => check_level(*level),
            Self::Table { columns, rows, emphasis, .. } => {
                check_table(columns.len(), rows, emphasis)?;
                check_fills(columns, rows)
            }
            Self::Drawing { width_percent, .. } => check_width(*width_percent),
            Self::Blanks { rows } => rows.iter().try_for_each(|row| check_width(row.width_percent)),
            Self::DayGrid(grid) => grid.check(),
            Self::Beside { parts } => check_beside(parts),
            _ => Ok(()),
        }
    }
}

/// In a table to be filled in, the words of rows that stand out run on over the cells behind them: they ask for no width.
fn table_columns<'a>(
    columns: &'a [Column],
    rows: &'a [Vec<String>],
    emphasis: &[usize],
) -> Vec<columns::Column<'a>> {
    let filled = columns.iter().any(|column| column.fill != Fill::Words);
    let cell = |at: usize, row: usize| match (&columns[at], filled && emphasis.contains(&row)) {
        (Column { align: Align::Start, .. }, true) => "",
        (column, _) => column.fill.stand_in().unwrap_or(rows[row][at].as_str()),
    };
    let column = |(at, column): (usize, &'a Column)| columns::Column {
        head: &column.title,
        cells: (0..rows.len()).map(|row| cell(at, row)).collect(),
        figures: matches!(column.align, Align::End),
    };
    columns.iter().enumerate().map(column).collect()
}

/// Label and value, and the notes where there are any.
fn figure_columns(rows: &[Figure]) -> Vec<columns::Column<'_>> {
    let mut columns = vec![headless(rows, false, |row| &row.label), headless(rows, true, |row| &row.value)];
    if rows.iter().any(|row| !row.note.is_empty()) {
        columns.push(headless(rows, false, |row| &row.note));
    }
    columns
}

impl Working {
    fn columns(&self) -> Vec<columns::Column<'_>> {
        vec![
            headless(&self.inputs, false, |input| &input.symbol),
            headless(&self.inputs, false, |input| &input.label),
            headless(&self.inputs, true, |input| &input.value),
            headless(&self.inputs, false, |input| &input.origin),
        ]
    }
}

fn headless<T>(rows: &[T], figures: bool, field: fn(&T) -> &String) -> columns::Column<'_> {
    columns::Column { head: "", cells: rows.iter().map(|row| field(row).as_str()).collect(), figures }
}

fn check_level(level: u8) -> Result<(), String> {
    if (1..=3).contains(&level) { Ok(()) } else { Err(format!("level {level} is not 1, 2 or 3")) }
}

fn check_width(percent: f64) -> Result<(), String> {
    if WIDTH_PERCENT.contains(&percent) {
        Ok(())
    } else {
        Err(format!("width_percent {percent} is not from 10 to 100"))
    }
}

fn check_table(columns: usize, rows: &[Vec<String>], emphasis: &[usize]) -> Result<(), String> {
    if columns == 0 {
        return Err("a table needs a column".to_owned());
    }
    if let Some((index, row)) = rows.iter().enumerate().find(|(_, row)| row.len() != columns) {
        return Err(format!("row {index} has {} cells where the table has {columns} columns", row.len()));
    }
    match emphasis.iter().find(|&&index| index >= rows.len()) {
        Some(index) => Err(format!("emphasis on row {index} of a table of {} rows", rows.len())),
        None => Ok(()),
    }
}

/// A cell that is to be filled in holds no words: they would not be seen.
fn check_fills(columns: &[Column], rows: &[Vec<String>]) -> Result<(), String> {
    let filled = |at: &usize| columns[*at].fill != Fill::Words;
    let lost = |row: &Vec<String>| (0..row.len()).filter(filled).any(|at| !row[at].is_empty());
    match rows.iter().position(lost) {
        Some(index) => Err(format!("row {index} has words in a column that is to be filled in")),
        None => Ok(()),
    }
}

/// Only words and blanks stand beside others; what is planned by the width of the page does not fit there.
fn check_beside(parts: &[Part]) -> Result<(), String> {
    parts.iter().try_for_each(|part| check_width(part.width_percent))?;
    let total: f64 = parts.iter().map(|part| part.width_percent).sum();
    if total > *WIDTH_PERCENT.end() + 0.01 {
        return Err(format!("parts of {total} percent do not fit beside each other"));
    }
    parts.iter().flat_map(|part| &part.blocks).try_for_each(|block| match block {
        Block::Heading { .. }
        | Block::Paragraph { .. }
        | Block::Note { .. }
        | Block::Steps { .. }
        | Block::Caution { .. }
        | Block::Drawing { .. }
        | Block::Blanks { .. } => block.check(),
        _ => Err("a part holds a block other than heading, paragraph, note, steps, caution, drawing, blanks"
            .to_owned()),
    })
}

#[cfg(test)]
mod tests {
    use serde_json::json;

    use super::*;

    fn reason(block: Value) -> String {
        match Block::read(4, &block) {
            Err(TypesetError::BadBlock { index: 4, reason, .. }) => reason,
            other => panic!("expected a bad block, got {other:?}"),
        }
    }

    #[test]
    fn an_unknown_kind_is_named() {
        let block = json!({"kind": "carousel", "text": "x"});
        assert!(
            matches!(Block::read(7, &block), Err(TypesetError::UnknownKind { index: 7, kind }) if kind == "carousel")
        );
    }

    #[test]
    fn a_block_without_a_kind_or_not_an_object_is_bad() {
        assert!(reason(json!({"text": "x"})).contains("kind"));
        assert!(!reason(json!("text")).is_empty());
        assert!(!reason(json!({"kind": 3})).is_empty());
    }

    #[test]
    fn missing_and_unknown_fields_are_named() {
        assert!(reason(json!({"kind": "heading", "level": 1})).contains("text"));
        assert!(reason(json!({"kind": "note", "text": "x", "txt": "y"})).contains("txt"));
        assert!(reason(json!({"kind": "lead", "label": "x", "value": "y", "noet": "z"})).contains("noet"));
        assert!(reason(json!({"kind": "page_break", "text": "x"})).contains("text"));
    }

    #[test]
    fn fields_that_contradict_each_other_are_bad() {
        let columns = json!([{"title": "a", "align": "start"}, {"title": "b", "align": "end"}]);
        assert!(reason(json!({"kind": "heading", "level": 4, "text": "x"})).contains("level 4"));
        assert!(reason(json!({"kind": "table", "columns": [], "rows": []})).contains("needs a column"));
        assert!(
            reason(json!({"kind": "table", "columns": columns, "rows": [["1", "2"], ["3"]]}))
                .contains("row 1 has 1 cells")
        );
        assert!(
            reason(json!({"kind": "table", "columns": columns, "rows": [["1", "2"]], "emphasis": [1]}))
                .contains("emphasis on row 1")
        );
        assert!(
            reason(json!({"kind": "blanks", "rows": [{"label": "x", "width_percent": 9}]}))
                .contains("10 to 100")
        );
        assert!(
            reason(json!({"kind": "drawing", "name": "x", "alternative": "y", "width_percent": 101}))
                .contains("10 to 100")
        );
    }

    #[test]
    fn words_that_nobody_would_see_are_refused() {
        let columns =
            json!([{"title": "", "align": "start", "fill": "tick"}, {"title": "b", "align": "end"}]);
        let table = |first: &str| json!({"kind": "table", "columns": columns, "rows": [[first, "2"]]});
        assert!(Block::read(4, &table("")).is_ok());
        assert!(reason(table("lost")).contains("row 0 has words"));
        assert!(reason(json!({"kind": "table", "columns": [{"title": "", "align": "start", "fill": "box"}], "rows": []}))
            .contains("box"));
    }

    #[test]
    fn a_grid_that_does_not_hold_together_is_refused() {
        let grid = |row: Value| json!({"kind": "day_grid", "columns": [{"title": "a"}, {"title": "b"}], "rows": [row]});
        let row = |more: Value| {
            let mut row = json!({"label": "Feed", "write": true, "cells": ["1", "2"]});
            row.as_object_mut().unwrap().extend(more.as_object().unwrap().clone());
            grid(row)
        };
        assert!(Block::read(4, &row(json!({}))).is_ok());
        assert!(reason(row(json!({"cells": ["1"]}))).contains("(\"Feed\") has 1 cells"));
        assert!(reason(row(json!({"height_mm": 8.9}))).contains("not from 9 to 60"));
        assert!(reason(row(json!({"height_mm": 61}))).contains("not from 9 to 60"));
        assert!(reason(row(json!({"parts": ["a", "b", "c", "d", "e"]}))).contains("more than 4"));
        assert!(reason(row(json!({"parts": ["a"], "ticks": ["b"]}))).contains("both"));
        assert!(reason(row(json!({"write": false, "ticks": ["b"]}))).contains("not to be written in"));
        assert!(reason(row(json!({"hight_mm": 9}))).contains("hight_mm"));
        assert!(reason(json!({"kind": "day_grid", "columns": [], "rows": []})).contains("0 columns"));
    }

    #[test]
    fn beside_each_other_stand_only_words_and_blanks() {
        let beside = |percent: f64, block: Value| json!({"kind": "beside", "parts": [{"width_percent": 50, "blocks": []}, {"width_percent": percent, "blocks": [block]}]});
        assert!(Block::read(4, &beside(50.0, json!({"kind": "note", "text": "x"}))).is_ok());
        assert!(reason(beside(51.0, json!({"kind": "note", "text": "x"}))).contains("101 percent"));
        assert!(
            reason(beside(50.0, json!({"kind": "lead", "label": "x", "value": "y"}))).contains("other than")
        );
        assert!(reason(beside(50.0, json!({"kind": "carousel"}))).contains("other than"));
        assert!(
            reason(beside(50.0, json!({"kind": "blanks", "rows": [{"label": "x", "width_percent": 5}]})))
                .contains("10 to 100")
        );
    }
}
