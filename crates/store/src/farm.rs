//! Farms as a book knows them: an id, and when it was made. All else about a farm is told by its entries.

use book::FarmId;

use crate::error::StoreError;

/// A farm a book holds.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Farm {
    /// Its id.
    pub id: FarmId,
    /// When it was made, in milliseconds since 1970-01-01 UTC by the caller's clock.
    pub created_millis: i64,
}

/// The one farm of a grower's own book, or `None` where it is still to be made.
///
/// # Errors
/// `SeveralFarms`.
pub(crate) fn sole(farms: &[Farm]) -> Result<Option<Farm>, StoreError> {
    match farms {
        [] => Ok(None),
        [farm] => Ok(Some(*farm)),
        many => Err(StoreError::SeveralFarms { count: many.len() }),
    }
}
