//! What is refused, and how it is told.

use serde_json::{Value, json};
use typeset::{Drawings, TypesetError};

use crate::{around, drawings, sample};

fn refused(document: &Value, drawings: &Drawings) -> TypesetError {
    typeset::render(document, drawings, None).unwrap_err()
}

#[test]
fn an_unknown_kind_of_block_is_refused() {
    let error =
        refused(&around(json!([{ "kind": "note", "text": "x" }, { "kind": "carousel" }])), &drawings());
    assert_eq!(error.to_string(), "block 1 is of the unknown kind \"carousel\"");
}

#[test]
fn a_missing_drawing_is_refused_with_its_name() {
    let error = refused(&sample(), &Drawings::new());
    assert!(matches!(error, TypesetError::MissingDrawing { name, .. } if name == "guard.svg"));
}

#[test]
fn a_malformed_drawing_is_refused_with_its_name() {
    let picture = |name: &str| json!({ "kind": "drawing", "name": name, "alternative": "x" });
    let document = around(json!([picture("guard.svg"), picture("bad.svg")]));
    let bad = [
        "",
        "not a drawing",
        "<svg",
        "<svg xmlns='http://www.w3.org/2000/svg' width='10' height='10'><rect></svg>",
        "<svg xmlns='http://www.w3.org/2000/svg' width='0' height='-1'/>",
        "<html/>",
        "<!DOCTYPE svg [<!ENTITY a 'aaaa'>]><svg>&b;</svg>",
    ];
    for svg in bad {
        let mut drawings = drawings();
        drawings.insert("bad.svg".to_owned(), svg.to_owned());
        let error = refused(&document, &drawings);
        assert!(
            matches!(&error, TypesetError::BadDrawing { name, .. } if name == "bad.svg"),
            "{svg}: {error}"
        );
    }
}

#[test]
fn a_drawing_cannot_reach_outside_itself() {
    let mut drawings = Drawings::new();
    let svg = "<svg xmlns='http://www.w3.org/2000/svg' xmlns:xlink='http://www.w3.org/1999/xlink' width='9' \
               height='9'><image xlink:href='job.json' width='9' height='9'/></svg>";
    for href in ["job.json", "file:///etc/hostname", "../Cargo.toml", "http://127.0.0.1:9/x.png"] {
        drawings.insert("out.svg".to_owned(), svg.replace("job.json", href));
        let document = around(json!([{ "kind": "drawing", "name": "out.svg", "alternative": "x" }]));
        let error = refused(&document, &drawings);
        assert!(matches!(error, TypesetError::Template { .. }), "{href}: {error}");
    }
}

#[test]
fn a_document_of_another_shape_is_refused() {
    for (field, value) in [
        ("page", json!({ "paper": "papyrus" })),
        ("direction", json!("up")),
        ("language", json!("english")),
        ("blocks", json!("none")),
        ("titel", json!("Sheet")),
    ] {
        let mut document = around(json!([]));
        document[field] = value;
        let error = refused(&document, &drawings());
        assert!(matches!(error, TypesetError::BadDocument { .. }), "{field}: {error}");
    }
    assert!(matches!(refused(&json!(null), &drawings()), TypesetError::BadDocument { .. }));
}

#[test]
fn a_day_outside_the_calendar_is_refused() {
    let error = typeset::render(&around(json!([])), &drawings(), Some((2027, 2, 29))).unwrap_err();
    assert!(matches!(error, TypesetError::BadDate { year: 2027, month: 2, day: 29 }));
}
