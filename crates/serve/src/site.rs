//! What every request shares: the book, the tables in front of it, and the shell's clock and ids.

use std::sync::Arc;

use advice::plan;
use book::{Access, BookState, DeviceId};
use present::Viewer;
use quantity::Source;
use store::Store;
use tokio::sync::Semaphore;
use uuid::Uuid;

use crate::day;
use crate::desk::{Desk, Open};
use crate::network::Network;
use crate::network::joining::Invitation;
use crate::session::{Loopback, Session};
use crate::shelf::Shelf;
use crate::trouble::Trouble;
use advice::body;

/// How many sheets are set at once: more would only take memory, there are few cores on a farm.
const PRINTS_AT_ONCE: usize = 1;

/// What the shell hands over.
#[derive(Clone)]
pub struct SiteOptions {
    /// Who serves themselves over the loopback address.
    pub loopback: Loopback,
    /// Whether the book is an invented one, which every page then says.
    pub demo: bool,
    /// The program's version, shown at the foot of each page.
    pub version: String,
    /// The wall clock, milliseconds since 1970 UTC.
    pub now: fn() -> i64,
    /// A fresh UUID v7.
    pub new_id: fn() -> Uuid,
}

/// The pages of one book.
pub struct Site {
    pub(crate) store: Arc<dyn Store>,
    pub(crate) options: SiteOptions,
    pub(crate) desk: Desk,
    pub(crate) session: Session,
    pub(crate) shelf: Shelf,
    pub(crate) prints: Arc<Semaphore>,
    pub(crate) invitation: Invitation,
    pub(crate) network: Option<Network>,
}

impl Site {
    /// The pages of the book in `store`.
    pub fn new(store: Arc<dyn Store>, options: SiteOptions) -> Site {
        let session = Session::new(options.loopback);
        Site {
            store,
            options,
            desk: Desk::default(),
            session,
            shelf: Shelf::default(),
            prints: Arc::new(Semaphore::new(PRINTS_AT_ONCE)),
            invitation: Invitation::default(),
            network: None,
        }
    }

    /// The book as it stands.
    pub(crate) async fn open(&self, access: &Access) -> Result<Arc<Open>, Trouble> {
        Ok(self.desk.open(&*self.store, access).await?)
    }

    /// Who looks, by the farm and the settings in the book.
    pub fn viewer(state: &BookState) -> Viewer {
        let raws = body::raws(state, &["farm", "settings"]);
        Viewer::of(&plan::read(&raws, Source::Hand, false).answers)
    }

    /// The day it is at the farm.
    pub(crate) fn today(&self, state: &BookState) -> quantity::CivilDay {
        day::local((self.options.now)(), day::offset_of(state)).0
    }
}

impl Site {
    /// Writes into the book and answers when it is safe on disk. Where this device turns out to have been copied, what was
    /// written stays, and the next entry is written under a new device.
    pub(crate) async fn write(
        &self,
        access: &Access,
        drafts: impl FnOnce(&BookState) -> Vec<book::Draft> + Send,
    ) -> Result<(), Trouble> {
        let now = (self.options.now)();
        let written = self.desk.write(&*self.store, access, now, drafts).await?;
        if written.device_was_copied {
            self.go_on_as_another(access.device()).await?;
        }
        Ok(())
    }

    /// Writes what comes next under a new device, unless that is so already: another book writes as the same.
    pub(crate) async fn go_on_as_another(&self, device: DeviceId) -> Result<(), Trouble> {
        if self.session.access().device() == device {
            let minted = DeviceId((self.options.new_id)());
            self.session.mint_device(&*self.store, minted, (self.options.now)()).await?;
        }
        Ok(())
    }
}
