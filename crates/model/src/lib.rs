//! Kernels: one phenomenon a module, pure functions of typed quantities.
//!
//! A kernel knows no figure, no word and no file; it can be read beside the book it came from.

pub mod bird_heat;
pub mod disinfectant;
pub mod guard;
pub mod heat;
pub mod light;
pub mod litter;
pub mod moist_air;
pub mod space;
