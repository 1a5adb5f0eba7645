//! Copying a whole book by SQLite's own backup call: to a backup, and back.

use std::fs::{self, File};
use std::io;
use std::path::{Path, PathBuf};

use rusqlite::Connection;
use rusqlite::backup::{Backup, StepResult};

use super::read::engine_faults;
use super::schema::{self, Found};
use crate::error::StoreError;

/// Copies a book to a new file. Under a name of its own until it is complete, so that no half of it is ever taken for
/// the whole.
pub(crate) fn copy(from: &Connection, to: &Path) -> Result<(), StoreError> {
    refuse_existing(to)?;
    let partial = partial(to);
    let done = fill(from, &partial).and_then(|()| put_in_place(&partial, to));
    if done.is_err() {
        // What is left of the copy is of no use; the reason it failed is.
        let _ = fs::remove_file(&partial);
    }
    done
}

/// Makes a new book from a backup, after a look at all of it. Blocks: for commands, not for async workers.
///
/// # Errors
/// `TargetExists`; `NoBook`, `NotABook`, `NewerSchema`, `Corrupt` where the backup is none or only half of one, and then
/// nothing is made.
pub fn restore(backup: &Path, to: &Path) -> Result<(), StoreError> {
    if schema::inspect(backup)? == Found::Nothing {
        return Err(StoreError::NotABook { path: backup.to_owned() });
    }
    let from = schema::open_existing(backup)?;
    refuse_cut_off(&from, backup)?;
    refuse_faulty(&from)?;
    copy(&from, to)
}

fn fill(from: &Connection, partial: &Path) -> Result<(), StoreError> {
    let mut to = Connection::open(partial)?;
    to.busy_timeout(schema::BUSY_WAIT)?;
    // All pages in one step are one state of the book: in write-ahead mode no writer waits for it.
    match Backup::new(from, &mut to)?.step(-1)? {
        StepResult::Done => {}
        _ => return Err(StoreError::Busy),
    }
    // One file without companions, which can be carried away and read from a disk that takes no writing.
    let _: String = to.pragma_update_and_check(None, "journal_mode", "DELETE", |row| row.get(0))?;
    refuse_faulty(&to)
}

fn refuse_faulty(db: &Connection) -> Result<(), StoreError> {
    match engine_faults(db)?.first() {
        Some(fault) => Err(StoreError::Corrupt { detail: fault.clone() }),
        None => Ok(()),
    }
}

/// SQLite fills up a last page that was cut short, and says nothing.
fn refuse_cut_off(db: &Connection, path: &Path) -> Result<(), StoreError> {
    let page: u32 = db.pragma_query_value(None, "page_size", |row| row.get(0))?;
    let file =
        fs::metadata(path).map_err(|source| StoreError::System { doing: "measuring the backup", source })?;
    if file.len().is_multiple_of(u64::from(page)) {
        return Ok(());
    }
    Err(StoreError::Corrupt { detail: "the backup ends within a page".to_owned() })
}

fn refuse_existing(to: &Path) -> Result<(), StoreError> {
    if to.exists() {
        return Err(StoreError::TargetExists { path: to.to_owned() });
    }
    Ok(())
}

fn partial(to: &Path) -> PathBuf {
    let mut name = to.as_os_str().to_owned();
    name.push(".partial");
    name.into()
}

fn put_in_place(partial: &Path, to: &Path) -> Result<(), StoreError> {
    refuse_existing(to)?;
    rename_durably(partial, to).map_err(|source| StoreError::System { doing: "naming the copy", source })
}

fn rename_durably(partial: &Path, to: &Path) -> io::Result<()> {
    File::open(partial)?.sync_all()?;
    fs::rename(partial, to)?;
    match to.parent().filter(|folder| !folder.as_os_str().is_empty()) {
        Some(folder) => File::open(folder)?.sync_all(),
        None => File::open(".")?.sync_all(),
    }
}
