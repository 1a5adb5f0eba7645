//! One file a command.

mod air;
mod check;
mod closing;
mod curtain;
mod export;
mod history;
mod import;
mod outlook;
mod phones;
mod plan;
mod purchases;
mod record;
mod sale;
mod schema;
mod serve;
mod sums;
mod sync;
mod verify;
mod walk;
mod watch;
mod weigh;

use std::io::Write;

use clap::ArgMatches;
use present::{Locale, Units, Viewer};

use crate::failure::Failure;

/// Runs the command that was asked for.
pub fn run(matches: &ArgMatches, locale: Locale) -> Result<(), Failure> {
    match matches.subcommand() {
        Some(("plan", given)) => plan::run(given, locale),
        Some(("air", given)) => air::run(given, locale),
        Some(("curtain", given)) => curtain::run(given, locale),
        Some(("sums", given)) => sums::run(given, locale),
        Some(("verify", given)) => verify::run(given, locale),
        Some(("serve", given)) => serve::run(given, locale),
        Some(("record", given)) => record::run(given, locale),
        Some(("purchases", given)) => purchases::run(given, locale),
        Some(("outlook", given)) => outlook::run(given, locale),
        Some(("walk", given)) => walk::run(given, locale),
        Some(("watch", given)) => watch::run(given, locale),
        Some(("sale", given)) => sale::run(given, locale),
        Some(("closing", given)) => closing::run(given, locale),
        Some(("weigh", given)) => weigh::run(given, locale),
        Some(("history", given)) => history::run(given, locale),
        Some(("export", given)) => export::run(given, locale),
        Some(("import", given)) => import::run(given, locale),
        Some(("sync", given)) => sync::run(given, locale),
        Some(("check", given)) => check::run(given, locale),
        Some(("schema", _)) => schema::run(),
        // clap asks for a command before we come here.
        _ => Ok(()),
    }
}

/// The viewer of a plan or a sum, moved by the options of the command line.
pub fn viewer(mut viewer: Viewer, given: &ArgMatches, locale: Locale) -> Viewer {
    if locale != Locale::English {
        viewer.locale = locale;
    }
    match given.get_one::<String>("units").map(String::as_str) {
        Some("customary") => viewer.units = Units::Customary,
        Some("metric") => viewer.units = Units::Metric,
        _ => {}
    }
    viewer
}

/// Prints on standard output.
fn print(text: &str) -> Result<(), Failure> {
    print_bytes(text.as_bytes())
}

fn print_bytes(bytes: &[u8]) -> Result<(), Failure> {
    let mut out = std::io::stdout().lock();
    out.write_all(bytes)?;
    out.flush()?;
    Ok(())
}

/// Prints as JSON with a line end.
fn print_json(value: &impl serde::Serialize) -> Result<(), Failure> {
    let text = serde_json::to_string_pretty(value).map_err(|error| Failure::Failed(error.to_string()))?;
    print(&(text + "\n"))
}
