//! The book in memory, one state a farm: folded once, then carried on entry by entry after the store has acknowledged.

use std::collections::HashMap;
use std::sync::{Arc, Mutex, PoisonError};

use book::{Access, BookState, ComposeError, Draft, FarmId, SeriesEnd, StoredEntry, compose, fold};
use store::{AppendReport, Reach, Store, StoreError};

use crate::exchange::without_unfit;

/// A farm's book as it was at some reach.
#[derive(Clone, Debug)]
pub struct Open {
    /// What counts.
    pub state: BookState,
    /// How far the book reached.
    pub reach: Reach,
}

/// The books of all farms met so far. The pages have one, and so has a command.
#[derive(Default)]
pub struct Desk {
    farms: Mutex<HashMap<FarmId, Arc<Farm>>>,
}

#[derive(Default)]
struct Farm {
    open: Mutex<Option<Arc<Open>>>,
    /// Held from reading to acknowledging, so that entries of this process follow each other.
    writing: tokio::sync::Mutex<()>,
}

/// Why entries were not written.
#[derive(Debug, thiserror::Error)]
pub enum WriteError {
    /// The store.
    #[error(transparent)]
    Store(#[from] StoreError),
    /// The shape of an entry.
    #[error(transparent)]
    Compose(#[from] ComposeError),
}

/// What became of entries that were written elsewhere.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) struct TakenIn {
    /// How many are new here.
    pub(crate) added: usize,
    /// How many no store files.
    pub(crate) unfit: usize,
}

/// What became of a write.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Written {
    /// Whether another process wrote in the same place of this device's series: go on under a new device
    /// ([`crate::Loopback::on_a_new_device`]).
    pub device_was_copied: bool,
}

impl Desk {
    fn farm(&self, id: FarmId) -> Arc<Farm> {
        let mut farms = self.farms.lock().unwrap_or_else(PoisonError::into_inner);
        Arc::clone(farms.entry(id).or_default())
    }

    /// The book as it stands, read anew when another process has written.
    ///
    /// # Errors
    /// The store's, `Damaged` among them.
    pub async fn open(&self, store: &dyn Store, access: &Access) -> Result<Arc<Open>, StoreError> {
        self.farm(access.farm()).open(store, access).await
    }

    /// Writes what `drafts` makes of the book as it stands, all or nothing, and answers when it is safe on disk.
    ///
    /// # Errors
    /// The store's; and [`ComposeError`] where a draft is of a shape that cannot be.
    pub async fn write(
        &self,
        store: &dyn Store,
        access: &Access,
        now_millis: i64,
        drafts: impl FnOnce(&BookState) -> Vec<Draft> + Send,
    ) -> Result<Written, WriteError> {
        let farm = self.farm(access.farm());
        let _others_wait = farm.writing.lock().await;
        let open = farm.open(store, access).await?;
        let drafts = drafts(&open.state);
        if drafts.is_empty() {
            return Ok(Written { device_was_copied: false });
        }
        let entries = composed(store, access, &open.state, drafts, now_millis).await?;
        let report = store.append(access, entries.clone()).await?;
        farm.carry_on(open, entries, &report, store.reach(access).await?);
        Ok(Written { device_was_copied: !report.same_place.is_empty() })
    }

    /// Writes what `make` composes of the book as it stands and puts into it, all or nothing, and answers when it is safe on
    /// disk; says besides whether another process wrote in the same place of the device's series.
    ///
    /// - `make`: is handed the book to be, and gives the entries that it put in and what it has to say
    pub(crate) async fn compose<T: Send>(
        &self,
        store: &dyn Store,
        access: &Access,
        make: impl FnOnce(&mut Arc<Open>) -> (Vec<StoredEntry>, T) + Send,
    ) -> Result<(T, Written), StoreError> {
        let farm = self.farm(access.farm());
        let _others_wait = farm.writing.lock().await;
        let before = farm.open(store, access).await?;
        let mut working = Arc::clone(&before);
        let (entries, said) = make(&mut working);
        if entries.is_empty() {
            return Ok((said, Written { device_was_copied: false }));
        }
        let report = store.append(access, entries).await?;
        let reach = store.reach(access).await?;
        if reach.entries == before.reach.entries + report.added as u64 {
            let working = Arc::unwrap_or_clone(working);
            farm.put(Arc::new(Open { state: working.state, reach }));
        }
        Ok((said, Written { device_was_copied: !report.same_place.is_empty() }))
    }

    /// Takes in entries that were written elsewhere, all or nothing but those that no store files, and answers when they are
    /// safe on disk.
    pub(crate) async fn take_in(
        &self,
        store: &dyn Store,
        access: &Access,
        mut entries: Vec<StoredEntry>,
    ) -> Result<TakenIn, StoreError> {
        let farm = self.farm(access.farm());
        let _others_wait = farm.writing.lock().await;
        let open = farm.open(store, access).await?;
        let sent = entries.len();
        let report = loop {
            match store.append(access, entries.clone()).await {
                Ok(report) => break report,
                Err(error) => entries = without_unfit(entries, error)?,
            }
        };
        let taken = TakenIn { added: report.added, unfit: sent - entries.len() };
        farm.carry_on(open, entries, &report, store.reach(access).await?);
        Ok(taken)
    }
}

impl Farm {
    async fn open(&self, store: &dyn Store, access: &Access) -> Result<Arc<Open>, StoreError> {
        let reach = store.reach(access).await?;
        let known = self.known();
        if let Some(open) = known.filter(|open| open.reach == reach) {
            return Ok(open);
        }
        // What is written between the two calls is in the state but not in the reach: then the next call reads anew.
        let state = fold(access.farm(), store.all(access).await?);
        let open = Arc::new(Open { state, reach });
        self.put(Arc::clone(&open));
        Ok(open)
    }

    fn known(&self) -> Option<Arc<Open>> {
        self.open.lock().unwrap_or_else(PoisonError::into_inner).clone()
    }

    fn put(&self, open: Arc<Open>) {
        *self.open.lock().unwrap_or_else(PoisonError::into_inner) = Some(open);
    }

    /// Takes in what was just written, unless others wrote meanwhile: then the next call reads everything anew.
    fn carry_on(&self, before: Arc<Open>, entries: Vec<StoredEntry>, report: &AppendReport, reach: Reach) {
        let mut open = self.open.lock().unwrap_or_else(PoisonError::into_inner);
        let Some(known) = open.as_mut().filter(|known| Arc::ptr_eq(known, &before)) else { return };
        let follows = reach.entries == before.reach.entries + report.added as u64;
        // Let go of first, so that the book is carried on where it lies and copied only while a page is being made of it.
        drop(before);
        if follows {
            let known = Arc::make_mut(known);
            known.state.append_all(entries);
            known.reach = reach;
        }
    }
}

async fn composed(
    store: &dyn Store,
    access: &Access,
    state: &BookState,
    drafts: Vec<Draft>,
    now_millis: i64,
) -> Result<Vec<StoredEntry>, WriteError> {
    let sight = state.sight(now_millis);
    let tip = store.device_tip(access).await?;
    let mut end = tip.map(|tip| SeriesEnd { sequence: tip.sequence, hash: tip.hash, clock: tip.clock });
    let mut entries = Vec::with_capacity(drafts.len());
    for draft in drafts {
        let entry = compose(access, end, draft, &sight, now_millis)?;
        end = Some(SeriesEnd::at(&entry));
        entries.push(entry);
    }
    Ok(entries)
}
