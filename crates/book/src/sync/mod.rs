//! Exchange: the same protocol between two books and, made small, from a phone's queue to a server. Pure: messages and
//! states in, what is to be done out.
//!
//! # Two books
//!
//! Each end runs a [`Session`]. Either may greet ([`Session::hello`]); both tell how far they reach ([`Have`]), send what
//! the other lacks in bounded frames, and acknowledge a frame when it is on disk. All that is said stands by itself: said
//! twice, late or to an end that was started anew, it does no harm. So a session that was cut off is begun again, and a
//! server that keeps nothing between requests makes a new session for each request, greets nobody, hands it the messages
//! of the request one by one, and answers with all it was told to send.
//!
//! What a caller does:
//! 1. hands each session call the state of the book *as it is on disk*;
//! 2. does the [`Action`]s in order; a [`Action::Commit`] is answered by [`Session::committed`] after the disk has answered;
//! 3. reads what arrives by [`Message::decode_all`], and tells the session of what cannot be read;
//! 4. repeats ([`Session::again`]) when nothing is heard for a while, and begins a new session after a [`Failure`] that is not lasting, or
//!    after a [`Summary`] that is not even;
//! 5. writes as a newly minted device after a [`Cloned`] of its own.
//!
//! # A phone's queue
//!
//! A phone could compose whole entries in its own series, or send drafts that the server composes in a series it keeps for
//! the phone. **Drafts are the better way**, and [`take_drafts`] is made for them:
//! - a hash is taken over bytes. A script would have to write JSON byte for byte as this crate does, numbers included, and
//!   hash it, on pages without a certificate by a SHA-256 of its own. One differing byte, and every later entry of the phone
//!   is a broken chain for ever;
//! - a body holds canonical values beside what was typed. Only the server knows units and fields, and an old script in a
//!   browser's cache would write old bodies;
//! - a page cannot forge another person or device: both come from the access;
//! - what is lost is the chain of hashes on the phone itself. Until the server has taken a draft, the phone is the only
//!   witness anyway, and the draft's id already makes sending again harmless.
//!
//! The least client in a browser, some hundred lines of script, without script the form is posted as ever:
//! - each page that can be queued carries the book's [`BookState::seen`] as JSON;
//! - on submit it puts into the browser's own database: a UUID v7, what the form would have posted (the fields *as typed*),
//!   the page's `seen`, and `Date.now()`; then it shows "saved here";
//! - when there is signal, and each minute until the queue is empty, it posts the oldest drafts, at most [`DRAFTS_MAX`], in
//!   the order they were put down, one post at a time;
//! - the server reads each form as always, makes a [`Queued`] of it, calls [`take_drafts`], commits, and answers with an id
//!   and a [`Status::word`] for each;
//! - the phone forgets what is `written` or `already-taken` and shows "sent"; keeps and shows what is `refused` or
//!   `taken-otherwise`; gives a fresh UUID to what is `id-in-use`; leaves `not-yet` and all that was not answered.
//!
//! [`BookState::seen`]: crate::BookState::seen

mod frame;
mod have;
mod queue;
mod session;

pub use frame::{
    FRAME_BYTES_MAX, FRAME_ENTRIES_MAX, Frame, FrameError, HEAD_BYTES_MAX, MESSAGES_MAX, Message, PROTOCOL,
    SAME_PLACE_HASHES_MAX, SAME_PLACE_MAX, SamePlace, Say, TALK_BYTES_MAX, Taken, UnsaidError, Why,
};
pub use have::{DEVICES_MAX, Extent, Have, MARKS_MAX, Place};
pub use queue::{DRAFTS_MAX, Queued, Status, Taking, take_drafts};
pub use session::{Action, Cloned, End, Failure, Pace, Session, Summary};
