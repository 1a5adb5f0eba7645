//! A file of weights: a row a bird or a crate, as a spreadsheet saves it.
//!
//! Columns, in any order, by their heading: `weight_g` for a bird, or `group_weight_g` and `birds` for a crate, and where
//! wanted `spot` and `sex`. Other columns are passed over, unless they look like one of these misspelt. A comma, a semicolon
//! or a tab sets cells apart, whichever the heading has; with the last two a decimal comma is read. A bare list of weights
//! needs no heading. Rows that begin with # are remarks.

use quantity::fields::{count, field, number};
use quantity::{Answers, Asked, Fault, Field, Kind, Need, Problem, Raw, Source, Unit};

use crate::weighing::{Reading, Weighing, is_cock, sex_name};

const WEIGHT: &str = "weight_g";
const GROUP: &str = "group_weight_g";
const BIRDS: &str = "birds";
const SPOT: &str = "spot";
const SEX: &str = "sex";

/// What a cell can hold: as in the entry of a weighing.
static COLUMNS: [Field; 5] = [
    field(WEIGHT, number(Unit::Gram, 20.0, 10_000.0), Need::Optional),
    field(GROUP, number(Unit::Gram, 20.0, 1_000_000.0), Need::Optional),
    field(BIRDS, count(Unit::Birds, 1.0, 500.0), Need::Optional),
    field(SPOT, Kind::Text(40), Need::Optional),
    field(SEX, Kind::Choice(&["cock", "hen"]), Need::Optional),
];

/// The names of the columns that are read.
pub fn columns() -> impl Iterator<Item = &'static str> {
    COLUMNS.iter().map(|column| column.key)
}

/// Why a file of weights cannot be read.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
pub enum WeighFileFault {
    /// There is no row.
    #[error("no weights")]
    Nothing,
    /// No column of weights, or crates without their birds: a heading is missing or another file was meant.
    #[error("line {line} has no column of weights")]
    NoWeights {
        /// The line of the heading.
        line: usize,
    },
    /// A column that is most likely a misspelt one.
    #[error("line {line}: column {typed}, perhaps {nearest}")]
    Column {
        /// The line of the heading.
        line: usize,
        /// The heading as typed.
        typed: String,
        /// What was perhaps meant.
        nearest: &'static str,
    },
    /// Cells that cannot be, each with its line and column.
    #[error("{} bad cells", .0.len())]
    Cells(Vec<Problem>),
}

/// Reads a file of weights.
///
/// # Errors
/// [`WeighFileFault`]; all bad cells at once.
pub fn read(text: &str) -> Result<Weighing, WeighFileFault> {
    let lines = text.trim_start_matches('\u{feff}').lines().enumerate().map(|(at, line)| (at + 1, line));
    let mut rows = lines.filter(|(_, line)| !line.trim().is_empty() && !line.trim_start().starts_with('#'));
    let first = rows.next().ok_or(WeighFileFault::Nothing)?;
    let sheet = Sheet::of(first)?;
    let bare = sheet.is_bare.then_some(first);
    let (mut weighing, mut problems) = (Weighing::default(), Vec::new());
    for (line, text) in bare.into_iter().chain(rows) {
        match sheet.row(line, text) {
            Ok(reading) => weighing.readings.extend(reading),
            Err(faults) => problems.extend(faults),
        }
    }
    match (problems.is_empty(), weighing.is_empty()) {
        (false, _) => Err(WeighFileFault::Cells(problems)),
        (true, true) => Err(WeighFileFault::Nothing),
        (true, false) => Ok(weighing),
    }
}

/// How the rows of a file are to be read.
struct Sheet {
    /// What sets cells apart.
    mark: u8,
    /// The columns, `None` for those passed over.
    columns: Vec<Option<String>>,
    /// Whether the first row is a weight already.
    is_bare: bool,
    asked: Vec<Asked>,
}

impl Sheet {
    fn of((line, text): (usize, &str)) -> Result<Sheet, WeighFileFault> {
        let asked: Vec<Asked> = COLUMNS.iter().map(Field::asked).collect();
        if quantity::number::parse_in(text.trim(), Unit::Gram).is_ok() {
            return Ok(Sheet { mark: b'\t', columns: vec![Some(WEIGHT.to_owned())], is_bare: true, asked });
        }
        // Where nothing sets cells apart, a comma in a weight is a decimal one.
        let marks = [b'\t', b';', b','];
        let mark = marks.into_iter().find(|mark| text.contains(char::from(*mark))).unwrap_or(b'\t');
        let columns = cells(text, mark).into_iter().map(|typed| column(line, typed, &asked));
        let sheet = Sheet { mark, columns: columns.collect::<Result<_, _>>()?, is_bare: false, asked };
        let is_whole = sheet.has(WEIGHT) || (sheet.has(GROUP) && sheet.has(BIRDS));
        if is_whole { Ok(sheet) } else { Err(WeighFileFault::NoWeights { line }) }
    }

    /// Whether there is a column of that field, in whatever unit.
    fn has(&self, key: &str) -> bool {
        let is_it =
            |name: &String| quantity::field::find(&self.asked, name).is_some_and(|found| found.0.key == key);
        self.columns.iter().flatten().any(is_it)
    }

    /// What a row says; nothing of a row of empty cells.
    fn row(&self, line: usize, text: &str) -> Result<Option<Reading>, Vec<Problem>> {
        let raws = self.raws(line, text);
        if raws.is_empty() {
            return Ok(None);
        }
        let source = if self.mark == b',' { Source::File } else { Source::Hand };
        let checked = quantity::field::check(&self.asked, &raws, source, false);
        if !checked.problems.is_empty() {
            return Err(checked.problems);
        }
        self.reading(&checked.answers).map(Some).map_err(|(key, fault)| {
            let typed = checked.answers.get(key).map(|given| given.typed.clone()).unwrap_or_default();
            vec![Problem { key: key.to_owned(), typed, line: Some(line), fault }]
        })
    }

    fn raws(&self, line: usize, text: &str) -> Vec<Raw> {
        let named = self.columns.iter().zip(cells(text, self.mark));
        let filled = named.filter_map(|(name, cell)| Some((name.clone()?, cell)));
        let raw = |(key, cell): (String, String)| {
            let text = if key == SEX { sex_word(&cell) } else { cell };
            Raw { key, text: vec![text], line: Some(line) }
        };
        filled.filter(|(_, cell)| !cell.is_empty()).map(raw).collect()
    }

    fn reading(&self, answers: &Answers) -> Result<Reading, (&'static str, Fault)> {
        let spot = answers.text(SPOT).unwrap_or_default().to_owned();
        let is_cock = answers.choice(SEX).and_then(is_cock);
        match (answers.number(WEIGHT), answers.number(GROUP), answers.number(BIRDS)) {
            (Some(_), Some(_), _) => Err((GROUP, Fault::GivenTwice { other: WEIGHT.to_owned() })),
            (Some(_), None, Some(birds)) if birds > 1.0 => Err((BIRDS, one_bird())),
            (Some(grams), None, _) => Ok(Reading { grams, birds: 1, spot, is_cock }),
            (None, Some(grams), Some(birds)) => {
                Ok(Reading { grams, birds: birds as u32, spot, is_cock: is_cock.filter(|_| birds == 1.0) })
            }
            (None, Some(_), None) => Err((BIRDS, Fault::Missing)),
            (None, None, _) => Err((if self.has(WEIGHT) { WEIGHT } else { GROUP }, Fault::Missing)),
        }
    }
}

/// The weight of one bird stands beside a count of several.
fn one_bird() -> Fault {
    Fault::Against {
        rule: "one-bird",
        other: GROUP,
        other_value: 1.0,
        low: 1.0,
        high: 1.0,
        unit: Unit::Birds,
    }
}

/// A column's name, if it is one that is read.
fn column(line: usize, typed: String, asked: &[Asked]) -> Result<Option<String>, WeighFileFault> {
    let name = typed.to_lowercase();
    if quantity::field::find(asked, &name).is_some() {
        return Ok(Some(name));
    }
    match quantity::field::nearest(&name, columns()).and_then(|near| columns().find(|one| *one == near)) {
        Some(nearest) => Err(WeighFileFault::Column { line, typed, nearest }),
        None => Ok(None),
    }
}

/// The cells of a row, trimmed. A row that is no CSV is one cell.
fn cells(text: &str, mark: u8) -> Vec<String> {
    let mut reader = csv::ReaderBuilder::new()
        .has_headers(false)
        .delimiter(mark)
        .trim(csv::Trim::All)
        .from_reader(text.as_bytes());
    let row = reader.records().next().and_then(Result::ok);
    row.map_or_else(|| vec![text.trim().to_owned()], |row| row.iter().map(str::to_owned).collect())
}

/// The usual words for a sex as the one that is read; any other as it stands.
fn sex_word(cell: &str) -> String {
    is_cock(cell).map_or_else(|| cell.to_owned(), |is_cock| sex_name(is_cock).to_owned())
}

#[cfg(test)]
mod tests {
    use super::*;

    fn weights(text: &str) -> Vec<f64> {
        read(text).unwrap().weights()
    }

    fn problems(text: &str) -> Vec<(usize, String, Fault)> {
        match read(text).unwrap_err() {
            WeighFileFault::Cells(problems) => {
                problems.into_iter().map(|one| (one.line.unwrap(), one.key, one.fault)).collect()
            }
            other => panic!("{other}"),
        }
    }

    #[test]
    fn birds_with_their_spots_and_sexes() {
        let read = read("tag,weight_g,spot,sex\n1,1820,door,m\n\n2,1790.5,far end,Hen\n# lunch\n3,1900,,\n")
            .unwrap();
        let bird = |grams, spot: &str, is_cock| Reading { grams, birds: 1, spot: spot.to_owned(), is_cock };
        let birds =
            [bird(1820.0, "door", Some(true)), bird(1790.5, "far end", Some(false)), bird(1900.0, "", None)];
        assert_eq!(read.readings, birds);
    }

    #[test]
    fn crates_and_birds_in_one_file() {
        let read = read("group_weight_g,birds,weight_g\n18200,10,\n,,1790\n").unwrap();
        assert_eq!((read.readings[0].birds, read.weights()), (10, vec![1790.0]));
    }

    #[test]
    fn however_a_spreadsheet_saves_it() {
        assert_eq!(weights("\u{feff}weight_g\r\n1820\r\n1790\r\n"), [1820.0, 1790.0]);
        assert_eq!(weights("weight_g;spot\n1820,5;door\n"), [1820.5]);
        assert_eq!(weights("weight_g\n1820,5\n1 790\n"), [1820.5, 1790.0]);
        assert_eq!(weights("spot\tweight_g\ndoor\t1820\n"), [1820.0]);
        assert_eq!(weights("weight_kg\n1.82\n"), [1820.0]);
        assert_eq!(weights("1820\n1790\n"), [1820.0, 1790.0]);
        assert_eq!(weights("weight_g,birds\n1820,1\n"), [1820.0]);
    }

    #[test]
    fn every_bad_cell_is_named() {
        let bad = problems("weight_g,sex\n1820,cock\n18200,\nheavy,cat\n,hen\n1 820,5\n");
        let places: Vec<(usize, &str)> = bad.iter().map(|(line, key, _)| (*line, key.as_str())).collect();
        assert_eq!(places, [(3, "weight_g"), (4, "weight_g"), (4, "sex"), (5, "weight_g"), (6, "sex")]);
        assert!(matches!(bad[0].2, Fault::OutOfRange { suggestion: Some(_), .. }), "{bad:?}");
        let kilograms = problems("weight_g\n2.04\n2\n");
        let meant = kilograms.iter().map(|(.., fault)| match fault {
            Fault::OutOfRange { suggestion, .. } => *suggestion,
            _ => None,
        });
        assert_eq!(meant.collect::<Vec<_>>(), [Some(2040.0), Some(2000.0)]);
        let crates =
            problems("group_weight_g,birds,weight_g\n18200,,\n18200,10,1820\n,10,1820\n18200,2.5,\n");
        let lines: Vec<usize> = crates.iter().map(|(line, ..)| *line).collect();
        assert_eq!(lines, [2, 3, 4, 5]);
    }

    #[test]
    fn a_file_without_weights_says_so() {
        assert_eq!(read(""), Err(WeighFileFault::Nothing));
        assert_eq!(read("weight_g,spot\n"), Err(WeighFileFault::Nothing));
        assert_eq!(read("day,dead\n1,2\n"), Err(WeighFileFault::NoWeights { line: 1 }));
        assert_eq!(read("# a note\ngroup_weight_g,spot\n1,2\n"), Err(WeighFileFault::NoWeights { line: 2 }));
        let near = WeighFileFault::Column { line: 1, typed: "wieght_g".to_owned(), nearest: WEIGHT };
        assert_eq!(read("wieght_g\n1820\n"), Err(near));
    }
}
