//! `air FILE`: the air of a planned house by the hour.

use std::io::IsTerminal;
use std::path::{Path, PathBuf};
use std::thread;

use advice::air::fitted::FittedHouse;
use advice::air::many::{self, Member};
use advice::air::{CannotRun, Guess, PlannedAir};
use advice::weather_file::Weather;
use advice::years_of_air::{NoYears, YearsOfAir};
use clap::ArgMatches;
use present::plan::{Shown, air, weather};
use present::{Locale, Viewer, Words, fitted, many_houses, say, text};
use quantity::Answers;

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
    if let Some(&count) = given.get_one::<u32>("members") {
        let seed = plan.answers.number("settings.seed").unwrap_or(1.0) as u64;
        let members = members(&plan.answers, seed, count, viewer.words())
            .map_err(|cannot| Failure::input(weather::no_years(&NoYears::CannotRun(cannot), &viewer)))?;
        if given.get_flag("json") {
            return super::print_json(&many_houses::view(&members, seed));
        }
        let subtitle = Shown::new(&plan, &viewer).subtitle();
        let document = many_houses::document(&members, seed, subtitle, &viewer);
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

/// Members worked out between two words of how far it is.
const AT_A_TIME: u32 = 100;

/// Many houses that might be this one, on all cores; how far it is is said to whoever watches.
fn members(answers: &Answers, seed: u64, count: u32, words: &Words) -> Result<Vec<Member>, CannotRun> {
    let cores = thread::available_parallelism().map_or(1, |cores| cores.get() as u32);
    let is_watched = std::io::stderr().is_terminal();
    let mut members = Vec::new();
    for first in (0..count).step_by(AT_A_TIME as usize) {
        let last = count.min(first + AT_A_TIME);
        let each = (last - first).div_ceil(cores);
        let parts = thread::scope(|scope| {
            let part =
                |from: u32| scope.spawn(move || many::part(answers, seed, from..last.min(from + each)));
            let running: Vec<_> = (first..last).step_by(each as usize).map(part).collect();
            running.into_iter().map(join).collect::<Result<Vec<_>, CannotRun>>()
        })?;
        members.extend(parts.into_iter().flatten());
        if is_watched {
            let (done, count) = (last.to_string(), count.to_string());
            eprint!("\r{} ", say!(words, "many-houses-done", done = done, count = count));
        }
    }
    if is_watched {
        eprintln!();
    }
    Ok(members)
}

/// What a thread worked out; what it panicked with goes on here.
fn join<T>(running: thread::ScopedJoinHandle<T>) -> T {
    running.join().unwrap_or_else(|panic| std::panic::resume_unwind(panic))
}
