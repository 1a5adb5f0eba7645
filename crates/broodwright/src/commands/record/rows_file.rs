//! Files of rows to write down: a spreadsheet saved as CSV, or JSON Lines.
//!
//! CSV: `kind,day,key=value,key=value,…`, a row an entry. A first row that begins with `kind,day` is a heading, and may
//! name keys; cells below a key need not repeat it. JSON Lines: `{"kind": "deaths", "day": "2027-09-15", "dead": 3}`.

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
        .comment(Some(b'#'))
        .trim(csv::Trim::All)
        .from_reader(text.as_bytes());
    let mut heading: Vec<String> = Vec::new();
    let mut rows = Vec::new();
    for record in reader.records() {
        let Ok(record) = record else {
            rows.push((rows.len() + 1, Err(words.plain("record-row-no-csv"))));
            continue;
        };
        let line = record.position().map_or(0, csv::Position::line) as usize;
        let cells: Vec<&str> = record.iter().collect();
        match cells.as_slice() {
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

fn csv_answers(cells: &[&str], heading: &[String], line: usize, words: &Words) -> Result<Vec<Raw>, String> {
    let answer = |(at, cell): (usize, &&str)| match heading.get(at).filter(|key| !key.is_empty()) {
        Some(key) => Ok(Raw { key: key.clone(), text: vec![(*cell).to_owned()], line: Some(line) }),
        None => super::raw(cell, Some(line), words),
    };
    let filled = cells.iter().enumerate().filter(|(_, cell)| !cell.is_empty());
    filled.map(answer).collect()
}
