//! Every kind of block on every paper, and what the file says about itself.

use std::collections::BTreeSet;

use serde_json::json;

use crate::{around, drawings, render, sample, show};

#[test]
fn the_sample_holds_every_kind_of_block() {
    let sample = sample();
    let blocks = sample["blocks"].as_array().unwrap();
    let kinds: BTreeSet<_> = blocks.iter().map(|block| block["kind"].as_str().unwrap()).collect();
    let all = [
        "beside",
        "blanks",
        "caution",
        "day_grid",
        "drawing",
        "figures",
        "heading",
        "lead",
        "note",
        "page",
        "page_break",
        "paragraph",
        "steps",
        "table",
        "working",
    ];
    assert_eq!(kinds, BTreeSet::from(all));
}

#[test]
fn every_block_is_set_on_each_paper_either_way_up() {
    let sizes = [
        ("a4", false, "595.276 x 841.89 pts (A4)"),
        ("a4", true, "841.89 x 595.276 pts (A4)"),
        ("us-letter", false, "612 x 792 pts (letter)"),
        ("us-letter", true, "792 x 612 pts (letter)"),
    ];
    for (paper, landscape, size) in sizes {
        let mut document = sample();
        document["page"] = json!({ "paper": paper, "landscape": landscape });
        let shown = show(&document);
        assert_eq!(shown.info("Page size").as_deref(), Some(size));
        let text = shown.text();
        for told in [
            "1 083 birds",
            "What must be there",
            "610 l a day",
            "Nobody sleeps in the house",
            "Disinfectant on dirt",
            "The house from above",
            "Guard ring, 4.2 m across",
            "Kept for week two",
            "3 432",
            "Hour",
            "birds = floor × load ÷ weight",
            "not a promise",
            "Bought at",
            "Wed 3 Feb",
            "call at 12",
            "evening",
            "Move nothing.",
        ] {
            assert!(text.contains(told), "{paper}, landscape {landscape}: {told:?} is not in\n{text}");
        }
    }
}

#[test]
fn the_file_tells_its_title_its_day_and_its_structure() {
    let shown = show(&sample());
    assert_eq!(shown.info("Title").as_deref(), Some("Before the chicks: readying the long house"));
    assert!(shown.info("CreationDate").unwrap().contains("Feb  2 00:00:00 2027"));
    assert_eq!(shown.info("Tagged").as_deref(), Some("yes"));
    let tags = shown.tags();
    for tag in ["Table", "TH <", "LI (block)", "Figure", "Caption", "H1"] {
        assert!(tags.contains(tag), "no {tag} in\n{tags}");
    }
}

#[test]
fn drawings_carry_their_alternative_and_the_file_its_language() {
    let document = around(json!([
        { "kind": "drawing", "name": "guard.svg", "alternative": "A ring within a rectangle." },
    ]));
    let pdf = String::from_utf8_lossy(&render(&document)).into_owned();
    assert!(pdf.contains("(A ring within a rectangle.)"), "no text alternative");
    assert!(pdf.contains("/Lang (en)") || pdf.contains("/Lang(en)"), "no language");
}

#[test]
fn only_noto_sans_is_used_in_drawings_too() {
    let fonts: BTreeSet<_> = show(&sample()).fonts().into_iter().collect();
    assert_eq!(fonts, BTreeSet::from(["NotoSans".to_owned(), "NotoSans-Bold".to_owned()]));
}

#[test]
fn equal_input_gives_equal_bytes_whatever_came_between() {
    let first = render(&sample());
    render(&around(json!([{ "kind": "note", "text": "between" }])));
    comemo::evict(0);
    assert!(first == render(&sample()), "the second render differs");
}

#[test]
fn another_day_gives_another_file_and_no_day_leaves_the_date_out() {
    let document = around(json!([]));
    let day = |created| typeset::render(&document, &drawings(), created).unwrap();
    assert_ne!(day(Some((2027, 2, 2))), day(Some((2027, 2, 3))));
    let undated = crate::Shown::new(&day(None));
    assert_eq!(undated.info("CreationDate"), None);
}

#[test]
fn right_to_left_mirrors_the_page() {
    let mut document = sample();
    let left_of = |document: &serde_json::Value, text: &str| {
        let words = show(document).words();
        words.into_iter().find(|word| word.text == text).unwrap().left
    };
    let (week, changes) = (left_of(&document, "Week"), left_of(&document, "changes"));
    assert!(week < changes);
    document["direction"] = json!("rtl");
    let (week, changes) = (left_of(&document, "Week"), left_of(&document, "changes"));
    assert!(week > changes);
}
