//! The answer of a quick sum as a document.

use advice::outcome::Outcome;
use advice::sums::Sum;
use quantity::Answers;

use crate::document::{Block, Document, FigureRow};
use crate::viewer::Viewer;
use crate::{show, working};

/// The sum's title.
pub fn title(sum: &Sum, viewer: &Viewer) -> String {
    viewer.words().plain(&format!("sum-{}", sum.name))
}

/// The answer: the first figure large, all of them with their workings.
pub fn document(sum: &Sum, answers: &Answers, outcome: &Outcome, viewer: &Viewer) -> Document {
    let rows: Vec<FigureRow> = outcome
        .figures()
        .map(|worked| FigureRow {
            id: worked.figure.id,
            label: working::label(worked.figure.id, viewer),
            value: show::figure(&worked.figure, worked.spec, viewer),
            note: show::band(worked.figure.band, worked.spec, viewer),
            working: working::view(answers, worked.figure.id, viewer),
        })
        .collect();
    let mut blocks = Vec::new();
    if let Some(first) = rows.first() {
        blocks.push(Block::Lead {
            label: first.label.clone(),
            value: first.value.clone(),
            note: first.note.clone(),
        });
    }
    blocks.push(Block::Figures(rows));
    if sum.name == "dilution" {
        blocks.push(Block::Note(viewer.words().plain("sum-dilution-caution")));
    }
    Document { title: title(sum, viewer), subtitle: String::new(), blocks }
}
