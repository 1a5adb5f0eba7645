//! Names of persons, apart from the book so that they can be blanked.

use book::{Access, PersonId, Role};

use crate::error::StoreError;

/// The most bytes of a name. Our judgement.
pub const NAME_BYTES_MAX: usize = 200;

/// The owner names anyone, all others only themselves.
pub(crate) fn may_name(access: &Access, person: PersonId) -> Result<(), StoreError> {
    if access.role() == Role::Owner || access.person() == person {
        return Ok(());
    }
    Err(StoreError::Forbidden { role: access.role() })
}

/// A name that can be kept and shown.
pub(crate) fn checked(name: &str) -> Result<&str, StoreError> {
    let name = name.trim();
    if name.is_empty() || name.len() > NAME_BYTES_MAX || name.contains(char::is_control) {
        return Err(StoreError::Name { bytes: name.len() });
    }
    Ok(name)
}
