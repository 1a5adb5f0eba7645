//! `sale`: when to sell: the best day for the batch and for the house, and what may be lost.

use advice::sale::Sale;
use clap::ArgMatches;
use present::{Locale, sale, text};

use crate::failure::Failure;
use crate::farm_book::Asked;
use crate::sheets;

/// Reads the book and looks at every day of sale.
pub fn run(given: &ArgMatches, locale: Locale) -> Result<(), Failure> {
    let Asked { book, batch, on, viewer } = Asked::of(given, locale)?;
    let looked_at = Sale::read(book.state(), batch, on);
    if let Some(out) = sheets::out(given) {
        sheets::write(&[sale::document(&looked_at, &viewer)], out, given, &viewer)?;
    }
    if given.get_flag("json") {
        return super::print_json(&sale::view(&looked_at, &viewer));
    }
    let document = sale::document(&looked_at, &viewer);
    super::print(&text::write(&document, &viewer, given.get_flag("working")))
}
