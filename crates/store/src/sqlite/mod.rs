//! The book in one SQLite file.
//!
//! One thread writes and a few read, each with a connection of its own; async callers hand them work and never block.
//! Several processes may open the same file: SQLite's locks keep their writes apart, and each sees what the others wrote.

mod append;
mod copy;
mod job;
mod read;
mod readers;
mod schema;
mod side;
mod writer;

use std::collections::BTreeMap;
use std::path::Path;
use std::sync::{Arc, Mutex};
use std::thread::{self, JoinHandle};

use async_trait::async_trait;
use book::{Access, DeviceId, PersonId, StoredEntry, Subject};
use rusqlite::Connection;
use serde_json::Value;
use tokio::sync::mpsc;

pub use copy::restore;
use job::Job;

use crate::check::Check;
use crate::draft::{self, Draft, Text};
use crate::error::StoreError;
use crate::farm::Farm;
use crate::frame::FrameLimit;
use crate::report::{AppendReport, DeviceTip, Reach};
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
}

impl Default for Opening {
    fn default() -> Self {
        Self { create: true, pages_max: None }
    }
}

/// The book in one SQLite file, or in memory.
///
/// Dropping it waits for what is being written, and leaves one whole file behind.
pub struct SqliteStore {
    writer: Option<mpsc::Sender<Job>>,
    /// Absent in memory, where the one connection both reads and writes.
    readers: Option<mpsc::Sender<Job>>,
    /// The readers', then the writer's.
    threads: Vec<JoinHandle<()>>,
}

impl SqliteStore {
    /// Opens the book at `path` and brings it to the newest schema. Blocks: call it before serving, or from a thread that
    /// may block.
    ///
    /// # Errors
    /// `NoBook`, `NotABook`, `NewerSchema`, `Corrupt`, `System`. A file that is refused is left as it was.
    pub fn open(path: &Path, opening: Opening) -> Result<Self, StoreError> {
        if path.exists() || !opening.create {
            schema::inspect_existing(path)?;
        }
        let writer = writing_connection(path, opening)?;
        let reading = (0..READERS).map(|_| reading_connection(path)).collect::<Result<Vec<_>, _>>()?;
        let (readers, queue) = mpsc::channel(writer::GROUP_MAX);
        let queue = Arc::new(Mutex::new(queue));
        let mut store = Self { writer: None, readers: Some(readers), threads: Vec::new() };
        for db in reading {
            let queue = Arc::clone(&queue);
            store.spawn("book-reader", move || readers::serve(&db, &queue))?;
        }
        store.start_writer(writer)?;
        Ok(store)
    }

    /// An empty book in memory, gone when dropped: for tests and demonstrations.
    ///
    /// # Errors
    /// `System`, `Sqlite`.
    pub fn in_memory() -> Result<Self, StoreError> {
        let mut db = Connection::open_in_memory()?;
        schema::set_up_writer(&db)?;
        schema::migrate(&mut db)?;
        let mut store = Self { writer: None, readers: None, threads: Vec::new() };
        store.start_writer(db)?;
        Ok(store)
    }

    fn start_writer(&mut self, db: Connection) -> Result<(), StoreError> {
        let (writer, queue) = mpsc::channel(writer::GROUP_MAX);
        self.writer = Some(writer);
        self.spawn("book-writer", move || writer::serve(db, queue))
    }

    fn spawn(&mut self, name: &str, serve: impl FnOnce() + Send + 'static) -> Result<(), StoreError> {
        let thread = thread::Builder::new()
            .name(name.to_owned())
            .spawn(serve)
            .map_err(|source| StoreError::System { doing: "starting a thread", source })?;
        self.threads.push(thread);
        Ok(())
    }

    async fn write<T, F>(&self, work: F) -> Result<T, StoreError>
    where
        T: Send + 'static,
        F: Fn(&Connection) -> Result<T, StoreError> + Send + 'static,
    {
        let queue = self.writer.as_ref().ok_or(StoreError::Stopped)?;
        job::ask(queue, Job::Write, work).await
    }

    async fn read<T, F>(&self, work: F) -> Result<T, StoreError>
    where
        T: Send + 'static,
        F: Fn(&Connection) -> Result<T, StoreError> + Send + 'static,
    {
        let queue = self.readers.as_ref().or(self.writer.as_ref()).ok_or(StoreError::Stopped)?;
        job::ask(queue, Job::Read, work).await
    }
}

impl Drop for SqliteStore {
    fn drop(&mut self) {
        self.readers = None;
        self.writer = None;
        // The last connection to close moves the write-ahead log into the file.
        for thread in self.threads.drain(..) {
            let _ = thread.join();
        }
    }
}

fn writing_connection(path: &Path, opening: Opening) -> Result<Connection, StoreError> {
    let mut db = Connection::open(path)?;
    schema::set_up_writer(&db)?;
    schema::use_write_ahead(&db)?;
    schema::migrate(&mut db)?;
    if let Some(pages) = opening.pages_max {
        db.pragma_update_and_check(None, "max_page_count", pages, |_| Ok(()))?;
    }
    Ok(db)
}

fn reading_connection(path: &Path) -> Result<Connection, StoreError> {
    let db = Connection::open(path)?;
    schema::set_up_reader(&db)?;
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

    async fn about(&self, access: &Access, subjects: &[Subject]) -> Result<Vec<StoredEntry>, StoreError> {
        let (farm, subjects) = (access.farm(), row::subject_texts(subjects));
        self.read(move |db| read::about(db, farm, &subjects)).await
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

    async fn device_tip(&self, access: &Access) -> Result<Option<DeviceTip>, StoreError> {
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
