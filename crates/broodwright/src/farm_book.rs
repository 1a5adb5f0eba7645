//! The book that a command reads or writes: the same file, the same person and the same device that `serve` has.

use std::collections::BTreeMap;
use std::path::{Path, PathBuf};
use std::sync::Arc;

use advice::batches::{self, Listed, Meant};
use book::{Access, BatchId, BookState, DeviceId, Draft, EntryId, PersonId, Record};
use clap::ArgMatches;
use present::{Locale, Viewer, Words, say};
use quantity::CivilDay;
use serve::{Desk, Loopback, Open, Site};
use store::{PostgresStore, SqliteStore, Store, StoreError};
use uuid::Uuid;

use crate::clock::now;
use crate::failure::Failure;

/// The book when none is named: in the folder the program is started in.
const BOOK: &str = "farm.book";

/// Connections to a PostgreSQL database: a handful, since each page needs one for moments only.
const CONNECTIONS: usize = 8;

/// Runs what waits for the book, on this thread.
pub fn wait<T>(work: impl Future<Output = Result<T, Failure>>) -> Result<T, Failure> {
    let runtime = tokio::runtime::Builder::new_current_thread().enable_all().build();
    runtime.map_err(|error| Failure::Failed(error.to_string()))?.block_on(work)
}

/// The file of the book asked for.
pub fn path(given: &ArgMatches) -> &Path {
    given.get_one::<PathBuf>("book").map_or(Path::new(BOOK), PathBuf::as_path)
}

/// The store asked for, and how to call it.
///
/// - `create`: whether a book is made where there is none
pub async fn store(
    given: &ArgMatches,
    create: bool,
    words: &Words,
) -> Result<(Arc<dyn Store>, String), Failure> {
    if let Some(url) = given.get_one::<String>("database") {
        // The address may hold a password, so it is not said again.
        let name = words.plain("serve-database");
        let store = PostgresStore::connect(url, CONNECTIONS).await;
        return Ok((Arc::new(store.map_err(|error| cannot_open(&error, &name, words))?), name));
    }
    let name = path(given).display().to_string();
    let opening = store::sqlite::Opening { create, ..store::sqlite::Opening::default() };
    let store = SqliteStore::open(path(given), opening).map_err(|error| cannot_open(&error, &name, words))?;
    Ok((Arc::new(store), name))
}

fn cannot_open(error: &StoreError, name: &str, words: &Words) -> Failure {
    match error {
        StoreError::NoBook { .. } => Failure::input(say!(words, "book-none", book = name)),
        StoreError::NotABook { .. } => Failure::input(say!(words, "book-is-none", book = name)),
        _ => Failure::Failed(say!(words, "serve-cannot-open", book = name, why = error.to_string())),
    }
}

/// A book that was opened.
pub struct FarmBook {
    store: Arc<dyn Store>,
    place: String,
    desk: Desk,
    access: Access,
    loopback: Option<Loopback>,
    open: Arc<Open>,
    /// Who looks: by the settings in the book, in the language asked for.
    pub viewer: Viewer,
}

/// A day of a batch that a command was asked for.
pub struct Asked {
    /// The book, left as it is.
    pub book: FarmBook,
    /// The batch.
    pub batch: BatchId,
    /// The day.
    pub on: CivilDay,
    /// Who looks, moved by the options of the command line.
    pub viewer: Viewer,
}

impl Asked {
    /// What `--book`, `--batch`, `--on` and `--units` say.
    pub fn of(given: &ArgMatches, locale: Locale) -> Result<Asked, Failure> {
        let book = wait(FarmBook::to_read(given, locale))?;
        let batch = book.batch(given.get_one::<String>("batch").map(String::as_str))?;
        let on = day(given, "on", Words::of(locale))?.unwrap_or_else(|| book.today());
        let viewer = crate::commands::viewer(book.viewer.clone(), given, locale);
        Ok(Asked { book, batch, on, viewer })
    }
}

impl FarmBook {
    /// A book that is left as it is.
    pub async fn to_read(given: &ArgMatches, locale: Locale) -> Result<FarmBook, Failure> {
        let words = Words::of(locale);
        let (store, place) = store(given, false, words).await?;
        let access = serve::reader(&*store).await.map_err(|error| cannot_open(&error, &place, words))?;
        let access = access.ok_or_else(|| Failure::input(say!(words, "book-empty", book = &place)))?;
        FarmBook::opened(store, place, access, None, locale).await
    }

    /// A book that is written in; made where there is none, if that is asked for.
    pub async fn to_write(given: &ArgMatches, create: bool, locale: Locale) -> Result<FarmBook, Failure> {
        let words = Words::of(locale);
        let (store, place) = store(given, create, words).await?;
        let loopback = serve::sole_farm(&*store, now(), Uuid::now_v7).await;
        let loopback = loopback.map_err(|error| cannot_open(&error, &place, words))?;
        FarmBook::opened(store, place, loopback.access(), Some(loopback), locale).await
    }

    async fn opened(
        store: Arc<dyn Store>,
        place: String,
        access: Access,
        loopback: Option<Loopback>,
        locale: Locale,
    ) -> Result<FarmBook, Failure> {
        let desk = Desk::default();
        let words = Words::of(locale);
        let open = desk.open(&*store, &access).await.map_err(|error| cannot_open(&error, &place, words))?;
        let mut viewer = Site::viewer(&open.state);
        if locale != Locale::English {
            viewer.locale = locale;
        }
        Ok(FarmBook { store, place, desk, access, loopback, open, viewer })
    }

    /// What counts.
    pub fn state(&self) -> &BookState {
        &self.open.state
    }

    /// Leave to touch it.
    pub fn access(&self) -> &Access {
        &self.access
    }

    /// Its store.
    pub fn store(&self) -> &dyn Store {
        &*self.store
    }

    /// An instant as day and time at the farm.
    pub fn local(&self, millis: i64) -> (CivilDay, String) {
        serve::local(millis, serve::offset_of(self.state()))
    }

    /// The day it is at the farm.
    pub fn today(&self) -> CivilDay {
        self.local(now()).0
    }

    /// The names of persons.
    pub async fn names(&self) -> Result<BTreeMap<PersonId, String>, Failure> {
        self.store.person_names(&self.access).await.map_err(|error| self.failed(&error))
    }

    /// A failure of the store.
    pub fn failed(&self, error: &StoreError) -> Failure {
        cannot_open(error, &self.place, self.viewer.words())
    }

    /// The batch that is meant.
    pub fn batch(&self, said: Option<&str>) -> Result<BatchId, Failure> {
        let words = self.viewer.words();
        match batches::meant(self.state(), said) {
            Meant::One(listed) => Ok(listed.id),
            Meant::None(all) if all.is_empty() => {
                Err(Failure::input(say!(words, "book-no-batches", book = &self.place)))
            }
            Meant::None(all) => {
                let said = said.unwrap_or_default();
                Err(Failure::input(say!(words, "book-no-batch", said = said, known = listed(&all))))
            }
            Meant::Several(some) => {
                Err(Failure::input(say!(words, "book-which-batch", known = listed(&some))))
            }
        }
    }

    /// The entry that is meant by its id, or the beginning or end of it.
    pub fn entry(&self, said: &str) -> Result<&Record, Failure> {
        let is_meant = |record: &&Record| batches::means_id(&record.entry().id.0.to_string(), said);
        let mut found: Vec<&Record> = self.state().all_records().filter(is_meant).collect();
        found.dedup_by_key(|record| record.entry().id);
        let words = self.viewer.words();
        match found.as_slice() {
            [one] => Ok(one),
            [] => Err(Failure::input(say!(words, "book-no-entry", said = said))),
            _ => Err(Failure::input(say!(words, "book-which-entry", said = said))),
        }
    }

    /// Writes, all or nothing, and answers when it is safe on disk.
    pub async fn write(&self, drafts: Vec<Draft>) -> Result<(), Failure> {
        let written = self.desk.write(self.store(), &self.access, now(), |_| drafts).await;
        let written = written.map_err(|error| {
            let why = error.to_string();
            Failure::Failed(say!(self.viewer.words(), "book-cannot-write", book = &self.place, why = why))
        })?;
        if let (true, Some(loopback)) = (written.device_was_copied, self.loopback) {
            let minted = loopback.on_a_new_device(self.store(), DeviceId(Uuid::now_v7()), now()).await;
            minted.map_err(|error| self.failed(&error))?;
        }
        Ok(())
    }
}

/// A fresh id for an entry.
pub fn new_entry() -> EntryId {
    EntryId(Uuid::now_v7())
}

fn listed(all: &[Listed]) -> String {
    let name = |listed: &Listed| listed.name.clone().unwrap_or_else(|| listed.id.0.to_string());
    all.iter().map(name).collect::<Vec<_>>().join(", ")
}

/// The day of an option.
pub fn day(given: &ArgMatches, option: &str, words: &Words) -> Result<Option<CivilDay>, Failure> {
    let Some(typed) = given.get_one::<String>(option) else { return Ok(None) };
    let day = CivilDay::parse(typed.trim());
    day.map(Some).ok_or_else(|| Failure::input(say!(words, "record-no-day", typed = typed)))
}
