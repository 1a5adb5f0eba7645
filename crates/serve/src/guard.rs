//! What surrounds every answer: which hosts are answered, the headers that keep browsers careful, pages for trouble.

use std::sync::Arc;

use axum::extract::{Request, State};
use axum::http::uri::Authority;
use axum::http::{HeaderName, HeaderValue, Method, StatusCode, header};
use axum::middleware::Next;
use axum::response::{IntoResponse, Response};
use present::Viewer;
use tower_http::csrf::ProtectionError;

use crate::call::html;
use crate::network::Way;
use crate::pages::frame;
use crate::site::Site;
use crate::trouble::Trouble;

/// The names of this machine. Any other name that leads here is somebody else's, who could read the answers.
const HOSTS: [&str; 3] = ["localhost", "127.0.0.1", "[::1]"];

/// Nothing but our own style, pictures, forms and script files; no script within a page; no frame around our pages.
const POLICY: &str = "default-src 'none'; style-src 'self'; img-src 'self' data:; script-src 'self'; \
                      worker-src 'self'; connect-src 'self'; form-action 'self'; base-uri 'none'; \
                      frame-ancestors 'none'";

/// Sent with every answer. The referrer is kept from all other sites; for our own forms it must stay, since without it
/// browsers that do not yet say `Sec-Fetch-Site` send no origin either, and could save nothing.
const HEADERS: [(HeaderName, &str); 4] = [
    (header::CONTENT_SECURITY_POLICY, POLICY),
    (header::X_CONTENT_TYPE_OPTIONS, "nosniff"),
    (header::REFERRER_POLICY, "same-origin"),
    (HeaderName::from_static("cross-origin-resource-policy"), "same-origin"),
];

/// Answers only to the names of this machine: on the farm's network those that its certificate names.
pub(crate) async fn known_host(
    State((site, way)): State<(Arc<Site>, Way)>,
    request: Request,
    next: Next,
) -> Response {
    let named = request.headers().get(header::HOST).and_then(|host| host.to_str().ok());
    let known = match (way, &site.network) {
        (Way::Network, Some(network)) => named.is_some_and(|host| is_named(host, &network.names.all())),
        _ => named.is_some_and(|host| is_named(host, &HOSTS)),
    };
    if known { next.run(request).await } else { Trouble::WrongHost.into_response() }
}

fn is_named(host: &str, names: &[impl AsRef<str>]) -> bool {
    let Ok(authority) = host.parse::<Authority>() else { return false };
    let without_user = !authority.as_str().contains('@');
    let bare = |name: &str| name.trim_matches(['[', ']']).to_owned();
    let asked = bare(authority.host());
    without_user && names.iter().any(|known| asked.eq_ignore_ascii_case(&bare(known.as_ref())))
}

/// Adds the headers. What says nothing else about it may be kept by the browser, but is asked about each time.
pub(crate) async fn harden(request: Request, next: Next) -> Response {
    let mut response = next.run(request).await;
    let headers = response.headers_mut();
    for (name, value) in HEADERS {
        headers.insert(name, HeaderValue::from_static(value));
    }
    headers.entry(header::CACHE_CONTROL).or_insert(HeaderValue::from_static("private, no-cache"));
    response
}

/// Makes a page of a trouble, in the words of whoever looks.
pub(crate) async fn tell_trouble(
    State((site, way)): State<(Arc<Site>, Way)>,
    request: Request,
    next: Next,
) -> Response {
    let only_head = request.method() == Method::HEAD;
    let response = next.run(request).await;
    let Some(trouble) = trouble_in(&response) else { return response };
    let viewer = viewer(&site, way, trouble).await;
    let mut page = html(trouble.status(), frame::trouble(&site, &viewer, trouble));
    if let Some(allowed) = response.headers().get(header::ALLOW) {
        page.headers_mut().insert(header::ALLOW, allowed.clone());
    }
    if trouble.status() == StatusCode::PAYLOAD_TOO_LARGE {
        // The rest of it is not read.
        page.headers_mut().insert(header::CONNECTION, HeaderValue::from_static("close"));
    }
    if only_head {
        *page.body_mut() = axum::body::Body::empty();
    }
    page
}

fn trouble_in(response: &Response) -> Option<Trouble> {
    let extensions = response.extensions();
    let foreign = extensions.get::<ProtectionError>().map(|_| Trouble::ForeignForm);
    extensions.get::<Trouble>().copied().or(foreign)
}

/// The book's settings where they can be had; strangers are told nothing of them.
async fn viewer(site: &Site, way: Way, trouble: Trouble) -> Viewer {
    if trouble == Trouble::WrongHost || way == Way::Network {
        return Viewer::plain();
    }
    let open = site.open(&site.session.access()).await;
    open.map_or_else(|_| Viewer::plain(), |open| Site::viewer(&open.state))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn only_the_names_of_this_machine_are_known() {
        for host in ["localhost", "LOCALHOST:8080", "127.0.0.1:1", "[::1]", "[::1]:8080"] {
            assert!(is_named(host, &HOSTS), "{host}");
        }
        for host in ["", "evil.example", "localhost.evil.example", "127.0.0.1.nip.io", "me@localhost", "::1"]
        {
            assert!(!is_named(host, &HOSTS), "{host}");
        }
    }
}
