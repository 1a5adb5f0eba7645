//! `air FILE`: the air of a planned house by the hour.

use std::path::PathBuf;

use advice::air::{CannotRun, Guess, PlannedAir};
use clap::ArgMatches;
use present::plan::{Shown, air};
use present::{Locale, Viewer, say, text};

use crate::failure::Failure;
use crate::sheets;

/// Reads a plan file, runs its house, and shows it in the form asked for.
pub fn run(given: &ArgMatches, locale: Locale) -> Result<(), Failure> {
    let Some(path) = given.get_one::<PathBuf>("FILE") else { return Ok(()) };
    let (plan, _) = super::plan::read(path, None, locale)?;
    let viewer = super::viewer(Viewer::of(&plan.answers), given, locale);
    let planned = PlannedAir::of(&plan.answers, Guess::AS_TOLD, None).map_err(|cannot| {
        let key = if let CannotRun::NotTold(key) = cannot { key } else { "" };
        let field = air::cannot_run(&cannot, &viewer);
        Failure::input(say!(viewer.words(), "command-no-air", field = field, key = key))
    })?;
    if let Some(out) = given.get_one::<PathBuf>("csv") {
        sheets::write_file(out, air::csv(&planned).as_bytes(), viewer.words())?;
    }
    if given.get_flag("json") {
        return super::print_json(&air::view(&planned));
    }
    let document = Shown::new(&plan, &viewer).air_document(&planned);
    super::print(&text::write(&document, &viewer, given.get_flag("working")))
}
