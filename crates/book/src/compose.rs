//! Writing: from what a person wants to put down to a stored entry with its place in the device's series.

use std::collections::BTreeMap;

use quantity::CivilDay;

use crate::access::{Access, Role};
use crate::encode::EncodeError;
use crate::entry::{Body, DeviceId, Entry, EntryHash, EntryId, HybridClock, StoredEntry, Subject};
use crate::kind::{KINDS, Kind};
use crate::shape::{ShapeError, check_shape_by};

/// Where a device's series stands: what its next entry has to follow.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct SeriesEnd {
    /// The sequence of its last entry.
    pub sequence: u64,
    /// The hash of its last entry.
    pub hash: EntryHash,
    /// The clock of its last entry.
    pub clock: HybridClock,
}

/// What an author had before them when they wrote: see [`crate::BookState::sight`].
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Sight {
    /// Of each device the highest sequence without a gap below it. The own device may be in it.
    pub seen: BTreeMap<DeviceId, u64>,
    /// The latest clock among what was seen.
    pub clock: Option<HybridClock>,
}

/// What somebody wants to put down.
#[derive(Clone, Debug, PartialEq)]
pub struct Draft {
    /// A fresh id. The same draft sent again keeps its id, so that it is written once.
    pub id: EntryId,
    /// The kind, by name.
    pub kind: String,
    /// What it is about.
    pub subject: Subject,
    /// The day it is about.
    pub day: CivilDay,
    /// The answers, in the current version of the kind.
    pub body: Body,
    /// What it puts right.
    pub supersedes: Vec<EntryId>,
    /// Whether it withdraws what it supersedes.
    pub withdrawn: bool,
    /// Why something is corrected or withdrawn.
    pub reason: Option<String>,
}

/// Why a draft was not written.
#[derive(Debug, thiserror::Error)]
pub enum ComposeError {
    /// Somebody who may only read.
    #[error("a {role:?} may not write")]
    MayNotWrite {
        /// What they are to the farm.
        role: Role,
    },
    /// A draft of impossible shape.
    #[error("field {} has an impossible shape: {reason}", .reason.field())]
    Shape {
        /// What is impossible about it.
        #[from]
        #[source]
        reason: ShapeError,
    },
    /// The device has written as many entries as can be counted.
    #[error("the series of the device is full")]
    SeriesFull,
    /// A draft that cannot be put into bytes.
    #[error(transparent)]
    Encode(#[from] EncodeError),
}

impl SeriesEnd {
    /// The end of a series whose last entry is this one.
    pub fn at(last: &StoredEntry) -> Self {
        Self { sequence: last.entry.sequence, hash: last.hash, clock: last.entry.clock }
    }
}

impl Draft {
    /// Something new.
    pub fn new(id: EntryId, kind: &str, subject: Subject, day: CivilDay, body: Body) -> Self {
        let kind = kind.to_owned();
        Self { id, kind, subject, day, body, supersedes: Vec::new(), withdrawn: false, reason: None }
    }

    /// The same thing put right: other answers in the place and on the day of the wrong ones.
    pub fn correction(id: EntryId, wrong: &Entry, body: Body) -> Self {
        Self { supersedes: vec![wrong.id], ..Self::new(id, &wrong.kind, wrong.subject, wrong.day, body) }
    }

    /// The thing taken back.
    pub fn withdrawal(id: EntryId, wrong: &Entry) -> Self {
        Self { withdrawn: true, ..Self::correction(id, wrong, Body::new()) }
    }
}

/// Writes a draft as the next entry of the device's series.
///
/// - `access`: whose farm, person and device it is written for
/// - `end`: the end of that device's series; `None` for its first entry
/// - `sight`: what the author had before them
/// - `now_millis`: the wall clock of the device, milliseconds since 1970; it may jump as it likes
///
/// # Errors
/// [`ComposeError`]; the series is as before and the draft can be put right and written again.
pub fn compose(
    access: &Access,
    end: Option<SeriesEnd>,
    draft: Draft,
    sight: &Sight,
    now_millis: i64,
) -> Result<StoredEntry, ComposeError> {
    compose_by(KINDS, access, end, draft, sight, now_millis)
}

/// Writes a draft by a table of kinds.
pub(crate) fn compose_by(
    kinds: &'static [Kind],
    access: &Access,
    end: Option<SeriesEnd>,
    draft: Draft,
    sight: &Sight,
    now_millis: i64,
) -> Result<StoredEntry, ComposeError> {
    if !access.may_write() {
        return Err(ComposeError::MayNotWrite { role: access.role() });
    }
    let last = end.map_or(0, |end| end.sequence);
    let entry = Entry {
        id: draft.id,
        farm: access.farm(),
        subject: draft.subject,
        day: draft.day,
        device: access.device(),
        sequence: last.checked_add(1).ok_or(ComposeError::SeriesFull)?,
        previous: end.map(|end| end.hash),
        clock: HybridClock::next(now_millis, end.map(|end| end.clock), sight.clock),
        person: access.person(),
        // An unknown kind has no version to write; the check of the shape refuses it.
        body_version: Kind::named(&draft.kind, kinds).map_or(1, Kind::body_version),
        kind: draft.kind,
        body: draft.body,
        supersedes: draft.supersedes,
        withdrawn: draft.withdrawn,
        reason: draft.reason,
        seen: seen_of_others(sight, access.device()),
    };
    check_shape_by(kinds, &entry)?;
    Ok(entry.encode()?)
}

/// What was seen of other devices. That an author has seen their own series goes without saying.
fn seen_of_others(sight: &Sight, own: DeviceId) -> BTreeMap<DeviceId, u64> {
    let others = sight.seen.iter().filter(|(device, sequence)| **device != own && **sequence > 0);
    others.map(|(device, sequence)| (*device, *sequence)).collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::trial::make::{self, FARM, Phone, note};

    #[test]
    fn entries_of_a_device_are_linked_one_to_the_next() {
        let mut phone = Phone::new(1);
        let first = phone.write(note(1, 0, "one"));
        let second = phone.write(note(2, 0, "two"));
        assert_eq!((first.entry.sequence, first.entry.previous), (1, None));
        assert_eq!((second.entry.sequence, second.entry.previous), (2, Some(first.hash)));
        assert_eq!(second.entry.farm, FARM);
        assert_eq!(second.entry.person, phone.access.person());
        assert_eq!(StoredEntry::decode(second.bytes.clone()).unwrap(), second);
    }

    #[test]
    fn an_entry_carries_what_its_author_had_seen_of_others() {
        let (mut one, mut other) = (Phone::new(1), Phone::new(2));
        one.write(note(1, 0, "one"));
        let last = one.write(note(2, 0, "two"));
        other.write(note(3, 0, "before they met"));
        other.hear(&one);
        let after = other.write(note(4, 0, "after they met"));
        assert_eq!(after.entry.seen, BTreeMap::from([(one.access.device(), 2)]));
        assert!(after.entry.clock > last.entry.clock);
    }

    #[test]
    fn clocks_of_a_series_grow_whatever_the_wall_clock_does() {
        let mut phone = Phone::new(1);
        let mut last = None;
        for (number, now_millis) in
            [5_000_000, 4_000_000, i64::MIN, 0, 9_000_000_000_000, 1].into_iter().enumerate()
        {
            phone.now_millis = now_millis;
            let stored = phone.write(note(number as u128 + 1, 0, "a note"));
            assert!(Some(stored.entry.clock) > last);
            last = Some(stored.entry.clock);
        }
    }

    #[test]
    fn a_phone_of_another_decade_pushes_nobody_but_what_it_wrote_before_does() {
        let (mut one, mut other) = (Phone::new(1), Phone::new(2));
        one.now_millis += 3_600_000;
        let sound = one.write(note(1, 0, "sound"));
        one.now_millis += 1_000_000_000_000;
        let astray = one.write(note(2, 0, "astray"));
        other.hear(&one);
        let answer = other.write(note(3, 0, "an answer"));
        assert!(answer.entry.clock > sound.entry.clock);
        assert!(answer.entry.clock < astray.entry.clock);
    }

    #[test]
    fn drafts_are_written_in_the_version_of_today() {
        let mut phone = Phone::new(1);
        assert_eq!(phone.write(make::house(1, 10.0)).entry.body_version, 2);
        assert_eq!(phone.write(note(2, 0, "a note")).entry.body_version, 1);
    }

    #[test]
    fn who_may_not_write_and_what_has_no_shape_is_refused() {
        let person = crate::entry::PersonId(uuid::Uuid::nil());
        let viewer = Access::granted(FARM, person, make::device(1), Role::Viewer);
        let refused =
            |access: &Access, draft| compose(access, None, draft, &Sight::default(), 0).unwrap_err();
        assert!(matches!(
            refused(&viewer, note(1, 0, "a note")),
            ComposeError::MayNotWrite { role: Role::Viewer }
        ));
        let helper = Phone::new(1).access;
        let unknown = Draft { kind: "hatchery".to_owned(), ..note(1, 0, "a note") };
        let refusal = refused(&helper, unknown);
        assert!(matches!(&refusal, ComposeError::Shape { reason } if reason.field() == "kind"), "{refusal}");
        let astray = Draft { subject: make::HOUSE, ..make::prices(1, 0, 80) };
        assert!(
            matches!(&refused(&helper, astray), ComposeError::Shape { reason } if reason.field() == "subject")
        );
    }

    #[test]
    fn a_full_series_takes_no_more() {
        let end = SeriesEnd {
            sequence: u64::MAX,
            hash: EntryHash::of(b""),
            clock: HybridClock { millis: 0, counter: 0 },
        };
        let access = Phone::new(1).access;
        let full = compose(&access, Some(end), note(1, 0, "a note"), &Sight::default(), 0);
        assert!(matches!(full, Err(ComposeError::SeriesFull)));
    }
}
