//! The exchange with another book: greets whoever asks, and answers what is said. Nothing is kept from one request to the
//! next, so that an exchange that was cut off simply goes on.

use axum::http::StatusCode;
use axum::response::Response;

use crate::call::{Call, Reply, answer};
use crate::exchange::{Exchange, Heard};
use crate::trouble::Trouble;

/// What messages are sent as: lines of JSON. No form of a page can send it.
pub const TALK: &str = "application/jsonl";

/// Tells how far this book reaches.
pub(crate) async fn greet(call: Call) -> Reply {
    let heard = exchange(&call).greet().await?;
    Ok(said(heard))
}

/// Hears what another book says, and answers when what is new of it is on disk.
pub(crate) async fn hear(call: Call) -> Result<Response, Trouble> {
    let heard = exchange(&call).hear(&call.talk).await?;
    if let Some(device) = heard.copied {
        call.site.go_on_as_another(device).await?;
    }
    Ok(said(heard))
}

fn exchange(call: &Call) -> Exchange<'_> {
    Exchange::new(&call.site.desk, &*call.site.store, call.access)
}

fn said(heard: Heard) -> Response {
    answer(StatusCode::OK, TALK, heard.to_send.into())
}
