//! Whole documents through typst, looked at with the tools of poppler.

#![allow(clippy::unwrap_used, reason = "a helper that fails must fail its test")]

mod failures;
mod layout;
mod literal;
mod rendering;
mod shown;

use serde_json::{Value, json};
use shown::Shown;
use typeset::Drawings;

const GUARD: &str = include_str!("../sample/guard.svg");

/// A document with every kind of block.
fn sample() -> Value {
    serde_json::from_str(include_str!("../sample/document.json")).unwrap()
}

/// The least document around the given blocks.
fn around(blocks: Value) -> Value {
    json!({
        "title": "Sheet",
        "language": "en",
        "direction": "ltr",
        "page": { "paper": "a4" },
        "blocks": blocks,
    })
}

fn drawings() -> Drawings {
    Drawings::from([("guard.svg".to_owned(), GUARD.to_owned())])
}

fn render(document: &Value) -> Vec<u8> {
    typeset::render(document, &drawings(), Some((2027, 2, 2))).unwrap()
}

fn show(document: &Value) -> Shown {
    Shown::new(&render(document))
}
