//! The hybrid logical clock: wall-clock time as far as it can be trusted, and order where it cannot.
//!
//! A device's own clock never goes back, whatever its wall clock does. It is pushed forward by what its author had seen,
//! so that an answer to an entry bears a later clock than the entry. A clock far in the future is bounded in its effect,
//! in three ways:
//!
//! - it does not spread: a clock more than [`MAX_LEAD_MILLIS`] ahead of the reader's own wall clock pushes nobody;
//! - it cannot outrank knowledge: what was superseded or seen is settled by that, not by clocks;
//! - what is left to it is the order of entries of one kind within one day, and the provisional winner of a conflict
//!   that is shown and asked about anyway.
//!
//! The device itself keeps its too-late clock for its own later entries, since its series must not go back. Minting a new
//! device ends that.

use crate::entry::HybridClock;

/// How far ahead of the own wall clock another device's clock may be and still push it: one day, so that a phone set to
/// a wrong time zone is followed and one set to a wrong year is not. Our judgement.
pub const MAX_LEAD_MILLIS: i64 = 24 * 60 * 60 * 1000;

/// The end of the year 9999 UTC, in milliseconds since 1970.
pub const MAX_MILLIS: i64 = 253_402_300_799_999;

impl HybridClock {
    /// The latest clock that a device whose wall clock shows `now_millis` lets itself be pushed by.
    pub fn latest_trusted(now_millis: i64) -> Self {
        Self { millis: now_millis.saturating_add(MAX_LEAD_MILLIS), counter: u32::MAX }
    }

    /// The clock of the next entry: later than `own`, the clock of the device's previous entry, and later than `seen`,
    /// the latest clock its author had seen, unless that is too far ahead of `now_millis`, the wall clock in milliseconds
    /// since 1970 (taken into the span from 1970 to 9999 where it is outside).
    pub fn next(now_millis: i64, own: Option<Self>, seen: Option<Self>) -> Self {
        let now = now_millis.clamp(0, MAX_MILLIS);
        let seen = seen.filter(|seen| *seen <= Self::latest_trusted(now));
        match own.max(seen) {
            Some(last) if last.millis >= now => last.after(),
            _ => Self { millis: now, counter: 0 },
        }
    }

    /// The very next clock.
    fn after(self) -> Self {
        match self.counter.checked_add(1) {
            Some(counter) => Self { counter, ..self },
            None => Self { millis: self.millis.saturating_add(1), counter: 0 },
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    const NOON: i64 = 1_800_000_000_000;

    fn clock(millis: i64, counter: u32) -> HybridClock {
        HybridClock { millis, counter }
    }

    #[test]
    fn time_that_moves_on_is_taken_as_it_is() {
        assert_eq!(HybridClock::next(NOON, None, None), clock(NOON, 0));
        assert_eq!(
            HybridClock::next(NOON, Some(clock(NOON - 1, 7)), Some(clock(NOON - 5, 9))),
            clock(NOON, 0)
        );
    }

    #[test]
    fn a_phone_set_back_counts_on() {
        assert_eq!(HybridClock::next(NOON - 3_600_000, Some(clock(NOON, 7)), None), clock(NOON, 8));
        assert_eq!(HybridClock::next(i64::MIN, Some(clock(NOON, 7)), None), clock(NOON, 8));
        assert_eq!(HybridClock::next(NOON, Some(clock(NOON, u32::MAX)), None), clock(NOON + 1, 0));
    }

    #[test]
    fn an_answer_is_later_than_what_it_answers() {
        let seen = clock(NOON + MAX_LEAD_MILLIS, 2);
        assert_eq!(HybridClock::next(NOON, Some(clock(NOON - 9, 0)), Some(seen)), clock(seen.millis, 3));
    }

    #[test]
    fn a_clock_of_another_year_pushes_nobody() {
        let seen = clock(NOON + MAX_LEAD_MILLIS + 1, 0);
        assert_eq!(HybridClock::next(NOON, Some(clock(NOON, 1)), Some(seen)), clock(NOON, 2));
        assert_eq!(HybridClock::next(NOON, None, Some(clock(i64::MAX, u32::MAX))), clock(NOON, 0));
    }

    #[test]
    fn a_wall_clock_outside_the_calendar_is_taken_into_it() {
        assert_eq!(HybridClock::next(-5, None, None), clock(0, 0));
        assert_eq!(HybridClock::next(i64::MAX, None, None), clock(MAX_MILLIS, 0));
    }
}
