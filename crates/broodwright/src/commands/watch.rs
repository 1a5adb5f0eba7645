//! `watch`: every signal of a batch against what was expected of it, and the fixed rules.

use advice::walk::Walk;
use clap::ArgMatches;
use present::{Locale, text, watch};

use crate::failure::Failure;
use crate::farm_book::Asked;

/// Reads the book and shows the watch as of the day.
pub fn run(given: &ArgMatches, locale: Locale) -> Result<(), Failure> {
    let Asked { book, batch, on, viewer } = Asked::of(given, locale)?;
    let shown = Walk::read(book.state(), batch, on);
    if given.get_flag("json") {
        return super::print_json(&watch::view(&shown, &viewer));
    }
    super::print(&text::write(&watch::document(&shown, &viewer), &viewer, false))
}
