//! A running batch as documents, a page a question: how it grows, what is in the store room, how the chicks are brooded.

use advice::air::day::Answered;
use advice::diary::Diary;
use advice::past::Past;
use advice::walk::Walk;
use advice::weighing::{Aim, Weighing};
use quantity::Unit;

use crate::document::{Block, Caution, Document, FigureRow, Level};
use crate::plan::figure_row;
use crate::viewer::Viewer;
use crate::words::Words;
use crate::{air_day, say, show, weighing};

mod brooding;
mod growing;
mod lines;
mod outlook;
mod sheets;
mod store;
mod uneven;
mod watch;
mod week;

pub(crate) use lines::empty as no_data;
pub use sheets::{BATCH_SHEETS, batch_sheet};
pub(crate) use watch::state_name;

/// A day of a batch being shown to somebody.
pub(crate) struct Page<'a> {
    pub(crate) walk: &'a Walk,
    pub(crate) viewer: &'a Viewer,
    pub(crate) words: &'static Words,
}

/// *How are they growing*: weight, gain, losses, feed, water and feed conversion, each against the plan and against this
/// house's earlier batches.
///
/// The walk is read from a diary that was laid [beside](advice::diary::Diary::beside) the same past.
pub fn growing(walk: &Walk, past: &Past, viewer: &Viewer) -> Document {
    let page = Page::new(walk, viewer);
    page.document("page-growing", page.growing(past))
}

/// What is likely from here, by itself: a part of *How are they growing*, for a walk that [looks ahead](Walk::ahead_of).
pub fn ahead(walk: &Walk, viewer: &Viewer) -> Document {
    let page = Page::new(walk, viewer);
    let blocks = page.ahead();
    let said = if blocks.is_empty() { vec![page.note("ahead-not-yet")] } else { blocks };
    page.document("page-outlook", said)
}

/// *Is something off*: every signal against what was expected, the alarm's memory, and the fixed rules.
pub fn watch(walk: &Walk, viewer: &Viewer) -> Document {
    let page = Page::new(walk, viewer);
    page.document("page-watch", page.watch())
}

/// The part of the watch that belongs on the page of the day; empty until chicks came.
pub fn watch_of_today(walk: &Walk, viewer: &Viewer) -> Vec<Block> {
    Page::new(walk, viewer).watch_of_today()
}

/// *The air they breathe*, of a running batch: tonight's curtain and the heat of the day after it, as answered.
pub fn air(walk: &Walk, answered: Option<&Answered>, viewer: &Viewer) -> Document {
    let page = Page::new(walk, viewer);
    match answered {
        Some(answered) => air_day::document(answered, page.subtitle(), viewer),
        None => page.document("page-air", vec![page.note("air-day-no-birds")]),
    }
}

/// The curtain tonight and the heat tomorrow in a few lines; empty where there are no birds, or the plan does not tell enough.
pub fn air_of_today(walk: &Walk, viewer: &Viewer) -> Vec<Block> {
    air_day::tonight(walk).map_or_else(Vec::new, |answered| air_day::in_short(&answered, viewer))
}

/// *What is in the store room*: feed by phase, how long it lasts, litter, fuel and medicine, as the book has them.
pub fn store(walk: &Walk, viewer: &Viewer) -> Document {
    let page = Page::new(walk, viewer);
    page.document("page-store", page.store())
}

/// *Are the chicks warm and fed*: how they lie, full crops, warmth at the vent, the first week.
pub fn brooding(walk: &Walk, viewer: &Viewer) -> Document {
    let page = Page::new(walk, viewer);
    page.document("page-brooding", page.brooding())
}

/// What the birds weighed on the day of the walk's diary say of the flock; `None` where none was weighed.
pub fn weighed(diary: &Diary, viewer: &Viewer) -> Option<Document> {
    let weighing = Weighing::on(diary, diary.on);
    let result = weighing.held_against(&Aim::on(diary, diary.on));
    (!weighing.is_empty()).then(|| weighing::document(&weighing, &result, &subtitle(diary, viewer), viewer))
}

/// Farm, house and batch, and how old it is on which day.
pub fn subtitle(diary: &Diary, viewer: &Viewer) -> String {
    let text = |key| diary.answers.text(key).filter(|text| !text.is_empty());
    let names = [text("farm.name"), text("house.name"), text("batch.name")];
    let mut parts: Vec<String> = names.into_iter().flatten().map(str::to_owned).collect();
    let day = show::day(diary.on, viewer);
    parts.push(match diary.age_today().filter(|_| diary.is_placed) {
        Some(age) => say!(viewer.words(), "day-of-batch", age = age.to_string(), day = day),
        None => day,
    });
    parts.join(" · ")
}

impl<'a> Page<'a> {
    pub(crate) fn new(walk: &'a Walk, viewer: &'a Viewer) -> Page<'a> {
        Page { walk, viewer, words: viewer.words() }
    }

    pub(crate) fn document(&self, title: &str, mut blocks: Vec<Block>) -> Document {
        self.keep_known_workings(&mut blocks);
        Document { title: self.words.plain(title), subtitle: self.subtitle(), blocks }
    }

    fn subtitle(&self) -> String {
        subtitle(&self.walk.diary, self.viewer)
    }

    /// A table names the figures that explain it; those that were not worked out explain nothing.
    fn keep_known_workings(&self, blocks: &mut [Block]) {
        let plan = &self.walk.plan;
        let is_known = |id: &str| plan.outcome.explains(id);
        for block in blocks {
            match block {
                Block::Table(table) | Block::DayTable { table, .. } => {
                    table.explained_by.retain(|id| is_known(id));
                }
                Block::Fold { blocks, .. } => self.keep_known_workings(blocks),
                _ => {}
            }
        }
    }

    pub(crate) fn heading(&self, key: &'static str) -> Block {
        Block::Heading { level: 2, text: self.words.plain(key), anchor: key }
    }

    pub(crate) fn note(&self, key: &str) -> Block {
        Block::Note(self.words.plain(key))
    }

    /// A column title that says the unit of the numbers below it.
    pub(crate) fn unit_title(&self, key: &str, unit: Unit) -> String {
        self.words.say(key, &[("unit", show::viewers_unit_label(unit, self.viewer).into())])
    }

    pub(crate) fn number(&self, id: &str) -> Option<f64> {
        self.walk.plan.outcome.number(id)
    }

    pub(crate) fn value(&self, id: &str) -> Option<String> {
        let worked = self.walk.plan.outcome.get(id)?;
        Some(show::figure(&worked.figure, worked.spec, self.viewer))
    }

    /// The likely range of a figure in words; empty where it has none.
    fn range(&self, id: &str) -> String {
        let worked = self.walk.plan.outcome.get(id);
        worked.map_or_else(String::new, |worked| show::band(worked.figure.band, worked.spec, self.viewer))
    }

    /// Those of the figures that could be worked out, folded away.
    fn rows(&self, ids: &[&'static str]) -> Option<Block> {
        let plan = &self.walk.plan;
        let known = ids.iter().filter_map(|id| plan.outcome.get(id));
        let rows: Vec<FigureRow> =
            known.map(|worked| figure_row(&plan.answers, &plan.outcome, worked, self.viewer)).collect();
        (!rows.is_empty()).then(|| Block::Fold {
            title: self.words.plain("all-figures"),
            blocks: vec![Block::Figures(rows)],
        })
    }

    fn caution(&self, about: &str, level: Level, count: usize) -> Block {
        let items = (1..=count).map(|at| self.words.plain(&format!("caution-{about}-{at}"))).collect();
        Block::Caution(Caution { level, title: self.words.plain(&format!("caution-{about}")), items })
    }
}
