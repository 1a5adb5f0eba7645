//! The answer of a quick sum as a document.

use advice::sums::{Sum, SumResult};

use crate::document::{Block, Caution, Document, FindingView, Level};
use crate::finding;
use crate::plan::{figure_row, meaning};
use crate::viewer::Viewer;
use crate::words::Words;

/// The sum's title.
pub fn title(sum: &Sum, viewer: &Viewer) -> String {
    viewer.words().plain(&format!("sum-{}", sum.name))
}

/// The answer: the first figure large, what it has to say about itself, then all figures with their workings.
pub fn document(sum: &Sum, result: &SumResult, viewer: &Viewer) -> Document {
    let (answers, outcome) = (&result.checked.answers, &result.outcome);
    let words = viewer.words();
    let rows: Vec<_> = outcome.figures().map(|worked| figure_row(answers, outcome, worked, viewer)).collect();
    let mut blocks = Vec::new();
    if let Some(first) = rows.first() {
        let (label, value) = (first.label.clone(), first.value.clone());
        blocks.push(Block::Lead { label, value, note: first.note.clone() });
    }
    // A finding points at the field under the key by which this sum asks it, if it does.
    let asked_as = |field: &str| sum.inputs.iter().find(|input| input.field == field).map(|input| input.key);
    blocks.extend(result.findings.iter().map(|found| {
        let view = finding::view(found, outcome, viewer);
        Block::Finding(FindingView { field: view.field.and_then(asked_as), ..view })
    }));
    blocks.extend(meaning(answers, viewer).map(Block::Note));
    if !rows.is_empty() {
        blocks.push(Block::Figures(rows));
    }
    if let Some(key) = sum.caution {
        let title = words.plain("caution-sum");
        let items = cautions(key, words);
        blocks.push(Block::Caution(Caution { level: Level::Danger, title, items }));
    }
    Document { title: title(sum, viewer), subtitle: String::new(), blocks }
}

/// A caution's sentences: the message of its key, and those with 2, 3 and so on behind it.
pub(crate) fn cautions(key: &str, words: &Words) -> Vec<String> {
    let further = (2..).map(|n| format!("{key}-{n}")).take_while(|key| words.knows(key));
    std::iter::once(key.to_owned()).chain(further).map(|key| words.plain(&key)).collect()
}
