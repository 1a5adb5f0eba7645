//! The book: entries, versions, threads, and the fold into a state. Pure.

pub mod access;
pub mod encode;
pub mod entry;

pub use access::{Access, Role};
pub use encode::{DecodeError, EncodeError};
pub use entry::{
    Answer, BatchId, Body, DeviceId, Entry, EntryHash, EntryId, FarmId, HouseId, HybridClock, PersonId,
    StoredEntry, Subject,
};
