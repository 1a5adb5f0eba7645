//! Half-filled forms: written over, deleted, and no part of the book.

use book::PersonId;
use serde_json::Value;

use crate::error::StoreError;

/// The most bytes of one draft as text: some thousand fields. Our judgement.
pub const DRAFT_BYTES_MAX: usize = 64 * 1024;

/// The most bytes of a draft's key. Our judgement.
pub const DRAFT_KEY_BYTES_MAX: usize = 200;

/// A half-filled form of a farm. All who may write at the farm share it.
#[derive(Clone, Debug, PartialEq)]
pub struct Draft {
    /// Which form it is, in the caller's words, such as `plan/1`.
    pub key: String,
    /// What was filled in.
    pub body: Value,
    /// Who wrote last.
    pub person: PersonId,
    /// When it was written last, in milliseconds since 1970-01-01 UTC by the caller's clock.
    pub updated_millis: i64,
}

/// A draft as its row holds it.
#[derive(Clone, Debug)]
pub(crate) struct Text {
    pub(crate) key: String,
    pub(crate) body: String,
    pub(crate) person: PersonId,
    pub(crate) updated_millis: i64,
}

impl Text {
    /// A draft to be kept, once key and size are found to be within bounds.
    ///
    /// # Errors
    /// `DraftKey` and `DraftTooLarge`.
    pub(crate) fn checked(
        key: &str,
        body: &Value,
        person: PersonId,
        updated_millis: i64,
    ) -> Result<Self, StoreError> {
        let (key, body) = (checked_key(key)?, body.to_string());
        if body.len() > DRAFT_BYTES_MAX {
            return Err(StoreError::DraftTooLarge { key, bytes: body.len(), limit: DRAFT_BYTES_MAX });
        }
        Ok(Self { key, body, person, updated_millis })
    }

    /// The draft in it. A text that is no longer JSON was changed by other hands.
    ///
    /// # Errors
    /// `Corrupt`.
    pub(crate) fn read(self) -> Result<Draft, StoreError> {
        let Self { key, body, person, updated_millis } = self;
        match serde_json::from_str(&body) {
            Ok(body) => Ok(Draft { key, body, person, updated_millis }),
            Err(error) => Err(StoreError::Corrupt { detail: format!("draft {key:?}: {error}") }),
        }
    }
}

/// A key that a draft can be filed under.
///
/// # Errors
/// `DraftKey`.
pub(crate) fn checked_key(key: &str) -> Result<String, StoreError> {
    if key.is_empty() || key.len() > DRAFT_KEY_BYTES_MAX || key.contains(char::is_control) {
        return Err(StoreError::DraftKey { key: key.chars().take(40).collect() });
    }
    Ok(key.to_owned())
}
