//! Reading what a person points at, with a bound: a file of any size must not fill the memory.

use std::fs::File;
use std::io::{self, Read};
use std::path::Path;

use advice::plan_file::{self, FileFault, LARGEST_FILE};
use present::{Words, fault, say};

use crate::failure::Failure;

/// The greatest export that is read: at a thousand bytes an entry, the entries of some hundred batches.
const LARGEST_EXPORT: u64 = 500_000_000;

/// All of an export, or of standard input for `-`.
pub fn all_bytes(path: &Path, words: &Words) -> Result<Vec<u8>, Failure> {
    let refused = |why: String| {
        Failure::input(say!(words, "command-cannot-read", file = path.display().to_string(), why = why))
    };
    let (bytes, size) = bytes(path, LARGEST_EXPORT).map_err(|error| refused(error.to_string()))?;
    let fault = FileFault::TooLarge { bytes: size, limit: LARGEST_EXPORT };
    if size > LARGEST_EXPORT { Err(refused(fault::file(&fault, words))) } else { Ok(bytes) }
}

/// Text of a file, or of standard input for `-`.
pub fn text(path: &Path, words: &Words) -> Result<String, Failure> {
    let (bytes, size) = bytes(path, LARGEST_FILE).map_err(|error| {
        let why = error.to_string();
        Failure::input(say!(words, "command-cannot-read", file = path.display().to_string(), why = why))
    })?;
    let in_file = |fault: FileFault| {
        let why = fault::file(&fault, words);
        Failure::input(say!(words, "command-in-file", file = path.display().to_string(), fault = why))
    };
    if size > LARGEST_FILE {
        return Err(in_file(FileFault::TooLarge { bytes: size, limit: LARGEST_FILE }));
    }
    plan_file::text_of(&bytes).map(str::to_owned).map_err(in_file)
}

/// The first bytes up to the limit and one more, and the size as far as it is known.
fn bytes(path: &Path, limit: u64) -> io::Result<(Vec<u8>, u64)> {
    let mut bytes = Vec::new();
    if path == Path::new("-") {
        io::stdin().lock().take(limit + 1).read_to_end(&mut bytes)?;
        let size = bytes.len() as u64;
        return Ok((bytes, size));
    }
    let file = File::open(path)?;
    let size = file.metadata()?.len();
    file.take(limit + 1).read_to_end(&mut bytes)?;
    let size = size.max(bytes.len() as u64);
    Ok((bytes, size))
}
