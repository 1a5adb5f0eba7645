//! `closing`: the accounts of a batch: what it came to, and why that is not what was planned.

use advice::closing::Closing;
use clap::ArgMatches;
use present::{Locale, closing, text};

use crate::failure::Failure;
use crate::farm_book::Asked;
use crate::sheets;

/// Reads the book and draws the accounts up.
pub fn run(given: &ArgMatches, locale: Locale) -> Result<(), Failure> {
    let Asked { book, batch, on, viewer } = Asked::of(given, locale)?;
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
