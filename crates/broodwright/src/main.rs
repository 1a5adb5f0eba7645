//! The broodwright command.
fn main() {}
