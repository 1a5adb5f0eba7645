#![doc = include_str!("../README.md")]

mod batch;
mod batches;
mod farm;
mod ids;

use advice::plan_file::FileFault;
use book::{Access, ComposeError, Draft, HouseId, SeriesEnd, Sight, StoredEntry, compose};
use quantity::{Problem, Raw};

pub use ids::NOW_MILLIS;

/// Why the farm could not be made: a fault of ours.
#[derive(Debug, thiserror::Error)]
pub enum DemoError {
    /// A plan file does not read.
    #[error("a plan of the demo does not read: {0}")]
    File(#[from] FileFault),
    /// A plan does not hold.
    #[error("a plan of the demo does not hold: {problems:?}")]
    Plan {
        /// What does not.
        problems: Vec<Problem>,
    },
    /// A plan does not say something that a batch hangs on.
    #[error("a plan of the demo does not say {key}")]
    Unsaid {
        /// The field.
        key: &'static str,
    },
    /// What was invented does not pass the checks of a page.
    #[error("an invented {kind} does not hold: {problems:?}")]
    Entry {
        /// The kind of entry.
        kind: &'static str,
        /// What does not hold; empty where there is no such kind.
        problems: Vec<Problem>,
    },
}

/// The farm.
#[derive(Clone, Debug, PartialEq)]
pub struct Farm {
    /// Everything written, in the order of writing.
    pub written: Vec<Written>,
    /// The house of the next batch.
    pub next_house: HouseId,
    /// What is typed for the next batch, whose plan is not adopted.
    pub next: Vec<Raw>,
}

/// Something that was written at some time.
#[derive(Clone, Debug, PartialEq)]
pub struct Written {
    /// The clock of whoever wrote it, milliseconds since 1970 UTC.
    pub millis: i64,
    /// What was written.
    pub draft: Draft,
}

impl Farm {
    /// Mango Ridge, up to [`NOW_MILLIS`].
    ///
    /// # Errors
    /// [`DemoError`], each a fault of ours.
    pub fn mango_ridge() -> Result<Farm, DemoError> {
        let files = farm::Files::read()?;
        let mut written = files.drafts()?;
        for (at, row) in batches::BATCHES.iter().enumerate() {
            written.extend(batch::written(&files, row, at)?);
        }
        written.retain(|written| written.millis <= NOW_MILLIS);
        written.sort_by_key(|written| written.millis);
        Ok(Farm { written, next_house: ids::LOWER_HOUSE, next: files.next() })
    }

    /// All of it as the first entries of a device.
    ///
    /// # Errors
    /// [`ComposeError`] for who may not write, and for a shape that is a fault of ours.
    pub fn entries(&self, access: &Access) -> Result<Vec<StoredEntry>, ComposeError> {
        let mut end = None;
        let entry = |written: &Written| {
            let entry = compose(access, end, written.draft.clone(), &Sight::default(), written.millis)?;
            end = Some(SeriesEnd::at(&entry));
            Ok(entry)
        };
        self.written.iter().map(entry).collect()
    }
}
