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
    let names = ["key", "authors", "title", "published", "year", "identifier", "note"];
    let at = names.map(|name| table.column(name));
    let [key, authors, title, published, year, identifier, note] = at;
    let (key, authors, title) = (key?, authors?, title?);
    let (published, year, identifier, note) = (published?, year?, identifier?, note?);
    Ok(table
        .rows
        .iter()
        .map(|row| Work {
            key: row[key].clone(),
            authors: row[authors].clone(),
            title: row[title].clone(),
            published: row[published].clone(),
            year: row[year].clone(),
            identifier: row[identifier].clone(),
            note: row[note].clone(),
        })
        .collect())
}

/// The source under a key.
///
/// # Errors
/// [`TableError::NoRow`] for a key that no source has.
pub fn work(key: &str) -> Result<Work, TableError> {
    works()?
        .into_iter()
        .find(|work| work.key == key)
        .ok_or_else(|| TableError::NoRow { name: "bibliography".to_owned(), row: key.to_owned() })
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
