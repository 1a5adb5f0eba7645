//! What every store does, whatever the engine. Each function gets a store with two empty farms.

pub mod append;
pub mod read;
pub mod side;
