//! What the tests of this crate share: entries to build on, generated books, and an oracle to compare with.

mod bodies;
mod ends;
mod exchange;
pub(crate) mod generate;
pub(crate) mod luck;
pub(crate) mod make;
mod oracle;
mod property;
mod shares;
mod sums;
