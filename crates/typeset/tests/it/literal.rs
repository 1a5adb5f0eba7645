//! Text from outside is shown, never run.

use serde_json::{Value, json};

use crate::{around, show};

const HOSTILE: [&str; 8] =
    ["#panic(1)", "$x^2$", "*bold*", "_slant_", "@reference", "<label>", "\\u{41}", "#sys.inputs"];

/// Every place where a block holds text, filled with `text`.
fn everywhere(text: &str) -> Value {
    let figure = json!({ "label": text, "value": text, "note": text });
    let input = json!({ "symbol": text, "label": text, "value": text, "origin": text });
    let mut document = around(json!([
        { "kind": "heading", "level": 1, "text": text },
        { "kind": "paragraph", "text": text },
        { "kind": "lead", "label": text, "value": text, "note": text },
        { "kind": "figures", "rows": [figure] },
        { "kind": "table", "caption": text, "columns": [{ "title": text, "align": "end" }], "rows": [[text]] },
        { "kind": "drawing", "name": "guard.svg", "caption": text, "alternative": text },
        { "kind": "steps", "ordered": true, "ticks": true, "items": [{ "text": text, "why": text }] },
        { "kind": "caution", "level": "danger", "title": text, "items": [text] },
        { "kind": "note", "text": text },
        { "kind": "blanks", "rows": [{ "label": text, "width_percent": 100 }] },
        { "kind": "working", "title": text, "formula": text, "substituted": text, "rounded": text,
          "inputs": [input], "result": text, "source": text },
    ]));
    for field in ["title", "subtitle", "footer", "page_of"] {
        document[field] = json!(text);
    }
    document
}

/// Texts of `everywhere` that are shown once; the two of the footer are on each page.
const SHOWN: usize = 30;

#[test]
fn markup_shows_as_it_was_typed_in_every_place() {
    for text in HOSTILE {
        let shown = show(&everywhere(text));
        let pages = shown.pages().len();
        let count = shown.text().matches(text).count();
        assert_eq!(count, SHOWN + 2 * pages, "{text:?} in\n{}", shown.text());
    }
}

#[test]
fn text_with_control_marks_is_set() {
    for text in
        ["", " ", "\u{0}", "a\r\n\r\nb\tc", "\u{202e}abc\u{2066}", "e\u{301}\u{301}", "👩‍👩‍👧", "\u{feff}"]
    {
        assert!(!show(&everywhere(text)).pages().is_empty());
    }
}

#[test]
fn only_the_text_for_page_numbers_is_filled_in() {
    let mut document = around(json!([
        { "kind": "paragraph", "text": "{page} of {pages}" },
        { "kind": "page_break" },
        { "kind": "note", "text": "second" },
    ]));
    document["page_of"] = json!("side {page}, all {pages}, {pages} once more");
    let pages = show(&document).pages();
    assert!(pages[0].contains("{page} of {pages}"));
    assert!(pages[0].contains("side 1, all 2, 2 once more"), "{}", pages[0]);
    assert!(pages[1].contains("side 2, all 2"));
}
