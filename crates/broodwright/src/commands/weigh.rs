//! `weigh FILE.csv`: what a file of weights says of the flock.

use std::path::{Path, PathBuf};

use advice::families;
use advice::weigh_file;
use advice::weighing::{Aim, STANDARDS, Weighing};
use clap::ArgMatches;
use present::weighing as words;
use present::{Locale, Viewer, fault, say, show, text, view};
use quantity::{Answers, Asked, Need, Raw, Source, Unit};

use crate::failure::Failure;
use crate::input;
use crate::sheets;

/// Options and the fields whose kind and range they have.
const OPTIONS: [(&str, &str); 5] = [
    ("day", "weighing.age_d"),
    ("expected", "weighing.target_g"),
    ("birds", "weighing.birds"),
    ("within", "weighing.error_percent"),
    ("step", "weighing.scale_step_g"),
];

/// Reads the weights and shows what they say in the form asked for.
pub fn run(given: &ArgMatches, locale: Locale) -> Result<(), Failure> {
    let plain = Viewer { locale, ..Viewer::plain() };
    let Some(path) = given.get_one::<PathBuf>("FILE") else { return Ok(()) };
    let told = told(given, &plain)?;
    let scale_step_g = told.number("weighing.scale_step_g");
    let weighing = Weighing { scale_step_g, flock: told.number("weighing.birds"), ..read(path, &plain)? };
    enough_alive(&weighing, &plain)?;
    let result = weighing.held_against(&aim(&told, given));
    let viewer = super::viewer(plain, given, locale);
    let document = words::document(&weighing, &result, "", &viewer);
    if let Some(out) = sheets::out(given) {
        sheets::write(std::slice::from_ref(&document), out, given, &viewer)?;
    }
    let with_workings = given.get_flag("working");
    if given.get_flag("json") {
        return super::print_json(&view::sum(&result, &viewer, with_workings));
    }
    super::print(&text::write(&document, &viewer, with_workings))
}

fn read(path: &Path, viewer: &Viewer) -> Result<Weighing, Failure> {
    let text = input::text(path, viewer.words())?;
    weigh_file::read(&text).map_err(|wrong| {
        let faults = words::file_fault(&wrong, viewer).into_iter();
        let in_file = |fault: String| {
            say!(viewer.words(), "command-in-file", file = path.display().to_string(), fault = fault)
        };
        Failure::BadInput(faults.map(in_file).collect())
    })
}

/// The options, checked as the fields they are.
fn told(given: &ArgMatches, viewer: &Viewer) -> Result<Answers, Failure> {
    let asked = OPTIONS.iter().filter_map(|(name, key)| {
        Some(Asked { key: name, field: families::field(key)?, need: Need::Optional })
    });
    let raw = |name: &str| {
        let text = given.get_one::<String>(name)?.clone();
        Some(Raw { key: name.to_owned(), text: vec![text], line: None })
    };
    let raws: Vec<Raw> = OPTIONS.iter().filter_map(|(name, _)| raw(name)).collect();
    let checked = quantity::field::check(&asked.collect::<Vec<_>>(), &raws, Source::Hand, false);
    if checked.problems.is_empty() {
        return Ok(checked.answers);
    }
    Err(Failure::BadInput(checked.problems.iter().map(|problem| fault::sentence(problem, viewer)).collect()))
}

/// No more birds can be weighed than are alive.
fn enough_alive(weighing: &Weighing, viewer: &Viewer) -> Result<(), Failure> {
    let weighed = weighing.birds_weighed();
    let Some(alive) = weighing.flock.filter(|alive| *alive < weighed) else { return Ok(()) };
    let birds = |count| show::quantity(count, Unit::Birds, 0, viewer);
    Err(Failure::input(say!(
        viewer.words(),
        "weigh-more-than-alive",
        weighed = birds(weighed),
        alive = birds(alive)
    )))
}

fn aim(told: &Answers, given: &ArgMatches) -> Aim {
    let wanted = given.get_one::<String>("standard").map(String::as_str);
    Aim {
        error_percent: told.number("weighing.error_percent").unwrap_or(Aim::default().error_percent),
        age_d: told.number("weighing.age_d").map(|age| age as i32),
        expected_g: told.number("weighing.target_g"),
        standard: STANDARDS.into_iter().find(|name| Some(*name) == wanted),
    }
}
