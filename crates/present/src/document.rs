//! A document of blocks: what a page, a sheet or a terminal shows, before anybody lays it out.

use quantity::CivilDay;

/// A document.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Document {
    /// What it is.
    pub title: String,
    /// Of whom and when; may be empty.
    pub subtitle: String,
    /// Its content, in order.
    pub blocks: Vec<Block>,
}

impl Document {
    /// Every block, those folded away too.
    pub fn every_block(&self) -> Vec<&Block> {
        let mut all = Vec::new();
        gather(&self.blocks, true, &mut all);
        all
    }

    /// Every block but those that have a page of their own.
    pub fn blocks_in_place(&self) -> Vec<&Block> {
        let mut all = Vec::new();
        gather(&self.blocks, false, &mut all);
        all
    }

    /// The part that stands on a page of that name: its title and content.
    pub fn part(&self, name: &str) -> Option<(&str, &[Block])> {
        self.every_block().into_iter().find_map(|block| match block {
            Block::Apart { page, title, blocks } if *page == name => {
                Some((title.as_str(), blocks.as_slice()))
            }
            _ => None,
        })
    }
}

fn gather<'a>(blocks: &'a [Block], with_apart: bool, all: &mut Vec<&'a Block>) {
    for block in blocks {
        all.push(block);
        match block {
            Block::Fold { blocks, .. } => gather(blocks, with_apart, all),
            Block::Apart { blocks, .. } if with_apart => gather(blocks, with_apart, all),
            Block::Beside(parts) => parts.iter().for_each(|(_, blocks)| gather(blocks, with_apart, all)),
            _ => {}
        }
    }
}

/// A piece of a document.
#[derive(Clone, Debug, PartialEq)]
pub enum Block {
    /// A heading of level 2 or 3; level 1 is the title.
    Heading {
        /// Its level.
        level: u8,
        /// Its text.
        text: String,
        /// A stable name to link to.
        anchor: &'static str,
    },
    /// A paragraph.
    Paragraph(String),
    /// The answer to the heading's question, large.
    Lead {
        /// What it is.
        label: String,
        /// The answer.
        value: String,
        /// A sentence beside it; may be empty.
        note: String,
    },
    /// Figures with their workings.
    Figures(Vec<FigureRow>),
    /// A table.
    Table(Table),
    /// A table whose rows are about days of a batch: on a screen each leads to what was written about its day.
    DayTable {
        /// The table.
        table: Table,
        /// The day of each row; `None` for a row that is about no day.
        days: Vec<Option<CivilDay>>,
    },
    /// A drawing.
    Drawing(Drawing),
    /// Things to do, in order or not.
    Steps(Steps),
    /// A warning.
    Caution(Caution),
    /// Something the plan has to say about itself.
    Finding(FindingView),
    /// Small print.
    Note(String),
    /// A working printed in full.
    Working(WorkingView),
    /// Content folded away on a screen until it is asked for; open on paper and in a terminal.
    Fold {
        /// What it holds.
        title: String,
        /// The content.
        blocks: Vec<Block>,
    },
    /// Content that has a page of its own on a screen, so that the page it belongs to stays small; in its place on paper and
    /// in a terminal.
    Apart {
        /// The name of its page.
        page: &'static str,
        /// What it holds.
        title: String,
        /// The content.
        blocks: Vec<Block>,
    },
    /// A new page on paper; nothing elsewhere.
    PageBreak,
    /// Lines to write on.
    Blanks(Vec<Blank>),
    /// A week to write in; on paper it takes a whole sheet on its side.
    DayGrid(DayGrid),
    /// Parts of a page side by side on paper, one after the other elsewhere; the share of each in percent.
    Beside(Vec<(u8, Vec<Block>)>),
    /// Answers to what is asked above, upside down on paper.
    Answers(Vec<String>),
}

/// A line to write on.
#[derive(Clone, Debug, PartialEq)]
pub struct Blank {
    /// What to write.
    pub label: String,
    /// Its width on paper, percent of the text.
    pub width_percent: u8,
}

/// A week to write in.
#[derive(Clone, Debug, PartialEq)]
pub struct DayGrid {
    /// How to fill it in.
    pub corner: String,
    /// Its days: the date, and what else the day is called.
    pub days: Vec<(String, String)>,
    /// Its rows.
    pub rows: Vec<GridRow>,
    /// What the room beside a week of fewer than seven days is for; empty for a whole week.
    pub rest: String,
}

/// A row of a week.
#[derive(Clone, Debug, PartialEq)]
pub struct GridRow {
    /// What it is.
    pub label: String,
    /// How to fill it in; may be empty.
    pub note: String,
    /// How its cells are filled in.
    pub fill: Fill,
    /// What is expected, or to be read; one a day.
    pub cells: Vec<String>,
    /// Drawings to mark with a pencil, below what is expected.
    pub pictures: Vec<GridPicture>,
    /// So many of the first days have them.
    pub pictured: usize,
}

/// A small drawing to mark with a pencil.
#[derive(Clone, Debug, PartialEq)]
pub struct GridPicture {
    /// A stable name.
    pub name: &'static str,
    /// The picture.
    pub svg: String,
    /// What it shows, in words.
    pub alternative: String,
}

/// How the cells of a row are filled in.
#[derive(Clone, Debug, PartialEq)]
pub enum Fill {
    /// Not at all: they are read.
    Read,
    /// In one box a day.
    Box,
    /// In boxes side by side, by their words.
    Parts(Vec<String>),
    /// By ticks, by their words.
    Ticks(Vec<String>),
}

/// A figure as a row.
#[derive(Clone, Debug, PartialEq)]
pub struct FigureRow {
    /// Its stable name.
    pub id: &'static str,
    /// What it is.
    pub label: String,
    /// Its value with unit.
    pub value: String,
    /// Its likely range or a remark; may be empty.
    pub note: String,
    /// How it is worked out.
    pub working: Option<WorkingView>,
}

/// Where the text of a column stands.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Align {
    /// Words.
    Start,
    /// Numbers.
    End,
    /// Nothing: a box to tick on paper. Its cells are empty.
    Tick,
    /// Nothing: a line to write on on paper. Its cells are empty.
    Line,
}

/// A table.
#[derive(Clone, Debug, PartialEq)]
pub struct Table {
    /// What it shows.
    pub caption: String,
    /// Its columns.
    pub columns: Vec<(String, Align)>,
    /// Its rows, each as long as `columns`.
    pub rows: Vec<Vec<String>>,
    /// Rows that stand out.
    pub emphasis: Vec<usize>,
    /// The figures whose workings explain the columns.
    pub explained_by: Vec<&'static str>,
}

/// A drawing with its words.
#[derive(Clone, Debug, PartialEq)]
pub struct Drawing {
    /// A stable name.
    pub name: &'static str,
    /// The picture.
    pub svg: String,
    /// A line below it.
    pub caption: String,
    /// What it shows, in words, for those who do not see it.
    pub alternative: String,
    /// The numbers it is drawn from.
    pub data: Table,
    /// Its width on paper, percent of the text.
    pub width_percent: u8,
}

/// Things to do.
#[derive(Clone, Debug, PartialEq)]
pub struct Steps {
    /// Whether the order matters.
    pub ordered: bool,
    /// Whether paper gets a box to tick.
    pub ticks: bool,
    /// What to do, and why; the reason may be empty.
    pub items: Vec<(String, String)>,
}

/// How bad it can get.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Level {
    /// People can die or be hurt.
    Danger,
    /// Birds or money can be lost.
    Care,
}

/// A warning.
#[derive(Clone, Debug, PartialEq)]
pub struct Caution {
    /// How bad it can get.
    pub level: Level,
    /// What it is about.
    pub title: String,
    /// What to do and not to do.
    pub items: Vec<String>,
}

/// A finding in words.
#[derive(Clone, Debug, PartialEq)]
pub struct FindingView {
    /// Its stable name.
    pub name: &'static str,
    /// note, look or problem.
    pub weight: advice::finding::Weight,
    /// The word for that weight.
    pub weight_word: String,
    /// What it says.
    pub text: String,
    /// Ways out.
    pub ways_out: Vec<String>,
    /// The field to change.
    pub field: Option<&'static str>,
}

/// A working in words.
#[derive(Clone, Debug, PartialEq)]
pub struct WorkingView {
    /// The figure's label.
    pub title: String,
    /// When and why this rule is taken.
    pub sentence: String,
    /// The formula in symbols.
    pub formula: String,
    /// The formula with the numbers in.
    pub substituted: String,
    /// The same in round figures, for a blackboard.
    pub rounded: String,
    /// What went in.
    pub inputs: Vec<WorkingRow>,
    /// What comes out.
    pub result: String,
    /// Where the rule is from and how far it can be trusted.
    pub source: String,
}

/// One thing that went into a working.
#[derive(Clone, Debug, PartialEq)]
pub struct WorkingRow {
    /// Its symbol.
    pub symbol: &'static str,
    /// What it is.
    pub label: String,
    /// Its value with unit.
    pub value: String,
    /// Where it comes from.
    pub origin: String,
    /// The figure it is, if it was itself worked out.
    pub figure: Option<&'static str>,
}
