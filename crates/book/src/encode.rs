//! Entries as bytes: one line of JSON each, with the keys in a fixed order, hashed as they stand.
//!
//! Reading is generous and rewriting never happens: a key, a kind or a body version from a newer program is left alone
//! in the bytes and goes on to the next book as it came. What a body holds may change from version to version; that it
//! is a map from keys to answers does not.

use std::fmt;

use serde::{Deserialize, Deserializer, Serialize, Serializer, de};
use sha2::{Digest, Sha256};

use crate::entry::{Entry, EntryHash, StoredEntry};

/// Bytes that cannot be read as an entry.
#[derive(Debug, thiserror::Error)]
pub enum DecodeError {
    /// A raw line break: most likely several entries, or one that was laid out for reading by some other program. It
    /// could not be a line of an export.
    #[error("an entry is one line, but a line breaks after {after_bytes} bytes")]
    LineBreak {
        /// How many bytes stand before the break.
        after_bytes: usize,
    },
    /// No JSON, or a key that every entry has is missing or of another form: most likely half a file.
    #[error("these bytes are no entry: {reason}")]
    Malformed {
        /// What the reader stumbled on.
        #[source]
        reason: serde_json::Error,
    },
}

/// An entry that cannot be put into bytes.
#[derive(Debug, thiserror::Error)]
#[error("the entry cannot be written as JSON: {reason}")]
pub struct EncodeError {
    /// What the writer stumbled on.
    #[source]
    pub reason: serde_json::Error,
}

impl Entry {
    /// Writes the entry as bytes and hashes them. From here on the bytes are the entry.
    ///
    /// # Errors
    /// [`EncodeError`], which no entry of legal shape provokes.
    pub fn encode(self) -> Result<StoredEntry, EncodeError> {
        let bytes = serde_json::to_vec(&self).map_err(|reason| EncodeError { reason })?;
        Ok(StoredEntry { hash: EntryHash::of(&bytes), entry: self, bytes })
    }
}

impl StoredEntry {
    /// Reads bytes that another device, book or export wrote, and keeps them as they are.
    ///
    /// # Errors
    /// [`DecodeError`] where they are no single line of JSON or lack what every entry has. Limits on shape are not
    /// checked here: they bind the writer, and a merge refuses nothing that can be read.
    pub fn decode(bytes: Vec<u8>) -> Result<StoredEntry, DecodeError> {
        if let Some(after_bytes) = bytes.iter().position(|byte| matches!(byte, b'\n' | b'\r')) {
            return Err(DecodeError::LineBreak { after_bytes });
        }
        let entry = serde_json::from_slice(&bytes).map_err(|reason| DecodeError::Malformed { reason })?;
        Ok(StoredEntry { entry, hash: EntryHash::of(&bytes), bytes })
    }
}

impl EntryHash {
    /// The hash of stored bytes.
    pub fn of(bytes: &[u8]) -> Self {
        Self(Sha256::digest(bytes).into())
    }

    /// Reads 64 hexadecimal digits, as [`fmt::Display`] writes them (lower case only, so that a hash has one spelling).
    pub fn parse(text: &str) -> Option<Self> {
        let digits = text.as_bytes();
        if digits.len() != 64 {
            return None;
        }
        let mut hash = [0; 32];
        for (byte, pair) in hash.iter_mut().zip(digits.chunks_exact(2)) {
            *byte = hex_digit(pair[0])? << 4 | hex_digit(pair[1])?;
        }
        Some(Self(hash))
    }
}

/// The value of a lower-case hexadecimal digit.
fn hex_digit(digit: u8) -> Option<u8> {
    match digit {
        b'0'..=b'9' => Some(digit - b'0'),
        b'a'..=b'f' => Some(digit - b'a' + 10),
        _ => None,
    }
}

impl fmt::Display for EntryHash {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        self.0.iter().try_for_each(|byte| write!(f, "{byte:02x}"))
    }
}

impl Serialize for EntryHash {
    fn serialize<S: Serializer>(&self, to: S) -> Result<S::Ok, S::Error> {
        to.collect_str(self)
    }
}

impl<'de> Deserialize<'de> for EntryHash {
    fn deserialize<D: Deserializer<'de>>(from: D) -> Result<Self, D::Error> {
        let text = String::deserialize(from)?;
        Self::parse(&text).ok_or_else(|| de::Error::custom("a hash is 64 lower-case hexadecimal digits"))
    }
}

#[cfg(test)]
mod tests {
    use std::collections::BTreeMap;

    use quantity::CivilDay;
    use serde_json::json;
    use uuid::Uuid;

    use super::*;
    use crate::entry::*;
    use crate::trial::luck::Luck;

    fn entry() -> Entry {
        Entry {
            id: EntryId(Uuid::from_u128(1)),
            farm: FarmId(Uuid::from_u128(2)),
            subject: Subject::House(HouseId(Uuid::from_u128(3))),
            day: CivilDay::new(2027, 3, 14).unwrap(),
            device: DeviceId(Uuid::from_u128(4)),
            sequence: 2,
            previous: Some(EntryHash::of(b"the first")),
            clock: HybridClock { millis: 1_805_000_000_000, counter: 3 },
            person: PersonId(Uuid::from_u128(5)),
            kind: "house".to_owned(),
            body_version: 2,
            body: BTreeMap::from([
                ("length_m".to_owned(), Answer { typed: Some("59 ft".to_owned()), value: json!(17.9832) }),
                ("roof".to_owned(), Answer { typed: None, value: json!("sheet-metal") }),
            ]),
            supersedes: vec![EntryId(Uuid::from_u128(6))],
            withdrawn: false,
            reason: Some("measured again\nwith a tape".to_owned()),
            seen: BTreeMap::from([(DeviceId(Uuid::from_u128(7)), 12)]),
        }
    }

    #[test]
    fn the_bytes_are_this_line() {
        let stored = entry().encode().unwrap();
        let line = concat!(
            r#"{"id":"00000000-0000-0000-0000-000000000001","farm":"00000000-0000-0000-0000-000000000002","#,
            r#""subject":{"house":"00000000-0000-0000-0000-000000000003"},"day":"2027-03-14","#,
            r#""device":"00000000-0000-0000-0000-000000000004","sequence":2,"#,
            r#""previous":"6fa2c9ea02d6b6cc4aeb86495d9a1beac7ebeba72023ebd2c1ec8564117f1c6e","#,
            r#""clock":{"millis":1805000000000,"counter":3},"person":"00000000-0000-0000-0000-000000000005","#,
            r#""kind":"house","body_version":2,"body":{"length_m":{"typed":"59 ft","value":17.9832},"#,
            r#""roof":{"value":"sheet-metal"}},"supersedes":["00000000-0000-0000-0000-000000000006"],"#,
            r#""reason":"measured again\nwith a tape","seen":{"00000000-0000-0000-0000-000000000007":12}}"#
        );
        assert_eq!(String::from_utf8(stored.bytes).unwrap(), line);
    }

    #[test]
    fn bytes_read_back_as_the_same_entry() {
        let stored = entry().encode().unwrap();
        assert_eq!(StoredEntry::decode(stored.bytes.clone()).unwrap(), stored);
    }

    #[test]
    fn numbers_read_back_to_the_last_bit() {
        // Without serde_json's float_roundtrip some of these come back one bit off.
        let mut luck = Luck::new(1);
        let numbers: Vec<f64> = (0..300).map(|power| luck.next() as f64 / 3_f64.powi(power)).collect();
        let mut written = entry();
        written.body.insert("numbers".to_owned(), Answer { typed: None, value: json!(numbers) });
        let read = StoredEntry::decode(written.encode().unwrap().bytes).unwrap();
        let back: Vec<f64> = serde_json::from_value(read.entry.body["numbers"].value.clone()).unwrap();
        for (back, number) in back.iter().zip(&numbers) {
            assert_eq!(back.to_bits(), number.to_bits());
        }
        assert_eq!(back.len(), 300);
    }

    #[test]
    fn what_a_newer_program_wrote_is_kept_to_the_byte() {
        let line = String::from_utf8(entry().encode().unwrap().bytes).unwrap();
        let newer = line
            .replace(
                r#""kind":"house","body_version":2"#,
                r#""kind":"hatchery","mood":[1, 2],"body_version":900"#,
            )
            .replace(r#""value":17.9832"#, r#""value":{"low":17,"high":18},"sure":0.9"#);
        let stored = StoredEntry::decode(newer.clone().into_bytes()).unwrap();
        assert_eq!(stored.bytes, newer.as_bytes());
        assert_eq!(stored.hash, EntryHash::of(newer.as_bytes()));
        assert_eq!((stored.entry.kind.as_str(), stored.entry.body_version), ("hatchery", 900));
    }

    #[test]
    fn half_a_line_and_two_lines_are_told_apart() {
        let bytes = entry().encode().unwrap().bytes;
        let half = StoredEntry::decode(bytes[..bytes.len() / 2].to_vec());
        assert!(matches!(half, Err(DecodeError::Malformed { .. })));
        let two = [bytes.as_slice(), b"\n", bytes.as_slice()].concat();
        let broken = StoredEntry::decode(two);
        assert!(matches!(broken, Err(DecodeError::LineBreak { after_bytes }) if after_bytes == bytes.len()));
    }

    #[test]
    fn a_hash_has_one_spelling() {
        // SHA-256 of "abc": FIPS 180-4, as printed in its example.
        let hash = EntryHash::of(b"abc");
        let text = "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad";
        assert_eq!(hash.to_string(), text);
        assert_eq!(EntryHash::parse(text), Some(hash));
        assert_eq!(EntryHash::parse(&text.to_uppercase()), None);
        assert_eq!(EntryHash::parse(&text[..62]), None);
    }
}
