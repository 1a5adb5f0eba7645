//! Sheets as a PDF file.

use std::path::{Path, PathBuf};

use clap::ArgMatches;
use present::print::{self, Paper};
use present::{Document, Viewer, Words, say};

use crate::failure::Failure;

/// Writes documents to the file asked for, on the paper asked for.
pub fn write(documents: &[Document], out: &Path, given: &ArgMatches, viewer: &Viewer) -> Result<(), Failure> {
    let paper = given.get_one::<String>("paper").and_then(|name| Paper::from_name(name));
    let printable = print::write(documents, paper.unwrap_or(Paper::A4), viewer);
    let pdf = typeset::render(&printable.data, &printable.drawings, None).map_err(|error| {
        Failure::Failed(say!(viewer.words(), "command-cannot-print", why = error.to_string()))
    })?;
    write_file(out, &pdf, viewer.words())
}

/// Writes a file that a command was asked for.
pub fn write_file(out: &Path, bytes: &[u8], words: &Words) -> Result<(), Failure> {
    std::fs::write(out, bytes).map_err(|error| {
        let file = out.display().to_string();
        Failure::Failed(say!(words, "command-cannot-write-file", file = file, why = error.to_string()))
    })
}

/// The names of sheets that were asked for.
pub fn asked(given: &ArgMatches) -> Vec<&str> {
    given.get_many::<String>("sheet").into_iter().flatten().map(String::as_str).collect()
}

/// The file that sheets are to be written to; `None` where none was asked for.
pub fn out(given: &ArgMatches) -> Option<&Path> {
    given.get_one::<PathBuf>("pdf").map(PathBuf::as_path)
}
