//! The style sheet and the scripts, inside the binary, each under an address that changes with it.

use std::sync::LazyLock;

use axum::http::{HeaderValue, StatusCode, header};
use axum::response::Response;

use crate::call::{Call, answer, stamped};
use crate::stamp::{Stamp, digest};
use crate::trouble::Trouble;

const CSS: &str = "text/css; charset=utf-8";
const SCRIPT: &str = "text/javascript; charset=utf-8";

/// Something that pages are made with.
pub(crate) struct Asset {
    /// Its address, with the digest of what is there.
    pub(crate) address: String,
    sort: &'static str,
    text: String,
}

/// The one style sheet.
pub(crate) static STYLE: LazyLock<Asset> =
    LazyLock::new(|| Asset::new("/style.css", CSS, include_str!("../../assets/style.css")));

/// What waits on a phone, for pages and the worker.
pub(crate) static QUEUE: LazyLock<Asset> =
    LazyLock::new(|| Asset::new("/queue.js", SCRIPT, include_str!("../../assets/queue.js")));

/// What pages do with it.
pub(crate) static PAGE_SCRIPT: LazyLock<Asset> =
    LazyLock::new(|| Asset::new("/script.js", SCRIPT, include_str!("../../assets/script.js")));

/// What keeps pages on the phone. A browser looks at its one address for a changed text: it names what it needs.
static WORKER: LazyLock<Asset> = LazyLock::new(|| {
    let text = include_str!("../../assets/worker.js")
        .replace("STYLE_ADDRESS", &STYLE.address)
        .replace("QUEUE_ADDRESS", &QUEUE.address)
        .replace("SCRIPT_ADDRESS", &PAGE_SCRIPT.address);
    Asset { address: "/worker.js".to_owned(), sort: SCRIPT, text }
});

impl Asset {
    fn new(path: &str, sort: &'static str, text: &str) -> Asset {
        Asset { address: format!("{path}?{}", digest(&[text])), sort, text: text.to_owned() }
    }

    /// What is there. Under an address with its digest it never changes.
    fn answer(&'static self, call: &Call) -> Response {
        let stamp = Stamp::of(&[&self.text]);
        if let Some(unchanged) = call.unless_known(&stamp) {
            return unchanged;
        }
        let mut response = stamped(answer(StatusCode::OK, self.sort, self.text.as_str().into()), &stamp);
        if call.target == self.address && self.address.contains('?') {
            let for_ever = HeaderValue::from_static("public, max-age=31536000, immutable");
            response.headers_mut().insert(header::CACHE_CONTROL, for_ever);
        }
        response
    }
}

/// The style sheet.
pub(crate) async fn style(call: Call) -> Result<Response, Trouble> {
    Ok(STYLE.answer(&call))
}

/// The queue.
pub(crate) async fn queue(call: Call) -> Result<Response, Trouble> {
    Ok(QUEUE.answer(&call))
}

/// The script of the pages.
pub(crate) async fn script(call: Call) -> Result<Response, Trouble> {
    Ok(PAGE_SCRIPT.answer(&call))
}

/// The worker.
pub(crate) async fn worker(call: Call) -> Result<Response, Trouble> {
    Ok(WORKER.answer(&call))
}
