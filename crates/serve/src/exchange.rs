//! One end of an exchange of books that has its book on disk: does what a session asks for, in order, and tells it of a
//! commit only after the disk has answered.

use std::collections::VecDeque;

use book::sync::{Action, End, Failure, Message, Pace, Session, Summary, UnsaidError};
use book::{Access, DeviceId, StoredEntry};
use store::{Store, StoreError};

use crate::desk::Desk;

/// Why an exchange stopped at this end.
#[derive(Debug, thiserror::Error)]
pub enum ExchangeError {
    /// The book could not be read or written.
    #[error(transparent)]
    Store(#[from] StoreError),
    /// A message could not be put in bytes: a fault of ours.
    #[error(transparent)]
    Unsaid(#[from] UnsaidError),
}

/// What hearing the other end has led to. All of it is on disk.
#[derive(Debug, Default)]
pub struct Heard {
    /// What is to be sent back, one message after the other.
    pub to_send: Vec<u8>,
    /// How many entries were new here.
    pub added: usize,
    /// How many entries no store files.
    pub unfit: usize,
    /// This end's own device, where another book writes as the same: go on under a new one
    /// ([`crate::Loopback::on_a_new_device`]).
    pub copied: Option<DeviceId>,
    /// What the session came to, where it is over.
    pub done: Option<Summary>,
    /// Why it is over before its time.
    pub failed: Option<Failure>,
}

/// An end with its session. A server makes a new one for each request.
pub struct Exchange<'a> {
    desk: &'a Desk,
    store: &'a dyn Store,
    access: Access,
    session: Session,
}

impl<'a> Exchange<'a> {
    /// A new session for whoever has access.
    ///
    /// Frames are made for a poor line: side by side they cost a few more requests, at the edge of the net a cut costs one.
    pub fn new(desk: &'a Desk, store: &'a dyn Store, access: Access) -> Self {
        let end = End {
            farm: access.farm(),
            device: access.device(),
            takes: access.may_write(),
            pace: Pace::POOR_LINE,
        };
        Self { desk, store, access, session: Session::new(end) }
    }

    /// Greets the other end.
    ///
    /// # Errors
    /// [`ExchangeError`].
    pub async fn greet(&mut self) -> Result<Heard, ExchangeError> {
        let open = self.desk.open(self.store, &self.access).await?;
        let hello = self.session.hello(&open.state);
        self.act(vec![hello]).await
    }

    /// Says again what was not answered.
    ///
    /// # Errors
    /// [`ExchangeError`].
    pub async fn again(&mut self) -> Result<Heard, ExchangeError> {
        let open = self.desk.open(self.store, &self.access).await?;
        let actions = self.session.again(&open.state);
        self.act(actions).await
    }

    /// Hears what the other end sent, whatever it is, and puts on disk what is new of it.
    ///
    /// # Errors
    /// [`ExchangeError`]; what was committed before stays.
    pub async fn hear(&mut self, bytes: &[u8]) -> Result<Heard, ExchangeError> {
        let messages = match Message::decode_all(bytes) {
            Ok(messages) => messages,
            Err(error) => {
                let actions = self.session.unreadable(&error);
                return self.act(actions).await;
            }
        };
        let mut heard = Heard::default();
        for message in messages {
            let open = self.desk.open(self.store, &self.access).await?;
            let actions = self.session.on(message, &open.state);
            heard.join(self.act(actions).await?);
        }
        Ok(heard)
    }

    /// Does what the session asks for.
    async fn act(&mut self, actions: Vec<Action>) -> Result<Heard, ExchangeError> {
        let mut actions = VecDeque::from(actions);
        let mut heard = Heard::default();
        while let Some(action) = actions.pop_front() {
            match action {
                Action::Send(message) => heard.to_send.extend(message.encode()?),
                Action::Commit(entries) => {
                    let taken = self.desk.take_in(self.store, &self.access, entries).await?;
                    (heard.added, heard.unfit) = (heard.added + taken.added, heard.unfit + taken.unfit);
                    let open = self.desk.open(self.store, &self.access).await?;
                    actions.extend(self.session.committed(&open.state));
                }
                Action::Cloned(cloned) if cloned.is_own => heard.copied = Some(self.access.device()),
                Action::Cloned(_) => {}
                Action::Done(summary) => heard.done = Some(summary),
                Action::Failed(failure) => heard.failed = Some(failure),
            }
        }
        Ok(heard)
    }
}

impl Heard {
    fn join(&mut self, next: Heard) {
        self.to_send.extend(next.to_send);
        self.added += next.added;
        self.unfit += next.unfit;
        self.copied = next.copied.or(self.copied);
        self.done = next.done.or(self.done);
        self.failed = next.failed.or(self.failed);
    }
}

/// The entries without one that no store files.
pub(crate) fn without_unfit(
    mut entries: Vec<StoredEntry>,
    error: StoreError,
) -> Result<Vec<StoredEntry>, StoreError> {
    match error {
        StoreError::EntryTooLarge { entry, .. } | StoreError::Unfileable { entry, .. } => {
            entries.retain(|stored| stored.entry.id != entry);
            Ok(entries)
        }
        error => Err(error),
    }
}
