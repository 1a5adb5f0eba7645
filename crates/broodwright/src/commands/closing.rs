//! `closing`: the accounts of a batch: what it came to, and why that is not what was planned.

use advice::closing::Closing;
use clap::ArgMatches;
use present::{Locale, Words, closing, text};

use crate::failure::Failure;
use crate::farm_book::{self, FarmBook};
use crate::sheets;

/// Reads the book and draws the accounts up.
pub fn run(given: &ArgMatches, locale: Locale) -> Result<(), Failure> {
    let book = farm_book::wait(FarmBook::to_read(given, locale))?;
    let batch = book.batch(given.get_one::<String>("batch").map(String::as_str))?;
    let on = farm_book::day(given, "on", Words::of(locale))?.unwrap_or_else(|| book.today());
    let viewer = super::viewer(book.viewer.clone(), given, locale);
    let drawn_up = Closing::read(book.state(), batch, on);
    if let Some(out) = sheets::out(given) {
        sheets::write(&[closing::document(&drawn_up, &viewer)], out, given, &viewer)?;
    }
    if given.get_flag("json") {
        return super::print_json(&closing::view(&drawn_up, &viewer));
    }
    let document = closing::document(&drawn_up, &viewer);
    super::print(&text::write(&document, &viewer, given.get_flag("working")))
}
