//! The plan for paper and for other programs.

use axum::http::{HeaderValue, StatusCode, header};
use axum::response::Response;
use present::batch::batch_sheet;
use present::plan::Shown;
use present::print::{Paper, Printable, write};
use present::view;
use quantity::CivilDay;
use std::sync::Arc;
use typeset::TypesetError;

use crate::batch::Batch;
use crate::before::Before;
use crate::call::{Call, answer, stamped};
use crate::stamp::Stamp;
use crate::trouble::Trouble;

/// One sheet as PDF.
pub(crate) async fn sheet(call: Call) -> Result<Response, Trouble> {
    let before = Before::load(&call).await?;
    let paper = Paper::from_name(call.asked("paper").unwrap_or("a4")).ok_or(Trouble::NotFound)?;
    let past = before.past();
    let documents = Shown::new(before.plan(), &before.viewer)
        .beside(&past)
        .sheet(call.param("sheet"), call.asked("figure"))
        .ok_or(Trouble::NotFound)?;
    let today = call.site.today(&before.open.state);
    let stamp = call.stamp(&before.open, &before.viewer, &[&before.typed_text(), &today.to_string()]);
    if let Some(unchanged) = call.unless_known(&stamp) {
        return Ok(unchanged);
    }
    pdf(&call, write(&documents, paper, &before.viewer), today, &stamp).await
}

/// One sheet of a running batch as PDF.
pub(crate) async fn of_batch(call: Call) -> Result<Response, Trouble> {
    let batch = Batch::load(&call).await?;
    let paper = Paper::from_name(call.asked("paper").unwrap_or("a4")).ok_or(Trouble::NotFound)?;
    let stamp = call.stamp(&batch.open, &batch.viewer, &[&batch.today.to_string()]);
    if let Some(unchanged) = call.unless_known(&stamp) {
        return Ok(unchanged);
    }
    let documents = batch_sheet(call.param("sheet"), &batch.open.state, batch.id, batch.on, &batch.viewer);
    let documents = documents.ok_or(Trouble::NotFound)?;
    pdf(&call, write(&documents, paper, &batch.viewer), batch.today, &stamp).await
}

async fn pdf(call: &Call, printable: Printable, today: CivilDay, stamp: &Stamp) -> Result<Response, Trouble> {
    let day = (i32::from(today.year()), today.month().unsigned_abs(), today.day().unsigned_abs());
    let pdf = pressed(call, printable, day).await?;
    let mut response = stamped(answer(StatusCode::OK, "application/pdf", pdf.into()), stamp);
    let name = format!("inline; filename=\"{}.pdf\"", call.param("sheet"));
    if let Ok(name) = HeaderValue::from_str(&name) {
        response.headers_mut().insert(header::CONTENT_DISPOSITION, name);
    }
    Ok(response)
}

/// Sets a sheet away from the threads that answer, few at a time.
async fn pressed(call: &Call, printable: Printable, day: typeset::Day) -> Result<Vec<u8>, Trouble> {
    let turn = Arc::clone(&call.site.prints).acquire_owned().await.map_err(|_| Trouble::Broken)?;
    let press = move || {
        let pdf = typeset::render(&printable.data, &printable.drawings, Some(day));
        drop(turn);
        pdf
    };
    let pdf: Result<Vec<u8>, TypesetError> =
        tokio::task::spawn_blocking(press).await.map_err(|_| Trouble::Broken)?;
    pdf.map_err(|error| {
        eprintln!("print: {error}");
        Trouble::Broken
    })
}

/// The plan as JSON; with `?working=1` every figure's working beside it.
pub(crate) async fn json(call: Call) -> Result<Response, Trouble> {
    let before = Before::load(&call).await?;
    let stamp = call.stamp(&before.open, &before.viewer, &[&before.typed_text()]);
    if let Some(unchanged) = call.unless_known(&stamp) {
        return Ok(unchanged);
    }
    let view = view::plan(before.plan(), &before.viewer, call.asked("working") == Some("1"));
    let text = serde_json::to_vec(&view).map_err(|_| Trouble::Broken)?;
    Ok(stamped(answer(StatusCode::OK, "application/json", text.into()), &stamp))
}
