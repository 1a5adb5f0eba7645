//! Sheets of the accounts: a statement for a lender, and how the batch went, for the wall.

use advice::closing::Closing;

use super::BIRDS;
use crate::batch::Page;
use crate::document::{Align, Blank, Block, Document, Table};
use crate::viewer::Viewer;
use crate::{say, show};

/// What a lender reads first.
const LENT: &[&str] = &[
    "closing.income",
    "closing.cost",
    "closing.profit",
    "closing.profit_with_own_work",
    "closing.cost_per_kg",
    "closing.price_per_kg",
    "closing.owed",
    "closing.owing",
    "store.feed_left",
    "growing.alive",
];
/// What hangs on the wall.
const WALL: &[&str] = &[
    "closing.birds_out",
    "closing.livability",
    "closing.mean_weight",
    "closing.age",
    "closing.fcr",
    "closing.epef",
];
/// Causes that the wall tells.
const CAUSES: usize = 3;

/// A statement that a lender would accept: what came in, went out, is owed and owing, and what earlier batches earned.
pub fn lender(closing: &Closing, viewer: &Viewer) -> Document {
    let page = Page::new(&closing.walk, viewer);
    page.document("sheet-lender", page.lender(closing))
}

/// How the batch went, large, for the wall; without money.
pub fn wall(closing: &Closing, viewer: &Viewer) -> Document {
    let page = Page::new(&closing.walk, viewer);
    page.document("sheet-result", page.wall(closing))
}

impl Page<'_> {
    fn lender(&self, closing: &Closing) -> Vec<Block> {
        let diary = &self.walk.diary;
        let key = if diary.is_closed { "lender-closed" } else { "lender-running" };
        let mut blocks = vec![
            Block::Paragraph(say!(self.words, key, day = show::day(diary.on, self.viewer))),
            self.figures(LENT),
        ];
        blocks.extend(self.not_all_in(closing).map(Block::Caution));
        blocks.extend(self.heads(closing).map(Block::Table));
        blocks.extend(self.earlier(closing));
        blocks.push(self.figures(BIRDS));
        blocks.extend(self.cash_book(closing));
        blocks.push(self.note("lender-note"));
        let blank = |(key, width_percent): (&str, u8)| Blank { label: self.words.plain(key), width_percent };
        let blanks = [("lender-name", 45), ("lender-signed", 45), ("lender-day", 45), ("lender-witness", 45)];
        blocks.push(Block::Blanks(blanks.map(blank).to_vec()));
        blocks
    }

    /// What earlier batches earned: what a lender goes by.
    fn earlier(&self, closing: &Closing) -> Option<Block> {
        let earlier = closing.beside.batches.iter().skip(1).filter(|one| one.is_closed);
        let rows = earlier.map(|one| {
            let money = |id: &str| one.number(id).map_or_else(String::new, |value| show::number(value, 0));
            let number = |id: &str, decimals: u8| {
                one.number(id).map_or_else(String::new, |value| show::number(value, decimals))
            };
            vec![
                one.name.clone().unwrap_or_default(),
                show::day(one.placement, self.viewer),
                number("closing.livability", 1),
                money("closing.profit"),
                number("closing.cost_per_kg", 2),
            ]
        });
        let rows: Vec<Vec<String>> = rows.collect();
        let unit = show::unit_label(quantity::Unit::Money, self.viewer);
        let titled = |key: &str, align: Align| (say!(self.words, key, unit = unit.clone()), align);
        (self.viewer.money_shown && !rows.is_empty()).then(|| {
            Block::Table(Table {
                caption: self.words.plain("lender-earlier"),
                columns: vec![
                    titled("lender-batch", Align::Start),
                    titled("column-date", Align::Start),
                    titled("closing-beside-survival", Align::End),
                    titled("lender-profit", Align::End),
                    titled("closing-beside-cost", Align::End),
                ],
                rows,
                emphasis: Vec::new(),
                explained_by: Vec::new(),
            })
        })
    }

    fn wall(&self, closing: &Closing) -> Vec<Block> {
        let lead = |id: &str| {
            let label = crate::working::label(id, self.viewer);
            Some(Block::Lead { label, value: self.value(id)?, note: String::new() })
        };
        let diary = &self.walk.diary;
        let day = || show::day(diary.on, self.viewer);
        let running =
            (!diary.is_closed).then(|| Block::Paragraph(say!(self.words, "wall-running", day = day())));
        let mut blocks: Vec<Block> = running.into_iter().collect();
        let leads: Vec<Block> = WALL.iter().filter_map(|id| lead(id)).collect();
        if leads.is_empty() {
            blocks.push(self.note("closing-not-known-note"));
        }
        blocks.extend(leads);
        let causes: Vec<String> =
            closing.causes.iter().take(CAUSES).map(|cause| self.cause_name(cause)).collect();
        if !causes.is_empty() {
            blocks.push(Block::Paragraph(say!(self.words, "wall-causes", causes = causes.join(", "))));
        }
        blocks.extend(self.beside_table_block(closing));
        blocks.push(Block::Blanks(vec![Blank { label: self.words.plain("wall-next"), width_percent: 100 }]));
        blocks
    }

    fn beside_table_block(&self, closing: &Closing) -> Option<Block> {
        (closing.beside.batches.len() > 1).then(|| {
            // What hangs on the wall is for everybody who comes in: no money.
            Block::Table(self.beside_table(&closing.beside, false))
        })
    }
}
