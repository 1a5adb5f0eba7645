//! Kernels: one phenomenon a module, pure functions of typed quantities.
//!
//! A kernel knows no figure, no word and no file; it can be read beside the book it came from.

pub mod air;
pub mod bird_heat;
pub mod budget;
pub mod buying;
pub mod catching;
pub mod causes;
pub mod chance;
pub mod counts;
pub mod curtain;
pub mod cusum;
pub mod deaths;
pub mod disinfectant;
pub mod drill;
pub mod feed;
pub mod flock;
pub mod growth;
pub mod guard;
pub mod heat;
pub mod learning;
pub mod light;
pub mod litter;
pub mod medicine;
pub mod moist_air;
pub mod orders;
pub mod outlook;
pub mod performance;
pub mod placing;
pub mod quantile;
pub mod risk;
pub mod scenarios;
pub mod scores;
mod search;
pub mod selling;
pub mod sensitivity;
mod simplex;
pub mod space;
pub mod surprise;
pub mod triggers;
pub mod uneven;
pub mod uneven_houses;
pub mod vaccine;
pub mod variance;
pub mod watching;
pub mod water;
pub mod weighing;
