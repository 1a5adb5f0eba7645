//! Words that are no messages show up in the pseudo-locale, where every message is accented.

use std::collections::BTreeSet;

use crate::rig::{Browser, mango_ridge_with, memory, visible};

/// What stays as it is in every language: names of symbols in formulae and what the test typed itself.
const TYPED: &[&str] = &["Mango", "Ridge", "Long", "house", "September", "0.1.0"];

/// The words of at least four plain letters in a row that no accent has touched.
fn plain_words(text: &str) -> BTreeSet<String> {
    let words = text.split(|c: char| !c.is_alphabetic());
    let plain = words.filter(|word| word.len() >= 4 && word.chars().all(|c| c.is_ascii_alphabetic()));
    plain.filter(|word| !TYPED.contains(word)).map(str::to_owned).collect()
}

/// Words of the titles, authors and publishers of sources, which are never translated.
fn of_sources() -> BTreeSet<String> {
    let bibliography = include_str!("../../../reference/tables/bibliography.csv");
    plain_words(bibliography)
}

#[tokio::test]
async fn no_word_stands_outside_the_messages() {
    let store = memory();
    let browser = Browser::new(&store).await;
    let english = mango_ridge_with(&[("settings.language", "en")]);
    let long = mango_ridge_with(&[("settings.language", "en-XA")]);
    let address = browser.new_plan().await;
    browser.post(&address, &english).await;
    assert!(plain_words(&visible(&browser.get(&address).await.text())).len() > 100, "the test sees words");

    browser.post(&address, &long).await;
    let mut faulty = long.clone();
    faulty.retain(|(key, _)| key != "batch.chicks");
    faulty.push(("batch.chicks".to_owned(), "0".to_owned()));
    let pages = [
        browser.get("/").await,
        browser.get(&address).await,
        browser.post(&format!("{address}/adopt"), &[]).await,
        browser.get(&format!("{address}?saved")).await,
        browser.get("/sums").await,
        browser.get("/sums/space").await,
        browser.get("/sums/ring?chicks=0").await,
        browser.get("/sums/dilution").await,
        browser.get("/sums/litter").await,
        browser.get("/nothing").await,
        browser.get("/before/new").await,
        browser.get(&browser.new_plan().await).await,
        browser.post(&address, &faulty).await,
    ];
    let allowed = of_sources();
    for (at, page) in pages.iter().enumerate() {
        let text = page.text();
        let left: Vec<String> =
            plain_words(&visible(&text)).into_iter().filter(|word| !allowed.contains(word)).collect();
        assert!(left.is_empty(), "page {at} has words that are no messages: {left:?}");
        assert!(!text.contains("[") || !visible(&text).contains("[trouble"), "page {at} lacks a message");
        if page.header("content-type").starts_with("text/html") {
            assert!(text.contains("<html lang=\"en-XA\" dir=\"ltr\">"), "page {at}");
        }
    }
}

#[tokio::test]
async fn every_message_is_there() {
    let browser = Browser::new(&memory()).await;
    let address = browser.mango_ridge().await;
    for path in ["/", &address, "/sums", "/sums/ring", "/nothing"] {
        let text = visible(&browser.get(path).await.text());
        let missing = text.split_whitespace().find(|word| word.starts_with('[') && word.ends_with(']'));
        assert_eq!(missing, None, "{path}");
    }
}

#[tokio::test]
async fn the_mirrored_language_turns_the_page() {
    let browser = Browser::new(&memory()).await;
    let address = browser.new_plan().await;
    browser.post(&address, &mango_ridge_with(&[("settings.language", "ar-XB")])).await;
    for path in ["/", &address, "/sums"] {
        assert!(browser.get(path).await.text().contains("<html lang=\"ar-XB\" dir=\"rtl\">"), "{path}");
    }
}
