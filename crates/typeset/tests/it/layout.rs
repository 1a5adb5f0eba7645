//! Nothing runs over the edge, and what belongs together stays together.

use serde_json::{Value, json};

use crate::{Shown, around, show};

/// Width of the usual margin at either side.
const MARGIN_MM: f64 = 18.0;

/// No word stands outside the margins or upon another.
fn assert_legible(shown: &Shown) {
    assert_legible_from(shown, MARGIN_MM);
}

/// The same for margins of so many millimetres.
fn assert_legible_from(shown: &Shown, margin_mm: f64) {
    let margin = margin_mm / 25.4 * 72.0;
    let words = shown.words();
    for (index, word) in words.iter().enumerate() {
        let inside = word.left >= margin - 1.0 && word.right <= word.page_width - margin + 1.0;
        assert!(inside, "over the edge: {word:?}");
        let upon = words[index + 1..].iter().find(|other| word.covers(other));
        assert!(upon.is_none(), "{word:?} and {upon:?} are on the same spot");
    }
}

fn long_word() -> String {
    "Wasserspeicherhochdruckleitungsventil".repeat(4)
}

fn stretched(word: &str) -> Value {
    let figure = json!({ "label": word, "value": word, "note": word });
    let input = json!({ "symbol": word, "label": word, "value": word, "origin": word });
    let column = json!({ "title": word, "align": "start" });
    json!([
        { "kind": "heading", "level": 1, "text": word },
        { "kind": "paragraph", "text": format!("before {word} after") },
        { "kind": "lead", "label": word, "value": word, "note": word },
        { "kind": "figures", "rows": [figure, { "label": "short", "value": "1", "note": "" }] },
        { "kind": "table", "caption": word, "columns": [column, { "title": "n", "align": "end" }, column],
          "rows": [[word, "1\u{a0}083", "short"], ["short", "2", word]] },
        { "kind": "drawing", "name": "guard.svg", "caption": word, "alternative": word },
        { "kind": "steps", "ordered": true, "ticks": true, "items": [{ "text": word, "why": word }] },
        { "kind": "caution", "level": "danger", "title": word, "items": [word] },
        { "kind": "caution", "level": "care", "title": word, "items": [word] },
        { "kind": "note", "text": word },
        { "kind": "blanks", "rows": [{ "label": word, "width_percent": 30 }, { "label": word, "width_percent": 70 }] },
        { "kind": "working", "title": word, "formula": word, "substituted": word, "rounded": word,
          "inputs": [input], "result": word, "source": word },
        { "kind": "note", "text": word, "turned": true },
        { "kind": "day_grid", "columns": [{ "title": word, "note": word }, { "title": "b" }, { "title": "c" }],
          "rows": [
            { "label": word, "note": word, "write": false, "cells": [word, word, "short"] },
            { "label": word, "write": true, "cells": [word, "1", ""] },
            { "label": "x", "write": true, "parts": [word, "m"], "cells": [word, "", "1"] },
            { "label": "x", "write": true, "ticks": [word, "m"], "cells": [word, "", "1"] },
        ] },
        { "kind": "beside", "parts": [
          { "width_percent": 60, "blocks": [{ "kind": "blanks", "rows": [{ "label": word }] }] },
          { "width_percent": 40, "blocks": [{ "kind": "caution", "level": "danger", "title": word, "items": [word] }] },
        ] },
    ])
}

#[test]
fn a_word_longer_than_the_line_wraps_in_every_place() {
    for (paper, landscape, direction) in [("a4", false, "ltr"), ("us-letter", true, "rtl")] {
        let mut document = around(stretched(&long_word()));
        document["page"] = json!({ "paper": paper, "landscape": landscape });
        document["direction"] = json!(direction);
        for field in ["title", "subtitle", "footer", "page_of"] {
            document[field] = json!(long_word());
        }
        assert_legible(&show(&document));
    }
}

fn wide_table(columns: usize, title: &str, cell: &str) -> Value {
    let titles: Vec<_> =
        (0..columns).map(|index| json!({ "title": format!("{title} {index}"), "align": "end" })).collect();
    let row: Vec<_> = (0..columns).map(|index| format!("{cell}{index}")).collect();
    json!([{ "kind": "table", "columns": titles, "rows": [row.clone(), row] }])
}

#[test]
fn a_table_of_many_columns_fits() {
    for columns in [2, 8, 14, 24] {
        assert_legible(&show(&around(wide_table(columns, "Temperature", "1\u{a0}083."))));
    }
}

#[test]
fn words_in_a_table_are_broken_only_when_nothing_else_helps() {
    let text = show(&around(wide_table(8, "Temperature", "10."))).text();
    assert_eq!(text.matches("Temperature").count(), 8, "{text}");
}

/// Pages of a table of `count` rows, each a name and its remark `times` over.
fn long_table(count: usize, times: usize) -> Vec<String> {
    let row = |index| json!([format!("row{index}"), format!("remark{index}. ").repeat(times)]);
    show(&around(json!([{
        "kind": "table",
        "columns": [{ "title": "Rowname", "align": "start" }, { "title": "Remark", "align": "start" }],
        "rows": (0..count).map(row).collect::<Vec<_>>(),
    }])))
    .pages()
}

#[test]
fn a_long_table_repeats_its_header() {
    let pages = long_table(300, 1);
    assert!(pages.len() > 5);
    for page in &pages {
        assert_eq!(page.matches("Rowname").count(), 1, "{page}");
    }
    assert_eq!(pages.concat().matches("remark").count(), 300);
}

#[test]
fn a_row_is_not_split_over_pages() {
    let pages = long_table(60, 40);
    assert!(pages.len() > 4);
    for index in 0..60 {
        let remark = format!("remark{index}.");
        let counts: Vec<_> = pages.iter().map(|page| page.matches(&remark).count()).collect();
        assert_eq!(counts.iter().filter(|&&count| count > 0).count(), 1, "row {index}: {counts:?}");
    }
}

fn caution(lines: usize) -> Value {
    let items: Vec<_> = (0..lines).map(|index| format!("line{index}.")).collect();
    json!({ "kind": "caution", "level": "danger", "title": "Caution", "items": items })
}

#[test]
fn a_caution_that_fits_a_page_is_not_split() {
    let filling: Vec<_> = (0..30).map(|_| json!({ "kind": "paragraph", "text": "filling" })).collect();
    let mut blocks = filling;
    blocks.push(caution(20));
    let pages = show(&around(json!(blocks))).pages();
    assert_eq!(pages.len(), 2);
    assert!(!pages[0].contains("line0."), "{}", pages[0]);
    assert!(pages[1].contains("line0.") && pages[1].contains("line19."));
}

#[test]
fn a_caution_longer_than_a_page_flows_on() {
    let pages = show(&around(json!([caution(120)]))).pages();
    assert!(pages.len() >= 3);
    assert!(pages.concat().contains("line119."));
}

#[test]
fn no_text_is_lost_at_the_foot_of_a_page() {
    let long: String = (0..1500).map(|index| format!("word{index} ")).collect();
    for block in [
        json!({ "kind": "table", "columns": [{ "title": "a", "align": "start" }], "rows": [["short"], [long]] }),
        json!({ "kind": "figures", "rows": [{ "label": long, "value": "1" }] }),
        json!({ "kind": "steps", "ordered": true, "ticks": true, "items": [{ "text": "x", "why": long }] }),
        json!({ "kind": "lead", "label": "x", "value": "1", "note": long }),
        json!({ "kind": "blanks", "rows": [{ "label": long, "width_percent": 100 }] }),
    ] {
        let text = show(&around(json!([block]))).text();
        let lost = (0..1500).find(|index| !text.contains(&format!("word{index}")));
        assert_eq!(lost, None, "{}", block["kind"]);
    }
}

#[test]
fn a_heading_and_a_caption_go_with_what_follows() {
    for filling in 20..40 {
        let mut blocks: Vec<_> =
            (0..filling).map(|_| json!({ "kind": "paragraph", "text": "filling" })).collect();
        let rows: Vec<_> = (0..12).map(|index| json!([format!("cell{index}")])).collect();
        blocks.push(json!({ "kind": "heading", "level": 2, "text": "Heading" }));
        blocks.push(json!({ "kind": "table", "caption": "Caption", "rows": rows,
            "columns": [{ "title": "Title", "align": "start" }] }));
        let pages = show(&around(json!(blocks))).pages();
        let first = pages.iter().find(|page| page.contains("cell0")).unwrap();
        assert!(first.contains("Heading") && first.contains("Caption"), "after {filling} paragraphs");
    }
}

#[test]
fn a_tall_drawing_is_held_to_one_page() {
    let tall = "<svg xmlns='http://www.w3.org/2000/svg' width='10' height='100' font-family='sans-serif' \
                font-size='1'><text x='0' y='2'>top</text><text x='0' y='99'>foot</text></svg>";
    let document =
        around(json!([{ "kind": "drawing", "name": "tall.svg", "alternative": "x", "caption": "Tall" }]));
    let drawings = typeset::Drawings::from([("tall.svg".to_owned(), tall.to_owned())]);
    let pages = Shown::new(&typeset::render(&document, &drawings, None).unwrap()).pages();
    assert_eq!(pages.len(), 1);
    for told in ["top", "foot", "Tall"] {
        assert!(pages[0].contains(told), "{told}");
    }
}

#[test]
fn blanks_that_add_up_to_the_width_stand_on_one_line() {
    // Taken from a hundred one after the other, these leave a trace of rounding.
    let field = |label: &str, percent: f64| json!({ "label": label, "width_percent": percent });
    let document = around(json!([{ "kind": "blanks", "rows": [
        field("first", 10.0), field("second", 58.2), field("third", 31.8), field("below", 50.0),
    ] }]));
    let lines = show(&document).lines();
    let line = lines.lines().find(|line| line.contains("first")).unwrap();
    assert!(line.contains("second") && line.contains("third") && !line.contains("below"), "{lines}");
}

fn week() -> Value {
    let days: Vec<_> = (0..7).map(|day| json!({ "title": format!("Day{day}"), "note": "note" })).collect();
    let cells: Vec<_> = (0..7).map(|day| format!("cell{day}")).collect();
    let rows: Vec<_> = (0..8)
        .map(|row| json!({ "label": format!("Row{row}"), "write": true, "height_mm": 9.5, "cells": cells }))
        .collect();
    json!({ "kind": "day_grid", "columns": days, "rows": rows })
}

#[test]
fn a_week_stands_in_order_and_leaves_room_for_a_pencil() {
    for (direction, first) in [("ltr", "Day0"), ("rtl", "Day6")] {
        let mut document = around(json!([week()]));
        document["page"] = json!({ "paper": "a4", "landscape": true, "bare": true });
        document["direction"] = json!(direction);
        let shown = show(&document);
        let words = shown.words();
        let days: Vec<&str> =
            words.iter().map(|word| word.text.as_str()).filter(|text| text.starts_with("Day")).collect();
        let left = words
            .iter()
            .filter(|word| word.text.starts_with("Day"))
            .min_by(|one, other| one.left.total_cmp(&other.left))
            .unwrap();
        assert_eq!(left.text, first, "{days:?}");
        let rows: Vec<f64> =
            words.iter().filter(|word| word.text == "cell0").map(|word| word.baseline).collect();
        assert_eq!(rows.len(), 8);
        let room = 9.5 / 25.4 * 72.0;
        assert!(rows.windows(2).all(|pair| pair[1] - pair[0] > room), "{rows:?}");
    }
}

#[test]
fn a_bare_sheet_that_is_a_little_too_full_is_made_smaller() {
    let pages = |remarks: usize| {
        let rows: Vec<_> = (0..remarks).map(|_| json!({ "label": "Remark" })).collect();
        let mut document = around(json!([week(), { "kind": "blanks", "rows": rows }]));
        document["page"] = json!({ "paper": "a4", "landscape": true, "bare": true });
        let shown = show(&document);
        assert_legible_from(&shown, 10.0);
        shown.pages().len()
    };
    assert_eq!([pages(3), pages(6), pages(8)], [1, 1, 1]);
    assert!(pages(25) > 1, "nobody could read that");
}

#[test]
fn sheets_that_lie_differently_go_into_one_file() {
    let word = |text: &str| json!({ "kind": "paragraph", "text": text });
    let turn = |landscape: bool| json!({ "kind": "page", "landscape": landscape, "bare": landscape });
    let blocks = json!([
        word("upright"),
        turn(true),
        word("flat"),
        turn(true),
        word("flatter"),
        turn(false),
        word("again")
    ]);
    let mut document = around(blocks);
    document["page_of"] = json!("Page {page} of {pages}");
    let shown = show(&document);
    let pages = shown.pages();
    let widths: Vec<_> = ["upright", "flat", "flatter", "again"]
        .iter()
        .map(|text| shown.words().into_iter().find(|word| word.text == *text).unwrap().page_width.round())
        .collect();
    assert_eq!(widths, [595.0, 842.0, 842.0, 595.0]);
    assert_eq!(pages.len(), 4, "{pages:?}");
    assert!(pages[0].contains("Page 1 of 4") && pages[3].contains("Page 4 of 4"), "{pages:?}");
    assert!(!pages[1].contains("Page"), "a bare sheet has no footer: {pages:?}");
}

#[test]
fn a_first_sheet_that_is_bare_names_itself_in_the_file_only() {
    let mut document = around(json!([week()]));
    document["page"] = json!({ "paper": "us-letter", "landscape": true, "bare": true });
    let shown = show(&document);
    assert_eq!(shown.info("Title").as_deref(), Some("Sheet"));
    assert!(!shown.text().contains("Sheet"));
}

#[test]
fn the_words_of_a_group_run_on_over_a_table_to_be_filled_in() {
    let column =
        |title: &str, align: &str, fill: &str| json!({ "title": title, "align": align, "fill": fill });
    let document = around(json!([{ "kind": "table", "emphasis": [0], "columns": [
            column("", "start", "tick"), column("Day", "start", "words"), column("What", "start", "words"),
            column("Cost", "end", "words"), column("Paid", "start", "line")],
        "rows": [["", "All of week two", "", "12", ""], ["", "Mon", "Litter", "12", ""]] }]));
    let shown = show(&document);
    let words = shown.words();
    let at = |text: &str| words.iter().find(|word| word.text == text).unwrap();
    assert!((at("All").baseline - at("two").baseline).abs() < 1.0, "on one line: {words:?}");
    assert!(at("two").right > at("What").left, "over the next column");
    assert_legible(&shown);
}
