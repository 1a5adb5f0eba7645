//! `export`: every entry of the book, a line of JSON each, to the byte as it was written.

use std::fs;
use std::path::{Path, PathBuf};

use book::StoredEntry;
use clap::ArgMatches;
use present::{Locale, Words, say};

use crate::failure::Failure;
use crate::farm_book::{self, FarmBook};

/// Writes the entries to a file, or to standard output.
pub fn run(given: &ArgMatches, locale: Locale) -> Result<(), Failure> {
    let words = Words::of(locale);
    let entries = farm_book::wait(all(given, locale))?;
    let lines: Vec<u8> = entries.iter().flat_map(|one| one.bytes.iter().copied().chain([b'\n'])).collect();
    match given.get_one::<PathBuf>("FILE") {
        None => super::print_bytes(&lines),
        Some(file) => {
            write(file, &lines).map_err(|error| {
                let (file, why) = (file.display().to_string(), error.to_string());
                Failure::Failed(say!(words, "command-cannot-write-file", file = file, why = why))
            })?;
            let (count, file) = (entries.len().to_string(), file.display().to_string());
            super::print(&(say!(words, "export-done", count = count, file = file) + "\n"))
        }
    }
}

async fn all(given: &ArgMatches, locale: Locale) -> Result<Vec<StoredEntry>, Failure> {
    let book = FarmBook::to_read(given, locale).await?;
    book.store().all(book.access()).await.map_err(|error| book.failed(&error))
}

/// Writes the file whole, or leaves the one that stands there as it is.
fn write(file: &Path, lines: &[u8]) -> std::io::Result<()> {
    let mut half = file.as_os_str().to_owned();
    half.push(".part");
    fs::write(&half, lines)?;
    fs::rename(&half, file)
}
