//! Files of rows to write down: a spreadsheet saved as CSV, or JSON Lines.
//!
//! CSV: `kind,day,key=value,key=value,…`, a row an entry. A first row that begins with `kind,day` is a heading, and may
//! name keys; cells below a key need not repeat it, and may name another. JSON Lines: `{"kind": "deaths", "day": "2027-09-15", "dead": 3}`.

use present::Words;
use quantity::Raw;

/// A row, before anybody looked at it.
pub struct Row {
    /// Its line, from 1.
    pub line: usize,
    /// The name of its kind.
    pub kind: String,
    /// Its day, as typed.
    pub day: String,
    /// Its answers.
    pub raws: Vec<Raw>,
}

/// The rows of a file; for a line that is none, what is wrong with it.
pub fn read(text: &str, words: &Words) -> Vec<(usize, Result<Row, String>)> {
    let begins_with = text.trim_start().chars().next();
    if begins_with == Some('{') { json_rows(text, words) } else { csv_rows(text, words) }
}

fn json_rows(text: &str, words: &Words) -> Vec<(usize, Result<Row, String>)> {
    let lines = text.lines().enumerate().filter(|(_, line)| !line.trim().is_empty());
    lines.map(|(at, line)| (at + 1, json_row(at + 1, line, words))).collect()
}

fn json_row(line: usize, text: &str, words: &Words) -> Result<Row, String> {
    let row: serde_json::Map<String, serde_json::Value> =
        serde_json::from_str(text).map_err(|_| words.plain("record-row-no-json"))?;
    let word = |key: &str| row.get(key).and_then(|value| value.as_str()).unwrap_or_default().to_owned();
    let answers = row.iter().filter(|(key, _)| !["kind", "day"].contains(&key.as_str()));
    let raws = answers.map(|(key, value)| Raw { key: key.clone(), text: texts(value), line: Some(line) });
    Ok(Row { line, kind: word("kind"), day: word("day"), raws: raws.collect() })
}

/// A value as somebody would type it.
fn texts(value: &serde_json::Value) -> Vec<String> {
    match value {
        serde_json::Value::Array(items) => items.iter().flat_map(texts).collect(),
        serde_json::Value::String(text) => vec![text.clone()],
        serde_json::Value::Null => vec![String::new()],
        other => vec![other.to_string()],
    }
}

fn csv_rows(text: &str, words: &Words) -> Vec<(usize, Result<Row, String>)> {
    let mut reader = csv::ReaderBuilder::new()
        .has_headers(false)
        .flexible(true)
        .trim(csv::Trim::All)
        .from_reader(text.as_bytes());
    let mut heading: Vec<String> = Vec::new();
    let mut rows = Vec::new();
    for record in reader.records() {
        let Ok(record) = record else {
            rows.push((rows.len() + 1, Err(words.plain("record-row-no-csv"))));
            continue;
        };
        let line = line_of(text, record.position().map_or(0, csv::Position::byte) as usize);
        let cells: Vec<&str> = record.iter().collect();
        match cells.as_slice() {
            [remark, ..] if remark.starts_with('#') => {}
            ["kind", "day", keys @ ..] => heading = keys.iter().map(|key| (*key).to_owned()).collect(),
            [kind, day, answers @ ..] => {
                let raws = csv_answers(answers, &heading, line, words);
                rows.push((
                    line,
                    raws.map(|raws| Row { line, kind: (*kind).to_owned(), day: (*day).to_owned(), raws }),
                ));
            }
            _ => rows.push((line, Err(words.plain("record-row-short")))),
        }
    }
    rows
}

/// The line of what stands behind a place, from 1. Blank lines before it are passed over, as the reader does.
fn line_of(text: &str, place: usize) -> usize {
    let (before, rest) = text.split_at_checked(place).unwrap_or((text, ""));
    let blank = rest.len() - rest.trim_start_matches(['\r', '\n']).len();
    1 + before.matches('\n').count() + rest[..blank].matches('\n').count()
}

fn csv_answers(cells: &[&str], heading: &[String], line: usize, words: &Words) -> Result<Vec<Raw>, String> {
    let answer = |(at, cell): (usize, &&str)| match heading.get(at).filter(|key| !key.is_empty()) {
        Some(key) if !names_its_key(cell) => {
            Ok(Raw { key: key.clone(), text: vec![(*cell).to_owned()], line: Some(line) })
        }
        _ => super::raw(cell, Some(line), words),
    };
    let filled = cells.iter().enumerate().filter(|(_, cell)| !cell.is_empty());
    filled.map(answer).collect()
}

/// Whether a cell says itself which key it answers.
fn names_its_key(cell: &str) -> bool {
    let is_of_key = |letter: char| letter.is_ascii_lowercase() || letter == '_';
    cell.split_once('=').is_some_and(|(key, _)| !key.is_empty() && key.chars().all(is_of_key))
}

#[cfg(test)]
mod tests {
    use super::*;
    use present::Locale;

    fn rows(text: &str) -> Vec<String> {
        let told = |(line, row): (usize, Result<Row, String>)| match row {
            Ok(row) => {
                let raws: Vec<String> =
                    row.raws.iter().map(|raw| format!("{}={}", raw.key, raw.text.join("|"))).collect();
                format!("{line} {} {} {}", row.kind, row.day, raws.join(" "))
            }
            Err(_) => format!("{line} bad"),
        };
        read(text, Words::of(Locale::English)).into_iter().map(told).collect()
    }

    #[test]
    fn a_sheet_with_a_heading_and_cells_of_their_own() {
        let sheet = "kind,day,dead,culled\n# Monday\ndeaths,2027-09-15,3,\n\nwater,2027-09-15,\"water_l=1,5\"\nnote\n";
        let expected = ["3 deaths 2027-09-15 dead=3", "5 water 2027-09-15 water_l=1,5", "6 bad"];
        assert_eq!(rows(sheet), expected);
    }

    #[test]
    fn plain_rows_of_json() {
        let lines = "{\"kind\":\"weighing\",\"day\":\"2027-09-15\",\"weights_g\":[150,\"160\"]}\n[1]\n";
        assert_eq!(rows(lines), ["1 weighing 2027-09-15 weights_g=150|160", "2 bad"]);
    }

    #[test]
    fn nothing_is_no_row() {
        assert_eq!(rows(""), Vec::<String>::new());
        assert_eq!(rows("kind,day\n"), Vec::<String>::new());
    }
}
