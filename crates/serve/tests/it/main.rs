//! Every page, in process, over a book in memory or in a file.

#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic)]

mod absurd;
mod adopt;
mod apart;
mod batch;
mod cache;
mod calendar;
mod folded;
mod guards;
mod print;
mod queue;
mod rig;
mod save;
mod sums;
mod sync;
mod tidy;
mod words;
