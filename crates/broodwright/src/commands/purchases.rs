//! `purchases`: what feed to buy when, by a plan file or by what is in the store room of a batch.

use std::path::PathBuf;

use advice::buying;
use advice::walk::Walk;
use clap::ArgMatches;
use present::buying::Found;
use present::{Locale, Viewer, show, text};
use quantity::CivilDay;

use crate::failure::Failure;
use crate::farm_book::Asked;

/// Reads the plan or the book and shows the cheapest way.
pub fn run(given: &ArgMatches, locale: Locale) -> Result<(), Failure> {
    match given.get_one::<PathBuf>("FILE") {
        Some(path) => {
            let (plan, _) = super::plan::read(path, None, locale)?;
            let viewer = super::viewer(Viewer::of(&plan.answers), given, locale);
            let found = buying::of_plan(&plan.answers);
            let name = plan.answers.text("batch.name").unwrap_or_default().to_owned();
            print(given, &found, plan.answers.day("batch.placement"), name, &viewer)
        }
        None => by_book(given, locale),
    }
}

fn by_book(given: &ArgMatches, locale: Locale) -> Result<(), Failure> {
    let Asked { book, batch, on, viewer } = Asked::of(given, locale)?;
    let walk = Walk::read(book.state(), batch, on);
    let name = walk.plan.answers.text("batch.name").unwrap_or_default();
    let subtitle = [name.to_owned(), show::day(on, &viewer)].join(" · ");
    print(given, &buying::of_book(&walk), walk.diary.placement, subtitle, &viewer)
}

fn print(
    given: &ArgMatches,
    found: &Found,
    placement: Option<CivilDay>,
    subtitle: String,
    viewer: &Viewer,
) -> Result<(), Failure> {
    if given.get_flag("json") {
        return super::print_json(&present::buying::view(found, placement, viewer));
    }
    super::print(&text::write(&present::buying::document(found, placement, subtitle, viewer), viewer, false))
}
