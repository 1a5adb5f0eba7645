//! What stands around every page.

use axum::http::StatusCode;
use axum::response::Response;
use maud::{DOCTYPE, Markup, html};
use present::{Viewer, say};

use crate::call::html as html_answer;
use crate::pages::{asset, kept};
use crate::site::Site;
use crate::trouble::Trouble;

/// A page whose form was not written: something does not hold, or is to be looked at again.
pub(crate) fn unwritten(page: Markup) -> Response {
    html_answer(StatusCode::UNPROCESSABLE_ENTITY, page)
}

/// A page that is made anew at each call.
pub(crate) fn fresh(page: Markup) -> Response {
    html_answer(StatusCode::OK, page)
}

/// A page: its title is its first heading too.
pub(crate) fn page(site: &Site, viewer: &Viewer, title: &str, content: &Markup) -> Markup {
    let words = viewer.words();
    html! {
        (DOCTYPE)
        html lang=(viewer.locale.tag()) dir=(viewer.locale.direction()) {
            head {
                meta charset="utf-8";
                meta name="viewport" content="width=device-width, initial-scale=1";
                title { (say!(words, "page-title", page = title)) }
                link rel="stylesheet" href=(asset::STYLE.address);
                script src=(asset::QUEUE.address) defer {}
                script src=(asset::PAGE_SCRIPT.address) defer {}
                // Without it browsers ask for an icon that is not there.
                link rel="icon" href="data:,";
            }
            body {
                a class="skip" href="#content" { (words.plain("skip-to-content")) }
                header {
                    nav aria-label=(words.plain("nav-label")) {
                        a class="name" href="/" { (words.plain("app-name")) }
                        a href="/sums" { (words.plain("page-sums")) }
                    }
                }
                @if site.options.demo { p class="demo" { (words.plain("demo-banner")) } }
                (kept::bar(words))
                main id="content" { h1 { (title) } (content) }
                footer {
                    p { (words.plain("print-footer")) }
                    p { a href="/phones" { (words.plain("page-phones")) } }
                    p { (say!(words, "version", version = &site.options.version)) }
                }
            }
        }
    }
}

/// The page of a trouble: what it is, and what to do next.
pub(crate) fn trouble(site: &Site, viewer: &Viewer, trouble: Trouble) -> Markup {
    let words = viewer.words();
    let next = words.attribute(trouble.message(), "next", &[]).unwrap_or_default();
    let content = html! {
        p { (next) }
        p { a class="button" href="/" { (words.plain("to-the-start")) } }
    };
    page(site, viewer, &words.plain(trouble.message()), &content)
}
