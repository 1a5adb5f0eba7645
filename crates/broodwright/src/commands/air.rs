//! `air FILE`: the air of a planned house by the hour.

use std::path::{Path, PathBuf};

use advice::air::{CannotRun, Guess, Hour, PlannedAir, of_file, zone_min};
use advice::plan::Plan;
use advice::weather_file::{self, WeatherHour};
use clap::ArgMatches;
use present::plan::{Shown, air};
use present::{Locale, Viewer, say, show, text, working};
use quantity::CivilDay;

use crate::failure::Failure;
use crate::input;
use crate::sheets;

/// Reads a plan file, runs its house, and shows it in the form asked for.
pub fn run(given: &ArgMatches, locale: Locale) -> Result<(), Failure> {
    let Some(path) = given.get_one::<PathBuf>("FILE") else { return Ok(()) };
    let (plan, _) = super::plan::read(path, None, locale)?;
    let viewer = super::viewer(Viewer::of(&plan.answers), given, locale);
    let hours = given.get_one::<PathBuf>("weather").map(|file| weather(file, &plan, &viewer)).transpose()?;
    let of_file = hours.as_deref().map(|hours| of_file(hours, &plan.answers));
    let outside = of_file.as_ref().map(|given| given as &dyn Fn(CivilDay, usize) -> Option<Hour>);
    let planned = PlannedAir::of(&plan.answers, Guess::AS_TOLD, outside).map_err(|cannot| {
        let key = if let CannotRun::NotTold(key) = cannot { key } else { "" };
        let field = air::cannot_run(&cannot, &viewer);
        Failure::input(say!(viewer.words(), "command-no-air", field = field, key = key))
    })?;
    let is_late = planned.hours.first().is_none_or(|hour| hour.house.day > 0);
    if let (true, Some(file)) = (is_late, given.get_one::<PathBuf>("weather")) {
        let day = plan.answers.day("batch.placement").map(|day| day.plus_days(-2));
        let day = day.map_or_else(String::new, |day| show::day(day, &viewer));
        let file = file.display().to_string();
        return Err(Failure::input(say!(viewer.words(), "command-no-weather-days", file = file, day = day)));
    }
    if let Some(out) = given.get_one::<PathBuf>("csv") {
        sheets::write_file(out, air::csv(&planned).as_bytes(), viewer.words())?;
    }
    if given.get_flag("json") {
        return super::print_json(&air::view(&planned));
    }
    let document = Shown::new(&plan, &viewer).air_document(&planned);
    super::print(&text::write(&document, &viewer, given.get_flag("working")))
}

/// Reads a file of weather: EPW by its ending, else lines of a table.
fn weather(file: &Path, plan: &Plan, viewer: &Viewer) -> Result<Vec<WeatherHour>, Failure> {
    let words = viewer.words();
    let zone = zone_min(&plan.answers).ok_or_else(|| {
        let key = "farm.longitude_deg";
        Failure::input(say!(words, "command-no-air", field = working::named(key, viewer), key = key))
    })?;
    let text = input::text(file, words)?;
    let is_epw = file.extension().is_some_and(|ending| ending.eq_ignore_ascii_case("epw"));
    let read = if is_epw {
        weather_file::read_epw(text.lines(), zone)
    } else {
        weather_file::read_csv(text.lines(), zone)
    };
    read.map_err(|fault| {
        let fault = air::weather_fault(&fault, words);
        Failure::input(say!(words, "command-in-file", file = file.display().to_string(), fault = fault))
    })
}
