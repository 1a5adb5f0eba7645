//! `history`: the entries behind a figure, a kind, a key or an entry: who wrote them, when, what was put right, and why.

use std::collections::BTreeSet;

use advice::{behind, record};
use book::{BatchId, EntryId, KINDS, Kind, Record, Subject};
use clap::ArgMatches;
use present::history::{self, History};
use present::{Locale, Words, say};
use quantity::CivilDay;

use crate::failure::Failure;
use crate::farm_book::{self, FarmBook};

/// What is asked about.
enum Asked {
    /// All of a batch.
    All(BatchId),
    /// Some kinds: of the batch, and what stays with the farm.
    Kinds(BatchId, BTreeSet<&'static str>),
    /// Some entries.
    Entries(BTreeSet<EntryId>),
}

/// Reads the book and tells the history.
pub fn run(given: &ArgMatches, locale: Locale) -> Result<(), Failure> {
    farm_book::wait(told(given, locale))
}

async fn told(given: &ArgMatches, locale: Locale) -> Result<(), Failure> {
    let book = FarmBook::to_read(given, locale).await?;
    let day = farm_book::day(given, "day", Words::of(locale))?;
    let asked = asked(&book, given)?;
    let records = history::records(book.state(), |record| asked.has(record) && is_of(record, day));
    let own_device = None;
    let names = book.names().await?;
    let local = |millis| book.local(millis);
    let history = History { state: book.state(), records, names, own_device, local: &local };
    let viewer = super::viewer(book.viewer.clone(), given, locale);
    if given.get_flag("json") {
        return super::print_json(&history.view(&viewer));
    }
    super::print(&history.text(&viewer))
}

fn is_of(record: &Record, day: Option<CivilDay>) -> bool {
    day.is_none_or(|day| record.entry().day == day)
}

fn asked(book: &FarmBook, given: &ArgMatches) -> Result<Asked, Failure> {
    let said = given.get_one::<String>("batch").map(String::as_str);
    let Some(what) = given.get_one::<String>("WHAT") else { return Ok(Asked::All(book.batch(said)?)) };
    let kinds = kinds_of(what);
    if !kinds.is_empty() {
        return Ok(Asked::Kinds(book.batch(said)?, kinds));
    }
    let looks_like_an_id = what.chars().all(|letter| letter.is_ascii_hexdigit() || letter == '-');
    if !looks_like_an_id {
        let known: Vec<&str> = KINDS.iter().map(|kind| kind.name).collect();
        let words = book.viewer.words();
        return Err(Failure::input(say!(words, "history-no-such", what = what, known = known.join(", "))));
    }
    let thread = book.state().thread(book.entry(what)?.entry().id);
    Ok(Asked::Entries(thread.iter().map(|record| record.entry().id).collect()))
}

/// The kinds that a name means: a kind, a key of one, a key that stays with the farm, a figure.
fn kinds_of(what: &str) -> BTreeSet<&'static str> {
    let is_meant = |kind: &&Kind| {
        let is_key_of = |section: &str| what.split_once('.').is_some_and(|(first, _)| first == section);
        kind.name == what || (record::kind(kind.name).is_some() && kind.section.is_some_and(is_key_of))
    };
    let named: BTreeSet<&str> = KINDS.iter().filter(is_meant).map(|kind| kind.name).collect();
    match advice::body::kept_in(what) {
        Some(kind) => BTreeSet::from([kind, "plan-adopted"]),
        None if named.is_empty() => behind::kinds(what),
        None => named,
    }
}

impl Asked {
    fn has(&self, record: &Record) -> bool {
        let entry = record.entry();
        match self {
            Asked::All(batch) => entry.subject == Subject::Batch(*batch),
            Asked::Kinds(batch, kinds) => {
                let is_ours = !matches!(entry.subject, Subject::Batch(other) if other != *batch);
                is_ours && kinds.contains(entry.kind.as_str())
            }
            Asked::Entries(ids) => ids.contains(&entry.id),
        }
    }
}
