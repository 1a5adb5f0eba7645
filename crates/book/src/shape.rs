//! Impossible shapes, refused where an entry is written. A merge refuses nothing: what another program wrote is kept.
//!
//! This is about the form of an entry only. What a single answer may be (a length between 1 and 300 m) stands in the
//! table of fields, section [`Kind::section`], and is checked where the body is made of what was typed. What depends on
//! the rest of the book is a [`Kind::limit`].

use std::collections::BTreeSet;

use quantity::CivilDay;
use serde_json::Value;

use crate::clock::MAX_MILLIS;
use crate::entry::{DeviceId, Entry, EntryId};
use crate::kind::{About, KINDS, Kind};

/// The largest body, as JSON.
pub const MAX_BODY_BYTES: usize = 64 * 1024;
/// The longest key of a body.
pub const MAX_KEY_BYTES: usize = 64;
/// The longest reason.
pub const MAX_REASON_BYTES: usize = 2 * 1024;
/// How many entries one entry may supersede.
pub const MAX_SUPERSEDES: usize = 64;
/// How many devices an author may have seen.
pub const MAX_SEEN: usize = 4 * 1024;
/// The first year an entry can be about. Our judgement: what is older is a slip of the finger.
pub const FIRST_YEAR: i16 = 1900;
/// The last year an entry can be about. Our judgement.
pub const LAST_YEAR: i16 = 2199;

/// An entry of impossible shape: a mistake of the program that wants to write it.
#[derive(Clone, Debug, PartialEq, Eq, thiserror::Error)]
pub enum ShapeError {
    /// A kind that is not in the table of kinds.
    #[error("kind {kind} is not known")]
    UnknownKind {
        /// The kind.
        kind: String,
    },
    /// A version of the body that this program does not speak: 0, or newer than its own.
    #[error("body version {version} of kind {kind} is not between 1 and {newest}")]
    BodyVersion {
        /// The kind.
        kind: &'static str,
        /// The version.
        version: u16,
        /// The newest known.
        newest: u16,
    },
    /// A subject that the kind cannot be about, such as prices of a batch.
    #[error("kind {kind} is not about a {about:?}")]
    WrongSubject {
        /// The kind.
        kind: &'static str,
        /// The sort of subject.
        about: About,
    },
    /// A day outside the years that are taken.
    #[error("day {day} is not in the years {FIRST_YEAR} to {LAST_YEAR}")]
    Day {
        /// The day.
        day: CivilDay,
    },
    /// A sequence of 0.
    #[error("a series begins with 1, not with 0")]
    SequenceZero,
    /// The first of a series with a previous entry, or a later one without.
    #[error("entry {sequence} of a series {}", if *.has_previous { "has no previous entry" } else { "has a previous entry" })]
    Previous {
        /// Its place.
        sequence: u64,
        /// Whether it names a previous entry.
        has_previous: bool,
    },
    /// A clock outside the years 1970 to 9999.
    #[error("clock {millis} ms is not between 1970 and 9999")]
    Clock {
        /// The clock.
        millis: i64,
    },
    /// A key without a character in it.
    #[error("a key of the body is empty")]
    EmptyKey,
    /// A key that is too long.
    #[error("key {key} is longer than {MAX_KEY_BYTES} bytes")]
    LongKey {
        /// The key.
        key: String,
    },
    /// An answer without a value. A number that is not finite becomes one on its way into JSON.
    #[error("answer {key} has no value; was it a number that is not finite?")]
    NoValue {
        /// The key.
        key: String,
    },
    /// An answer that is no number, no word and no list of either.
    #[error("answer {key} is no number, no word and no list of either")]
    NotPlain {
        /// The key.
        key: String,
    },
    /// A body that is too large.
    #[error("a body of {bytes} bytes is larger than {MAX_BODY_BYTES}")]
    LargeBody {
        /// Its size.
        bytes: usize,
    },
    /// Too many superseded entries.
    #[error("superseding {count} entries is more than {MAX_SUPERSEDES}")]
    ManySuperseded {
        /// How many.
        count: usize,
    },
    /// An entry superseded twice over.
    #[error("an entry is superseded twice over")]
    SupersededTwice {
        /// The entry.
        id: EntryId,
    },
    /// An entry that supersedes itself.
    #[error("an entry supersedes itself")]
    SupersedesItself,
    /// A withdrawal of nothing.
    #[error("a withdrawal names nothing that it withdraws")]
    WithdrawsNothing,
    /// A withdrawal with answers.
    #[error("a withdrawal has a body")]
    WithdrawalWithBody,
    /// A reason without a word in it.
    #[error("the reason is blank; leave it out")]
    BlankReason,
    /// A reason that is too long.
    #[error("a reason of {bytes} bytes is longer than {MAX_REASON_BYTES}")]
    LongReason {
        /// Its size.
        bytes: usize,
    },
    /// More devices than a farm can have.
    #[error("{count} devices seen are more than {MAX_SEEN}")]
    ManySeen {
        /// How many.
        count: usize,
    },
    /// The own device, or a series of which nothing was seen, among what was seen.
    #[error("the author's own device, or nothing of a device, stands among what was seen")]
    SeenNothing {
        /// The device.
        device: DeviceId,
    },
}

impl ShapeError {
    /// The field of the entry that is at fault.
    pub fn field(&self) -> &'static str {
        match self {
            Self::UnknownKind { .. } => "kind",
            Self::BodyVersion { .. } => "body_version",
            Self::WrongSubject { .. } => "subject",
            Self::Day { .. } => "day",
            Self::SequenceZero => "sequence",
            Self::Previous { .. } => "previous",
            Self::Clock { .. } => "clock",
            Self::EmptyKey
            | Self::LongKey { .. }
            | Self::NoValue { .. }
            | Self::NotPlain { .. }
            | Self::LargeBody { .. }
            | Self::WithdrawalWithBody => "body",
            Self::ManySuperseded { .. }
            | Self::SupersededTwice { .. }
            | Self::SupersedesItself
            | Self::WithdrawsNothing => "supersedes",
            Self::BlankReason | Self::LongReason { .. } => "reason",
            Self::ManySeen { .. } | Self::SeenNothing { .. } => "seen",
        }
    }
}

/// Checks the shape of an entry that is about to be written.
///
/// # Errors
/// The first impossible thing about it.
pub fn check_shape(entry: &Entry) -> Result<(), ShapeError> {
    check_shape_by(KINDS, entry)
}

/// Checks the shape of an entry against a table of kinds.
pub(crate) fn check_shape_by(kinds: &'static [Kind], entry: &Entry) -> Result<(), ShapeError> {
    check_kind(kinds, entry)?;
    check_place(entry)?;
    check_body(entry)?;
    check_supersedes(entry)?;
    check_withdrawal(entry)?;
    check_seen(entry)
}

fn check_kind(kinds: &'static [Kind], entry: &Entry) -> Result<(), ShapeError> {
    let kind = Kind::named(&entry.kind, kinds)
        .ok_or_else(|| ShapeError::UnknownKind { kind: entry.kind.clone() })?;
    let newest = kind.body_version();
    if !(1..=newest).contains(&entry.body_version) {
        return Err(ShapeError::BodyVersion { kind: kind.name, version: entry.body_version, newest });
    }
    let about = About::of(entry.subject);
    if !kind.about.contains(&about) {
        return Err(ShapeError::WrongSubject { kind: kind.name, about });
    }
    Ok(())
}

fn check_place(entry: &Entry) -> Result<(), ShapeError> {
    if !(FIRST_YEAR..=LAST_YEAR).contains(&entry.day.year()) {
        return Err(ShapeError::Day { day: entry.day });
    }
    if entry.sequence == 0 {
        return Err(ShapeError::SequenceZero);
    }
    let has_previous = entry.previous.is_some();
    if has_previous != (entry.sequence > 1) {
        return Err(ShapeError::Previous { sequence: entry.sequence, has_previous });
    }
    if !(0..=MAX_MILLIS).contains(&entry.clock.millis) {
        return Err(ShapeError::Clock { millis: entry.clock.millis });
    }
    Ok(())
}

fn check_body(entry: &Entry) -> Result<(), ShapeError> {
    for (key, answer) in &entry.body {
        check_key(key)?;
        check_value(key, &answer.value)?;
    }
    // Bodies are small; writing one to count its bytes is cheaper than a counter of our own would be to read.
    let bytes = serde_json::to_vec(&entry.body).map_or(usize::MAX, |bytes| bytes.len());
    if bytes > MAX_BODY_BYTES {
        return Err(ShapeError::LargeBody { bytes });
    }
    Ok(())
}

fn check_key(key: &str) -> Result<(), ShapeError> {
    if key.trim().is_empty() {
        return Err(ShapeError::EmptyKey);
    }
    if key.len() > MAX_KEY_BYTES {
        return Err(ShapeError::LongKey { key: key.to_owned() });
    }
    Ok(())
}

/// A number, a word, or a list of either. JSON has no number that is not finite: it arrives as null.
fn check_value(key: &str, value: &Value) -> Result<(), ShapeError> {
    let items = match value {
        Value::Array(items) => items.as_slice(),
        single => std::slice::from_ref(single),
    };
    for item in items {
        match item {
            Value::Number(_) | Value::String(_) => {}
            Value::Null => return Err(ShapeError::NoValue { key: key.to_owned() }),
            Value::Bool(_) | Value::Array(_) | Value::Object(_) => {
                return Err(ShapeError::NotPlain { key: key.to_owned() });
            }
        }
    }
    Ok(())
}

fn check_supersedes(entry: &Entry) -> Result<(), ShapeError> {
    let count = entry.supersedes.len();
    if count > MAX_SUPERSEDES {
        return Err(ShapeError::ManySuperseded { count });
    }
    if entry.supersedes.contains(&entry.id) {
        return Err(ShapeError::SupersedesItself);
    }
    let mut once = BTreeSet::new();
    match entry.supersedes.iter().find(|id| !once.insert(**id)) {
        Some(id) => Err(ShapeError::SupersededTwice { id: *id }),
        None => Ok(()),
    }
}

fn check_withdrawal(entry: &Entry) -> Result<(), ShapeError> {
    if entry.withdrawn && entry.supersedes.is_empty() {
        return Err(ShapeError::WithdrawsNothing);
    }
    if entry.withdrawn && !entry.body.is_empty() {
        return Err(ShapeError::WithdrawalWithBody);
    }
    match &entry.reason {
        Some(reason) if reason.trim().is_empty() => Err(ShapeError::BlankReason),
        Some(reason) if reason.len() > MAX_REASON_BYTES => {
            Err(ShapeError::LongReason { bytes: reason.len() })
        }
        _ => Ok(()),
    }
}

fn check_seen(entry: &Entry) -> Result<(), ShapeError> {
    let count = entry.seen.len();
    if count > MAX_SEEN {
        return Err(ShapeError::ManySeen { count });
    }
    match entry.seen.iter().find(|(device, sequence)| **device == entry.device || **sequence == 0) {
        Some((device, _)) => Err(ShapeError::SeenNothing { device: *device }),
        None => Ok(()),
    }
}

#[cfg(test)]
mod tests {
    use std::collections::BTreeMap;

    use serde_json::json;
    use uuid::Uuid;

    use super::*;
    use crate::entry::{Answer, Body, EntryHash};
    use crate::trial::make;

    fn body(key: &str, value: Value) -> Body {
        BTreeMap::from([(key.to_owned(), Answer { typed: None, value })])
    }

    /// The field at fault after a change to an entry of good shape.
    fn fault(change: impl FnOnce(&mut Entry)) -> Option<ShapeError> {
        let mut entry = make::entry(1);
        assert_eq!(check_shape(&entry), Ok(()));
        change(&mut entry);
        check_shape(&entry).err()
    }

    #[test]
    fn each_impossible_shape_is_refused_by_name() {
        type Case = (&'static str, fn(&mut Entry));
        let cases: &[Case] = &[
            ("kind", |entry| entry.kind = "hatchery".to_owned()),
            ("body_version", |entry| entry.body_version = 0),
            ("body_version", |entry| entry.body_version = 2),
            ("subject", |entry| entry.kind = "plan-adopted".to_owned()),
            ("day", |entry| entry.day = CivilDay::new(27, 3, 14).unwrap()),
            ("sequence", |entry| entry.sequence = 0),
            ("previous", |entry| entry.sequence = 2),
            ("previous", |entry| entry.previous = Some(EntryHash::of(b"nothing"))),
            ("clock", |entry| entry.clock.millis = -1),
            ("clock", |entry| entry.clock.millis = MAX_MILLIS + 1),
            ("body", |entry| entry.body = body(" ", json!(1))),
            ("body", |entry| entry.body = body(&"k".repeat(MAX_KEY_BYTES + 1), json!(1))),
            ("body", |entry| entry.body = body("a", json!(f64::NAN))),
            ("body", |entry| entry.body = body("a", json!([1.0, f64::INFINITY]))),
            ("body", |entry| entry.body = body("a", json!({ "deep": 1 }))),
            ("body", |entry| entry.body = body("a", json!([[1]]))),
            ("body", |entry| entry.body = body("a", json!("x".repeat(MAX_BODY_BYTES)))),
            ("supersedes", |entry| {
                entry.supersedes = (0..=64).map(|n| EntryId(Uuid::from_u128(n))).collect()
            }),
            ("supersedes", |entry| entry.supersedes = vec![EntryId(Uuid::from_u128(9)); 2]),
            ("supersedes", |entry| entry.supersedes = vec![entry.id]),
            ("supersedes", |entry| (entry.withdrawn, entry.body) = (true, Body::new())),
            ("body", |entry| (entry.withdrawn, entry.supersedes) = (true, vec![EntryId(Uuid::from_u128(9))])),
            ("reason", |entry| entry.reason = Some(" \n".to_owned())),
            ("reason", |entry| entry.reason = Some("why ".repeat(MAX_REASON_BYTES))),
            ("seen", |entry| entry.seen = BTreeMap::from([(entry.device, 3)])),
            ("seen", |entry| entry.seen = BTreeMap::from([(DeviceId(Uuid::from_u128(9)), 0)])),
            ("seen", |entry| {
                entry.seen =
                    (0..=MAX_SEEN as u128).map(|n| (DeviceId(Uuid::from_u128(n + 100)), 1)).collect();
            }),
        ];
        for (at, (field, change)) in cases.iter().enumerate() {
            assert_eq!(fault(change).map(|error| error.field()), Some(*field), "case {at}");
        }
    }

    #[test]
    fn what_stands_on_the_edge_is_taken() {
        let just_fits = MAX_BODY_BYTES - r#"{"a":{"value":""}}"#.len();
        let edges: &[fn(&mut Entry)] = &[
            |entry| entry.supersedes = (100..164).map(|n| EntryId(Uuid::from_u128(n))).collect(),
            |entry| entry.body = body(&"k".repeat(MAX_KEY_BYTES), json!([1, "two", 3.5])),
            |entry| entry.body = Body::new(),
            |entry| entry.clock.millis = MAX_MILLIS,
            |entry| entry.day = CivilDay::new(LAST_YEAR, 12, 31).unwrap(),
        ];
        for change in edges {
            assert_eq!(fault(change), None);
        }
        assert_eq!(fault(|entry| entry.body = body("a", json!("x".repeat(just_fits)))), None);
        let one_more = fault(|entry| entry.body = body("a", json!("x".repeat(just_fits + 1))));
        assert_eq!(one_more, Some(ShapeError::LargeBody { bytes: MAX_BODY_BYTES + 1 }));
    }
}
