//! Kernels: one phenomenon a module, pure functions of typed quantities.
//!
//! A kernel knows no figure, no word and no file; it can be read beside the book it came from.

pub mod disinfectant;
pub mod guard;
pub mod light;
pub mod litter;
pub mod placing;
pub mod space;
