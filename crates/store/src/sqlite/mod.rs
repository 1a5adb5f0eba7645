//! The book in one SQLite file.
//!
//! One thread writes and a few read, each with a connection of its own; async callers hand them work and never block.
//! Several processes may open the same file: SQLite's locks keep their writes apart, and each sees what the others wrote.

mod append;
mod copy;
mod crew;
mod job;
mod read;
mod readers;
mod schema;
mod side;
mod writer;

use std::collections::BTreeMap;
use std::path::Path;
use std::time::Duration;

use async_trait::async_trait;
use book::{Access, DeviceId, PersonId, SeriesEnd, StoredEntry};
use rusqlite::Connection;
use serde_json::Value;

pub use copy::restore;
use crew::Crew;
use job::Job;

use crate::check::Check;
use crate::draft::{self, Draft, Text};
use crate::error::StoreError;
use crate::farm::Farm;
use crate::frame::FrameLimit;
use crate::report::{AppendReport, Reach};
use crate::{Store, person, row, rules};

/// How many connections read. More would only wait for the same two cores and one disk.
const READERS: usize = 3;

/// How to open a book.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Opening {
    /// Whether to make the book where there is none.
    pub create: bool,
    /// The most pages of 4096 bytes the file may grow to; after that `DiskFull`. For hosts that allot space.
    pub pages_max: Option<u32>,
    /// How long to wait while another process writes; after that `Busy`.
    pub busy_wait: Duration,
}

impl Default for Opening {
    fn default() -> Self {
        Self { create: true, pages_max: None, busy_wait: schema::BUSY_WAIT }
    }
}

/// The book in one SQLite file, or in memory.
///
/// Dropping it waits for what is being written, and leaves one whole file behind.
pub struct SqliteStore {
    /// Absent in memory, where the one connection both reads and writes. Dropped first: the writer's connection must be
    /// the last to close, for two that close at once each leave the write-ahead log to the other.
    readers: Option<Crew>,
    writer: Crew,
}

impl SqliteStore {
    /// Opens the book at `path` and brings it to the newest schema. Blocks: call it before serving, or from a thread that
    /// may block.
    ///
    /// # Errors
    /// `NoBook`, `NotABook`, `NewerSchema`, `Corrupt`, `System`. A file that is refused is left as it was.
    pub fn open(path: &Path, opening: Opening) -> Result<Self, StoreError> {
        if path.exists() || !opening.create {
            schema::inspect(path)?;
        }
        let db = writing_connection(path, opening)?;
        let writer = Crew::of_one("book-writer", move |queue| writer::serve(db, queue))?;
        let reading = (0..READERS).map(|_| reading_connection(path, opening)).collect::<Result<_, _>>()?;
        Ok(Self { readers: Some(readers::crew(reading)?), writer })
    }

    /// An empty book in memory, gone when dropped: for tests and demonstrations.
    ///
    /// # Errors
    /// `System`, `Sqlite`.
    pub fn in_memory() -> Result<Self, StoreError> {
        let mut db = Connection::open_in_memory()?;
        schema::set_up_writer(&db, schema::BUSY_WAIT)?;
        schema::migrate(&mut db)?;
        let writer = Crew::of_one("book-writer", move |queue| writer::serve(db, queue))?;
        Ok(Self { readers: None, writer })
    }

    async fn write<T, F>(&self, work: F) -> Result<T, StoreError>
    where
        T: Send + 'static,
        F: Fn(&Connection) -> Result<T, StoreError> + Send + 'static,
    {
        self.writer.ask(Job::Write, work).await
    }

    async fn read<T, F>(&self, work: F) -> Result<T, StoreError>
    where
        T: Send + 'static,
        F: Fn(&Connection) -> Result<T, StoreError> + Send + 'static,
    {
        self.readers.as_ref().unwrap_or(&self.writer).ask(Job::Read, work).await
    }
}

fn writing_connection(path: &Path, opening: Opening) -> Result<Connection, StoreError> {
    let mut db = Connection::open(path)?;
    schema::set_up_writer(&db, opening.busy_wait)?;
    schema::use_write_ahead(&db, opening.busy_wait)?;
    schema::migrate(&mut db)?;
    if let Some(pages) = opening.pages_max {
        db.pragma_update_and_check(None, "max_page_count", pages, |_| Ok(()))?;
    }
    Ok(db)
}

fn reading_connection(path: &Path, opening: Opening) -> Result<Connection, StoreError> {
    let db = Connection::open(path)?;
    schema::set_up_reader(&db, opening.busy_wait)?;
    Ok(db)
}

#[async_trait]
impl Store for SqliteStore {
    async fn append(&self, access: &Access, entries: Vec<StoredEntry>) -> Result<AppendReport, StoreError> {
        let (farm, rows) = (access.farm(), rules::admit(access, entries)?);
        self.write(move |db| append::append(db, farm, &rows)).await
    }

    async fn all(&self, access: &Access) -> Result<Vec<StoredEntry>, StoreError> {
        let farm = access.farm();
        self.read(move |db| read::all(db, farm)).await
    }

    async fn since(
        &self,
        access: &Access,
        seen: &BTreeMap<DeviceId, u64>,
        limit: FrameLimit,
    ) -> Result<Vec<StoredEntry>, StoreError> {
        let (farm, seen) = (access.farm(), row::places(seen));
        self.read(move |db| read::since(db, farm, &seen, limit)).await
    }

    async fn device_tip(&self, access: &Access) -> Result<Option<SeriesEnd>, StoreError> {
        let access = *access;
        self.read(move |db| read::device_tip(db, &access)).await
    }

    async fn reach(&self, access: &Access) -> Result<Reach, StoreError> {
        let farm = access.farm();
        self.read(move |db| read::reach(db, farm)).await
    }

    async fn check(&self, access: &Access) -> Result<Check, StoreError> {
        let farm = access.farm();
        self.read(move |db| read::check(db, farm)).await
    }

    async fn put_draft(
        &self,
        access: &Access,
        key: &str,
        body: &Value,
        updated_millis: i64,
    ) -> Result<bool, StoreError> {
        rules::may_write(access)?;
        let draft = Text::checked(key, body, access.person(), updated_millis)?;
        let farm = access.farm();
        self.write(move |db| side::put_draft(db, farm, &draft)).await
    }

    async fn draft(&self, access: &Access, key: &str) -> Result<Option<Draft>, StoreError> {
        let (farm, key) = (access.farm(), draft::checked_key(key)?);
        self.read(move |db| side::draft(db, farm, &key)).await
    }

    async fn drafts(&self, access: &Access) -> Result<Vec<Draft>, StoreError> {
        let farm = access.farm();
        self.read(move |db| side::drafts(db, farm)).await
    }

    async fn delete_draft(&self, access: &Access, key: &str) -> Result<bool, StoreError> {
        rules::may_write(access)?;
        let (farm, key) = (access.farm(), draft::checked_key(key)?);
        self.write(move |db| side::delete_draft(db, farm, &key)).await
    }

    async fn put_person(&self, access: &Access, person: PersonId, name: &str) -> Result<(), StoreError> {
        person::may_name(access, person)?;
        let (farm, name) = (access.farm(), person::checked(name)?.to_owned());
        self.write(move |db| side::put_person(db, farm, person, &name)).await
    }

    async fn person_names(&self, access: &Access) -> Result<BTreeMap<PersonId, String>, StoreError> {
        let farm = access.farm();
        self.read(move |db| side::person_names(db, farm)).await
    }

    async fn blank_person(&self, access: &Access, person: PersonId) -> Result<(), StoreError> {
        person::may_name(access, person)?;
        let farm = access.farm();
        self.write(move |db| side::blank_person(db, farm, person)).await
    }

    async fn farms(&self) -> Result<Vec<Farm>, StoreError> {
        self.read(side::farms).await
    }

    async fn create_farm(&self, farm: Farm) -> Result<bool, StoreError> {
        self.write(move |db| side::create_farm(db, farm)).await
    }

    async fn sole_farm(&self, candidate: Farm) -> Result<Farm, StoreError> {
        self.write(move |db| side::sole_farm(db, candidate)).await
    }

    async fn backup(&self, to: &Path) -> Result<(), StoreError> {
        let to = to.to_owned();
        self.read(move |db| copy::copy(db, &to)).await
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn setting(db: &Connection, name: &str) -> Result<String, StoreError> {
        let value: rusqlite::types::Value = db.pragma_query_value(None, name, |row| row.get(0))?;
        Ok(format!("{value:?}"))
    }

    #[tokio::test]
    async fn connections_are_set_up_as_promised() {
        let path = std::env::temp_dir().join(format!("broodwright-settings-{}.book", std::process::id()));
        let store = SqliteStore::open(&path, Opening::default()).unwrap();
        for (name, expected) in [
            ("journal_mode", "Text(\"wal\")"),
            ("synchronous", "Integer(2)"),
            ("foreign_keys", "Integer(1)"),
            ("secure_delete", "Integer(1)"),
            ("busy_timeout", "Integer(5000)"),
        ] {
            assert_eq!(store.write(move |db| setting(db, name)).await.unwrap(), expected, "{name}");
        }
        let wrote = store.read(|db| Ok(db.execute("DELETE FROM farm", [])?)).await;
        assert!(matches!(wrote, Err(StoreError::Sqlite { .. })), "a reader wrote");
        drop(store);
        std::fs::remove_file(path).unwrap();
    }

    #[tokio::test]
    async fn a_panic_in_one_call_is_told_and_the_next_call_served() {
        let store = SqliteStore::in_memory().unwrap();
        let panics: fn(&Connection) -> Result<(), StoreError> = |_| panic!("our own bug");
        assert!(matches!(store.write(panics).await, Err(StoreError::Panicked)));
        assert!(matches!(store.read(panics).await, Err(StoreError::Panicked)));
        assert!(store.farms().await.unwrap().is_empty());
    }
}
