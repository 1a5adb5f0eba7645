//! Documents as plain text for a terminal.

use crate::document::{Align, Block, DayGrid, Document, Fill, Level, Table, WorkingView};
use crate::viewer::Viewer;
use crate::words::Words;

/// Columns a line may have.
const WIDTH: usize = 96;

/// The document as text. Drawings are told in words; workings come only where `with_workings`.
pub fn write(document: &Document, viewer: &Viewer, with_workings: bool) -> String {
    let words = viewer.words();
    let mut out = String::new();
    heading(&mut out, &document.title, '=');
    if !document.subtitle.is_empty() {
        line(&mut out, &document.subtitle);
    }
    for block in &document.blocks {
        write_block(&mut out, block, words, with_workings);
    }
    out
}

fn line(out: &mut String, text: &str) {
    out.push_str(text);
    out.push('\n');
}

fn heading(out: &mut String, text: &str, rule: char) {
    line(out, text);
    line(out, &rule.to_string().repeat(text.chars().count().min(WIDTH)));
}

/// Breaks text at spaces; further lines are indented.
fn wrapped(out: &mut String, first: &str, text: &str) {
    let indent = " ".repeat(first.chars().count());
    let mut current = first.to_owned();
    let mut empty = true;
    for word in text.split(' ') {
        if !empty && current.chars().count() + 1 + word.chars().count() > WIDTH {
            line(out, current.trim_end());
            current = indent.clone();
            empty = true;
        }
        if !empty {
            current.push(' ');
        }
        current.push_str(word);
        empty = false;
    }
    line(out, current.trim_end());
}

fn write_block(out: &mut String, block: &Block, words: &Words, with_workings: bool) {
    match block {
        Block::Heading { level, text, .. } => {
            out.push('\n');
            heading(out, text, if *level == 2 { '-' } else { '.' });
        }
        Block::Paragraph(text) | Block::Note(text) => wrapped(out, "", text),
        Block::Lead { label, value, note } => {
            wrapped(out, "> ", &format!("{label}: {value}"));
            if !note.is_empty() {
                wrapped(out, "  ", note);
            }
        }
        Block::Figures(rows) => {
            let wide = rows.iter().map(|row| row.label.chars().count()).max().unwrap_or(0);
            for row in rows {
                let space = " ".repeat(wide - row.label.chars().count());
                let note = if row.note.is_empty() { String::new() } else { format!("  ({})", row.note) };
                wrapped(out, "  ", &format!("{}{space}  {}{note}", row.label, row.value));
                if let Some(view) = row.working.as_ref().filter(|_| with_workings) {
                    working(out, view, words);
                }
            }
        }
        Block::Fold { blocks, .. } | Block::Apart { blocks, .. } => {
            for block in blocks {
                write_block(out, block, words, with_workings);
            }
        }
        Block::Table(rows) | Block::DayTable { table: rows, .. } => table(out, rows),
        Block::Drawing(drawing) => wrapped(out, "  ", &drawing.alternative),
        Block::Steps(steps) => {
            for (at, (text, why)) in steps.items.iter().enumerate() {
                let mark = if steps.ordered { format!("{:>2}. ", at + 1) } else { " -  ".to_owned() };
                wrapped(out, &mark, text);
                if !why.is_empty() {
                    wrapped(out, &" ".repeat(mark.chars().count()), why);
                }
            }
        }
        Block::Caution(caution) => {
            let mark = if caution.level == Level::Danger { "!! " } else { "!  " };
            wrapped(out, mark, &caution.title);
            for item in &caution.items {
                wrapped(out, "   - ", item);
            }
        }
        Block::Finding(finding) => {
            wrapped(out, "* ", &format!("{} {}", finding.weight_word, finding.text));
            for way in &finding.ways_out {
                wrapped(out, "    - ", way);
            }
        }
        Block::Working(view) => {
            out.push('\n');
            line(out, &view.title);
            working(out, view, words);
        }
        Block::PageBreak => {}
        Block::Blanks(blanks) => {
            blanks.iter().for_each(|blank| wrapped(out, "  ", &format!("{} ____________", blank.label)));
        }
        Block::DayGrid(grid) => day_grid(out, grid),
        Block::Beside(parts) => {
            let blocks = parts.iter().flat_map(|(_, blocks)| blocks);
            blocks.for_each(|block| write_block(out, block, words, with_workings));
        }
        Block::Answers(answers) => answers.iter().for_each(|answer| wrapped(out, "  ", answer)),
    }
}

/// A week day by day: seven columns are too wide for a terminal.
fn day_grid(out: &mut String, grid: &DayGrid) {
    wrapped(out, "", &grid.corner);
    for (at, (title, note)) in grid.days.iter().enumerate() {
        line(out, &format!("{title} {note}"));
        for row in &grid.rows {
            let cell = row.cells.get(at).map_or("", String::as_str);
            let blank = if row.fill == Fill::Read { "" } else { " ________" };
            if !(cell.is_empty() && blank.is_empty()) {
                wrapped(out, "    ", &format!("{}:{blank} {cell}", row.label));
            }
        }
    }
}

fn working(out: &mut String, view: &WorkingView, words: &Words) {
    wrapped(out, "      ", &view.sentence);
    wrapped(out, "      ", &view.formula);
    wrapped(out, "      ", &view.substituted);
    if !view.rounded.is_empty() {
        wrapped(out, "      ", &format!("{} {}", words.plain("on-a-blackboard"), view.rounded));
    }
    for input in &view.inputs {
        let text = format!("{} {} ({})", input.value, input.label, input.origin);
        wrapped(out, &format!("        {:<4} = ", input.symbol), &text);
    }
    wrapped(out, "      ", &view.source);
}

fn table(out: &mut String, table: &Table) {
    if !table.caption.is_empty() {
        wrapped(out, "", &table.caption);
    }
    let widths: Vec<usize> = table
        .columns
        .iter()
        .enumerate()
        .map(|(at, (title, _))| {
            let cells = table.rows.iter().filter_map(|row| row.get(at)).map(|cell| cell.chars().count());
            cells.max().unwrap_or(0).max(title.chars().count())
        })
        .collect();
    let row_text = |cells: Vec<&String>| {
        let padded = cells.iter().zip(&widths).zip(&table.columns).map(|((cell, width), (_, align))| {
            let space = " ".repeat(width - cell.chars().count());
            match align {
                Align::Start | Align::Tick | Align::Line => format!("{cell}{space}"),
                Align::End => format!("{space}{cell}"),
            }
        });
        padded.collect::<Vec<_>>().join("  ")
    };
    line(out, &format!("  {}", row_text(table.columns.iter().map(|(title, _)| title).collect()).trim_end()));
    for (at, row) in table.rows.iter().enumerate() {
        let mark = if table.emphasis.contains(&at) { "> " } else { "  " };
        line(out, &format!("{mark}{}", row_text(row.iter().collect()).trim_end()));
    }
}
