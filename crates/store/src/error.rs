//! What can go wrong with a book on disk.

use std::path::PathBuf;

use book::{EntryId, FarmId, PersonId, Role};

use crate::check::{Damage, Damaged};

/// Why a store did not do what was asked. Where it is returned from a writing call, nothing of that call was kept.
#[derive(Debug, thiserror::Error)]
#[non_exhaustive]
pub enum StoreError {
    /// The role may read only, or may not name other people.
    #[error("the role {role:?} may not do this")]
    Forbidden {
        /// The role that asked.
        role: Role,
    },
    /// An entry of one farm was sent under the access of another.
    #[error("entry {entry:?} belongs to {found:?}, not to {expected:?}")]
    OtherFarm {
        /// The entry.
        entry: EntryId,
        /// The farm it names.
        found: FarmId,
        /// The farm of the access.
        expected: FarmId,
    },
    /// The farm is not in this book: it was never made, or the wrong file is open.
    #[error("this book knows no {farm:?}")]
    UnknownFarm {
        /// The farm asked for.
        farm: FarmId,
    },
    /// The book holds several farms where one was expected.
    #[error("this book holds {count} farms, not one")]
    SeveralFarms {
        /// How many.
        count: usize,
    },
    /// An entry is larger than any form makes it.
    #[error("entry {entry:?} has {bytes} bytes, more than {limit}")]
    EntryTooLarge {
        /// The entry.
        entry: EntryId,
        /// Its size.
        bytes: usize,
        /// The most allowed.
        limit: usize,
    },
    /// An entry carries a sequence number or a kind that cannot be filed.
    #[error("entry {entry:?} cannot be filed: its {field} is out of range")]
    Unfileable {
        /// The entry.
        entry: EntryId,
        /// The field.
        field: &'static str,
    },
    /// A stored entry is not what was once written: the disk or a hand changed it. `check` reads the others.
    #[error("stored entry {entry:?} is damaged: {damage}")]
    Damaged {
        /// The entry under which the row is filed.
        entry: EntryId,
        /// What is wrong with it.
        damage: Damage,
    },
    /// A draft's key is empty, too long or has control characters.
    #[error("a draft cannot be filed under {key:?}")]
    DraftKey {
        /// The key, cut short.
        key: String,
    },
    /// A draft is larger than any form fills it.
    #[error("draft {key:?} has {bytes} bytes, more than {limit}")]
    DraftTooLarge {
        /// Its key.
        key: String,
        /// Its size as text.
        bytes: usize,
        /// The most allowed.
        limit: usize,
    },
    /// A name is empty, too long or has control characters.
    #[error("a name of {bytes} bytes cannot be kept")]
    Name {
        /// Its size.
        bytes: usize,
    },
    /// The person was forgotten; the same id is never named again.
    #[error("the name of {person:?} was blanked for good")]
    Blanked {
        /// The person.
        person: PersonId,
    },
    /// There is no file there, and none was to be made.
    #[error("there is no book at {path:?}")]
    NoBook {
        /// Where it was looked for.
        path: PathBuf,
    },
    /// The file is something else, or its first page is lost.
    #[error("the file at {path:?} is not a book")]
    NotABook {
        /// The file.
        path: PathBuf,
    },
    /// The book was written by a newer program. It was not touched.
    #[error("the book has schema {found}, this program knows {known}")]
    NewerSchema {
        /// The schema of the book.
        found: i64,
        /// The newest known here.
        known: i64,
    },
    /// The database file or server reports its own pages as broken: restore a backup, or save what `check` can read.
    #[error("the database is corrupt: {detail}")]
    Corrupt {
        /// What the engine said.
        detail: String,
    },
    /// The disk, or the size allowed to the book, is full.
    #[error("the disk is full")]
    DiskFull,
    /// Another process kept the book locked for longer than we wait.
    #[error("another process holds the book")]
    Busy,
    /// A file already stands where a copy was to go.
    #[error("a file stands at {path:?} already")]
    TargetExists {
        /// The file.
        path: PathBuf,
    },
    /// The engine has its own way of copying.
    #[error("this store does not copy itself: use {tool}")]
    BackupElsewhere {
        /// The engine's own tool.
        tool: &'static str,
    },
    /// The store was closed while the call waited.
    #[error("the store has stopped")]
    Stopped,
    /// The call ran into a fault of our own program. The store goes on.
    #[error("the store panicked over this call")]
    Panicked,
    /// A file or a thread could not be had.
    #[error("{doing}: {source}")]
    System {
        /// What was being done.
        doing: &'static str,
        /// The system's reason.
        source: std::io::Error,
    },
    /// Any other error of SQLite.
    #[error("SQLite: {source}")]
    Sqlite {
        /// The engine's reason.
        source: rusqlite::Error,
    },
    /// PostgreSQL cannot be reached, or all connections are taken.
    #[error("PostgreSQL cannot be had: {detail}")]
    Unreachable {
        /// What the pool or the driver said.
        detail: String,
    },
    /// Any other error of PostgreSQL.
    #[error("PostgreSQL: {source}")]
    Postgres {
        /// The engine's reason.
        source: tokio_postgres::Error,
    },
}

impl From<rusqlite::Error> for StoreError {
    fn from(source: rusqlite::Error) -> Self {
        use rusqlite::ErrorCode;
        match source.sqlite_error_code() {
            Some(ErrorCode::DiskFull) => Self::DiskFull,
            Some(ErrorCode::DatabaseBusy | ErrorCode::DatabaseLocked) => Self::Busy,
            Some(ErrorCode::DatabaseCorrupt | ErrorCode::NotADatabase) => {
                Self::Corrupt { detail: source.to_string() }
            }
            _ => Self::Sqlite { source },
        }
    }
}

impl From<tokio_postgres::Error> for StoreError {
    fn from(source: tokio_postgres::Error) -> Self {
        use tokio_postgres::error::SqlState;
        match source.code() {
            Some(code) if *code == SqlState::DISK_FULL => Self::DiskFull,
            Some(code) if *code == SqlState::DATA_CORRUPTED || *code == SqlState::INDEX_CORRUPTED => {
                Self::Corrupt { detail: source.to_string() }
            }
            None if source.is_closed() => Self::Unreachable { detail: source.to_string() },
            _ => Self::Postgres { source },
        }
    }
}

impl From<Damaged> for StoreError {
    fn from(Damaged { entry, damage }: Damaged) -> Self {
        Self::Damaged { entry, damage }
    }
}
