//! What has waited on phones: forms filled without signal, taken into the book once and in order.

mod form;
mod wire;

use std::sync::Arc;

use axum::http::StatusCode;
use axum::response::Response;
use book::sync::DRAFTS_MAX;
use present::{Viewer, say};

use crate::call::{Call, Reply, answer};
use crate::desk::Open;
use crate::network::Way;
use crate::site::Site;
use crate::trouble::Trouble;
use form::Taker;
use wire::{Fate, Sent, Told, Waiting, Word};
pub(crate) use wire::{QUEUE, QUEUE_BYTES_MAX};

/// From how much on a clock is called wrong, milliseconds: a person looks at minutes, and a day's book at days.
const CLOCK_OFF_MILLIS: i64 = 30 * 60_000;
const HOUR_MILLIS: f64 = 3_600_000.0;

/// Takes what a phone sends of its queue, and answers when it is on disk.
pub(crate) async fn take(call: Call) -> Reply {
    let sent: Sent = serde_json::from_slice(&call.talk).map_err(|_| Trouble::Unreadable)?;
    let site = Arc::clone(&call.site);
    // A phone of the network is known by its cookie already.
    let access = if call.way == Way::Here { site.session.phone(sent.phone) } else { call.access };
    let now = (site.options.now)();
    let make = |open: &mut Arc<Open>| {
        let mut taker = Taker::new(&site, access, now, sent.sent, open);
        let mut fates: Vec<Fate> =
            sent.drafts.iter().enumerate().map(|(at, draft)| fate(&mut taker, at, draft)).collect();
        let entries = taker.finish(&mut fates);
        // The clock of the demo stands still: no phone's is wrong beside it.
        let is_wrong = |ahead: &i64| !site.options.demo && ahead.saturating_abs() >= CLOCK_OFF_MILLIS;
        let ahead = Some(sent.sent.saturating_sub(now)).filter(is_wrong);
        let clock = ahead.map(|ahead| clock(ahead, &Site::viewer(&open.state)));
        (entries, (fates, clock))
    };
    let ((drafts, clock), written) = site.desk.compose(&*site.store, &access, make).await?;
    told(&Told { drafts, clock, copied: written.device_was_copied })
}

/// What becomes of one draft.
fn fate(taker: &mut Taker, at: usize, draft: &serde_json::Value) -> Fate {
    if at >= DRAFTS_MAX {
        let id = draft.get("id").and_then(|id| serde_json::from_value(id.clone()).ok());
        return Fate { id, word: Word::NotYet, says: Vec::new(), at: None };
    }
    match serde_json::from_value::<Waiting>(draft.clone()) {
        Ok(waiting) => taker.take(&waiting),
        Err(_) => taker.unreadable(draft),
    }
}

/// What to say of a clock that is wrong.
///
/// - `ahead_millis`: how far it is ahead of ours; behind where negative
fn clock(ahead_millis: i64, viewer: &Viewer) -> String {
    let hours = (ahead_millis as f64 / HOUR_MILLIS).abs().max(1.0).round();
    let key = if ahead_millis > 0 { "queue-clock-ahead" } else { "queue-clock-behind" };
    say!(viewer.words(), key, hours = hours.to_string(), count = hours)
}

fn told(told: &Told) -> Result<Response, Trouble> {
    let bytes = serde_json::to_vec(told).map_err(|_| Trouble::Broken)?;
    Ok(answer(StatusCode::OK, QUEUE, bytes.into()))
}
