//! `outlook`: what is likely from a day on: weights, the day they are heavy enough, birds at sale, how long the feed lasts.

use std::path::PathBuf;

use advice::diary::Diary;
use advice::outlook_table;
use advice::past::Past;
use advice::walk::Walk;
use clap::ArgMatches;
use present::{Locale, Words, outlook};

use crate::failure::Failure;
use crate::farm_book::Asked;
use crate::sheets;

/// Reads the book and looks ahead.
pub fn run(given: &ArgMatches, locale: Locale) -> Result<(), Failure> {
    let words = Words::of(locale);
    let Asked { book, batch, on, viewer } = Asked::of(given, locale)?;
    let past = Past::read(book.state(), batch, on);
    let shown = Walk::ahead_of(Diary::read(book.state(), batch, on), &past);
    if let Some(out) = given.get_one::<PathBuf>("scenarios") {
        if !viewer.money_shown {
            return Err(Failure::input(words.plain("command-money-hidden")));
        }
        sheets::write_file(out, scenarios(&shown, words)?.as_bytes(), words)?;
    }
    if given.get_flag("json") {
        return super::print_json(&outlook::view(&shown));
    }
    super::print(&outlook::text(&shown, &viewer))
}

/// The futures that the figures are counted from.
fn scenarios(walk: &Walk, words: &Words) -> Result<String, Failure> {
    let answers = &walk.plan.answers;
    let drawn = walk.plan.outcome.drawn().futures();
    let (now, futures) = drawn.ok_or_else(|| Failure::input(words.plain("command-no-outlook")))?;
    Ok(outlook_table::csv(now, futures, answers.currency()))
}
