//! `walk`: a day of a batch: what there is to do, what is expected, what is written and what is not.

use advice::walk::Walk;
use clap::ArgMatches;
use present::batch::{BATCH_SHEETS, batch_sheet};
use present::{Document, Locale, walk};

use crate::arguments::ALL_SHEETS;
use crate::failure::Failure;
use crate::farm_book::Asked;
use crate::sheets;

/// Reads the book and shows the day.
pub fn run(given: &ArgMatches, locale: Locale) -> Result<(), Failure> {
    let Asked { book, batch, on, viewer } = Asked::of(given, locale)?;
    let shown = Walk::read(book.state(), batch, on);
    if let Some(out) = sheets::out(given) {
        let sheet = |name: &'static str| batch_sheet(name, book.state(), batch, on, &viewer);
        sheets::write(&documents(sheet, given), out, given, &viewer)?;
    }
    if given.get_flag("json") {
        return super::print_json(&walk::view(&shown, &viewer));
    }
    super::print(&walk::text(&shown, &viewer))
}

/// The sheets asked for, in the order of the list; the week's where none was.
fn documents(sheet: impl Fn(&'static str) -> Option<Vec<Document>>, given: &ArgMatches) -> Vec<Document> {
    let asked = sheets::asked(given);
    let is_wanted = |name: &&str| match asked.as_slice() {
        [] => *name == "week",
        asked => asked.contains(name) || asked.contains(&ALL_SHEETS),
    };
    let wanted = BATCH_SHEETS.into_iter().filter(is_wanted);
    wanted.filter_map(sheet).flatten().collect()
}
