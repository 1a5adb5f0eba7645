//! Reading what a person points at, with a bound: a file of any size must not fill the memory.

use std::fs::File;
use std::io::{self, BufRead, BufReader, Read};
use std::path::Path;

use advice::plan_file::{self, FileFault, LARGEST_FILE};
use advice::weather_file::{LONGEST_LINE, Reader, Weather, WeatherFault};
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

/// Weather by the hour, read line by line: years of it never lie in the memory as text.
pub fn weather(path: &Path, words: &Words) -> Result<Result<Weather, WeatherFault>, Failure> {
    lines_of_weather(path).map_err(|error| {
        let why = error.to_string();
        Failure::input(say!(words, "command-cannot-read", file = path.display().to_string(), why = why))
    })
}

fn lines_of_weather(path: &Path) -> io::Result<Result<Weather, WeatherFault>> {
    let mut file = BufReader::new(File::open(path)?);
    let (mut reader, mut line) = (Reader::default(), Vec::new());
    // Past the longest line by one, so that a longer one is seen to be so.
    let most = LONGEST_LINE as u64 + 2;
    while file.by_ref().take(most).read_until(b'\n', &mut line)? > 0 {
        // Names of places in old files are not always UTF-8; numbers always are.
        if let Err(fault) = reader.take(String::from_utf8_lossy(&line).trim_end_matches(['\r', '\n'])) {
            return Ok(Err(fault));
        }
        line.clear();
    }
    Ok(reader.end())
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
