//! The one place that reads the clock.

use std::time::{SystemTime, UNIX_EPOCH};

/// The wall clock, milliseconds since 1970 UTC.
pub fn now() -> i64 {
    let since = SystemTime::now().duration_since(UNIX_EPOCH).unwrap_or_default();
    i64::try_from(since.as_millis()).unwrap_or(i64::MAX)
}
