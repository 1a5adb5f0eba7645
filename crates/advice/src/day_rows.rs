//! Days pasted from a table: a row a day, a column a thing that was written down.
//!
//! The first line names the columns: `day` (or `age_d`), and fields by their short names where a daily kind has them
//! (`dead`, `water_l`, `feed_kg`, `phase`), else by section and name (`crop_fill.felt`). Cells stand apart by tabs,
//! semicolons or commas, whichever the first line has.

use std::collections::BTreeMap;

use book::Kind;
use quantity::{CivilDay, Raw};

use crate::diary::Diary;
use crate::record;
use crate::walk::DAILY;

/// The most lines that are read at once: longer tables are no week of paper.
pub const LINES_MAX: usize = 400;

/// A row that was read.
#[derive(Clone, Debug)]
pub struct DayRow {
    /// Its line, the first line of the text being 1.
    pub line: usize,
    /// As it stood there.
    pub text: String,
    /// The day it is about, and what it says by kind; or why it cannot be read.
    pub said: Result<(CivilDay, Vec<Filled>), RowFault>,
}

/// What a row says about one kind.
pub type Filled = (&'static Kind, Vec<Raw>);

/// Why a row cannot be read.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum RowFault {
    /// It has more cells than the first line has names.
    TooManyCells {
        /// Cells in the row.
        found: usize,
        /// Names in the first line.
        named: usize,
    },
    /// It does not say which day it is about, or what it says is no day.
    NoDay {
        /// What stands there.
        typed: String,
    },
    /// It says nothing but the day.
    Empty,
}

/// Why a whole table cannot be read.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum TableFault {
    /// Nothing was pasted.
    Nothing,
    /// No column is called `day` or `age_d`.
    NoDayColumn,
    /// A name that is no column's.
    UnknownColumn {
        /// The name.
        name: String,
    },
    /// Two columns of the same name.
    ColumnTwice {
        /// The name.
        name: String,
    },
    /// More lines than are read at once.
    TooManyLines {
        /// Lines found.
        found: usize,
    },
}

enum Column {
    Day,
    Age,
    Of(&'static Kind, &'static str),
}

/// The names of the columns that a daily kind has, for whoever asks what they are.
pub fn short_names() -> Vec<&'static str> {
    let kinds = DAILY.iter().filter_map(|kind| record::kind(kind));
    kinds.flat_map(|kind| record::asked(kind).into_iter().map(|one| one.field.name())).collect()
}

/// Reads a pasted table.
///
/// - `diary`: the batch's, to tell the day of an age
///
/// # Errors
///
/// A [`TableFault`] where the first line cannot be read: then no row can.
pub fn read(text: &str, diary: &Diary) -> Result<Vec<DayRow>, TableFault> {
    let lines: Vec<(usize, &str)> = text
        .lines()
        .enumerate()
        .map(|(at, line)| (at + 1, line))
        .filter(|(_, line)| !line.trim().is_empty())
        .collect();
    let Some(((_, head), rows)) = lines.split_first() else { return Err(TableFault::Nothing) };
    if rows.len() > LINES_MAX {
        return Err(TableFault::TooManyLines { found: rows.len() });
    }
    let mark = ['\t', ';', ','].into_iter().find(|mark| head.contains(*mark)).unwrap_or('\t');
    let columns = columns(&cells(head, mark))?;
    Ok(rows.iter().map(|(line, text)| row(*line, text, mark, &columns, diary)).collect())
}

fn columns(names: &[String]) -> Result<Vec<Column>, TableFault> {
    let mut seen: Vec<String> = Vec::new();
    let mut columns = Vec::new();
    for name in names {
        let name = name.to_lowercase();
        if seen.contains(&name) {
            return Err(TableFault::ColumnTwice { name });
        }
        columns.push(column(&name).ok_or_else(|| TableFault::UnknownColumn { name: name.clone() })?);
        seen.push(name);
    }
    let tells_day = |column: &Column| matches!(column, Column::Day | Column::Age);
    if columns.iter().any(tells_day) { Ok(columns) } else { Err(TableFault::NoDayColumn) }
}

fn column(name: &str) -> Option<Column> {
    match name {
        "day" => return Some(Column::Day),
        "age_d" => return Some(Column::Age),
        _ => {}
    }
    let daily = DAILY.iter().filter_map(|kind| record::kind(kind));
    let short = daily.flat_map(|kind| record::asked(kind).into_iter().map(move |one| (kind, one.field)));
    let whole =
        record::kinds().flat_map(|kind| record::asked(kind).into_iter().map(move |one| (kind, one.field)));
    let found = short.into_iter().find(|(_, field)| field.name() == name);
    let (kind, field) = found.or_else(|| whole.into_iter().find(|(_, field)| field.key == name))?;
    Some(Column::Of(kind, field.key))
}

/// The cells of a line; a cell in double quotes may hold the mark between cells, as a decimal comma.
fn cells(line: &str, mark: char) -> Vec<String> {
    let mut reader = csv::ReaderBuilder::new()
        .delimiter(mark as u8)
        .has_headers(false)
        .flexible(true)
        .trim(csv::Trim::All)
        .from_reader(line.as_bytes());
    let record = reader.records().next().and_then(Result::ok).unwrap_or_default();
    record.iter().map(str::to_owned).collect()
}

fn row(line: usize, text: &str, mark: char, columns: &[Column], diary: &Diary) -> DayRow {
    DayRow { line, text: text.trim().to_owned(), said: said(&cells(text, mark), columns, diary) }
}

fn said(cells: &[String], columns: &[Column], diary: &Diary) -> Result<(CivilDay, Vec<Filled>), RowFault> {
    if cells.iter().skip(columns.len()).any(|cell| !cell.is_empty()) {
        return Err(RowFault::TooManyCells { found: cells.len(), named: columns.len() });
    }
    let mut day = None;
    let mut kinds: BTreeMap<u8, Filled> = BTreeMap::new();
    for (cell, column) in cells.iter().zip(columns).filter(|(cell, _)| !cell.is_empty()) {
        match column {
            Column::Day => day = Some(CivilDay::parse(cell).ok_or(cell)),
            Column::Age => day = Some(of_age(cell, diary).ok_or(cell)),
            Column::Of(kind, key) => {
                let raw = Raw { key: (*key).to_owned(), text: vec![cell.clone()], line: None };
                kinds.entry(kind.rank).or_insert((kind, Vec::new())).1.push(raw);
            }
        }
    }
    let no_day = |typed: &str| RowFault::NoDay { typed: typed.to_owned() };
    let day = day.ok_or_else(|| no_day(""))?.map_err(|typed| no_day(typed))?;
    // A feed that was named and not given says nothing.
    let filled: Vec<Filled> = kinds.into_values().filter(|(kind, raws)| !only_the_part(kind, raws)).collect();
    if filled.is_empty() { Err(RowFault::Empty) } else { Ok((day, filled)) }
}

fn of_age(cell: &str, diary: &Diary) -> Option<CivilDay> {
    Some(diary.placement?.plus_days(cell.parse().ok().filter(|age| (0..=120).contains(age))?))
}

fn only_the_part(kind: &Kind, raws: &[Raw]) -> bool {
    let book::Counting::OneASlot(span) = kind.counting else { return false };
    let is_part = |raw: &Raw| span.part.is_some_and(|part| raw.key.rsplit('.').next() == Some(part));
    raws.iter().all(is_part)
}

#[cfg(test)]
mod tests {
    use book::{BatchId, BookState, FarmId};
    use uuid::Uuid;

    use super::*;

    fn diary() -> Diary {
        let state = BookState::new(FarmId(Uuid::from_u128(1)));
        let on = CivilDay::parse("2027-05-30").unwrap();
        let mut diary = Diary::read(&state, BatchId(Uuid::from_u128(2)), on);
        diary.placement = CivilDay::parse("2027-05-01");
        diary
    }

    #[test]
    fn rows_are_read_with_whatever_stands_between_cells() {
        for mark in ["\t", ";", ","] {
            let text = [
                "day,dead,water_l,phase,feed_kg",
                "2027-05-12,1,200,grower,80",
                "",
                "2027-05-13,,210,grower,",
            ]
            .map(|line| line.replace(',', mark))
            .join("\n");
            let rows = read(&text, &diary()).unwrap();
            assert_eq!(rows.len(), 2);
            let (day, filled) = rows[0].said.clone().unwrap();
            assert_eq!(day.to_string(), "2027-05-12");
            let kinds: Vec<&str> = filled.iter().map(|(kind, _)| kind.name).collect();
            assert_eq!(kinds, ["feed-given", "water", "deaths"]);
            let (_, filled) = rows[1].said.clone().unwrap();
            assert_eq!((rows[1].line, filled.len()), (4, 1), "a feed that was not given says nothing");
        }
    }

    #[test]
    fn an_age_is_a_day_and_a_quoted_comma_a_decimal_mark() {
        let rows = read("age_d,water_l\n11,\"200,5\"", &diary()).unwrap();
        let (day, filled) = rows[0].said.clone().unwrap();
        assert_eq!((day.to_string().as_str(), filled[0].1[0].text[0].as_str()), ("2027-05-12", "200,5"));
    }

    #[test]
    fn what_cannot_be_read_is_told() {
        let fault = |text: &str| read(text, &diary()).unwrap_err();
        assert_eq!(fault(" \n"), TableFault::Nothing);
        assert_eq!(fault("dead\n1"), TableFault::NoDayColumn);
        assert_eq!(fault("day,wings\n1,2"), TableFault::UnknownColumn { name: "wings".to_owned() });
        assert_eq!(fault("day,dead,Dead\n1,2,3"), TableFault::ColumnTwice { name: "dead".to_owned() });
        let rows = read("day,dead\n12 May,1\n2027-05-12,1,9\n2027-05-13,", &diary()).unwrap();
        let faults: Vec<RowFault> = rows.into_iter().map(|row| row.said.unwrap_err()).collect();
        let no_day = RowFault::NoDay { typed: "12 May".to_owned() };
        assert_eq!(faults, [no_day, RowFault::TooManyCells { found: 3, named: 2 }, RowFault::Empty]);
    }
}
