//! A batch as its pages see it: whose it is, which day is looked at, and what its book says.

use std::sync::Arc;

use advice::diary::Diary;
use advice::walk::Walk;
use book::{BatchId, BookState, EntryId, Record, Slot, Subject};
use present::Viewer;
use quantity::CivilDay;
use uuid::Uuid;

use crate::call::Call;
use crate::desk::Open;
use crate::site::Site;
use crate::trouble::Trouble;

/// The parameter and the form field that name the day that is looked at.
pub(crate) const ON: &str = "on";

/// A batch on a day.
pub(crate) struct Batch {
    /// The batch.
    pub(crate) id: BatchId,
    /// The book it stands in.
    pub(crate) open: Arc<Open>,
    /// Who looks.
    pub(crate) viewer: Viewer,
    /// The day at the farm.
    pub(crate) today: CivilDay,
    /// The day that is looked at: today, unless another one is asked for.
    pub(crate) on: CivilDay,
}

impl Batch {
    /// The batch of a call's id, on the day that the call asks about.
    pub(crate) async fn load(call: &Call) -> Result<Batch, Trouble> {
        let id = BatchId(call.id()?);
        let open = call.site.open(&call.access).await?;
        if !is_known(&open.state, id) {
            return Err(Trouble::NotFound);
        }
        let today = call.site.today(&open.state);
        let asked = call.sent(ON).or_else(|| call.asked(ON)).filter(|text| !text.is_empty());
        let on = match asked {
            Some(text) => CivilDay::parse(text).ok_or(Trouble::Unreadable)?,
            None => today,
        };
        let viewer = Site::viewer(&open.state);
        Ok(Batch { id, open, viewer, today, on })
    }

    /// Its book up to the day.
    pub(crate) fn diary(&self) -> Diary {
        self.diary_of(self.on)
    }

    /// Its book up to another day.
    pub(crate) fn diary_of(&self, on: CivilDay) -> Diary {
        Diary::read(&self.open.state, self.id, on)
    }

    /// The walk of the day.
    pub(crate) fn walk(&self) -> Walk {
        Walk::of(self.diary())
    }

    /// The address of its page.
    pub(crate) fn address(&self) -> String {
        address(self.id.0)
    }

    /// The entry of an id, where it counts and is about this batch.
    pub(crate) fn counting(&self, id: EntryId) -> Option<&Record> {
        let mut about = self.open.state.counting_about(Subject::Batch(self.id));
        about.find(|record| record.entry().id == id)
    }

    /// The address of the page of an entry.
    pub(crate) fn entry_address(&self, id: EntryId) -> String {
        format!("{}/entry/{}", self.address(), id.0)
    }

    /// The address of a page below its own, about the day that is looked at.
    pub(crate) fn page(&self, page: &str) -> String {
        self.page_of(page, self.on)
    }

    /// The address of a page below its own, about a day; today needs no saying.
    pub(crate) fn page_of(&self, page: &str, day: CivilDay) -> String {
        let about = if day == self.today { String::new() } else { format!("?{ON}={day}") };
        format!("{}{page}{about}", self.address())
    }

    /// What it is called.
    pub(crate) fn name(&self) -> String {
        let words = self.viewer.words();
        name(&self.open.state, self.id).unwrap_or_else(|| words.plain("plan-without-name"))
    }
}

/// The address of a batch's page.
pub(crate) fn address(id: Uuid) -> String {
    format!("/batch/{id}")
}

/// The name of a batch, where its plan gives it one.
pub(crate) fn name(state: &BookState, id: BatchId) -> Option<String> {
    let plan = state.answers(&Slot::of("plan-adopted", Subject::Batch(id)))?;
    let name = plan.get("batch.name")?.value.as_str()?;
    (!name.is_empty()).then(|| name.to_owned())
}

/// Whether the book says anything about a batch.
pub(crate) fn is_known(state: &BookState, id: BatchId) -> bool {
    state.counting_about(Subject::Batch(id)).next().is_some()
}
