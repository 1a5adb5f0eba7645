#![doc = include_str!("../README.md")]

mod check;
mod draft;
mod error;
mod farm;
mod frame;
mod person;
pub mod postgres;
mod report;
mod row;
mod rules;
pub mod sqlite;
mod tally;

use std::collections::BTreeMap;
use std::path::Path;

use async_trait::async_trait;
use book::{Access, DeviceId, PersonId, SeriesEnd, StoredEntry};
use serde_json::Value;

pub use check::{Check, Damage, Damaged};
pub use draft::{DRAFT_BYTES_MAX, DRAFT_KEY_BYTES_MAX, Draft};
pub use error::StoreError;
pub use farm::Farm;
pub use frame::FrameLimit;
pub use person::NAME_BYTES_MAX;
pub use postgres::PostgresStore;
pub use report::{AppendReport, Clash, Reach};
pub use rules::ENTRY_BYTES_MAX;
pub use sqlite::SqliteStore;

/// A book on disk, whatever the engine.
///
/// All but the last four methods act on the farm of the access and on no other. None blocks the calling thread.
/// Any of them can fail for the engine's reasons: `Busy`, `DiskFull`, `Corrupt`, `Stopped`, `Unreachable`, `Sqlite`,
/// `Postgres`. Only further errors are told at the methods. A writing call keeps all or nothing.
#[async_trait]
pub trait Store: Send + Sync {
    /// Keeps entries as written, and answers when they are safe on disk. Sending them again is harmless.
    ///
    /// # Errors
    /// `Forbidden` to a viewer; `OtherFarm`, `UnknownFarm`, `EntryTooLarge`, `Unfileable`, with nothing kept.
    async fn append(&self, access: &Access, entries: Vec<StoredEntry>) -> Result<AppendReport, StoreError>;

    /// Every entry of the farm, by device, sequence and hash.
    ///
    /// # Errors
    /// `Damaged` naming the first damaged entry; [`Store::check`] reads the rest.
    async fn all(&self, access: &Access) -> Result<Vec<StoredEntry>, StoreError>;

    /// What the other side lacks, in the order of device and sequence, up to the limit; empty when it lacks nothing.
    ///
    /// `seen` says up to which sequence number of each device the other side has all. To go on, raise it to the highest
    /// sequence in the answer for each device, and ask again.
    ///
    /// # Errors
    /// `Damaged` naming the first damaged entry.
    async fn since(
        &self,
        access: &Access,
        seen: &BTreeMap<DeviceId, u64>,
        limit: FrameLimit,
    ) -> Result<Vec<StoredEntry>, StoreError>;

    /// The last entry of the access's device, which its next one follows, or `None` where it has not written yet. Where the
    /// device was cloned, the one with the least hash.
    async fn device_tip(&self, access: &Access) -> Result<Option<SeriesEnd>, StoreError>;

    /// How far the farm's book reaches.
    async fn reach(&self, access: &Access) -> Result<Reach, StoreError>;

    /// Reads every row, and keeps going at the damaged ones. Slow: for the hour after a bad day.
    async fn check(&self, access: &Access) -> Result<Check, StoreError>;

    /// Keeps a half-filled form unless a later one stands there already; says whether it was kept.
    ///
    /// # Errors
    /// `Forbidden` to a viewer; `UnknownFarm`, `DraftKey`, `DraftTooLarge`.
    async fn put_draft(
        &self,
        access: &Access,
        key: &str,
        body: &Value,
        updated_millis: i64,
    ) -> Result<bool, StoreError>;

    /// A half-filled form.
    async fn draft(&self, access: &Access, key: &str) -> Result<Option<Draft>, StoreError>;

    /// All half-filled forms of the farm, by key.
    async fn drafts(&self, access: &Access) -> Result<Vec<Draft>, StoreError>;

    /// Throws a half-filled form away; says whether there was one.
    ///
    /// # Errors
    /// `Forbidden` to a viewer.
    async fn delete_draft(&self, access: &Access, key: &str) -> Result<bool, StoreError>;

    /// Names a person, or names them anew.
    ///
    /// # Errors
    /// `Forbidden` to all but the owner and the person; `UnknownFarm`, `Name`; `Blanked` after [`Store::blank_person`].
    async fn put_person(&self, access: &Access, person: PersonId, name: &str) -> Result<(), StoreError>;

    /// The names known. Whoever is not in it was never named, or blanked.
    async fn person_names(&self, access: &Access) -> Result<BTreeMap<PersonId, String>, StoreError>;

    /// Forgets a person's name for good. The entries stay, under an id that says nothing.
    ///
    /// # Errors
    /// `Forbidden` to all but the owner and the person; `UnknownFarm`.
    async fn blank_person(&self, access: &Access, person: PersonId) -> Result<(), StoreError>;

    /// Every farm of the book, oldest first. Not for sessions: for the operator and the loopback.
    async fn farms(&self) -> Result<Vec<Farm>, StoreError>;

    /// Makes a farm; says whether it was new.
    async fn create_farm(&self, farm: Farm) -> Result<bool, StoreError>;

    /// The one farm of a grower's own book: the one that is there, or else `candidate`, made now. Two processes that ask
    /// at once get the same one.
    ///
    /// # Errors
    /// `SeveralFarms` in the book of a co-operative.
    async fn sole_farm(&self, candidate: Farm) -> Result<Farm, StoreError>;

    /// Copies the whole book to a new file by the engine's own call, while others go on writing. The file is complete, or
    /// is not there.
    ///
    /// # Errors
    /// `TargetExists`, `System`; `BackupElsewhere` on PostgreSQL, which has its own dump.
    async fn backup(&self, to: &Path) -> Result<(), StoreError>;
}
