//! Opening a file as a book: what it is, how it is set up, and how it is brought to the newest schema.

use std::path::Path;
use std::thread;
use std::time::{Duration, Instant};

use rusqlite::config::DbConfig;
use rusqlite::{Connection, OpenFlags, TransactionBehavior};

use crate::error::StoreError;

/// Steps forward, in order; a step is never edited once it is released.
const MIGRATIONS: &[&str] = &[include_str!("../../migrations/sqlite/0001_book.sql")];

/// Marks a SQLite file as a book: "BRDW".
const APPLICATION_ID: i64 = 0x4252_4457;

/// How long to wait for another process that writes. It holds the lock for a commit, not for a conversation.
pub(crate) const BUSY_WAIT: Duration = Duration::from_secs(5);

/// What a file that may be opened holds.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Found {
    /// A book of a schema known here.
    Book,
    /// Nothing: an empty file, or a book whose first opening was cut off.
    Nothing,
}

/// Refuses what is not a book of a schema known here, and changes nothing.
///
/// # Errors
/// `NoBook`, `NotABook`, `NewerSchema`, `Corrupt`.
pub(crate) fn inspect(path: &Path) -> Result<Found, StoreError> {
    let db = open_existing(path)?;
    // One state of the file, which another process may be making into a book at this moment.
    let db = db.unchecked_transaction()?;
    match application_id(&db).map_err(|error| not_a_book(error, path))? {
        APPLICATION_ID => refuse_newer(version(&db)?).map(|()| Found::Book),
        0 if is_empty(&db)? => Ok(Found::Nothing),
        _ => Err(StoreError::NotABook { path: path.to_owned() }),
    }
}

/// Opens a file that is there. Not as read-only: such a connection could not clear away the companions of a book in
/// write-ahead mode. From a disk that takes no writing SQLite reads all the same.
pub(crate) fn open_existing(path: &Path) -> Result<Connection, StoreError> {
    if !path.is_file() {
        return Err(StoreError::NoBook { path: path.to_owned() });
    }
    let db = Connection::open_with_flags(path, OpenFlags::SQLITE_OPEN_READ_WRITE)?;
    db.busy_timeout(BUSY_WAIT)?;
    Ok(db)
}

/// The settings of a connection that writes.
pub(crate) fn set_up_writer(db: &Connection, busy_wait: Duration) -> Result<(), StoreError> {
    set_up(db, busy_wait)?;
    // FULL: a commit is on disk before it is acknowledged, in write-ahead mode too.
    db.pragma_update(None, "synchronous", "FULL")?;
    db.pragma_update(None, "foreign_keys", true)?;
    // A blanked name must not stay behind in a freed page.
    db.pragma_update(None, "secure_delete", true)?;
    Ok(())
}

/// The settings of a connection that reads.
pub(crate) fn set_up_reader(db: &Connection, busy_wait: Duration) -> Result<(), StoreError> {
    set_up(db, busy_wait)?;
    db.pragma_update(None, "query_only", true)?;
    Ok(())
}

fn set_up(db: &Connection, busy_wait: Duration) -> Result<(), StoreError> {
    db.busy_timeout(busy_wait)?;
    db.set_prepared_statement_cache_capacity(64);
    // Or SQLite plans a statement anew for each value bound to it, which doubles the cost of an entry.
    db.set_db_config(DbConfig::SQLITE_DBCONFIG_ENABLE_QPSG, true)?;
    Ok(())
}

/// Puts a file into write-ahead mode, which it remembers. Of processes that open a new book at once one does it; SQLite
/// does not let the others wait for that, so they ask again.
pub(crate) fn use_write_ahead(db: &Connection, busy_wait: Duration) -> Result<(), StoreError> {
    let start = Instant::now();
    loop {
        match set_write_ahead(db) {
            Err(StoreError::Busy) if start.elapsed() < busy_wait => thread::sleep(Duration::from_millis(2)),
            done => return done,
        }
    }
}

fn set_write_ahead(db: &Connection) -> Result<(), StoreError> {
    let mode: String = db.pragma_update_and_check(None, "journal_mode", "WAL", |row| row.get(0))?;
    if mode == "wal" {
        return Ok(());
    }
    Err(StoreError::Corrupt { detail: format!("no write-ahead mode here, only {mode}") })
}

/// Takes the steps that are missing, all in one transaction, so that two processes may open a new file at once.
pub(crate) fn migrate(db: &mut Connection) -> Result<(), StoreError> {
    if version(db)? == newest() {
        return Ok(());
    }
    let transaction = db.transaction_with_behavior(TransactionBehavior::Immediate)?;
    let taken = version(&transaction)?;
    refuse_newer(taken)?;
    if taken == 0 {
        mark(&transaction)?;
    }
    for (step, sql) in (1..).zip(MIGRATIONS).skip_while(|(step, _)| *step <= taken) {
        transaction.execute_batch(sql)?;
        transaction.execute("INSERT INTO migration (version) VALUES (?1)", [step])?;
    }
    Ok(transaction.commit()?)
}

fn mark(db: &Connection) -> Result<(), StoreError> {
    db.pragma_update(None, "application_id", APPLICATION_ID)?;
    Ok(db.execute_batch("CREATE TABLE migration (version INTEGER NOT NULL PRIMARY KEY) STRICT")?)
}

fn newest() -> i64 {
    MIGRATIONS.len() as i64
}

fn refuse_newer(found: i64) -> Result<(), StoreError> {
    if found > newest() {
        return Err(StoreError::NewerSchema { found, known: newest() });
    }
    Ok(())
}

fn application_id(db: &Connection) -> rusqlite::Result<i64> {
    db.pragma_query_value(None, "application_id", |row| row.get(0))
}

fn version(db: &Connection) -> Result<i64, StoreError> {
    if application_id(db)? != APPLICATION_ID {
        return Ok(0);
    }
    Ok(db.query_row("SELECT max(version) FROM migration", [], |row| row.get(0))?)
}

fn is_empty(db: &Connection) -> Result<bool, StoreError> {
    Ok(db.query_row("SELECT count(*) = 0 FROM sqlite_schema", [], |row| row.get(0))?)
}

fn not_a_book(error: rusqlite::Error, path: &Path) -> StoreError {
    match error.sqlite_error_code() {
        Some(rusqlite::ErrorCode::NotADatabase) => StoreError::NotABook { path: path.to_owned() },
        _ => error.into(),
    }
}
