//! Work handed to a thread that owns a connection, and the way its answer comes back.

use std::panic::{AssertUnwindSafe, catch_unwind};

use rusqlite::Connection;
use tokio::sync::oneshot;

use crate::error::StoreError;

/// One piece of work.
pub(crate) enum Job {
    /// Runs alone, in no transaction of ours.
    Read(Box<dyn Work>),
    /// Runs in a transaction, perhaps together with others, and is answered after the commit.
    Write(Box<dyn Work>),
}

/// Work on a connection. It may run twice, when the transaction it shared with others failed.
pub(crate) trait Work: Send {
    /// Does it, and keeps the answer.
    fn run(&mut self, db: &Connection) -> Result<(), StoreError>;
    /// Gives the answer, or the error that came instead.
    fn finish(self: Box<Self>, outcome: Result<(), StoreError>);
}

/// Runs one piece of work. A panic in it must not end the thread and with it all later work.
pub(crate) fn run(work: &mut dyn Work, db: &Connection) -> Result<(), StoreError> {
    catch_unwind(AssertUnwindSafe(|| work.run(db))).unwrap_or(Err(StoreError::Panicked))
}

/// Work for whose answer someone waits.
pub(crate) struct Asked<T, F> {
    work: F,
    done: Option<T>,
    reply: oneshot::Sender<Result<T, StoreError>>,
}

impl<T, F> Asked<T, F> {
    pub(crate) fn new(work: F, reply: oneshot::Sender<Result<T, StoreError>>) -> Self {
        Self { work, done: None, reply }
    }
}

impl<T, F> Work for Asked<T, F>
where
    T: Send,
    F: Fn(&Connection) -> Result<T, StoreError> + Send,
{
    fn run(&mut self, db: &Connection) -> Result<(), StoreError> {
        self.done = Some((self.work)(db)?);
        Ok(())
    }

    fn finish(self: Box<Self>, outcome: Result<(), StoreError>) {
        let Self { done, reply, .. } = *self;
        // Whoever asked may have gone away meanwhile; what was written stays written.
        let _ = reply.send(outcome.and_then(|()| done.ok_or(StoreError::Stopped)));
    }
}
