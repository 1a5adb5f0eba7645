#![doc = include_str!("../README.md")]

pub mod access;
pub mod clock;
pub mod compose;
pub mod days;
pub mod encode;
pub mod entry;
pub mod finding;
pub mod fold;
pub mod kind;
pub mod limit;
pub mod record;
mod series;
pub mod shape;
mod slot;
mod state;
pub mod sync;
pub mod tally;
mod thread;
#[cfg(test)]
mod trial;
pub mod upcast;

pub use access::{Access, Role};
pub use compose::{ComposeError, Draft, SeriesEnd, Sight, compose};
pub use days::Checkpoint;
pub use encode::{DecodeError, EncodeError};
pub use entry::{
    Answer, BatchId, Body, DeviceId, Entry, EntryHash, EntryId, FarmId, HouseId, HybridClock, PersonId,
    StoredEntry, Subject,
};
pub use finding::{Cause, Conflict, Fault, Finding};
pub use fold::{Appended, BookState, fold};
pub use kind::{About, Counting, KINDS, Kind, Slot, Span};
pub use record::Record;
pub use shape::{ShapeError, check_shape};
pub use tally::Tally;
