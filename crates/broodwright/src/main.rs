//! The broodwright command: reads arguments, calls, prints. What it says is worded in `present`.

mod arguments;
mod clock;
mod commands;
mod failure;
mod farm_book;
mod input;
mod line;
mod sheets;
mod training;

use std::process::ExitCode;

use failure::Failure;
use present::{Locale, Words};

fn main() -> ExitCode {
    let locale = arguments::language(std::env::args_os());
    let words = Words::of(locale);
    let matches = arguments::command(words).get_matches();
    match commands::run(&matches, locale) {
        Ok(()) => ExitCode::SUCCESS,
        // Somebody who closes the pipe has seen enough.
        Err(Failure::Output(error)) if error.kind() == std::io::ErrorKind::BrokenPipe => ExitCode::SUCCESS,
        Err(failure) => {
            eprint!("{}", failure.text(words));
            failure.exit_code()
        }
    }
}

/// The language asked for, or English.
fn locale_of(tag: Option<&str>) -> Locale {
    tag.and_then(Locale::from_tag).unwrap_or(Locale::English)
}
