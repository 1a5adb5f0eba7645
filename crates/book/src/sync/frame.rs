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
