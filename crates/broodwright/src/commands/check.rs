//! `check`: reads a book or an export from end to end, and says what is damaged or does not hold.

use std::fs::File;
use std::io::Read;
use std::path::{Path, PathBuf};

use advice::record;
use book::{BookState, FarmId, Record, StoredEntry, fold};
use clap::ArgMatches;
use present::oddity;
use present::{Locale, Viewer, Words, entry, fault, say};
use quantity::Source;
use store::{SqliteStore, Store};

use super::import;
use crate::failure::Failure;
use crate::farm_book;

/// How every SQLite file begins.
const SQLITE: &[u8] = b"SQLite format 3\0";

/// What a look found.
struct Looked {
    entries: Vec<StoredEntry>,
    /// What is damaged, a sentence each.
    damaged: Vec<String>,
}

/// Looks, and tells what is found. Exit 1 where anything is.
pub fn run(given: &ArgMatches, locale: Locale) -> Result<(), Failure> {
    let words = Words::of(locale);
    let looked = match given.get_one::<PathBuf>("FILE") {
        Some(file) if !is_book(file) => {
            let (entries, damaged) = import::read(file, words)?;
            Looked { entries, damaged }
        }
        Some(file) => farm_book::wait(book(file, words))?,
        None => farm_book::wait(asked(given, words))?,
    };
    let viewer = Viewer { locale, ..Viewer::plain() };
    let count = looked.entries.len();
    let found = found(looked, &viewer);
    let text: String = found.iter().map(|line| format!("! {line}\n")).collect();
    let sum = say!(words, "check-done", entries = count.to_string(), found = found.len().to_string());
    super::print(&(text + &sum + "\n"))?;
    if found.is_empty() { Ok(()) } else { Err(Failure::Failed(words.plain("check-found"))) }
}

fn is_book(file: &Path) -> bool {
    let mut first = [0; 16];
    File::open(file).and_then(|mut file| file.read_exact(&mut first)).is_ok() && first == SQLITE
}

async fn asked(given: &ArgMatches, words: &Words) -> Result<Looked, Failure> {
    let (store, place) = farm_book::store(given, false, words).await?;
    look(&*store, &place, words).await
}

async fn book(file: &Path, words: &Words) -> Result<Looked, Failure> {
    let place = file.display().to_string();
    let opening = store::sqlite::Opening { create: false, ..store::sqlite::Opening::default() };
    let store = SqliteStore::open(file, opening).map_err(|error| {
        Failure::Failed(say!(words, "serve-cannot-open", book = &place, why = error.to_string()))
    })?;
    look(&store, &place, words).await
}

async fn look(store: &dyn Store, place: &str, words: &Words) -> Result<Looked, Failure> {
    let failed = |error: store::StoreError| {
        Failure::Failed(say!(words, "serve-cannot-open", book = place, why = error.to_string()))
    };
    let Some(access) = serve::reader(store).await.map_err(failed)? else {
        return Err(Failure::input(say!(words, "book-empty", book = place)));
    };
    let check = store.check(&access).await.map_err(failed)?;
    let damaged = check.damaged.iter().map(|one| {
        let (entry, why) = (one.entry.0.to_string(), one.damage.to_string());
        say!(words, "check-damaged", entry = entry, why = why)
    });
    let engine = check.engine.iter().map(|why| say!(words, "check-engine", why = why));
    Ok(Looked { damaged: damaged.chain(engine).collect(), entries: check.sound })
}

/// All that is found in some entries.
fn found(looked: Looked, viewer: &Viewer) -> Vec<String> {
    let mut found = looked.damaged;
    let Some(farm) = looked.entries.first().map(|stored| stored.entry.farm) else { return found };
    let state = fold(farm_of_most(&looked.entries).unwrap_or(farm), looked.entries);
    found.extend(state.faults().iter().map(|one| oddity::fault(one, viewer).text));
    found.extend(state.findings().iter().map(|one| oddity::finding(one, viewer).text));
    found.extend(state.conflicts().iter().map(|one| oddity::conflict(one, viewer).text));
    found.extend(unfit(&state, viewer));
    found
}

/// The farm that most entries name: an export holds one farm, and what names another is told.
fn farm_of_most(entries: &[StoredEntry]) -> Option<FarmId> {
    let mut counts: std::collections::BTreeMap<FarmId, usize> = std::collections::BTreeMap::new();
    for stored in entries {
        *counts.entry(stored.entry.farm).or_default() += 1;
    }
    counts.into_iter().max_by_key(|(_, count)| *count).map(|(farm, _)| farm)
}

/// What counts and holds answers that this program would not take.
fn unfit(state: &BookState, viewer: &Viewer) -> Vec<String> {
    let of = |record: &&Record| -> Vec<String> {
        let entry = record.entry();
        let Some((kind, body)) = record::kind(&entry.kind).zip(record.body()) else { return Vec::new() };
        let problems = record::check(kind, &record::raws_of(kind, body), Source::Hand).problems;
        let told = |problem: &quantity::Problem| {
            let (id, why) = (entry.id.0.to_string(), fault::with_place(problem, viewer));
            let name = entry::kind_name(kind.name, viewer);
            say!(viewer.words(), "check-unfit", entry = id, kind = name, why = why)
        };
        problems.iter().map(told).collect()
    };
    state.counting().iter().flat_map(of).collect()
}
