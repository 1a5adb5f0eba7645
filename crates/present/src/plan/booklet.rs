//! The plan as a booklet: verdicts and problems on the cover, then weeks, drawings, deliveries; no row for every figure.

use advice::finding::Weight;

use super::Shown;
use super::waiting::{self, Part};
use crate::document::{Align, Block, Document, Drawing, Steps, Table};

impl Shown<'_> {
    /// The booklet.
    pub fn booklet(&self) -> Document {
        let parts = [self.space(), self.feed(), self.water(), self.heat(), self.money_chapter()];
        let mut blocks: Vec<Block> = self.in_short(&parts).map(Block::Table).into_iter().collect();
        blocks.extend(self.problems());
        let [_, feed, water, heat, money] = parts;
        let readying = [self.countdown(), self.guard(), self.disinfectant(), self.litter()];
        let growing = [self.days(), self.equipment(), feed, water, self.light(), heat, money, self.assumed()];
        let chapters = readying.into_iter().chain(growing);
        blocks.extend(in_pairs(chapters.flatten().flat_map(for_booklet).collect()));
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

    /// Money: what is bought, by its day, and what comes of it.
    fn money_chapter(&self) -> Vec<Block> {
        let answers = self.money_answers();
        if answers.is_empty() {
            return answers;
        }
        let purchases = self.purchases_table().map(Block::Table);
        std::iter::once(self.heading("question-money")).chain(purchases).chain(answers).collect()
    }

    /// What does not hold, each with its ways out.
    fn problems(&self) -> Vec<Block> {
        let checked: Vec<&Part> = [self.space_part()].into_iter().chain(CHECKED.iter().copied()).collect();
        let unchecked = self.to_answer("to-answer", &checked);
        let problems = self.finding_views().into_iter().filter(|finding| finding.weight == Weight::Problem);
        let items: Vec<(String, String)> =
            problems.map(|finding| (finding.text, finding.ways_out.join(" "))).collect();
        let found = match (items.is_empty(), unchecked.is_empty()) {
            (false, _) => vec![
                self.heading("question-problems"),
                Block::Steps(Steps { ordered: true, ticks: false, items }),
            ],
            (true, true) => vec![Block::Note(self.words.plain("booklet-no-problems"))],
            (true, false) => {
                let is_any_checked = checked.iter().any(|part| self.unanswered(part).is_empty());
                let key = if is_any_checked { "booklet-not-all-checked" } else { "booklet-nothing-checked" };
                vec![Block::Note(self.words.plain(key))]
            }
        };
        found.into_iter().chain(unchecked).collect()
    }
}

/// What is checked beside the room before anybody can say that nothing stands against a plan.
const CHECKED: &[&Part] = &[
    &waiting::EQUIPMENT,
    &waiting::GUARD,
    &waiting::MIX,
    &waiting::LITTER,
    &waiting::FEED,
    &waiting::HEAT,
    &waiting::MONEY,
];

/// Drawings whose height would take a page of its own, were they as wide as the text.
const NARROW: &[&str] = &["cutting", "ring", "floor", "widening", "countdown", "tankfuls", "heat"];

/// How wide a drawing is that stands alone, percent: as wide as the text it would be so high that it moves on to the next page
/// and leaves half a page empty.
const ALONE: u8 = 58;

/// Drawings that follow each other stand in pairs beside each other: paper is not left empty.
fn in_pairs(blocks: Vec<Block>) -> Vec<Block> {
    let mut out: Vec<Block> = Vec::new();
    for block in blocks {
        match (out.pop(), block) {
            (Some(Block::Drawing(one)), Block::Drawing(other)) => {
                let full = |drawing| vec![Block::Drawing(Drawing { width_percent: 100, ..drawing })];
                out.push(Block::Beside(vec![(50, full(one)), (50, full(other))]));
            }
            (last, block) => out.extend(last.into_iter().chain([block])),
        }
    }
    let widened = |block| match block {
        Block::Drawing(drawing) if !NARROW.contains(&drawing.name) => {
            Block::Drawing(Drawing { width_percent: ALONE, ..drawing })
        }
        other => other,
    };
    out.into_iter().map(widened).collect()
}

/// What is folded away on a screen is on another sheet, of what stands apart the jobs and the drawings are here, and problems
/// are on the cover.
fn for_booklet(block: Block) -> Vec<Block> {
    match block {
        Block::Fold { .. } | Block::Figures(_) => Vec::new(),
        Block::Apart { page: "jobs", blocks, .. } => blocks.into_iter().map(as_heading).collect(),
        Block::Apart { blocks, .. } => {
            blocks.into_iter().filter(|block| matches!(block, Block::Drawing(_))).collect()
        }
        Block::Finding(finding) if finding.weight == Weight::Problem => Vec::new(),
        other => vec![other],
    }
}

/// On paper the name of a week stays with its jobs over the end of a page.
fn as_heading(block: Block) -> Block {
    match block {
        Block::Paragraph(text) => Block::Heading { level: 3, text, anchor: "every-job" },
        other => other,
    }
}
