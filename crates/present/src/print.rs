//! Documents as data for the typesetter: words and drawings, nothing left to decide but the layout.

use std::collections::BTreeMap;

use serde_json::{Value, json};

use crate::document::{Align, Block, Document, Level, Table, WorkingView};
use crate::viewer::Viewer;
use crate::words::Words;

/// A sheet of paper.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Paper {
    /// 210 × 297 mm (ISO 216).
    A4,
    /// 8.5 × 11 inches.
    UsLetter,
}

impl Paper {
    /// The typesetter's name for it.
    pub fn name(self) -> &'static str {
        match self {
            Paper::A4 => "a4",
            Paper::UsLetter => "us-letter",
        }
    }

    /// From that name.
    pub fn from_name(name: &str) -> Option<Paper> {
        [Paper::A4, Paper::UsLetter].into_iter().find(|paper| paper.name() == name)
    }
}

/// A document ready for the typesetter.
pub struct Printable {
    /// The data of the template.
    pub data: Value,
    /// The drawings it names.
    pub drawings: BTreeMap<String, String>,
}

/// Several documents as one print, each on a page of its own.
pub fn write(documents: &[Document], paper: Paper, viewer: &Viewer) -> Printable {
    let words = viewer.words();
    let mut drawings = BTreeMap::new();
    let mut blocks = Vec::new();
    for (at, document) in documents.iter().enumerate() {
        if at > 0 {
            blocks.push(json!({"kind": "page_break"}));
            blocks.push(json!({"kind": "heading", "level": 1, "text": document.title}));
        }
        for block in &document.blocks {
            write_block(block, words, &mut blocks, &mut drawings);
        }
    }
    let first = documents.first();
    let data = json!({
        "title": first.map_or("", |document| document.title.as_str()),
        "subtitle": first.map_or("", |document| document.subtitle.as_str()),
        "language": "en",
        "direction": viewer.locale.direction(),
        "page": {"paper": paper.name(), "landscape": false},
        "footer": words.plain("print-footer"),
        // The typesetter puts the numbers in.
        "page_of": crate::say!(words, "print-page", page = "{page}", pages = "{pages}"),
        "blocks": blocks,
    });
    Printable { data, drawings }
}

fn write_block(block: &Block, words: &Words, out: &mut Vec<Value>, drawings: &mut BTreeMap<String, String>) {
    if let Block::Fold { blocks, .. } | Block::Apart { blocks, .. } = block {
        for block in blocks {
            write_block(block, words, out, drawings);
        }
        return;
    }
    out.push(match block {
        Block::Heading { level, text, .. } => json!({"kind": "heading", "level": level, "text": text}),
        Block::Paragraph(text) => json!({"kind": "paragraph", "text": text}),
        Block::Lead { label, value, note } => {
            json!({"kind": "lead", "label": label, "value": value, "note": note})
        }
        Block::Figures(rows) => {
            let rows: Vec<Value> = rows
                .iter()
                .map(|row| json!({"label": row.label, "value": row.value, "note": row.note}))
                .collect();
            json!({"kind": "figures", "rows": rows})
        }
        Block::Table(table) => table_data(table),
        Block::Drawing(drawing) => {
            let name = format!("{}.svg", drawing.name);
            drawings.insert(name.clone(), drawing.svg.clone());
            json!({
                "kind": "drawing", "name": name, "caption": drawing.caption,
                "alternative": drawing.alternative, "width_percent": drawing.width_percent,
            })
        }
        Block::Steps(steps) => {
            let items: Vec<Value> =
                steps.items.iter().map(|(text, why)| json!({"text": text, "why": why})).collect();
            json!({"kind": "steps", "ordered": steps.ordered, "ticks": steps.ticks, "items": items})
        }
        Block::Caution(caution) => {
            let level = if caution.level == Level::Danger { "danger" } else { "care" };
            json!({"kind": "caution", "level": level, "title": caution.title, "items": caution.items})
        }
        Block::Finding(finding) => {
            let title = format!("{} {}", finding.weight_word, finding.text);
            json!({"kind": "caution", "level": "care", "title": title, "items": finding.ways_out})
        }
        Block::Note(text) => json!({"kind": "note", "text": text}),
        Block::Working(view) => working_data(view, words),
        Block::Fold { .. } | Block::Apart { .. } | Block::PageBreak => json!({"kind": "page_break"}),
    });
}

fn table_data(table: &Table) -> Value {
    let columns: Vec<Value> = table
        .columns
        .iter()
        .map(|(title, align)| {
            let align = if *align == Align::End { "end" } else { "start" };
            json!({"title": title, "align": align})
        })
        .collect();
    json!({
        "kind": "table", "caption": table.caption, "columns": columns, "rows": table.rows,
        "emphasis": table.emphasis,
    })
}

fn working_data(view: &WorkingView, words: &Words) -> Value {
    let inputs: Vec<Value> = view
        .inputs
        .iter()
        .map(|input| {
            json!({"symbol": input.symbol, "label": input.label, "value": input.value, "origin": input.origin})
        })
        .collect();
    let rounded = match view.rounded.as_str() {
        "" => String::new(),
        rounded => format!("{} {rounded}", words.plain("on-a-blackboard")),
    };
    json!({
        "kind": "working", "title": view.title, "formula": format!("{}\n{}", view.sentence, view.formula),
        "substituted": view.substituted, "rounded": rounded, "inputs": inputs, "result": view.result,
        "source": view.source,
    })
}
