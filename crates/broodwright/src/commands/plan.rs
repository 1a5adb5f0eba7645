//! `plan FILE`: do the chicks fit, how is the guard cut, how is the sprayer mixed, how much litter, and what is done on
//! which day.

use std::path::{Path, PathBuf};

use advice::families;
use advice::futures_table;
use advice::past::Past;
use advice::plan::{self, Plan};
use advice::plan_file;
use book::BatchId;
use clap::ArgMatches;
use present::calendar::Written;
use present::plan::{SHEETS, SheetKind, Shown};
use present::{Document, Locale, Viewer, Words, fault, say, text, view};
use quantity::{Question, Raw, Source};

use super::record::{batch_of, house_of};
use crate::arguments;
use crate::clock;
use crate::failure::Failure;
use crate::farm_book::{FarmBook, wait};
use crate::input;
use crate::sheets;

/// Reads, checks, works out, and shows in the form asked for.
pub fn run(given: &ArgMatches, locale: Locale) -> Result<(), Failure> {
    let words = Words::of(locale);
    let Some(path) = given.get_one::<PathBuf>("FILE") else { return Ok(()) };
    let curve = given.get_one::<PathBuf>("curve").map(PathBuf::as_path);
    let (plan, questions) = read(path, curve, locale)?;
    let viewer = super::viewer(Viewer::of(&plan.answers), given, locale);
    let with_workings = given.get_flag("working");
    let in_book = InBook::of(&plan, given, locale)?;
    if let Some(out) = sheets::out(given) {
        let documents = documents(&plan, &in_book.past, &viewer, &wanted(given, with_workings), given)?;
        sheets::write(&documents, out, given, &viewer)?;
    }
    if let Some(out) = given.get_one::<PathBuf>("scenarios") {
        if !viewer.money_shown {
            return Err(Failure::input(words.plain("command-money-hidden")));
        }
        sheets::write_file(out, scenarios(&plan, words)?.as_bytes(), words)?;
    }
    if let Some(out) = given.get_one::<PathBuf>("ics") {
        let written = Written::now(clock::now());
        let calendar = Shown::new(&plan, &viewer).calendar(&batch_key(&plan, in_book.batch, path), written);
        sheets::write_file(out, calendar.as_bytes(), words)?;
    }
    if given.get_flag("json") {
        return super::print_json(&view::plan(&plan, &viewer, with_workings));
    }
    let asked: String =
        questions.iter().map(|question| format!("? {}\n", fault::question(question, &viewer))).collect();
    super::print(&(asked + &text::write(&Shown::new(&plan, &viewer).document(), &viewer, with_workings)))
}

/// The futures that the figures of risk are counted from.
fn scenarios(plan: &Plan, words: &Words) -> Result<String, Failure> {
    let (futures, sold_by) = families::risk::of_plan(&plan.answers, &plan.outcome)
        .ok_or_else(|| Failure::input(words.plain("command-no-scenarios")))?;
    Ok(futures_table::csv(&futures, sold_by, plan.answers.currency()))
}

/// A curve given as a file of its own goes before one pasted into the plan file, and is the one followed.
fn with_curve(mut raws: Vec<Raw>, curve: &Path, words: &Words) -> Result<Vec<Raw>, Failure> {
    raws.retain(|raw| !["batch.own_curve", "batch.standard"].contains(&raw.key.as_str()));
    let text = input::text(curve, words)?;
    let raw = |key: &str, text: String| Raw { key: key.to_owned(), text: vec![text], line: None };
    raws.extend([raw("batch.own_curve", text), raw("batch.standard", "own".to_owned())]);
    Ok(raws)
}

/// What tells this batch's jobs from another's in a phone: its id in a book, as its page has it; else its names, so that a
/// file that is copied or called otherwise is the same batch still; without a name of the batch that of its file, since a plan
/// file has no id. The chick day is no part of it, so that a batch that slips moves its jobs.
fn batch_key(plan: &Plan, in_book: Option<BatchId>, path: &Path) -> String {
    if let Some(batch) = in_book {
        return batch.0.to_string();
    }
    let named = ["farm.name", "house.name", "batch.name"].map(|key| plan.answers.text(key));
    let file = path.file_stem().map(|stem| stem.to_string_lossy());
    let file = file.as_deref().filter(|_| plan.answers.text("batch.name").is_none());
    let parts = named.into_iter().flatten().chain(file);
    parts.collect::<Vec<_>>().join("/")
}

/// Reads a plan file that holds, and what is asked about it.
pub(super) fn read(
    path: &Path,
    curve: Option<&Path>,
    locale: Locale,
) -> Result<(Plan, Vec<Question>), Failure> {
    let words = Words::of(locale);
    let in_file =
        |fault: String| say!(words, "command-in-file", file = path.display().to_string(), fault = fault);
    let text = input::text(path, words)?;
    let raws = plan_file::read(&text).map_err(|error| Failure::input(in_file(fault::file(&error, words))))?;
    let raws = match curve {
        Some(curve) => with_curve(raws, curve, words)?,
        None => raws,
    };
    let checked = plan::read(&raws, Source::File, true);
    if checked.problems.is_empty() {
        return Ok((plan::work_out(checked.answers), checked.questions));
    }
    let viewer = Viewer { locale, ..Viewer::plain() };
    let faults = checked.problems.iter().map(|problem| {
        let sentence = fault::with_place(problem, &viewer);
        match curve.filter(|_| problem.key == "batch.own_curve") {
            Some(curve) => {
                say!(words, "command-in-file", file = curve.display().to_string(), fault = sentence)
            }
            None => in_file(sentence),
        }
    });
    Err(Failure::BadInput(faults.collect()))
}

/// Names of the sheets asked for, or of the usual ones, in the order of the list; the workings where asked for too.
fn wanted(given: &ArgMatches, with_workings: bool) -> Vec<&'static str> {
    let asked = sheets::asked(given);
    let all = asked.contains(&arguments::ALL_SHEETS);
    let wanted = |sheet: &&SheetKind| {
        all || asked.contains(&sheet.name)
            || (asked.is_empty() && sheet.usual)
            || (with_workings && sheet.name == "workings")
    };
    SHEETS.iter().filter(wanted).map(|sheet| sheet.name).collect()
}

/// What the book that is named knows of a plan; nothing where none is named.
#[derive(Default)]
struct InBook {
    /// The batches that were in the plan's house before.
    past: Past,
    /// The batch that the plan was adopted as.
    batch: Option<BatchId>,
}

impl InBook {
    fn of(plan: &Plan, given: &ArgMatches, locale: Locale) -> Result<InBook, Failure> {
        if !(given.contains_id("book") || given.contains_id("database")) {
            return Ok(InBook::default());
        }
        let book = wait(FarmBook::to_read(given, locale))?;
        let (state, placement) = (book.state(), plan.answers.day("batch.placement"));
        let house = house_of(state, plan.answers.text("house.name"));
        let house =
            house.ok_or_else(|| Failure::input(Words::of(locale).plain("command-no-house-in-book")))?;
        let past =
            placement.map_or_else(Past::default, |day| Past::of_house(state, &house.0.to_string(), day));
        let named = plan.answers.text("batch.name");
        Ok(InBook { past, batch: batch_of(state, named, placement.map(|day| day.to_string()).as_deref()) })
    }
}

fn documents(
    plan: &Plan,
    past: &Past,
    viewer: &Viewer,
    names: &[&str],
    given: &ArgMatches,
) -> Result<Vec<Document>, Failure> {
    let shown = Shown::new(plan, viewer).beside(past);
    let figure = given.get_one::<String>("figure").map(String::as_str);
    let mut documents: Vec<Document> = Vec::new();
    for name in names {
        documents.extend(shown.sheet(name, figure).ok_or_else(|| {
            let figure = figure.unwrap_or_default();
            Failure::input(say!(viewer.words(), "command-no-figure", figure = figure))
        })?);
    }
    Ok(documents)
}
