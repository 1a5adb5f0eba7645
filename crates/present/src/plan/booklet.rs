//! The plan as a booklet: verdicts and problems on the cover, then weeks, drawings, deliveries; no row for every figure.

use advice::finding::Weight;

use super::Shown;
use crate::document::{Align, Block, Document, Steps, Table};

impl Shown<'_> {
    /// The booklet.
    pub fn booklet(&self) -> Document {
        let parts = [self.space(), self.feed(), self.water(), self.heat(), self.money_chapter()];
        let mut blocks: Vec<Block> = self.in_short(&parts).map(Block::Table).into_iter().collect();
        blocks.extend(self.problems());
        blocks.push(Block::PageBreak);
        let [_, feed, water, heat, money] = parts;
        let readying = [self.countdown(), self.guard(), self.disinfectant(), self.litter()];
        let growing = [self.days(), self.equipment(), feed, water, self.light(), heat, money, self.assumed()];
        let chapters = readying.into_iter().chain(growing);
        blocks.extend(chapters.flatten().flat_map(for_booklet));
        Document { title: self.words.plain("sheet-booklet"), subtitle: self.subtitle(), blocks }
    }

    /// The leading answer of each part, with a part's other leading answers behind it.
    fn in_short(&self, parts: &[Vec<Block>]) -> Option<Table> {
        let leads = parts.iter().flatten().filter_map(|block| match block {
            Block::Lead { label, value, note } => Some(vec![label.clone(), value.clone(), note.clone()]),
            _ => None,
        });
        let rows: Vec<Vec<String>> = leads.collect();
        let columns = ["column-question", "column-answer", "column-more"];
        (!rows.is_empty()).then(|| Table {
            caption: self.words.plain("booklet-caption"),
            columns: columns.iter().map(|key| (self.words.plain(key), Align::Start)).collect(),
            rows,
            emphasis: Vec::new(),
            explained_by: Vec::new(),
        })
    }

    /// Money without the purchases, which the shopping list has.
    fn money_chapter(&self) -> Vec<Block> {
        let answers = self.money_answers();
        let heading = (!answers.is_empty()).then(|| self.heading("question-money"));
        heading.into_iter().chain(answers).collect()
    }

    /// What does not hold, each with its ways out.
    fn problems(&self) -> Vec<Block> {
        let problems = self.finding_views().into_iter().filter(|finding| finding.weight == Weight::Problem);
        let items: Vec<(String, String)> =
            problems.map(|finding| (finding.text, finding.ways_out.join(" "))).collect();
        if items.is_empty() {
            return vec![Block::Note(self.words.plain("booklet-no-problems"))];
        }
        vec![self.heading("question-problems"), Block::Steps(Steps { ordered: true, ticks: false, items })]
    }
}

/// What is folded away on a screen is on another sheet, of what stands apart the drawings are here, and problems are on the
/// cover.
fn for_booklet(block: Block) -> Vec<Block> {
    match block {
        Block::Fold { .. } | Block::Figures(_) => Vec::new(),
        Block::Apart { blocks, .. } => {
            blocks.into_iter().filter(|block| matches!(block, Block::Drawing(_))).collect()
        }
        Block::Finding(finding) if finding.weight == Weight::Problem => Vec::new(),
        other => vec![other],
    }
}
