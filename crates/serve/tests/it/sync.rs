//! Two books over the very requests that another book sends, whichever of them are lost.

use std::collections::BTreeMap;
use std::sync::Arc;

use axum::body::Body;
use axum::http::{Request, StatusCode, header};
use book::sync::{Failure, Summary, TALK_BYTES_MAX, Why};
use book::{Answer, BatchId, Draft, EntryId, Role, StoredEntry, Subject};
use quantity::CivilDay;
use serde_json::json;
use serve::{Desk, Exchange, ExchangeError, Heard, Loopback, TALK};
use store::Store;
use uuid::Uuid;

use crate::rig::{Browser, Page, at, memory, owner_of};

/// A book with some notes, served to whoever has a role.
struct Served {
    store: Arc<dyn Store>,
    browser: Browser,
    owner: Loopback,
}

/// More than go into one frame.
const NOTES: u128 = 70;

async fn served(role: Role) -> Served {
    let store = memory();
    let owner = owner_of(&store, None).await;
    write_notes(&store, &owner, 0).await;
    Served { browser: Browser::of(Loopback { role, ..owner }, &store), store, owner }
}

/// Notes with ids from a number on.
async fn write_notes(store: &Arc<dyn Store>, owner: &Loopback, from: u128) {
    let batch = Subject::Batch(BatchId(Uuid::from_u128(1)));
    let day = CivilDay::new(2027, 5, 12).unwrap();
    let text = || Answer { typed: None, value: json!("the wind turned") };
    let note = |number| {
        let body = BTreeMap::from([("text".to_owned(), text())]);
        Draft::new(EntryId(Uuid::from_u128(from + number)), "note", batch, day, body)
    };
    let notes = (0..NOTES).map(note).collect();
    Desk::default().write(&**store, &owner.access(), 1, |_| notes).await.unwrap();
}

/// Another book of the same farm.
async fn other(of: &Loopback) -> (Arc<dyn Store>, Loopback) {
    let store = memory();
    let owner = owner_of(&store, Some(of.farm)).await;
    (store, owner)
}

fn talk(bytes: Vec<u8>) -> Request<Body> {
    at("/sync").method("POST").header(header::CONTENT_TYPE, TALK).body(Body::from(bytes)).unwrap()
}

async fn say(browser: &Browser, bytes: Vec<u8>) -> Page {
    let page = browser.send(talk(bytes)).await;
    assert_eq!((page.status, page.header("content-type")), (StatusCode::OK, TALK), "{:?}", page.bytes);
    page
}

async fn all(store: &Arc<dyn Store>, owner: &Loopback) -> Vec<StoredEntry> {
    store.all(&owner.access()).await.unwrap()
}

/// What may happen to a request.
#[derive(Clone, Copy, PartialEq)]
enum Fate {
    Arrives,
    /// It never gets there.
    Lost,
    /// The answer never gets back.
    Unanswered,
}

/// Syncs until the summary, over a line on which the request with a number has a fate, and gives how many there were.
async fn sync(
    with: &Browser,
    store: &Arc<dyn Store>,
    owner: &Loopback,
    bad: usize,
    fate: Fate,
) -> (Summary, usize) {
    let desk = Desk::default();
    let mut exchange = Exchange::new(&desk, &**store, owner.access());
    let mut heard = exchange.hear(&with.get("/sync").await.bytes).await.unwrap();
    for number in 1..100 {
        if let Some(summary) = heard.done {
            return (summary, number - 1);
        }
        let fate = if number == bad { fate } else { Fate::Arrives };
        let page = if fate == Fate::Lost { None } else { Some(say(with, heard.to_send).await) };
        heard = match page.filter(|_| fate == Fate::Arrives) {
            Some(page) => exchange.hear(&page.bytes).await.unwrap(),
            None => exchange.again().await.unwrap(),
        };
    }
    panic!("no end to it");
}

#[tokio::test]
async fn whichever_request_is_lost_both_books_become_the_same() {
    let (mut bad, mut requests) = (0, usize::MAX);
    while bad <= requests {
        for fate in [Fate::Lost, Fate::Unanswered] {
            let one = served(Role::Owner).await;
            let (store, owner) = other(&one.owner).await;
            write_notes(&store, &owner, 1000).await;
            let before = (all(&one.store, &one.owner).await, all(&store, &owner).await);
            let (summary, took) = sync(&one.browser, &store, &owner, bad, fate).await;
            assert!(summary.is_even);
            let after = all(&one.store, &one.owner).await;
            assert_eq!(after, all(&store, &owner).await);
            assert_eq!(after.len(), before.0.len() + before.1.len(), "nothing twice, nothing lost");
            if bad == 0 {
                requests = took;
            }
        }
        bad += 1;
    }
    assert!(requests >= 2, "only {requests} requests");
}

#[tokio::test]
async fn who_may_only_read_is_given_all_and_sends_nothing() {
    let one = served(Role::Viewer).await;
    let (store, owner) = other(&one.owner).await;
    let (summary, _) = sync(&one.browser, &store, &owner, 0, Fate::Arrives).await;
    assert!(summary.is_even);
    assert_eq!(all(&one.store, &one.owner).await, all(&store, &owner).await);

    let before = all(&one.store, &one.owner).await;
    write_notes(&store, &owner, 1000).await;
    let heard = one_round(&one.browser, &store, &owner).await;
    assert_eq!(heard.failed, Some(Failure::TheyRefused { why: Why::ReadOnly }));
    assert_eq!(all(&one.store, &one.owner).await, before);
}

async fn one_round(with: &Browser, store: &Arc<dyn Store>, owner: &Loopback) -> Heard {
    let desk = Desk::default();
    let mut exchange = Exchange::new(&desk, &**store, owner.access());
    let heard = exchange.hear(&with.get("/sync").await.bytes).await.unwrap();
    let page = say(with, heard.to_send).await;
    exchange.hear(&page.bytes).await.unwrap()
}

#[tokio::test]
async fn a_book_of_another_farm_is_not_touched() -> Result<(), ExchangeError> {
    let (one, two) = (served(Role::Owner).await, served(Role::Owner).await);
    let desk = Desk::default();
    let mut exchange = Exchange::new(&desk, &*two.store, two.owner.access());
    let heard = exchange.hear(&one.browser.get("/sync").await.bytes).await?;
    assert_eq!(heard.failed, Some(Failure::WeRefused { why: Why::OtherFarm }));
    let before = all(&one.store, &one.owner).await;
    let hello = Exchange::new(&desk, &*two.store, two.owner.access()).greet().await?.to_send;
    let answer = say(&one.browser, hello).await;
    assert!(answer.text().contains("other-farm"), "{}", answer.text());
    assert_eq!(all(&one.store, &one.owner).await, before);
    Ok(())
}

#[tokio::test]
async fn a_page_of_somebody_else_cannot_talk_to_the_book() {
    let one = served(Role::Owner).await;
    let sent = |name: &str, value: &str| {
        let request = at("/sync").method("POST").header(name, value);
        let request =
            if name == "content-type" { request } else { request.header(header::CONTENT_TYPE, TALK) };
        request.body(Body::from("{}\n")).unwrap()
    };
    for (name, value, status) in [
        ("content-type", "text/plain", StatusCode::BAD_REQUEST),
        ("content-type", "application/x-www-form-urlencoded", StatusCode::BAD_REQUEST),
        ("sec-fetch-site", "cross-site", StatusCode::FORBIDDEN),
        ("origin", "http://evil.example", StatusCode::FORBIDDEN),
    ] {
        assert_eq!(one.browser.send(sent(name, value)).await.status, status, "{name}: {value}");
    }
    let nothing_said = at("/sync").method("POST").body(Body::empty()).unwrap();
    assert_eq!(one.browser.send(nothing_said).await.status, StatusCode::BAD_REQUEST);
}

#[tokio::test]
async fn whatever_is_said_is_answered() {
    let one = served(Role::Owner).await;
    for nonsense in ["", "\n", "{}\n", "half a mess", "{\"sync\":2}\n", "\u{0}\n"] {
        let answer = say(&one.browser, nonsense.as_bytes().to_vec()).await;
        assert_eq!(answer.text().contains("refused"), !nonsense.is_empty(), "{nonsense:?}");
    }
    let large = one.browser.send(talk(vec![b' '; TALK_BYTES_MAX + 1])).await;
    assert_eq!(large.status, StatusCode::BAD_REQUEST);
    let told = at("/sync").method("POST").header(header::CONTENT_TYPE, TALK);
    let told = told.header(header::CONTENT_LENGTH, TALK_BYTES_MAX + 1).body(Body::empty()).unwrap();
    assert_eq!(one.browser.send(told).await.status, StatusCode::PAYLOAD_TOO_LARGE);
}
