//! The pages, one file each, and what they share.

pub(crate) mod air;
pub(crate) mod answers;
pub(crate) mod asset;
pub(crate) mod before;
pub(crate) mod boxes;
mod conflict;
pub(crate) mod entry;
pub(crate) mod form;
pub(crate) mod frame;
pub(crate) mod home;
pub(crate) mod kept;
pub(crate) mod paste;
pub(crate) mod phones;
pub(crate) mod settle;
pub(crate) mod sight;
pub(crate) mod sums;
pub(crate) mod today;
pub(crate) mod week;
pub(crate) mod weigh;
pub(crate) mod working;
pub(crate) mod write;
