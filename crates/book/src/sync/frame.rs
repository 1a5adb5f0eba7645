//! What goes over the line, as bytes.
//!
//! A message is one line of JSON; the entries it carries follow as the lines they are stored as, byte for byte, each
//! closed by a line break. A request or an answer may hold several messages, one after the other. The first line tells
//! how many lines and bytes follow, so that a piece that was cut off is told from a whole one.
//!
//! Reading is total: whatever the bytes, it ends in messages or in a [`FrameError`].

use serde::{Deserialize, Serialize};

use super::have::{DEVICES_MAX, Have, MARKS_MAX, Place};
use crate::entry::{DeviceId, EntryHash, FarmId};

/// The version of the protocol that this program speaks.
pub const PROTOCOL: u16 = 1;
/// The most bytes of a message's own line: room for [`DEVICES_MAX`] devices at 735 bytes each, the longest a device with
/// its reach and marks takes, and for [`SAME_PLACE_MAX`] clashes. A farm with ten devices needs some kilobytes.
pub const HEAD_BYTES_MAX: usize = 832 * 1024;
/// The most entries of a message that are taken. A reader holds a message in memory as a whole.
pub const FRAME_ENTRIES_MAX: usize = 256;
/// The most bytes of entries in a message that are taken, their line breaks counted: the largest entry a store files is
/// 1 MiB.
pub const FRAME_BYTES_MAX: usize = 1024 * 1024 + 1;
/// The most messages in one request or answer: what an end says at once are a greeting, entries, and up to two
/// acknowledgements; twice that leaves room for repeats.
pub const MESSAGES_MAX: usize = 8;
/// The most bytes of one request or answer: of what an end says at once, three messages carry no entries.
pub const TALK_BYTES_MAX: usize = 4 * HEAD_BYTES_MAX + FRAME_BYTES_MAX;
/// The most clashes told in one acknowledgement. The rest is told when the entries come again, and by the fold anyway.
pub const SAME_PLACE_MAX: usize = 64;
/// The most hashes told of one such place: a device is copied once or twice, so that more are a forgery.
pub const SAME_PLACE_HASHES_MAX: usize = 16;

/// A message with its sender.
#[derive(Clone, Debug, PartialEq)]
pub struct Message {
    /// The farm whose book it is about.
    pub farm: FarmId,
    /// The device the sender writes as.
    pub device: DeviceId,
    /// What is said.
    pub say: Say,
}

/// What an end says to the other. Each of them stands by itself, so that it does no harm when it comes twice, late, or
/// to an end that has forgotten all that was said before.
#[derive(Clone, Debug, PartialEq)]
pub enum Say {
    /// How far the sender's book reaches. Whoever hears it sends what is lacking.
    Hello {
        /// How far.
        have: Have,
        /// Whether the sender wants to be told the same.
        asks: bool,
    },
    /// Entries, or that there are no more.
    Entries(Frame),
    /// What a frame has led to, said after the commit and never before.
    Taken(Taken),
    /// The other end will not be listened to.
    Refused {
        /// Why.
        why: Why,
    },
}

/// A bounded number of entries.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Frame {
    /// The entries as stored, without line breaks.
    pub lines: Vec<Vec<u8>>,
    /// The place of the last of them; none where there are none.
    pub through: Option<Place>,
    /// Whether more follow. Where not, the sender has sent all that was lacking.
    pub more: bool,
}

/// The acknowledgement of a frame.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
pub struct Taken {
    /// How far the book reaches now, on disk. Only what is within it may be forgotten by whoever sent it.
    pub have: Have,
    /// Repeated from the frame, so that the sender can go on after it without having kept anything.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub through: Option<Place>,
    /// Repeated from the frame.
    pub more: bool,
    /// Places of a device's series that hold several entries: the device was cloned. All of them are kept.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub same_place: Vec<SamePlace>,
    /// How many entries of the frame were left out, being of another farm or unreadable here.
    #[serde(default)]
    pub left_out: usize,
}

/// A place in a device's series that holds several entries.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
pub struct SamePlace {
    /// The device.
    pub device: DeviceId,
    /// The place.
    pub sequence: u64,
    /// What stands there, ascending; the first [`SAME_PLACE_HASHES_MAX`].
    pub hashes: Vec<EntryHash>,
}

/// Why an end does not listen.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Why {
    /// The book is another farm's.
    OtherFarm,
    /// The message is of another version of the protocol.
    Version {
        /// The version that is spoken here.
        speaks: u16,
    },
    /// More than is taken at once.
    TooLarge,
    /// Not readable: most likely cut off on the way, and worth another try.
    Unreadable,
    /// Entries were sent by somebody who may only read.
    ReadOnly,
}

impl Why {
    /// Whether trying again is of no use.
    pub fn is_lasting(self) -> bool {
        !matches!(self, Self::Unreadable)
    }
}

/// Bytes that are no message.
#[derive(Debug, thiserror::Error)]
pub enum FrameError {
    /// More than is taken.
    #[error("{count} {what} are more than {limit}")]
    TooLarge {
        /// What there is too much of.
        what: &'static str,
        /// How much there is.
        count: usize,
        /// How much is taken.
        limit: usize,
    },
    /// A newer or older protocol.
    #[error("protocol {found} is not {PROTOCOL}")]
    Version {
        /// The version found.
        found: u16,
    },
    /// No JSON, or not the keys of a message.
    #[error("these bytes are no message: {reason}")]
    Malformed {
        /// What the reader stumbled on.
        #[source]
        reason: serde_json::Error,
    },
    /// Entries that do not come to the lines and bytes that the message tells of: most likely a piece was cut off.
    #[error("the entries of the message are cut off")]
    Cut,
}

/// A head that cannot be written as JSON, which no message provokes.
#[derive(Debug, thiserror::Error)]
#[error("the message cannot be written as JSON: {reason}")]
pub struct UnsaidError {
    /// What the writer stumbled on.
    #[source]
    pub reason: serde_json::Error,
}

impl FrameError {
    /// What the sender is told.
    pub fn why(&self) -> Why {
        match self {
            Self::TooLarge { .. } => Why::TooLarge,
            Self::Version { .. } => Why::Version { speaks: PROTOCOL },
            Self::Malformed { .. } | Self::Cut => Why::Unreadable,
        }
    }
}

/// The version, which is read before all else: of a message of another version nothing more is known.
#[derive(Deserialize)]
struct Version {
    sync: u16,
}

/// The first line of a message.
#[derive(Serialize, Deserialize)]
struct Head {
    sync: u16,
    farm: FarmId,
    device: DeviceId,
    say: HeadSay,
}

#[derive(Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
enum HeadSay {
    Hello {
        have: Have,
        asks: bool,
    },
    Entries {
        lines: usize,
        bytes: usize,
        #[serde(default, skip_serializing_if = "Option::is_none")]
        through: Option<Place>,
        more: bool,
    },
    Taken(Taken),
    Refused {
        why: Why,
    },
}

impl Message {
    /// Writes the message as bytes.
    ///
    /// # Errors
    /// [`UnsaidError`], which no message provokes.
    pub fn encode(&self) -> Result<Vec<u8>, UnsaidError> {
        let say = self.say.head();
        let head = Head { sync: PROTOCOL, farm: self.farm, device: self.device, say };
        let mut bytes = serde_json::to_vec(&head).map_err(|reason| UnsaidError { reason })?;
        bytes.push(b'\n');
        if let Say::Entries(frame) = &self.say {
            frame.lines.iter().for_each(|line| {
                bytes.extend_from_slice(line);
                bytes.push(b'\n');
            });
        }
        Ok(bytes)
    }

    /// Reads the messages of a request or an answer. No bytes are no messages.
    ///
    /// # Errors
    /// [`FrameError`] at the first that is none; what stands before it is not given, for the sender says it all again.
    pub fn decode_all(mut bytes: &[u8]) -> Result<Vec<Message>, FrameError> {
        let mut messages = Vec::new();
        while !bytes.is_empty() {
            within("messages", messages.len() + 1, MESSAGES_MAX)?;
            let (message, rest) = Self::decode(bytes)?;
            messages.push(message);
            bytes = rest;
        }
        Ok(messages)
    }

    /// Reads one message, and gives what stands behind it.
    fn decode(bytes: &[u8]) -> Result<(Message, &[u8]), FrameError> {
        let end = bytes.iter().take(HEAD_BYTES_MAX + 1).position(|byte| *byte == b'\n');
        let Some(end) = end else {
            within("bytes of a first line", bytes.len(), HEAD_BYTES_MAX)?;
            return Err(FrameError::Cut);
        };
        let (line, rest) = (&bytes[..end], &bytes[end + 1..]);
        let malformed = |reason| FrameError::Malformed { reason };
        let Version { sync } = serde_json::from_slice(line).map_err(malformed)?;
        if sync != PROTOCOL {
            return Err(FrameError::Version { found: sync });
        }
        let Head { farm, device, say, .. } = serde_json::from_slice(line).map_err(malformed)?;
        let (say, rest) = say.with_lines(rest)?;
        Ok((Message { farm, device, say }, rest))
    }
}

impl Say {
    fn head(&self) -> HeadSay {
        match self {
            Self::Hello { have, asks } => HeadSay::Hello { have: have.clone(), asks: *asks },
            Self::Entries(frame) => HeadSay::Entries {
                lines: frame.lines.len(),
                bytes: frame.lines.iter().map(|line| line.len() + 1).sum(),
                through: frame.through,
                more: frame.more,
            },
            Self::Taken(taken) => HeadSay::Taken(taken.clone()),
            Self::Refused { why } => HeadSay::Refused { why: *why },
        }
    }
}

impl HeadSay {
    /// Adds the lines that belong to it, and gives what stands behind them.
    fn with_lines(self, rest: &[u8]) -> Result<(Say, &[u8]), FrameError> {
        let say = match self {
            Self::Entries { lines: count, bytes, through, more } => {
                let (lines, rest) = lines(rest, count, bytes)?;
                return Ok((Say::Entries(Frame { lines, through, more }), rest));
            }
            Self::Hello { have, asks } => Say::Hello { have: few(have)?, asks },
            Self::Taken(taken) => {
                within("clashes", taken.same_place.len(), SAME_PLACE_MAX)?;
                Say::Taken(Taken { have: few(taken.have)?, ..taken })
            }
            Self::Refused { why } => Say::Refused { why },
        };
        Ok((say, rest))
    }
}

/// So many lines that make up so many bytes, and what stands behind them.
fn lines(rest: &[u8], count: usize, bytes: usize) -> Result<(Vec<Vec<u8>>, &[u8]), FrameError> {
    within("entries", count, FRAME_ENTRIES_MAX)?;
    within("bytes of entries", bytes, FRAME_BYTES_MAX)?;
    let (own, rest) = rest.split_at_checked(bytes).ok_or(FrameError::Cut)?;
    let lines: Vec<Vec<u8>> = own.split_inclusive(|byte| *byte == b'\n').map(<[u8]>::to_vec).collect();
    let is_whole = lines.len() == count && lines.last().is_none_or(|line| line.ends_with(b"\n"));
    if !is_whole {
        return Err(FrameError::Cut);
    }
    let without_break = |mut line: Vec<u8>| {
        line.pop();
        line
    };
    Ok((lines.into_iter().map(without_break).collect(), rest))
}

fn few(have: Have) -> Result<Have, FrameError> {
    within("devices", have.0.len(), DEVICES_MAX)?;
    let marks = have.0.values().map(|extent| extent.marks.len()).max().unwrap_or_default();
    within("marks", marks, MARKS_MAX as usize)?;
    Ok(have)
}

fn within(what: &'static str, count: usize, limit: usize) -> Result<(), FrameError> {
    if count > limit { Err(FrameError::TooLarge { what, count, limit }) } else { Ok(()) }
}

#[cfg(test)]
mod tests {
    use std::collections::BTreeMap;

    use super::*;
    use crate::sync::Extent;
    use crate::trial::luck::Luck;
    use crate::trial::make::{self, FARM};

    fn message(say: Say) -> Message {
        Message { farm: FARM, device: make::device(1), say }
    }

    fn have() -> Have {
        let print = EntryHash::of(b"print");
        let extent = Extent { sequence: 7, print, marks: BTreeMap::from([(3, 1 << 40), (5, 2)]) };
        Have(BTreeMap::from([(make::device(2), extent)]))
    }

    fn frame() -> Frame {
        // Bytes that are no text, as an odd program may have left them, go over the line like any others.
        let lines = vec![make::entry(1).encode().unwrap().bytes, b" {\"odd\": \"\xff\"} ".to_vec()];
        let through = Place { device: make::device(1), sequence: 1, hash: EntryHash::of(b"last") };
        Frame { lines, through: Some(through), more: true }
    }

    fn one_of_each() -> Vec<Message> {
        let same_place =
            vec![SamePlace { device: make::device(2), sequence: 3, hashes: vec![EntryHash::of(b"one")] }];
        let taken = Taken { have: have(), same_place, through: frame().through, more: true, left_out: 1 };
        let says = [
            Say::Hello { have: have(), asks: true },
            Say::Entries(frame()),
            Say::Entries(Frame::default()),
            Say::Taken(taken),
            Say::Taken(Taken::default()),
            Say::Refused { why: Why::Version { speaks: 1 } },
            Say::Refused { why: Why::OtherFarm },
        ];
        says.into_iter().map(message).collect()
    }

    fn bytes_of(messages: &[Message]) -> Vec<u8> {
        messages.iter().flat_map(|message| message.encode().unwrap()).collect()
    }

    /// What is wrong with the bytes; all the while nothing may panic.
    fn why(bytes: &[u8]) -> Option<Why> {
        Message::decode_all(bytes).err().map(|error| error.why())
    }

    #[test]
    fn messages_come_back_as_they_were_byte_for_byte() {
        let all = one_of_each();
        assert_eq!(Message::decode_all(&bytes_of(&all)).unwrap(), all);
        assert_eq!(Message::decode_all(b"").unwrap(), []);
    }

    #[test]
    fn the_bytes_are_these() {
        let hello = message(Say::Hello { have: Have::default(), asks: true });
        let empty = message(Say::Entries(Frame::default()));
        let head = concat!(
            r#"{"sync":1,"farm":"00000000-0000-0000-0000-0000000000fa","#,
            r#""device":"00000000-0000-0000-0000-000000d00001","say":"#
        );
        let lines = [
            format!(r#"{head}{{"hello":{{"have":{{}},"asks":true}}}}}}"#),
            format!(r#"{head}{{"entries":{{"lines":0,"bytes":0,"more":false}}}}}}"#),
        ];
        assert_eq!(String::from_utf8(bytes_of(&[hello, empty])).unwrap(), lines.join("\n") + "\n");
    }

    #[test]
    fn a_message_cut_off_anywhere_is_no_message() {
        for message in one_of_each() {
            let bytes = message.encode().unwrap();
            for end in 1..bytes.len() {
                assert_eq!(why(&bytes[..end]), Some(Why::Unreadable), "cut off after {end}");
            }
        }
    }

    #[test]
    fn bytes_changed_at_random_end_in_messages_or_in_an_error() {
        let mut luck = Luck::new(1);
        let good = bytes_of(&one_of_each());
        let mut read = 0;
        for _ in 0..3_000 {
            let mut bytes = good.clone();
            for _ in 0..1 + luck.below(4) {
                let at = luck.below(bytes.len());
                match luck.below(3) {
                    0 => bytes[at] = luck.next() as u8,
                    1 => drop(bytes.remove(at)),
                    _ => bytes.insert(at, *luck.pick(b"\"{}[]:,0-\n\\e")),
                }
            }
            read += usize::from(Message::decode_all(&bytes).is_ok());
        }
        assert!((1..1_500).contains(&read), "{read} of 3000 were still readable");
    }

    #[test]
    fn what_is_too_much_is_refused_before_it_is_looked_at() {
        let many = vec![message(Say::Hello { have: have(), asks: false }); MESSAGES_MAX + 1];
        assert_eq!(why(&bytes_of(&many[1..])), None);
        assert_eq!(why(&bytes_of(&many)), Some(Why::TooLarge));
        assert_eq!(why(&vec![b' '; HEAD_BYTES_MAX + 1]), Some(Why::TooLarge));
        let lines = |lines| why(&message(Say::Entries(Frame { lines, ..frame() })).encode().unwrap());
        assert_eq!(lines(vec![b"{}".to_vec(); FRAME_ENTRIES_MAX]), None);
        assert_eq!(lines(vec![b"{}".to_vec(); FRAME_ENTRIES_MAX + 1]), Some(Why::TooLarge));
        assert_eq!(lines(vec![vec![b' '; FRAME_BYTES_MAX - 1]]), None);
        assert_eq!(lines(vec![vec![b' '; FRAME_BYTES_MAX]]), Some(Why::TooLarge));
        let clash = SamePlace { device: make::device(2), sequence: 3, hashes: Vec::new() };
        let same_place = vec![clash; SAME_PLACE_MAX + 1];
        let taken = Taken { same_place, ..Taken::default() };
        assert_eq!(why(&message(Say::Taken(taken)).encode().unwrap()), Some(Why::TooLarge));
    }

    #[test]
    fn the_largest_reach_fits_into_a_first_line() {
        let extent = || Extent {
            sequence: u64::MAX,
            print: EntryHash::of(b""),
            marks: (1..MARKS_MAX).map(|back| (u64::MAX - back, (1 << 48) - 1)).collect(),
        };
        let reach = |devices: usize| {
            let have = Have((0..devices as u128).map(|number| (make::device(number), extent())).collect());
            why(&message(Say::Hello { have, asks: true }).encode().unwrap())
        };
        assert_eq!(reach(DEVICES_MAX), None);
        assert_eq!(reach(DEVICES_MAX + 1), Some(Why::TooLarge));
    }

    #[test]
    fn another_version_is_told_from_rubbish() {
        assert_eq!(why(b"{\"sync\":2,\"new\":[]}\n"), Some(Why::Version { speaks: 1 }));
        assert_eq!(why(b"{\"sync\":1,\"new\":[]}\n"), Some(Why::Unreadable));
        assert_eq!(
            why(&[b'['; 100_000].iter().copied().chain(*b"\n").collect::<Vec<u8>>()),
            Some(Why::Unreadable)
        );
    }
}
