//! One file an outside source. Source and status stand beside each value.

mod brooding_handbooks;
mod daylength_almanac;
mod growers_arithmetic;
mod stocking_directives;
