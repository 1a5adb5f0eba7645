//! What is likely from here: how heavy, how many, and how long the feed lasts, with bands that are honest.
//!
//! How honest they are is told by `cargo run --release --example outlook -p model`.

pub mod filter;
pub mod futures;
pub mod gompertz;
pub mod hazard;
pub mod learn;
pub mod spread;
