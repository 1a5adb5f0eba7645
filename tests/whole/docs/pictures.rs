//! The pictures of the manual: the drawings of the plan it works with.

use std::collections::BTreeSet;
use std::fs;

use present::document::Drawing;
use present::plan::Shown;
use present::{Block, Viewer};

use super::{folder, hold, kept};
use crate::sample;

/// Every drawing of a plan.
pub fn drawings(plan_file: &str) -> Vec<Drawing> {
    let plan = sample::plan(plan_file);
    let viewer = Viewer::of(&plan.answers);
    let document = Shown::new(&plan, &viewer).document();
    let drawing = |block: &Block| match block {
        Block::Drawing(drawing) => Some(drawing.clone()),
        _ => None,
    };
    document.every_block().into_iter().filter_map(drawing).collect()
}

/// A drawing as a file by itself. Its lines are dark, so it brings its own paper to readers with a dark page.
fn file(drawing: &Drawing) -> String {
    drawing.svg.replacen("<svg ", "<svg style=\"background:#fff\" ", 1) + "\n"
}

fn lying() -> BTreeSet<String> {
    let entries = fs::read_dir(folder().join("pictures")).unwrap();
    entries.map(|entry| entry.unwrap().file_name().into_string().unwrap()).collect()
}

/// Pictures of pages are taken by the trial in a browser, which this machine may not have.
fn is_of_page(name: &str) -> bool {
    name.starts_with("page-") && name.ends_with(".png")
}

#[test]
fn pictures_are_up_to_date() {
    let drawn = drawings(&kept("example.toml"));
    let mut names = BTreeSet::new();
    for drawing in &drawn {
        let name = format!("{}.svg", drawing.name);
        hold(&format!("pictures/{name}"), &file(drawing));
        assert!(names.insert(name), "two pictures are called {}", drawing.name);
    }
    let lying: BTreeSet<String> = lying().into_iter().filter(|name| !is_of_page(name)).collect();
    assert_eq!(lying, names, "a picture lies in docs/pictures that no plan draws");
}

/// A picture nobody can find in a chapter is one that nobody keeps an eye on.
#[test]
fn every_picture_is_shown_in_docs() {
    let text: String = super::chapters::names().iter().map(|name| kept(name)).collect();
    for drawing in drawings(&kept("example.toml")) {
        assert!(text.contains(&format!("(pictures/{}.svg)", drawing.name)), "{} is not shown", drawing.name);
        assert!(!drawing.alternative.trim().is_empty(), "{} has no words", drawing.name);
    }
}

/// The width of a small phone, px.
const PHONE_PX: u32 = 360;
/// The most bytes of a picture: the manual is read over poor signal.
const BYTES_MAX: usize = 70_000;

#[test]
fn pictures_of_pages_are_small_and_shown() {
    let text: String = super::chapters::names().iter().map(|name| kept(name)).collect();
    let pages: Vec<String> = lying().into_iter().filter(|name| is_of_page(name)).collect();
    assert!(pages.len() >= 8, "{pages:?}");
    for name in pages {
        let picture = fs::read(folder().join("pictures").join(&name)).unwrap();
        // A PNG says its width behind eight bytes of signature, four of length and four of a name.
        let width = u32::from_be_bytes(picture[16..20].try_into().unwrap());
        assert_eq!(width, PHONE_PX, "{name}");
        assert!(picture.len() <= BYTES_MAX, "{name} has {} bytes", picture.len());
        assert!(text.contains(&format!("](pictures/{name})")), "no chapter shows {name}");
        assert!(!text.contains(&format!("![](pictures/{name})")), "{name} has no words");
    }
}
