//! `curtain`: a night and a day of a house, by a plan file or by the book of a running batch.

use std::path::PathBuf;

use advice::air::day::{Answered, answer};
use advice::families::air_day;
use advice::walk::Walk;
use clap::ArgMatches;
use present::plan::Shown;
use present::{Locale, Viewer, air_day as shown, batch, say, text};
use quantity::Raw;

use crate::failure::Failure;
use crate::farm_book::Asked;

/// Reads the plan or the book and shows the night and the day asked for.
pub fn run(given: &ArgMatches, locale: Locale) -> Result<(), Failure> {
    match given.get_one::<PathBuf>("FILE") {
        Some(path) => {
            let (plan, _) = super::plan::read(path, None, locale)?;
            let viewer = super::viewer(Viewer::of(&plan.answers), given, locale);
            let answered = answer(&plan.answers, None, asked(given, &viewer)?);
            print(given, &answered, Shown::new(&plan, &viewer).subtitle(), &viewer)
        }
        None => by_book(given, locale),
    }
}

fn by_book(given: &ArgMatches, locale: Locale) -> Result<(), Failure> {
    let Asked { book, batch, on, viewer } = Asked::of(given, locale)?;
    let walk = Walk::read(book.state(), batch, on);
    let age_d = walk.diary.age_today().filter(|age| *age >= 0 && !walk.diary.is_closed);
    let Some(age_d) = age_d else {
        return Err(Failure::input(viewer.words().plain("air-day-no-birds")));
    };
    let answered = answer(&walk.plan.answers, Some(age_d), asked(given, &viewer)?);
    print(given, &answered, batch::subtitle(&walk.diary, &viewer), &viewer)
}

/// What was asked on the command line, as a form would send it.
fn asked(given: &ArgMatches, viewer: &Viewer) -> Result<Vec<Raw>, Failure> {
    let form = air_day::form();
    let one = |pair: &String| {
        let (key, text) = pair.split_once('=').unwrap_or((pair, ""));
        if quantity::field::find(&form, key).is_none() || text.is_empty() {
            let keys: Vec<&str> = form.iter().map(|asked| asked.key).collect();
            let (pair, keys) = (pair.clone(), keys.join(", "));
            return Err(Failure::input(say!(
                viewer.words(),
                "curtain-no-such-key",
                pair = pair,
                keys = keys
            )));
        }
        Ok(Raw { key: key.to_owned(), text: vec![text.to_owned()], line: None })
    };
    given.get_many::<String>("ask").into_iter().flatten().map(one).collect()
}

fn print(given: &ArgMatches, answered: &Answered, subtitle: String, viewer: &Viewer) -> Result<(), Failure> {
    let Some(day) = answered.outcome.drawn().air_day() else {
        return Err(Failure::input(shown::why_not(answered, viewer).unwrap_or_default()));
    };
    if given.get_flag("json") {
        return super::print_json(&shown::view(day));
    }
    let document = shown::document(answered, subtitle, viewer);
    super::print(&text::write(&document, viewer, given.get_flag("working")))
}
