//! Documents and forms as HTML: plain elements, no script, every table able to scroll by itself.

use advice::finding::Weight;
use maud::{Markup, PreEscaped, html};
use quantity::CivilDay;

use crate::document::{
    Align, Block, Caution, DayGrid, Document, Drawing, FigureRow, Fill, FindingView, Level, Steps, Table,
    WorkingRow, WorkingView,
};
use crate::viewer::Viewer;
use crate::words::Words;

mod form;
mod summary;

pub use form::{fault_summary, field_anchor, input};
pub use summary::summary;

/// The content of a document, without its title, with everything in its place on one page.
pub fn blocks(document: &Document, viewer: &Viewer) -> Markup {
    Writer { words: viewer.words(), elsewhere: None }.blocks(&document.blocks)
}

/// The same where a plan has pages of its own below an address: workings and parts that stand apart become links, so that
/// the page stays small.
pub fn blocks_of_plan(document: &Document, viewer: &Viewer, address: &str) -> Markup {
    Writer { words: viewer.words(), elsewhere: Some(address) }.blocks(&document.blocks)
}

/// The same with every chapter folded below its heading. A link to a chapter opens it: its anchor stands within.
pub fn chapters_of_plan(document: &Document, viewer: &Viewer, address: &str) -> Markup {
    let writer = Writer { words: viewer.words(), elsewhere: Some(address) };
    let begins = |block: &Block| matches!(block, Block::Heading { level: 2, .. });
    html! {
        @for chapter in document.blocks.chunk_by(|_, next| !begins(next)) {
            @if let [Block::Heading { level: 2, text, anchor }, inner @ ..] = chapter {
                details class="chapter" {
                    summary { h2 { (glued(text)) } }
                    div id=(anchor) { (writer.blocks(inner)) }
                }
            } @else {
                (writer.blocks(chapter))
            }
        }
    }
}

/// How a figure is worked out, what it rests on linked to its own working below an address.
pub fn working_of_plan(view: &WorkingView, viewer: &Viewer, address: &str) -> Markup {
    Writer { words: viewer.words(), elsewhere: Some(address) }.working(view)
}

/// The address of the page where a figure of a plan is worked out.
pub fn working_address(address: &str, id: &str) -> String {
    format!("{address}/working/{id}")
}

/// The address of the box where a plan's answer is changed: its section is opened, and it stands in sight.
pub fn answer_address(address: &str, key: &str) -> String {
    format!("{address}/answers?at={key}#{}", field_anchor(key))
}

/// The address of the page with all that was written about a day of a batch.
pub fn day_address(address: &str, day: CivilDay) -> String {
    format!("{address}/day/{day}")
}

/// Writes blocks with the words of one language.
struct Writer<'a> {
    words: &'a Words,
    /// The address of the plan that has pages of its own for workings and parts.
    elsewhere: Option<&'a str>,
}

impl Writer<'_> {
    fn blocks(&self, blocks: &[Block]) -> Markup {
        html! { @for block in blocks { (self.block(block)) } }
    }

    fn block(&self, block: &Block) -> Markup {
        match block {
            Block::Heading { level: 3, text, anchor } => html! { h3 id=(anchor) { (glued(text)) } },
            Block::Heading { text, anchor, .. } => html! { h2 id=(anchor) { (glued(text)) } },
            Block::Paragraph(text) => html! { p { (glued(text)) } },
            Block::Lead { label, value, note } => lead(label, value, note),
            Block::Figures(rows) => html! { div class="figures" { @for row in rows { (self.figure(row)) } } },
            Block::Table(table) => self.table(table, &[]),
            Block::DayTable { table, days } => self.table(table, days),
            Block::Drawing(drawing) => self.drawing(drawing),
            Block::Steps(list) => steps(list),
            Block::Caution(caution) => caution_markup(caution),
            Block::Finding(finding) => self.finding(finding),
            Block::Note(text) => html! { p class="note" { (glued(text)) } },
            Block::Working(view) => {
                html! { section class="working" { h3 { (view.title) } (self.working(view)) } }
            }
            Block::Fold { title, blocks } => {
                // Workings begin with a heading of their own, which stands below that of their fold.
                let has_headings = blocks.iter().any(|block| matches!(block, Block::Working(_)));
                html! {
                    details class="fold" {
                        summary { @if has_headings { h2 { (title) } } @else { (title) } }
                        (self.blocks(blocks))
                    }
                }
            }
            Block::Apart { page, title, blocks } => self.apart(page, title, blocks),
            Block::PageBreak => html! {},
            Block::Blanks(blanks) => {
                html! { ul class="blanks" { @for blank in blanks { li { (blank.label) } } } }
            }
            Block::DayGrid(grid) => day_grid(grid),
            Block::Beside(parts) => html! { @for (_, blocks) in parts { (self.blocks(blocks)) } },
            Block::Answers(answers) => html! { @for answer in answers { p class="note" { (answer) } } },
        }
    }

    /// A part that stands apart is a link where there is somewhere else to stand, and folded in its place otherwise.
    fn apart(&self, page: &str, title: &str, blocks: &[Block]) -> Markup {
        match self.elsewhere {
            Some(address) => {
                html! { p { a class="onward" href=(format!("{address}/part/{page}")) { (title) } } }
            }
            None => html! { details class="fold" { summary { (title) } (self.blocks(blocks)) } },
        }
    }

    fn figure(&self, row: &FigureRow) -> Markup {
        html! {
            div class="figure" id=(anchor(row.id)) {
                p class="figure-label" { (row.label) }
                p class="figure-value" { (glued(&row.value)) }
                @if !row.note.is_empty() { p class="figure-note" { (glued(&row.note)) } }
                @if let Some(view) = &row.working { (self.way_to_working(row, view)) }
            }
        }
    }

    fn way_to_working(&self, row: &FigureRow, view: &WorkingView) -> Markup {
        let how = html! { (self.words.plain("how-worked-out")) span class="hidden" { ": " (row.label) } };
        match self.elsewhere {
            Some(address) => html! { a class="how" href=(working_address(address, row.id)) { (how) } },
            None => html! { details { summary { (how) } (self.working(view)) } },
        }
    }

    fn working(&self, view: &WorkingView) -> Markup {
        let words = self.words;
        html! {
            p { (view.sentence) }
            p class="formula" { (view.formula) }
            p class="formula" { (view.substituted) }
            @if !view.rounded.is_empty() { p class="formula" { (words.plain("on-a-blackboard")) " " (view.rounded) } }
            table class="inputs" {
                caption class="hidden" { (words.plain("working-inputs")) }
                thead { tr {
                    th scope="col" { (words.plain("column-symbol")) }
                    th scope="col" { (words.plain("column-what")) }
                    th scope="col" class="end" { (words.plain("column-value")) }
                } }
                tbody { @for input in &view.inputs { tr {
                    th scope="row" { (input.symbol) }
                    td { (self.what_went_in(input)) " " span class="why" { (input.origin) } }
                    td class=(value_class(&input.value)) { (glued(&input.value)) }
                } } }
            }
            p class="note" { (view.source) }
        }
    }

    /// What itself was worked out is linked to how.
    fn what_went_in(&self, input: &WorkingRow) -> Markup {
        match self.elsewhere.zip(input.figure) {
            Some((address, id)) => html! { a href=(working_address(address, id)) { (input.label) } },
            None => html! { (input.label) },
        }
    }

    /// A table; a row about a day leads to what was written about it, where there is somewhere to lead to.
    fn table(&self, table: &Table, days: &[Option<CivilDay>]) -> Markup {
        let written = |row: usize| Some(day_address(self.elsewhere?, (*days.get(row)?)?));
        let wide = table.columns.len() > NARROW_COLUMNS;
        html! {
            // The caption stands outside the box that scrolls, where it can break its lines.
            p class="table-caption" aria-hidden="true" { (glued(&table.caption)) }
            div class="scroll" tabindex="0" role="region" aria-label=(table.caption) {
                table class=[wide.then_some("wide")] {
                    caption class="hidden" { (table.caption) }
                    thead { tr { @for (title, align) in &table.columns { th scope="col" class=(side(*align)) { (glued(title)) } } } }
                    tbody { @for (at, row) in table.rows.iter().enumerate() {
                        tr class=[table.emphasis.contains(&at).then_some("emphasis")] {
                            (cells(row, table, written(at).as_deref()))
                        }
                    } }
                }
            }
            @if !table.explained_by.is_empty() {
                details class="columns" {
                    summary { (self.words.plain("how-columns-worked-out")) span class="hidden" { ": " (table.caption) } }
                    ul { @for id in &table.explained_by {
                        li { a href=(self.explained_at(id)) { (self.words.plain(&figure_key(id))) } }
                    } }
                }
            }
        }
    }

    fn explained_at(&self, id: &str) -> String {
        self.elsewhere.map_or_else(|| format!("#{}", anchor(id)), |address| working_address(address, id))
    }

    fn drawing(&self, drawing: &Drawing) -> Markup {
        html! {
            figure class="drawing" {
                // Drawn by this program, every text in it escaped when it was drawn.
                (PreEscaped(&drawing.svg))
                figcaption { (drawing.caption) }
                details {
                    summary { (self.words.plain("drawing-in-words")) span class="hidden" { ": " (drawing.caption) } }
                    p { (glued(&drawing.alternative)) }
                    // The numbers of a drawing about days stand in a table of their own below it.
                    @if !drawing.data.rows.is_empty() {
                        div class="scroll" tabindex="0" role="region" aria-label=(drawing.caption) {
                            table { tbody { @for row in &drawing.data.rows { tr { (cells(row, &drawing.data, None)) } } } }
                        }
                    }
                }
            }
        }
    }

    /// Weights are told by a word and a shape: a filled square, a half-filled one, an empty one.
    fn finding(&self, finding: &FindingView) -> Markup {
        html! {
            div class=(format!("finding {}", weight_class(finding.weight))) {
                p { (weight_sign(finding.weight)) strong { (finding.weight_word) } " " (glued(&finding.text)) }
                @if !finding.ways_out.is_empty() {
                    p { (self.words.plain("ways-out")) }
                    ul { @for way in &finding.ways_out { li { (glued(way)) } } }
                }
                @if let Some(field) = finding.field {
                    p { a href=(self.changed_at(field)) { (self.words.plain("change-this")) } }
                }
            }
        }
    }

    fn changed_at(&self, field: &str) -> String {
        self.elsewhere
            .map_or_else(|| format!("#{}", field_anchor(field)), |address| answer_address(address, field))
    }
}

/// What is expected of a week, as a table: on a screen there is nothing to write in.
fn day_grid(grid: &DayGrid) -> Markup {
    html! {
        div class="scroll" tabindex="0" role="region" aria-label=(grid.corner) {
            table {
                thead { tr {
                    td { (grid.corner) }
                    @for (title, note) in &grid.days { th scope="col" { (title) " " (note) } }
                } }
                tbody { @for row in &grid.rows { tr {
                    th scope="row" { (row.label) " " (row.note) }
                    @for cell in &row.cells {
                        td { (cell) @for tag in tags(&row.fill) { " " span class="why" { (tag) } } }
                    }
                } } }
            }
        }
    }
}

fn tags(fill: &Fill) -> &[String] {
    match fill {
        Fill::Read | Fill::Box => &[],
        Fill::Parts(tags) | Fill::Ticks(tags) => tags,
    }
}

/// A table of more columns is wider than a phone: its first column then stays in sight while the others move.
const NARROW_COLUMNS: usize = 4;

/// A number keeps the word or unit behind it: no line ends between them. Numbers that follow each other may part.
pub(crate) fn glued(text: &str) -> String {
    let mut out = String::with_capacity(text.len() + 8);
    let mut chars = text.chars().peekable();
    let mut behind_digit = false;
    while let Some(c) = chars.next() {
        let joins = c == ' ' && behind_digit && chars.peek().is_some_and(|next| !next.is_ascii_digit());
        out.push(if joins { '\u{a0}' } else { c });
        behind_digit = c.is_ascii_digit();
    }
    out
}

fn lead(label: &str, value: &str, note: &str) -> Markup {
    html! {
        div class="lead" {
            p class="lead-label" { (label) }
            p class="lead-value" { (glued(value)) }
            @if !note.is_empty() { p { (glued(note)) } }
        }
    }
}

fn steps(list: &Steps) -> Markup {
    let items = html! {
        @for (text, why) in &list.items {
            li { (glued(text)) @if !why.is_empty() { " " span class="why" { (glued(why)) } } }
        }
    };
    if list.ordered {
        html! { ol class="steps" { (items) } }
    } else {
        html! { ul class="steps" { (items) } }
    }
}

/// The cells of a row; the first says what the row is about, and may lead there.
fn cells(row: &[String], table: &Table, address: Option<&str>) -> Markup {
    html! {
        @for (at, (cell, (_, align))) in row.iter().zip(&table.columns).enumerate() {
            @if at == 0 {
                th scope="row" class=(side(*align)) {
                    @if let Some(address) = address { a href=(address) { (glued(cell)) } } @else { (glued(cell)) }
                }
            } @else {
                td class=(if *align == Align::End { value_class(cell) } else { side(*align) }) { (glued(cell)) }
            }
        }
    }
}

/// The element id of a figure, so that tables, drawings and workings can link to it.
pub fn anchor(id: &str) -> String {
    format!("figure-{}", crate::words::key_part(id))
}

/// A long value, such as a list of weights, has to break its lines on a phone.
fn value_class(value: &str) -> &'static str {
    const LONG: usize = 18;
    if value.chars().count() > LONG { "end long" } else { "end" }
}

fn figure_key(id: &str) -> String {
    format!("figure-{}", crate::words::key_part(id))
}

fn side(align: Align) -> &'static str {
    match align {
        Align::End => "end",
        Align::Start | Align::Tick | Align::Line => "start",
    }
}

fn caution_markup(caution: &Caution) -> Markup {
    let class = match caution.level {
        Level::Danger => "caution danger",
        Level::Care => "caution care",
    };
    html! {
        div class=(class) role="note" {
            p class="caution-title" {
                @if caution.level == Level::Danger { (warning_sign()) }
                (caution.title)
            }
            ul { @for item in &caution.items { li { (glued(item)) } } }
        }
    }
}

fn warning_sign() -> Markup {
    html! {
        svg class="sign" viewBox="0 0 24 24" width="24" height="24" aria-hidden="true" {
            path d="M12 2 L23 22 L1 22 Z" fill="none" stroke="currentColor" stroke-width="2.4" stroke-linejoin="round" {}
            path d="M12 9 L12 15 M12 17.6 L12 19.4" stroke="currentColor" stroke-width="2.6" {}
        }
    }
}

fn weight_class(weight: Weight) -> &'static str {
    match weight {
        Weight::Problem => "problem",
        Weight::Look => "look",
        Weight::Note => "remark",
    }
}

fn weight_sign(weight: Weight) -> Markup {
    let filled = match weight {
        Weight::Problem => 18,
        Weight::Look => 9,
        Weight::Note => 0,
    };
    html! {
        svg class="sign" viewBox="0 0 22 22" width="18" height="18" aria-hidden="true" {
            rect x="2" y="2" width="18" height="18" fill="none" stroke="currentColor" stroke-width="2" {}
            rect x="2" y=(20 - filled) width="18" height=(filled) fill="currentColor" {}
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_number_keeps_its_unit_and_lists_may_break() {
        assert_eq!(glued("19.3 kg/m² of 17 kg"), "19.3\u{a0}kg/m² of 17\u{a0}kg");
        assert_eq!(glued("1820 1950 2010"), "1820 1950 2010");
        assert_eq!(glued("no number here"), "no number here");
    }
}
