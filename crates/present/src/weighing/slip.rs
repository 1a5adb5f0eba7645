//! The slip to take into the house: one page of boxes for bird after bird, spot by spot, with the check of the scale.

use quantity::Unit;

use crate::document::{Align, Blank, Block, Document, Table};
use crate::viewer::Viewer;
use crate::words::Words;
use crate::{say, show};

/// What is known before the birds are weighed.
pub struct Slip<'a> {
    /// Of whom: farm, house, batch; may be empty.
    pub whose: &'a str,
    /// Day of age, where `whose` does not say it.
    pub age_d: Option<i32>,
    /// What a bird should weigh, g.
    pub expected_g: Option<f64>,
    /// Birds to weigh.
    pub birds: f64,
    /// Spots to weigh them at.
    pub spots: usize,
}

/// Rows of boxes: as many as a page holds.
const MOST_ROWS: usize = 12;
const FEWEST_ROWS: usize = 5;
/// Spots: three are the least that tell how sure a mean is, and so many columns a page holds.
const FEWEST_SPOTS: usize = 3;
const MOST_SPOTS: usize = 9;

/// The slip, one page.
pub fn slip(slip: &Slip, viewer: &Viewer) -> Document {
    let words = viewer.words();
    let blocks = vec![
        Block::Note(words.plain("slip-how")),
        Block::Blanks(blanks(
            &["slip-hour", "slip-who", "slip-step", "slip-scale-true", "slip-scale-shown"],
            words,
        )),
        Block::Table(boxes(slip, words)),
        Block::Note(words.plain("slip-crates")),
        Block::Blanks(blanks(&["slip-n", "slip-mean", "slip-cv", "slip-even"], words)),
    ];
    Document { title: words.plain("sheet-weighing"), subtitle: subtitle(slip, viewer), blocks }
}

fn subtitle(slip: &Slip, viewer: &Viewer) -> String {
    let words = viewer.words();
    let age = slip.age_d.map(|age| say!(words, "day-of-age", day = age.to_string()));
    let birds = show::quantity(slip.birds, Unit::Birds, 0, viewer);
    let expected = slip
        .expected_g
        .map(|grams| say!(words, "slip-expected", weight = show::quantity(grams, Unit::Gram, 0, viewer)));
    let whose = Some(slip.whose.to_owned()).filter(|whose| !whose.is_empty());
    let parts = [whose, age, Some(say!(words, "slip-birds", birds = birds)), expected];
    parts.into_iter().flatten().collect::<Vec<_>>().join(" · ")
}

fn blanks(keys: &[&str], words: &Words) -> Vec<Blank> {
    let width_percent = (100 / keys.len()) as u8;
    keys.iter().map(|key| Blank { label: words.plain(key), width_percent }).collect()
}

/// A column a spot and a row a bird; the spot's name is written in the first row. Where the birds need more columns than
/// there are spots, they are offered more spots: more tell more.
fn boxes(slip: &Slip, words: &Words) -> Table {
    let needed = (slip.birds / MOST_ROWS as f64).ceil().max(0.0) as usize;
    let spots = slip.spots.max(needed).clamp(FEWEST_SPOTS, MOST_SPOTS);
    let each = (slip.birds / spots as f64).ceil().max(0.0) as usize;
    let rows = each.clamp(FEWEST_ROWS, MOST_ROWS);
    let spot = |at: usize| (say!(words, "slip-spot", n = (at + 1).to_string()), Align::Line);
    let line = |name: String| std::iter::once(name).chain(vec![String::new(); spots]).collect();
    let named = line(words.plain("slip-where"));
    let birds = (1..=rows).map(|bird| line(bird.to_string()));
    Table {
        caption: words.plain("slip-caption"),
        columns: std::iter::once((words.plain("slip-bird"), Align::Start))
            .chain((0..spots).map(spot))
            .collect(),
        rows: std::iter::once(named).chain(birds).collect(),
        emphasis: Vec::new(),
        explained_by: Vec::new(),
    }
}
