//! `walk`: a day of a batch: what there is to do, what is expected, what is written and what is not.

use advice::walk::Walk;
use clap::ArgMatches;
use present::{Locale, Words, walk};

use crate::failure::Failure;
use crate::farm_book::{self, FarmBook};

/// Reads the book and shows the day.
pub fn run(given: &ArgMatches, locale: Locale) -> Result<(), Failure> {
    let book = farm_book::wait(FarmBook::to_read(given, locale))?;
    let batch = book.batch(given.get_one::<String>("batch").map(String::as_str))?;
    let on = farm_book::day(given, "on", Words::of(locale))?.unwrap_or_else(|| book.today());
    let shown = Walk::read(book.state(), batch, on);
    let viewer = super::viewer(book.viewer.clone(), given, locale);
    if given.get_flag("json") {
        return super::print_json(&walk::view(&shown, &viewer));
    }
    super::print(&walk::text(&shown, &viewer))
}
