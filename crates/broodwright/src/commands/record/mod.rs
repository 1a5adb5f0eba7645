//! `record`: writing in the book by command, by the rules of the pages.

mod asked;
mod one;
mod plan;
pub(super) use plan::{batch_of, house_of};
mod rows;
mod rows_file;
mod undo;

use advice::record;
use advice::writing::Judged;
use book::{Draft, KINDS, Kind};
use clap::ArgMatches;
use present::{Locale, Viewer, Words, entry, fault, oddity, say, show};
use quantity::{Fault, Need, Problem, Raw};
use serde::Serialize;

use crate::failure::Failure;
use crate::farm_book::{self, FarmBook};

/// The word that stands for a plan file where a kind is named.
const PLAN: &str = "plan";

/// What a person said with the options.
struct Said<'a> {
    given: &'a ArgMatches,
    locale: Locale,
}

impl<'a> Said<'a> {
    fn words(&self) -> &'static Words {
        Words::of(self.locale)
    }

    fn text(&self, option: &str) -> Option<&'a str> {
        self.given.get_one::<String>(option).map(String::as_str)
    }

    /// Why something is changed; a blank reason is none.
    fn reason(&self) -> Option<&'a str> {
        self.text("reason").map(str::trim).filter(|reason| !reason.is_empty())
    }

    fn is_sure(&self) -> bool {
        self.given.get_flag("sure")
    }

    /// The kind, or the word for a plan. Where an entry is put right the kind need not be named, and what stands in its
    /// place is an input.
    fn kind_word(&self) -> Option<&'a str> {
        self.text("KIND").filter(|word| !word.contains('='))
    }

    /// All that is `key=value`, or a file.
    fn inputs(&self) -> impl Iterator<Item = &'a str> {
        let first = self.text("KIND").filter(|word| word.contains('='));
        let rest = self.given.get_many::<String>("INPUT").unwrap_or_default();
        first.into_iter().chain(rest.map(String::as_str))
    }

    fn raws(&self) -> Result<Vec<Raw>, Failure> {
        self.inputs().map(|input| raw(input, None, self.words()).map_err(Failure::input)).collect()
    }
}

/// `key=value` as something typed.
fn raw(input: &str, line: Option<usize>, words: &Words) -> Result<Raw, String> {
    let (key, text) =
        input.split_once('=').ok_or_else(|| say!(words, "record-not-key-value", input = input))?;
    Ok(Raw { key: key.trim().to_owned(), text: vec![text.trim().to_owned()], line })
}

/// The same under the key without its section, as this command asks for it.
fn short(kind: &Kind, raw: Raw) -> Raw {
    let section = kind.section.unwrap_or_default();
    let key = raw.key.strip_prefix(section).and_then(|key| key.strip_prefix('.')).map(str::to_owned);
    Raw { key: key.unwrap_or_else(|| raw.key.clone()), ..raw }
}

/// Writes down what is said, or says what it asks.
pub fn run(given: &ArgMatches, locale: Locale) -> Result<(), Failure> {
    let said = Said { given, locale };
    if given.contains_id("from") {
        return farm_book::wait(rows::write(&said));
    }
    if let Some(entry) = said.text("withdraw") {
        return farm_book::wait(undo::withdraw(&said, entry));
    }
    if let Some(entry) = said.text("correct") {
        return farm_book::wait(one::correct(&said, entry));
    }
    match said.kind_word() {
        None => super::print(&asked::kinds(&viewer(locale))),
        Some(PLAN) => farm_book::wait(plan::adopt(&said)),
        Some(word) => {
            let kind = kind(word, said.words()).map_err(Failure::input)?;
            if said.inputs().next().is_none() {
                return super::print(&asked::of_kind(kind, &viewer(locale)));
            }
            farm_book::wait(one::write(&said, kind))
        }
    }
}

fn viewer(locale: Locale) -> Viewer {
    Viewer { locale, ..Viewer::plain() }
}

/// The kind of a name that can be written about a batch.
fn kind(word: &str, words: &Words) -> Result<&'static Kind, String> {
    let found = record::kind(word).filter(|kind| kind.about.contains(&book::About::Batch));
    found.ok_or_else(|| {
        let names: Vec<&str> = asked::names().collect();
        let fault = say!(words, "record-no-kind", name = word, known = names.join(", "));
        match quantity::field::nearest(word, names.into_iter()) {
            Some(meant) => say!(words, "fault-did-you-mean", fault = fault, meant = meant),
            None => fault,
        }
    })
}

/// What keeps a filled form from being written, a sentence each; empty where it can be.
fn hindrances(
    judged: &Judged,
    kind: &Kind,
    day: quantity::CivilDay,
    is_sure: bool,
    viewer: &Viewer,
) -> Vec<String> {
    let words = viewer.words();
    let mut all: Vec<String> =
        judged.problems.iter().map(|problem| problem_of(kind, problem, viewer)).collect();
    if !is_sure {
        all.extend(judged.questions.iter().map(|question| fault::question(question, viewer)));
        all.extend(judged.asks.iter().map(|ask| oddity::ask(ask, viewer)));
        if judged.problems.is_empty() && !all.is_empty() {
            all.push(words.plain("record-sure"));
        }
    }
    if let Some(draft) = &judged.draft {
        all.extend(unanswered(kind, draft, viewer));
    }
    if judged.needs_reason {
        let (kind, day) = (entry::kind_name(kind.name, viewer), show::day(day, viewer));
        all.push(say!(words, "record-reason", kind = kind, day = day));
    }
    all
}

/// What an entry cannot do without. That it is not known is no entry.
fn unanswered(kind: &Kind, draft: &Draft, viewer: &Viewer) -> Vec<String> {
    let words = viewer.words();
    if draft.body.is_empty() {
        return vec![say!(words, "record-says-nothing", kind = kind.name)];
    }
    let asked = record::asked_short(kind);
    let missing = asked.iter().filter(|one| one.need == Need::Required && !draft.body.contains_key(one.key));
    missing.map(|one| say!(words, "record-missing", kind = kind.name, key = one.key)).collect()
}

/// What is wrong with an answer; of a key that is none, which there are.
fn problem_of(kind: &Kind, problem: &Problem, viewer: &Viewer) -> String {
    let words = viewer.words();
    if problem.fault == Fault::Missing {
        return say!(words, "record-missing", kind = kind.name, key = &problem.key);
    }
    let Fault::UnknownKey { nearest } = &problem.fault else { return fault::with_place(problem, viewer) };
    let known: Vec<&str> = record::asked_short(kind).iter().map(|asked| asked.key).collect();
    let text = say!(words, "record-no-key", key = &problem.key, kind = kind.name, known = known.join(", "));
    match nearest {
        Some(meant) => say!(words, "fault-did-you-mean", fault = text, meant = meant),
        None => text,
    }
}

/// What was written, as JSON.
#[derive(Serialize)]
struct WrittenJson {
    written: Vec<OneJson>,
    unchanged: usize,
}

#[derive(Serialize)]
struct OneJson {
    entry: String,
    kind: String,
    day: String,
}

/// Writes drafts and says what was written.
///
/// - `unchanged`: of how many the book says the same already
async fn put_down(
    said: &Said<'_>,
    book: &FarmBook,
    drafts: Vec<Draft>,
    unchanged: usize,
) -> Result<(), Failure> {
    let viewer = &book.viewer;
    let one = |draft: &Draft| OneJson {
        entry: draft.id.0.to_string(),
        kind: draft.kind.clone(),
        day: draft.day.to_string(),
    };
    let json = WrittenJson { written: drafts.iter().map(one).collect(), unchanged };
    let text: String = drafts.iter().map(|draft| told(draft, viewer)).collect();
    if !drafts.is_empty() {
        book.write(drafts).await?;
    }
    if said.given.get_flag("json") {
        return super::print_json(&json);
    }
    let same = say!(viewer.words(), "record-unchanged", count = unchanged as f64) + "\n";
    super::print(&(text + if unchanged > 0 { &same } else { "" }))
}

/// A draft that is written, with all it says.
fn told(draft: &Draft, viewer: &Viewer) -> String {
    let words = viewer.words();
    let key = if draft.withdrawn { "record-taken-back" } else { "record-written" };
    let (day, kind) = (show::day(draft.day, viewer), entry::kind_name(&draft.kind, viewer));
    let head = say!(words, key, day = day, kind = kind, entry = draft.id.0.to_string()) + "\n";
    // A plan says too much to say it again.
    let is_plan = !KINDS.iter().any(|kind| kind.name == draft.kind && record::kind(kind.name).is_some());
    let lines = if is_plan { Vec::new() } else { entry::lines(&draft.kind, &draft.body, viewer) };
    head + &lines.iter().map(|line| format!("    {}: {}\n", line.label, line.text)).collect::<String>()
}
