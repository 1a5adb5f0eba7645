//! Threads that read. In write-ahead mode they wait for no writer, and no writer waits for them.

use std::sync::{Arc, Mutex, PoisonError};

use rusqlite::Connection;
use tokio::sync::mpsc;

use super::crew::Crew;
use super::job::{self, Job};
use crate::error::StoreError;

type SharedQueue = Arc<Mutex<mpsc::Receiver<Job>>>;

/// A crew that reads, with a thread for each connection.
///
/// # Errors
/// `System`.
pub(crate) fn crew(connections: Vec<Connection>) -> Result<Crew, StoreError> {
    let (mut crew, queue) = Crew::new();
    let queue = Arc::new(Mutex::new(queue));
    for db in connections {
        let queue = Arc::clone(&queue);
        crew.join("book-reader", move || serve(&db, &queue))?;
    }
    Ok(crew)
}

/// Serves the shared queue until every sender is gone.
fn serve(db: &Connection, queue: &SharedQueue) {
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
