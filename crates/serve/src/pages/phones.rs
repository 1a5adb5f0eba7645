//! Phones of the farm's network: the page on the book's own machine that shows how a phone is joined, and the page that the
//! phone sees.

use axum::http::{HeaderValue, StatusCode, header};
use axum::response::Response;
use book::PersonId;
use maud::{Markup, html};
use present::{Viewer, Words, say, show};
use qrcode::{Color, QrCode};
use sha2::{Digest, Sha256};
use tokio_rustls::rustls::pki_types::CertificateDer;
use tokio_rustls::rustls::pki_types::pem::PemObject;

use crate::call::{Call, Reply, answer, see_other};
use crate::day;
use crate::network::joining::{self, Joined};
use crate::network::{Network, Way};
use crate::pages::frame;
use crate::site::Site;
use crate::trouble::Trouble;

/// The form field that names a phone.
const PHONE: &str = "phone";

/// Modules around a code that scanners need free.
const QUIET: usize = 4;

/// How phones are joined, and which are.
pub(crate) async fn show(call: Call) -> Reply {
    let open = call.site.open(&call.access).await?;
    let viewer = Site::viewer(&open.state);
    let words = viewer.words();
    let joined = joining::all(&*call.site.store, &call.site.session).await?;
    let content = match &call.site.network {
        Some(network) => {
            let code = call.site.invitation.code((call.site.options.now)())?;
            html! {
                (how_to_join(network, &format!("{}/join/{code}", network.origin()), words))
                (what_it_means(network, words))
            }
        }
        None => {
            html! { p { (words.plain("phones-not-served")) } pre class="formula" tabindex="0" { (words.plain("phones-example")) } }
        }
    };
    let hours = day::offset_of(&open.state);
    let content = html! { (content) (list(&joined, hours, &viewer)) };
    Ok(frame::fresh(frame::page(&call.site, &viewer, &words.plain("page-phones"), &content)))
}

fn how_to_join(network: &Network, address: &str, words: &Words) -> Markup {
    html! {
        p { (words.plain("phones-about")) }
        ol class="steps" {
            li { (words.plain("phones-step-net")) }
            li {
                (words.plain("phones-step-scan"))
                @if let Some(code) = picture(address, &words.plain("phones-code")) { (code) }
                p { a href=(address) { (address) } }
            }
            @if let Some(authority) = &network.authority {
                li { (words.plain("phones-step-warning")) }
                li {
                    (words.plain("phones-step-install"))
                    p class="note" { (words.plain("phones-where-android")) }
                    p class="note" { (words.plain("phones-where-ios")) }
                    p { (words.plain("phones-fingerprint")) }
                    p class="formula" { (fingerprint(authority)) }
                }
            }
            li { (words.plain("phones-step-join")) }
        }
    }
}

/// What installing the certificate means, before anybody does.
fn what_it_means(network: &Network, words: &Words) -> Markup {
    html! {
        @if network.authority.is_some() {
            h2 { (words.plain("phones-means")) }
            p { (say!(words, "phones-means-names", names = network.names.all().join(", "))) }
            p { (words.plain("phones-means-key")) }
            p { (words.plain("phones-means-away")) }
            p { a href="/certificate" { (words.plain("phones-certificate")) } }
        }
    }
}

fn list(joined: &[(String, Joined)], hours: i64, viewer: &Viewer) -> Markup {
    let words = viewer.words();
    html! {
        @if !joined.is_empty() {
            h2 { (words.plain("phones-joined")) }
            ul class="entries" { @for (name, phone) in joined {
                @let (day, time) = day::local(phone.joined_millis, hours);
                li { form method="post" action="/phones/forget" {
                    (say!(words, "phones-joined-on", day = show::day(day, viewer), time = time)) " "
                    button class="quiet" name=(PHONE) value=(name) { (words.plain("phones-forget")) }
                } }
            } }
        }
    }
}

/// A code that a camera reads, as a drawing of one path.
fn picture(text: &str, title: &str) -> Option<Markup> {
    let code = QrCode::new(text).ok()?;
    let width = code.width();
    let side = width + 2 * QUIET;
    let dark = code.to_colors().into_iter().enumerate().filter(|(_, color)| *color == Color::Dark);
    let module = |(at, _): (usize, Color)| format!("M{} {}h1v1h-1z", at % width + QUIET, at / width + QUIET);
    let path: String = dark.map(module).collect();
    Some(html! {
        figure class="drawing" {
            svg viewBox=(format!("0 0 {side} {side}")) role="img" shape-rendering="crispEdges" {
                title { (title) }
                rect width=(side) height=(side) fill="#fff" {}
                path d=(path) fill="#000" {}
            }
        }
    })
}

/// By which a person sees that both machines speak of the same certificate.
fn fingerprint(authority: &str) -> String {
    let Some(der) = der(authority) else { return String::new() };
    let pairs: Vec<String> = Sha256::digest(&der).iter().map(|byte| format!("{byte:02X}")).collect();
    pairs.join(":")
}

fn der(authority: &str) -> Option<Vec<u8>> {
    CertificateDer::from_pem_slice(authority.as_bytes()).ok().map(|der| der.to_vec())
}

/// Forgets a phone.
pub(crate) async fn forget(call: Call) -> Reply {
    let name = call.sent(PHONE).ok_or(Trouble::Unreadable)?;
    joining::forget(&*call.site.store, &call.site.session, name).await?;
    Ok(see_other("/phones"))
}

/// The authority's certificate, to be installed.
pub(crate) async fn certificate(call: Call) -> Reply {
    let authority = call.site.network.as_ref().and_then(|network| network.authority.clone());
    let der = authority.and_then(|authority| der(&authority)).ok_or(Trouble::NotFound)?;
    let mut response = answer(StatusCode::OK, "application/x-x509-ca-cert", der.into());
    let name = HeaderValue::from_static("attachment; filename=\"farm.crt\"");
    response.headers_mut().insert(header::CONTENT_DISPOSITION, name);
    Ok(response)
}

/// What a phone sees that has read the code.
pub(crate) async fn invited(call: Call) -> Reply {
    let network = invitation(&call)?;
    let viewer = Viewer::plain();
    let words = viewer.words();
    let content = html! {
        p { (words.plain("join-about")) }
        @if let Some(authority) = &network.authority {
            ol class="steps" {
                li { (words.plain("join-certificate")) p { a class="button" href="/certificate" { (words.plain("phones-certificate")) } } }
                li {
                    (words.plain("join-install"))
                    p class="note" { (words.plain("phones-where-android")) }
                    p class="note" { (words.plain("phones-where-ios")) }
                    p { (words.plain("join-fingerprint")) }
                    p class="formula" { (fingerprint(authority)) }
                }
                li { (words.plain("join-then")) }
            }
        }
        form method="post" action=(call.target) { button { (words.plain("join-this-phone")) } }
    };
    Ok(frame::fresh(frame::page(&call.site, &viewer, &words.plain("page-join"), &content)))
}

/// Joins the phone that asks.
pub(crate) async fn join(call: Call) -> Result<Response, Trouble> {
    invitation(&call)?;
    let (site, now) = (&call.site, (call.site.options.now)());
    if !site.invitation.take(call.param("code"), now) {
        return Err(Trouble::NotInvited);
    }
    let person = PersonId((site.options.new_id)());
    let cookie = joining::join(&*site.store, &site.session, now, person).await?;
    let cookie = HeaderValue::from_str(&cookie).map_err(|_| Trouble::Broken)?;
    let mut response = see_other("/");
    response.headers_mut().insert(header::SET_COOKIE, cookie);
    Ok(response)
}

/// The network by which somebody came who has a code that holds.
fn invitation(call: &Call) -> Result<&Network, Trouble> {
    let network = call.site.network.as_ref().filter(|_| call.way == Way::Network).ok_or(Trouble::NotFound)?;
    let holds = call.site.invitation.holds(call.param("code"), (call.site.options.now)());
    if holds { Ok(network) } else { Err(Trouble::NotInvited) }
}
