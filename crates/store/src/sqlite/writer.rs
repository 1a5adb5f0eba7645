//! The one thread that writes. It commits all that waits in one transaction, because a commit costs the disk's time, not
//! the entry's; each is answered after the commit.

use rusqlite::{Connection, TransactionBehavior};
use tokio::sync::mpsc;

use super::job::{self, Job, Work};
use crate::error::StoreError;

/// The most jobs of one transaction, so that the first of them does not wait for ever.
const GROUP_MAX: usize = 1024;

/// Serves the queue until every sender is gone.
pub(crate) fn serve(mut db: Connection, mut queue: mpsc::Receiver<Job>) {
    while let Some(first) = queue.blocking_recv() {
        let mut waiting = Some(first);
        while let Some(next) = waiting.take() {
            match next {
                Job::Read(mut work) => {
                    let outcome = job::run(work.as_mut(), &db);
                    work.finish(outcome);
                }
                Job::Write(work) => {
                    let (group, after) = gather(work, &mut queue);
                    commit_group(&mut db, group);
                    waiting = after;
                }
            }
        }
    }
}

/// The writes that wait now, and the job after them where it is none.
fn gather(first: Box<dyn Work>, queue: &mut mpsc::Receiver<Job>) -> (Vec<Box<dyn Work>>, Option<Job>) {
    let mut group = vec![first];
    while group.len() < GROUP_MAX {
        match queue.try_recv() {
            Ok(Job::Write(work)) => group.push(work),
            Ok(read) => return (group, Some(read)),
            Err(_) => break,
        }
    }
    (group, None)
}

/// Commits a group. Where one of it fails, each is tried alone, so that one bad write does not sink the good ones.
fn commit_group(db: &mut Connection, mut group: Vec<Box<dyn Work>>) {
    match commit(db, &mut group) {
        Ok(()) => group.into_iter().for_each(|work| work.finish(Ok(()))),
        // Trying each alone would make each wait as long again for the other process.
        Err(StoreError::Busy) => group.into_iter().for_each(|work| work.finish(Err(StoreError::Busy))),
        Err(error) => match <[_; 1]>::try_from(group) {
            Ok([alone]) => alone.finish(Err(error)),
            Err(group) => group.into_iter().for_each(|work| commit_group(db, vec![work])),
        },
    }
}

fn commit(db: &mut Connection, group: &mut [Box<dyn Work>]) -> Result<(), StoreError> {
    let transaction = db.transaction_with_behavior(TransactionBehavior::Immediate)?;
    for work in group {
        job::run(work.as_mut(), &transaction)?;
    }
    Ok(transaction.commit()?)
}
