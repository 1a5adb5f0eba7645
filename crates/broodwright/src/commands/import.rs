//! `import`: entries of an export into the book. In whatever order and however often they come, the book is the same.

use std::path::{Path, PathBuf};
use std::sync::Arc;

use book::{FarmId, StoredEntry};
use clap::ArgMatches;
use present::{Locale, Words, say};
use store::{AppendReport, Store, StoreError};
use uuid::Uuid;

use crate::clock::now;
use crate::failure::Failure;
use crate::farm_book;
use crate::input;

/// Reads the file and writes what of it is new.
pub fn run(given: &ArgMatches, locale: Locale) -> Result<(), Failure> {
    let words = Words::of(locale);
    let Some(file) = given.get_one::<PathBuf>("FILE") else { return Ok(()) };
    let (entries, bad) = read(file, words)?;
    if !bad.is_empty() && !given.get_flag("good-only") {
        let nothing = words.plain("import-nothing");
        return Err(Failure::BadInput(bad.into_iter().chain([nothing]).collect()));
    }
    for line in bad {
        eprintln!("{line}");
    }
    let Some(farm) = entries.first().map(|stored| stored.entry.farm) else {
        return Err(Failure::input(say!(words, "import-empty", file = file.display().to_string())));
    };
    let report = farm_book::wait(append(given, farm, entries, words))?;
    let (added, known) = (report.added.to_string(), report.already_there.to_string());
    super::print(&(say!(words, "import-done", added = added, known = known) + "\n"))?;
    match report.same_id.len() + report.same_place.len() {
        0 => Ok(()),
        clashes => Err(Failure::Failed(say!(words, "import-clashes", count = clashes.to_string()))),
    }
}

/// The entries of an export, and what is wrong with the other lines.
pub fn read(file: &Path, words: &Words) -> Result<(Vec<StoredEntry>, Vec<String>), Failure> {
    let bytes = input::all_bytes(file, words)?;
    let (mut entries, mut bad) = (Vec::new(), Vec::new());
    for (at, line) in bytes.split(|byte| *byte == b'\n').enumerate() {
        let line = line.strip_suffix(b"\r").unwrap_or(line);
        if line.is_empty() {
            continue;
        }
        match StoredEntry::decode(line.to_vec()) {
            Ok(stored) => entries.push(stored),
            Err(_) => bad.push(say!(words, "import-bad-line", line = (at + 1).to_string())),
        }
    }
    Ok((entries, bad))
}

async fn append(
    given: &ArgMatches,
    farm: FarmId,
    entries: Vec<StoredEntry>,
    words: &Words,
) -> Result<AppendReport, Failure> {
    let (store, place): (Arc<dyn Store>, String) = farm_book::store(given, true, words).await?;
    let failed = |error: StoreError| match error {
        StoreError::OtherFarm { .. } => Failure::input(say!(words, "import-other-farm", book = &place)),
        StoreError::EntryTooLarge { .. } | StoreError::Unfileable { .. } => {
            Failure::input(say!(words, "import-unfit", why = error.to_string()))
        }
        error => Failure::Failed(say!(words, "serve-cannot-open", book = &place, why = error.to_string())),
    };
    let loopback = serve::sole_farm_like(&*store, farm, now(), Uuid::now_v7).await.map_err(failed)?;
    store.append(&loopback.access(), entries).await.map_err(failed)
}
