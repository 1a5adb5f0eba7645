//! `plan FILE`: do the chicks fit, how is the guard cut, how is the sprayer mixed, how much litter.

use std::path::{Path, PathBuf};

use advice::plan::{self, Plan};
use advice::plan_file;
use clap::ArgMatches;
use present::plan::{SHEETS, SheetKind, Shown};
use present::print::{self, Paper};
use present::{Document, Locale, Viewer, Words, fault, say, text, view};
use quantity::{Question, Source};

use crate::arguments;
use crate::failure::Failure;
use crate::input;

/// Reads, checks, works out, and shows in the form asked for.
pub fn run(given: &ArgMatches, locale: Locale) -> Result<(), Failure> {
    let words = Words::of(locale);
    let Some(path) = given.get_one::<PathBuf>("FILE") else { return Ok(()) };
    let (plan, questions) = read(path, locale)?;
    let viewer = super::viewer(Viewer::of(&plan.answers), given, locale);
    let with_workings = given.get_flag("working");
    if let Some(out) = given.get_one::<PathBuf>("pdf") {
        let paper = given.get_one::<String>("paper").and_then(|name| Paper::from_name(name));
        let pdf = sheets(&plan, &viewer, paper.unwrap_or(Paper::A4), &wanted(given, with_workings), given)?;
        std::fs::write(out, pdf).map_err(|error| {
            let file = out.display().to_string();
            Failure::Failed(say!(words, "command-cannot-write-file", file = file, why = error.to_string()))
        })?;
    }
    if given.get_flag("json") {
        return super::print_json(&view::plan(&plan, &viewer, with_workings));
    }
    let asked: String =
        questions.iter().map(|question| format!("? {}\n", fault::question(question, &viewer))).collect();
    super::print(&(asked + &text::write(&Shown::new(&plan, &viewer).document(), &viewer, with_workings)))
}

fn read(path: &Path, locale: Locale) -> Result<(Plan, Vec<Question>), Failure> {
    let words = Words::of(locale);
    let in_file =
        |fault: String| say!(words, "command-in-file", file = path.display().to_string(), fault = fault);
    let text = input::text(path, words)?;
    let raws = plan_file::read(&text).map_err(|error| Failure::input(in_file(fault::file(&error, words))))?;
    let checked = plan::read(&raws, Source::File, true);
    if checked.problems.is_empty() {
        return Ok((plan::work_out(checked.answers), checked.questions));
    }
    let viewer = Viewer { locale, ..Viewer::plain() };
    let faults = checked.problems.iter().map(|problem| in_file(fault::with_place(problem, &viewer)));
    Err(Failure::BadInput(faults.collect()))
}

/// Names of the sheets asked for, or of the usual ones, in the order of the list; the workings where asked for too.
fn wanted(given: &ArgMatches, with_workings: bool) -> Vec<&'static str> {
    let asked: Vec<&str> =
        given.get_many::<String>("sheet").into_iter().flatten().map(String::as_str).collect();
    let all = asked.contains(&arguments::ALL_SHEETS);
    let wanted = |sheet: &&SheetKind| {
        all || asked.contains(&sheet.name)
            || (asked.is_empty() && sheet.usual)
            || (with_workings && sheet.name == "workings")
    };
    SHEETS.iter().filter(wanted).map(|sheet| sheet.name).collect()
}

fn sheets(
    plan: &Plan,
    viewer: &Viewer,
    paper: Paper,
    names: &[&str],
    given: &ArgMatches,
) -> Result<Vec<u8>, Failure> {
    let shown = Shown::new(plan, viewer);
    let figure = given.get_one::<String>("figure").map(String::as_str);
    let mut documents: Vec<Document> = Vec::new();
    for name in names {
        documents.extend(shown.sheet(name, figure).ok_or_else(|| {
            let figure = figure.unwrap_or_default();
            Failure::input(say!(viewer.words(), "command-no-figure", figure = figure))
        })?);
    }
    let printable = print::write(&documents, paper, viewer);
    typeset::render(&printable.data, &printable.drawings, None).map_err(|error| {
        Failure::Failed(say!(viewer.words(), "command-cannot-print", why = error.to_string()))
    })
}
