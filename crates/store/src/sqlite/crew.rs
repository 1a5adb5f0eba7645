//! Threads that serve one queue, and end when it is dropped.

use std::thread::{self, JoinHandle};

use rusqlite::Connection;
use tokio::sync::{mpsc, oneshot};

use super::job::{Asked, Job, Work};
use crate::error::StoreError;

/// How many jobs may wait. Whoever brings one more waits with it, without blocking.
const QUEUE: usize = 1024;

/// The threads of a queue. Dropping it lets them finish what waits, and waits for them.
pub(crate) struct Crew {
    /// Absent only while it is dropped.
    queue: Option<mpsc::Sender<Job>>,
    threads: Vec<JoinHandle<()>>,
}

impl Crew {
    /// A crew without threads yet, and the queue that its threads are to serve.
    pub(crate) fn new() -> (Self, mpsc::Receiver<Job>) {
        let (sender, receiver) = mpsc::channel(QUEUE);
        (Self { queue: Some(sender), threads: Vec::new() }, receiver)
    }

    /// A crew of one thread.
    ///
    /// # Errors
    /// `System`.
    pub(crate) fn of_one(
        name: &str,
        serve: impl FnOnce(mpsc::Receiver<Job>) + Send + 'static,
    ) -> Result<Self, StoreError> {
        let (mut crew, queue) = Self::new();
        crew.join(name, move || serve(queue))?;
        Ok(crew)
    }

    /// Adds a thread.
    ///
    /// # Errors
    /// `System`.
    pub(crate) fn join(
        &mut self,
        name: &str,
        serve: impl FnOnce() + Send + 'static,
    ) -> Result<(), StoreError> {
        let thread = thread::Builder::new().name(name.to_owned()).spawn(serve);
        self.threads
            .push(thread.map_err(|source| StoreError::System { doing: "starting a thread", source })?);
        Ok(())
    }

    /// Hands work to the threads and waits for the answer without blocking.
    pub(crate) async fn ask<T, F>(&self, job: fn(Box<dyn Work>) -> Job, work: F) -> Result<T, StoreError>
    where
        T: Send + 'static,
        F: Fn(&Connection) -> Result<T, StoreError> + Send + 'static,
    {
        let queue = self.queue.as_ref().ok_or(StoreError::Stopped)?;
        let (reply, answer) = oneshot::channel();
        queue.send(job(Box::new(Asked::new(work, reply)))).await.map_err(|_| StoreError::Stopped)?;
        answer.await.map_err(|_| StoreError::Stopped)?
    }
}

impl Drop for Crew {
    fn drop(&mut self) {
        self.queue = None;
        for thread in self.threads.drain(..) {
            // A panic of the thread was told to whoever asked.
            let _ = thread.join();
        }
    }
}
