//! The bibliography: each source once, under a key that rules and tests point at.

use crate::table::{Table, TableError};

/// One source.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Work {
    /// The key.
    pub key: String,
    /// Who wrote it; may be empty.
    pub authors: String,
    /// Its title.
    pub title: String,
    /// Where it appeared; may be empty.
    pub published: String,
    /// When; may be empty.
    pub year: String,
    /// An identifier such as a DOI; may be empty.
    pub identifier: String,
    /// How it was read.
    pub note: String,
}

/// Every source, in the order of the file.
///
/// # Errors
/// [`TableError`] when the file is not as it should be.
pub fn works() -> Result<Vec<Work>, TableError> {
    let table = Table::shipped("bibliography")?;
    table.rows.iter().map(|row| read(table, row)).collect()
}

/// The source under a key.
///
/// # Errors
/// [`TableError::NoRow`] for a key that no source has.
pub fn work(key: &str) -> Result<Work, TableError> {
    let table = Table::shipped("bibliography")?;
    read(table, table.row("key", key)?)
}

fn read(table: &Table, row: &[String]) -> Result<Work, TableError> {
    let cell = |column| table.column(column).map(|at| row[at].clone());
    Ok(Work {
        key: cell("key")?,
        authors: cell("authors")?,
        title: cell("title")?,
        published: cell("published")?,
        year: cell("year")?,
        identifier: cell("identifier")?,
        note: cell("note")?,
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn no_key_stands_twice() {
        let mut keys: Vec<_> = works().unwrap().into_iter().map(|work| work.key).collect();
        let all = keys.len();
        keys.sort();
        keys.dedup();
        assert_eq!(keys.len(), all);
        assert!(work("nobody").is_err());
    }
}
