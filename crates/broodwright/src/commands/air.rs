//! `air FILE`: the air of a planned house by the hour.

use std::path::{Path, PathBuf};

use advice::air::fitted::FittedHouse;
use advice::air::{Guess, PlannedAir};
use advice::weather_file::Weather;
use advice::years_of_air::{NoYears, YearsOfAir};
use clap::ArgMatches;
use present::plan::{Shown, air, weather};
use present::{Locale, Viewer, fitted, say, text};

use crate::failure::Failure;
use crate::input;
use crate::sheets;

/// Reads a plan file, runs its house through the weather asked for, and shows it in the form asked for.
pub fn run(given: &ArgMatches, locale: Locale) -> Result<(), Failure> {
    let Some(path) = given.get_one::<PathBuf>("FILE") else { return Ok(()) };
    let (plan, _) = super::plan::read(path, None, locale)?;
    let viewer = super::viewer(Viewer::of(&plan.answers), given, locale);
    let with_workings = given.get_flag("working");
    if let Some(file) = given.get_one::<PathBuf>("weather") {
        let told = read(file, &viewer)?;
        if let Some(readings) = given.get_one::<PathBuf>("readings") {
            let fitted = FittedHouse::of(&plan.answers, &told, &read(readings, &viewer)?)
                .map_err(|cannot| Failure::input(fitted::cannot_fit(&cannot, &viewer)))?;
            if given.get_flag("json") {
                return super::print_json(&fitted::view(&fitted));
            }
            let document = fitted::document(&fitted, Shown::new(&plan, &viewer).subtitle(), &viewer);
            return super::print(&text::write(&document, &viewer, with_workings));
        }
        let years = YearsOfAir::of(&plan.answers, &told)
            .map_err(|why| Failure::input(weather::no_years(&why, &viewer)))?;
        write_csv(given, &years.middle().1, &viewer)?;
        if given.get_flag("json") {
            return super::print_json(&weather::view(&years, &told));
        }
        let name = file.display().to_string();
        let document = Shown::new(&plan, &viewer).air_of_weather(&years, &told, &name);
        return super::print(&text::write(&document, &viewer, with_workings));
    }
    let planned = PlannedAir::of(&plan.answers, Guess::AS_TOLD, None)
        .map_err(|cannot| Failure::input(weather::no_years(&NoYears::CannotRun(cannot), &viewer)))?;
    write_csv(given, &planned, &viewer)?;
    if given.get_flag("json") {
        return super::print_json(&air::view(&planned));
    }
    let document = Shown::new(&plan, &viewer).air_document(&planned);
    super::print(&text::write(&document, &viewer, with_workings))
}

fn write_csv(given: &ArgMatches, air: &PlannedAir, viewer: &Viewer) -> Result<(), Failure> {
    let Some(out) = given.get_one::<PathBuf>("csv") else { return Ok(()) };
    sheets::write_file(out, air::csv(air).as_bytes(), viewer.words())
}

fn read(file: &Path, viewer: &Viewer) -> Result<Weather, Failure> {
    let words = viewer.words();
    input::weather(file, words)?.map_err(|wrong| {
        let why = weather::fault(&wrong, viewer);
        Failure::input(say!(words, "command-in-file", file = file.display().to_string(), fault = why))
    })
}
