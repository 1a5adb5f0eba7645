//! `serve`: the pages, on this machine.

use clap::ArgMatches;
use present::Locale;

use crate::failure::Failure;

/// Serves until it is interrupted.
pub fn run(_given: &ArgMatches, _locale: Locale) -> Result<(), Failure> {
    Ok(())
}
