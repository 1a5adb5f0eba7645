//! `watch`: every signal of a batch against what was expected of it, and the fixed rules.

use advice::walk::Walk;
use clap::ArgMatches;
use present::{Locale, Words, text, watch};

use crate::failure::Failure;
use crate::farm_book::{self, FarmBook};

/// Reads the book and shows the watch as of the day.
pub fn run(given: &ArgMatches, locale: Locale) -> Result<(), Failure> {
    let book = farm_book::wait(FarmBook::to_read(given, locale))?;
    let batch = book.batch(given.get_one::<String>("batch").map(String::as_str))?;
    let on = farm_book::day(given, "on", Words::of(locale))?.unwrap_or_else(|| book.today());
    let shown = Walk::read(book.state(), batch, on);
    let viewer = super::viewer(book.viewer.clone(), given, locale);
    if given.get_flag("json") {
        return super::print_json(&watch::view(&shown, &viewer));
    }
    super::print(&text::write(&watch::document(&shown, &viewer), &viewer, false))
}
