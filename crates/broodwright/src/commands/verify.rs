//! `verify TABLE`: works out the outputs of a table of check values from its inputs.

use std::path::PathBuf;

use advice::families;
use advice::verify::{self, VerifyFault};
use clap::ArgMatches;
use present::view::VerifyView;
use present::{Locale, Words, say};
use serde_json::Value;

use crate::failure::Failure;
use crate::input;

/// Reads the table, fills it in, prints it as JSON or CSV.
pub fn run(given: &ArgMatches, locale: Locale) -> Result<(), Failure> {
    let words = Words::of(locale);
    let Some(path) = given.get_one::<PathBuf>("TABLE") else { return Ok(()) };
    let text = input::text(path, words)?;
    let rows = verify::verify(&text).map_err(|fault| {
        let file = path.display().to_string();
        Failure::input(say!(words, "command-in-file", file = file, fault = sentence(&fault, words)))
    })?;
    if given.get_flag("json") {
        return super::print_json(&VerifyView { rows });
    }
    let columns = rows.first().map(|row| row.keys().cloned().collect::<Vec<_>>()).unwrap_or_default();
    let mut text = columns.join(",") + "\n";
    for row in &rows {
        let cells: Vec<String> = row.values().map(cell).collect();
        text.push_str(&(cells.join(",") + "\n"));
    }
    super::print(&text)
}

fn cell(value: &Value) -> String {
    match value {
        Value::Null => String::new(),
        Value::String(text) if text.contains([',', '"', '\n']) => {
            format!("\"{}\"", text.replace('"', "\"\""))
        }
        Value::String(text) => text.clone(),
        other => other.to_string(),
    }
}

fn sentence(fault: &VerifyFault, words: &Words) -> String {
    match fault {
        VerifyFault::Table(error) => say!(words, "verify-not-a-table", why = error.to_string()),
        VerifyFault::UnknownShape { columns } => {
            let known: Vec<String> = families::shapes()
                .map(|shape| format!("{} ({})", shape.name, shape.inputs.join(", ")))
                .collect();
            say!(words, "verify-unknown-shape", columns = columns.join(", "), known = known.join("; "))
        }
        VerifyFault::Cell { row, fault } => {
            say!(
                words,
                "verify-cell",
                row = row.to_string(),
                column = &fault.column,
                typed = &fault.typed,
                allowed = &fault.allowed,
            )
        }
    }
}
