//! Ticking a job off, and taking an entry back.

use advice::record;
use axum::response::Response;
use book::{Draft, EntryId};
use quantity::{Raw, Source};

use crate::batch::Batch;
use crate::call::{Call, see_other};
use crate::sheet;
use crate::trouble::Trouble;

/// The form field that names a job.
pub(crate) const TASK: &str = "task";

/// Ticks a job of the day off. A job that is ticked already stays as it is.
pub(crate) async fn tick(call: Call) -> Result<Response, Trouble> {
    let batch = Batch::load(&call).await?;
    let key = call.sent(TASK).ok_or(Trouble::Unreadable)?;
    let walk = batch.walk();
    let job = walk.jobs.iter().find(|job| job.key == key).ok_or(Trouble::NotFound)?;
    if job.done.is_none() {
        let id = EntryId((call.site.options.new_id)());
        let draft = ticked(id, &batch, key).ok_or(Trouble::Broken)?;
        call.site.write(&call.access, |_| vec![draft]).await?;
    }
    Ok(see_other(&format!("{}#jobs", batch.page(""))))
}

/// A job that is done.
pub(crate) fn ticked(id: EntryId, batch: &Batch, key: &str) -> Option<Draft> {
    let kind = record::kind("task-done")?;
    let raws = [Raw { key: "task_done.task".to_owned(), text: vec![key.to_owned()], line: None }];
    let checked = record::check(kind, &raws, Source::Hand);
    Some(record::draft(id, kind, batch.id, batch.on, &checked.answers))
}

/// Takes an entry back. It stays in the history, with the reason.
pub(crate) async fn take_back(call: Call) -> Result<Response, Trouble> {
    let batch = Batch::load(&call).await?;
    let id = call.entry()?;
    let record = batch.counting(id).ok_or(Trouble::NotFound)?;
    let reason = sheet::reason(&call);
    if reason.is_none() && record.entry().day != batch.today {
        return Ok(see_other(&format!("{}?lacks=reason#{}", batch.entry_address(id), sheet::REASON)));
    }
    let new = EntryId((call.site.options.new_id)());
    let draft = Draft { reason, ..Draft::withdrawal(new, record.entry()) };
    let day = record.entry().day;
    call.site.write(&call.access, |_| vec![draft]).await?;
    Ok(see_other(&batch.page_of("", day)))
}
