//! What a phone sends of its queue, and what it is told.

use std::collections::BTreeMap;

use serde::{Deserialize, Serialize};
use serde_json::Value;
use uuid::Uuid;

/// What a queue is sent as. No form of a page can send it.
pub(crate) const QUEUE: &str = "application/json";

/// The most bytes of a queue that are looked at in one call.
pub(crate) const QUEUE_BYTES_MAX: usize = 1024 * 1024;

/// What a phone sends.
#[derive(Deserialize)]
pub(crate) struct Sent {
    /// The phone's key, which it made and shows to nobody else.
    pub(crate) phone: Uuid,
    /// The phone's clock as it sends, milliseconds since 1970.
    pub(crate) sent: i64,
    /// The oldest of what waits, in the order it was put down. One that cannot be read holds up no other.
    pub(crate) drafts: Vec<Value>,
}

/// A form that waited.
#[derive(Deserialize)]
pub(crate) struct Waiting {
    /// Its id, made on the phone.
    pub(crate) id: Uuid,
    /// The address that the form would have been sent to.
    pub(crate) to: String,
    /// What it would have sent, as typed.
    pub(crate) form: Vec<(String, String)>,
    /// How far of each device's series its author had seen: what stood in the page.
    pub(crate) seen: BTreeMap<Uuid, u64>,
    /// The phone's clock when it was put down, milliseconds since 1970.
    pub(crate) written: i64,
}

/// What the phone is told.
#[derive(Serialize)]
pub(crate) struct Told {
    /// Of each draft, in the order they were sent.
    pub(crate) drafts: Vec<Fate>,
    /// What is wrong with the phone's clock, in words.
    pub(crate) clock: Option<String>,
    /// Whether another phone goes by the same key: make a new one.
    pub(crate) copied: bool,
}

/// What became of a draft.
#[derive(Clone, Serialize)]
pub(crate) struct Fate {
    /// Its id; none where even that could not be read.
    pub(crate) id: Option<Uuid>,
    /// What became of it.
    pub(crate) word: Word,
    /// Why, in words for whoever wrote it.
    pub(crate) says: Vec<String>,
    /// Where to look.
    pub(crate) at: Option<String>,
}

/// What became of a draft, for the script.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub(crate) enum Word {
    /// It is in the book now.
    Written,
    /// It was in the book already, or the book says the same.
    Known,
    /// It is in the book, and so is what somebody else wrote in its place: somebody has to say which counts.
    Asked,
    /// It is unlikely, or wants a reason. It is not written, and its author is asked.
    Doubted,
    /// It does not hold. It is not written.
    Refused,
    /// Under its ids other words of this phone were written: it is a change of those.
    TakenOtherwise,
    /// Its ids are others' already: it needs fresh ones.
    IdInUse,
    /// It was not looked at: too many came at once.
    NotYet,
}
