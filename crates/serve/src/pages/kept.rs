//! What waits on a phone: the bar on every page, the page of it all, and the page where there is no signal. The script
//! fills them; without it they stay hidden or say that nothing waits.

use axum::response::Response;
use maud::{Markup, html};
use present::Words;
use present::words::Argument;

use crate::batch::Batch;
use crate::call::{Call, Reply};
use crate::pages::frame;
use crate::site::Site;
use crate::trouble::Trouble;

/// The form field that carries which draft of the phone a form is.
pub(crate) const DRAFT: &str = "draft";

/// What the script says, as messages `kept-NAME`, with the names of what it puts into them.
const SAID: &[(&str, &[&str])] = &[
    ("waiting", &["n"]),
    ("to-look", &["n"]),
    ("goes-up", &[]),
    ("here", &[]),
    ("full", &[]),
    ("only-open", &[]),
    ("insecure", &[]),
    ("sending", &[]),
    ("trouble", &[]),
    ("shut", &[]),
    ("clock", &[]),
    ("none", &[]),
    ("doubted", &[]),
    ("refused", &[]),
    ("asked", &[]),
    ("look", &[]),
    ("take-away", &[]),
    ("take-away-sure", &[]),
    ("other-day", &["at", "by"]),
    ("other-day-take", &["by"]),
    ("other-day-stay", &["at"]),
];

/// What the script needs on every page.
pub(crate) fn bar(words: &Words) -> Markup {
    html! {
        aside id="kept" hidden aria-live="polite" aria-label=(words.plain("page-waiting")) {
            details {
                summary { span class="kept-count" {} }
                div class="kept-said" {}
                ul class="kept-list" {}
                p { a class="onward" href="/waiting" { (words.plain("page-waiting")) } }
            }
        }
        template id="kept-words" {
            @for (name, put) in SAID { p data-say=(name) { (with_places(words, name, put)) } }
        }
    }
}

/// A message with places for what only the script knows.
fn with_places(words: &Words, name: &str, put: &[&'static str]) -> String {
    let places: Vec<(&str, Argument)> =
        put.iter().map(|one| (*one, Argument::from(format!("#{one}#")))).collect();
    words.say(&format!("kept-{name}"), &places)
}

/// How far the book reached when a page was made, for the script to carry along.
pub(crate) fn seen(batch: &Batch) -> String {
    let seen = batch.open.state.seen();
    serde_json::to_string(&seen).unwrap_or_default()
}

/// Which draft of the phone was sent to be looked at.
pub(crate) fn draft(call: &Call) -> Option<&str> {
    call.sent(DRAFT)
}

/// What waits on this phone.
pub(crate) async fn waiting(call: Call) -> Reply {
    let page = |words: &Words| {
        html! {
            p { (words.plain("waiting-about")) }
            noscript { p { (words.plain("waiting-no-script")) } }
            ul id="kept-all" class="kept-list" {}
        }
    };
    shown(&call, "page-waiting", page).await
}

/// What is shown where there is no signal and the page that was asked for is not kept.
pub(crate) async fn no_signal(call: Call) -> Reply {
    let page = |words: &Words| {
        html! {
            p { (words.plain("no-signal-about")) }
            h2 { (words.plain("no-signal-kept")) }
            ul id="kept-pages" class="ways" {}
        }
    };
    shown(&call, "page-no-signal", page).await
}

async fn shown(call: &Call, title: &str, page: fn(&Words) -> Markup) -> Result<Response, Trouble> {
    let open = call.site.open(&call.access).await?;
    let viewer = Site::viewer(&open.state);
    let stamp = call.stamp(&open, &viewer, &[]);
    if let Some(unchanged) = call.unless_known(&stamp) {
        return Ok(unchanged);
    }
    let words = viewer.words();
    Ok(call.page(&stamp, frame::page(&call.site, &viewer, &words.plain(title), &page(words))))
}
