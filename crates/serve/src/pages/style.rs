//! The one style sheet, inside the binary, under an address that changes with it.

use std::sync::LazyLock;

use axum::http::{HeaderValue, StatusCode, header};
use axum::response::Response;

use crate::call::{Call, answer, stamped};
use crate::stamp::{Stamp, digest};
use crate::trouble::Trouble;

const STYLE: &str = include_str!("../../assets/style.css");

/// The address, with the digest of what is there.
pub(crate) static ADDRESS: LazyLock<String> = LazyLock::new(|| format!("/style.css?{}", digest(&[STYLE])));

/// The style sheet. Under its own address it never changes.
pub(crate) async fn show(call: Call) -> Result<Response, Trouble> {
    let stamp = Stamp::of(&[STYLE]);
    if let Some(unchanged) = call.unless_known(&stamp) {
        return Ok(unchanged);
    }
    let mut response = stamped(answer(StatusCode::OK, "text/css; charset=utf-8", STYLE.into()), &stamp);
    if call.target == *ADDRESS {
        let for_ever = HeaderValue::from_static("public, max-age=31536000, immutable");
        response.headers_mut().insert(header::CACHE_CONTROL, for_ever);
    }
    Ok(response)
}
