//! `outlook`: what is likely from a day on: weights, the day they are heavy enough, birds at sale, how long the feed lasts.

use std::path::PathBuf;

use advice::diary::Diary;
use advice::families::outlook::of_book;
use advice::outlook_table;
use advice::past::Past;
use advice::walk::Walk;
use clap::ArgMatches;
use present::{Locale, Words, outlook};
use quantity::{Currency, Value};

use crate::failure::Failure;
use crate::farm_book::{self, FarmBook};
use crate::sheets;

/// Reads the book and looks ahead.
pub fn run(given: &ArgMatches, locale: Locale) -> Result<(), Failure> {
    let words = Words::of(locale);
    let book = farm_book::wait(FarmBook::to_read(given, locale))?;
    let batch = book.batch(given.get_one::<String>("batch").map(String::as_str))?;
    let on = farm_book::day(given, "on", words)?.unwrap_or_else(|| book.today());
    let past = Past::read(book.state(), batch, on);
    let shown = Walk::ahead_of(Diary::read(book.state(), batch, on), &past);
    let viewer = super::viewer(book.viewer.clone(), given, locale);
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
    let (now, futures) = of_book(answers, &walk.plan.outcome)
        .ok_or_else(|| Failure::input(words.plain("command-no-outlook")))?;
    let currency = match answers.get("farm.currency").map(|given| &given.value) {
        Some(Value::Currency(currency)) => *currency,
        _ => Currency::UNKNOWN,
    };
    Ok(outlook_table::csv(&now, &futures, currency))
}
