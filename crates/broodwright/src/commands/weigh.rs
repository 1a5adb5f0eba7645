//! `weigh FILE.csv`: what some birds weigh, how even they are, and whether they are enough.

use std::path::PathBuf;

use advice::sums;
use advice::weighing::{RowFault, TableFault, read_table};
use clap::ArgMatches;
use present::{Locale, Viewer, Words, fault, say, sum, text, view};

use crate::failure::Failure;
use crate::input;

/// Reads the table and shows what comes of it.
pub fn run(given: &ArgMatches, locale: Locale) -> Result<(), Failure> {
    let words = Words::of(locale);
    let Some(file) = given.get_one::<PathBuf>("FILE") else { return Ok(()) };
    let mut weighing = read_table(&input::text(file, words)?).map_err(|why| bad(&why, words))?;
    weighing.flock = given.get_one::<f64>("birds").copied();
    let Some(sum) = sums::by_name("weighing") else { return Ok(()) };
    let result = sum.work_out(&weighing.raws(), true);
    let viewer = super::viewer(Viewer { locale, ..Viewer::plain() }, given, locale);
    if !result.checked.problems.is_empty() {
        let faults = result.checked.problems.iter().map(|problem| fault::with_place(problem, &viewer));
        return Err(Failure::BadInput(faults.collect()));
    }
    let with_workings = given.get_flag("working");
    if given.get_flag("json") {
        return super::print_json(&view::sum(&result, &viewer, with_workings));
    }
    super::print(&text::write(&sum::document(sum, &result, &viewer), &viewer, with_workings))
}

fn bad(why: &TableFault, words: &Words) -> Failure {
    match why {
        TableFault::NoWeightColumn => Failure::input(words.plain("weigh-no-weight-column")),
        TableFault::Rows(rows) => {
            Failure::BadInput(rows.iter().map(|(line, why)| line_fault(*line, why, words)).collect())
        }
    }
}

fn line_fault(line: u64, why: &RowFault, words: &Words) -> String {
    let line = line.to_string();
    match why {
        RowFault::NoWeight { typed } => say!(words, "weigh-row-no-weight", line = line, typed = typed),
        RowFault::NoBirds { typed } => say!(words, "weigh-row-no-birds", line = line, typed = typed),
        RowFault::NoSex { typed } => say!(words, "weigh-row-no-sex", line = line, typed = typed),
        RowFault::Broken => say!(words, "weigh-row-broken", line = line),
    }
}
