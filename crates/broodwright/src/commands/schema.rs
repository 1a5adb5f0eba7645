//! `schema`: the JSON schema of everything the program sends.

use crate::failure::Failure;

/// Prints all schemas by name.
pub fn run() -> Result<(), Failure> {
    super::print_json(&present::view::schemas())
}
