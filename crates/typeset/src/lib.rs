#![doc = include_str!("../README.md")]

mod block;
mod columns;
mod day_grid;
mod error;
mod geometry;
mod press;
mod sheet;
mod world;

use std::collections::BTreeMap;

pub use error::TypesetError;

/// Drawings by the name a block calls them by; each is the text of an SVG file.
pub type Drawings = BTreeMap<String, String>;

/// A day as year, month (1 to 12) and day of the month.
pub type Day = (i32, u8, u8);

/// How many renders a cached result of the typesetter may go unused before it is dropped. None: a sheet is set from nothing
/// within its second, and what one sheet leaves is of no use to the next, while the results of two together held a third of a
/// gigabyte, those of ten a half.
const KEPT_RENDERS: usize = 0;

/// Sets a document and its drawings as a PDF.
///
/// - `document`: the data shape told in the crate's front page, every word ready for reading
/// - `drawings`: SVG texts; those that no block calls for are left out
/// - `created`: the day written into the file; without it the file carries no date
///
/// Equal input gives equal bytes, whatever was rendered before.
///
/// # Errors
/// [`TypesetError`] names the block, drawing or date at fault. Nothing is left out silently: an unknown
/// kind of block, an unknown field and a drawing that is not there are errors.
pub fn render(
    document: &serde_json::Value,
    drawings: &Drawings,
    created: Option<Day>,
) -> Result<Vec<u8>, TypesetError> {
    let sheet = sheet::Sheet::read(document)?;
    let used = sheet.drawings(drawings)?;
    let created = created.map(press::date).transpose()?;
    let pdf = press::Job::new(&sheet, used).press(created);
    comemo::evict(KEPT_RENDERS);
    pdf
}
