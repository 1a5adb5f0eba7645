//! The jobs of a plan as a file for the phone's calendar.

use axum::http::{HeaderValue, StatusCode, header};
use axum::response::Response;
use present::calendar::Written;
use present::plan::Shown;
use present::sale;

use crate::batch::Batch;
use crate::before::Before;
use crate::call::{Call, answer, stamped};
use crate::stamp::Stamp;
use crate::trouble::Trouble;

/// The calendar of a running batch: it follows the sale.
pub(crate) async fn of_batch(call: Call) -> Result<Response, Trouble> {
    let batch = Batch::load(&call).await?;
    let stamp = call.stamp(&batch.open, &batch.viewer, &[&batch.today.to_string()]);
    if let Some(unchanged) = call.unless_known(&stamp) {
        return Ok(unchanged);
    }
    let written = Written::now((call.site.options.now)());
    let text = sale::calendar(&batch.sale(), &batch.viewer, written).ok_or(Trouble::NotFound)?;
    Ok(file(text, &stamp))
}

/// The calendar of a plan. Its jobs are named by the plan's id: fetched again after the plan changed, they move. A plan
/// without a chick day has no jobs, and a calendar file must hold one.
pub(crate) async fn show(call: Call) -> Result<Response, Trouble> {
    let before = Before::load(&call).await?;
    if before.plan().tasks.is_empty() {
        return Err(Trouble::NotFound);
    }
    let stamp = call.stamp(&before.open, &before.viewer, &[&before.typed_text()]);
    if let Some(unchanged) = call.unless_known(&stamp) {
        return Ok(unchanged);
    }
    let written = Written::now((call.site.options.now)());
    let text = Shown::new(before.plan(), &before.viewer).calendar(&before.id.to_string(), written);
    Ok(file(text, &stamp))
}

fn file(text: String, stamp: &Stamp) -> Response {
    let mut response = stamped(answer(StatusCode::OK, "text/calendar; charset=utf-8", text.into()), stamp);
    let name = HeaderValue::from_static("inline; filename=\"calendar.ics\"");
    response.headers_mut().insert(header::CONTENT_DISPOSITION, name);
    response
}
