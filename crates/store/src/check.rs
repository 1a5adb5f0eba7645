//! Looking a book over, and reading what is still sound in a damaged one.

use std::fmt;

use book::{EntryId, StoredEntry};

use crate::row::Row;

/// What is wrong with one stored entry.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Damage {
    /// The bytes can no longer be read as an entry.
    Unreadable,
    /// The bytes are an entry, but not the one whose hash was filed.
    OtherHash,
    /// The bytes are sound, but the columns beside them tell another story.
    OtherColumns,
}

impl fmt::Display for Damage {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(match self {
            Self::Unreadable => "its bytes cannot be read",
            Self::OtherHash => "its bytes do not match its hash",
            Self::OtherColumns => "its columns do not match its bytes",
        })
    }
}

/// A stored entry that is damaged.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Damaged {
    /// The entry under which the row is filed.
    pub entry: EntryId,
    /// What is wrong with it.
    pub damage: Damage,
}

/// What a look at every row of a farm found.
#[derive(Debug, Default)]
pub struct Check {
    /// The entries that are as they were written.
    pub sound: Vec<StoredEntry>,
    /// Those that are not.
    pub damaged: Vec<Damaged>,
    /// What the engine says of its own pages; empty where it finds nothing, or has no such test.
    pub engine: Vec<String>,
}

impl Check {
    /// Whether nothing at all was found.
    pub fn is_clean(&self) -> bool {
        self.damaged.is_empty() && self.engine.is_empty()
    }

    /// Adds a row as the engine gave it; one that is of no shape of ours is the engine's fault.
    pub(crate) fn add_row<E: fmt::Display>(&mut self, row: Result<Row, E>) {
        match row.map(Row::check) {
            Ok(Ok(stored)) => self.sound.push(stored),
            Ok(Err(damaged)) => self.damaged.push(damaged),
            Err(error) => self.engine.push(error.to_string()),
        }
    }
}
