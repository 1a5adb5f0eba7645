//! The pages, one file each, and what they share.

pub(crate) mod answers;
pub(crate) mod before;
mod conflict;
pub(crate) mod form;
pub(crate) mod frame;
pub(crate) mod home;
pub(crate) mod style;
pub(crate) mod sums;
pub(crate) mod working;
