//! Threads that read. In write-ahead mode they wait for no writer, and no writer waits for them.

use std::sync::{Arc, Mutex, PoisonError};

use rusqlite::Connection;
use tokio::sync::mpsc;

use super::job::{self, Job};

/// The queue that all readers serve together.
pub(crate) type SharedQueue = Arc<Mutex<mpsc::Receiver<Job>>>;

/// Serves the shared queue until every sender is gone.
pub(crate) fn serve(db: &Connection, queue: &SharedQueue) {
    while let Some(next) = take(queue) {
        let (Job::Read(mut work) | Job::Write(mut work)) = next;
        let outcome = job::run(work.as_mut(), db);
        work.finish(outcome);
    }
}

/// Waits for a job. One reader waits at the queue, the others at its lock.
fn take(queue: &SharedQueue) -> Option<Job> {
    queue.lock().unwrap_or_else(PoisonError::into_inner).blocking_recv()
}
