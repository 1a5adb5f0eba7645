//! `walk`: a day of a batch: what there is to do, what is expected, what is written and what is not.

use advice::diary::Diary;
use advice::past::Past;
use advice::walk::Walk;
use clap::ArgMatches;
use present::batch::{BATCH_SHEETS, batch_sheet};
use present::{Document, Locale, Viewer, Words, walk};

use crate::arguments::ALL_SHEETS;
use crate::failure::Failure;
use crate::farm_book::{self, FarmBook};
use crate::sheets;

/// Reads the book and shows the day.
pub fn run(given: &ArgMatches, locale: Locale) -> Result<(), Failure> {
    let book = farm_book::wait(FarmBook::to_read(given, locale))?;
    let batch = book.batch(given.get_one::<String>("batch").map(String::as_str))?;
    let on = farm_book::day(given, "on", Words::of(locale))?.unwrap_or_else(|| book.today());
    let shown = Walk::read(book.state(), batch, on);
    let viewer = super::viewer(book.viewer.clone(), given, locale);
    if let Some(out) = sheets::out(given) {
        let past = Past::read(book.state(), batch, on);
        let beside = Walk::of(Diary::read(book.state(), batch, on).beside(&past));
        sheets::write(&documents(&beside, &past, &viewer, given), out, given, &viewer)?;
    }
    if given.get_flag("json") {
        return super::print_json(&walk::view(&shown, &viewer));
    }
    super::print(&walk::text(&shown, &viewer))
}

/// The sheets asked for, in the order of the list; the week's where none was.
fn documents(walk: &Walk, past: &Past, viewer: &Viewer, given: &ArgMatches) -> Vec<Document> {
    let asked = sheets::asked(given);
    let is_wanted = |name: &&str| match asked.as_slice() {
        [] => *name == "week",
        asked => asked.contains(name) || asked.contains(&ALL_SHEETS),
    };
    let wanted = BATCH_SHEETS.into_iter().filter(is_wanted);
    wanted.filter_map(|name| batch_sheet(name, walk, past, viewer)).flatten().collect()
}
