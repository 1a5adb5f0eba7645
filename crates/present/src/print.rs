//! Documents as data for the typesetter: words and drawings, nothing left to decide but the layout.

use std::collections::BTreeMap;

use serde_json::{Value, json};

use crate::document::{Align, Block, DayGrid, Document, Fill, GridRow, Level, Table, WorkingView};
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

/// How the pages of a document lie: a week to write in takes a whole sheet on its side, from edge to edge.
fn page_of(document: &Document) -> (bool, bool) {
    let whole = document.blocks.iter().any(|block| matches!(block, Block::DayGrid(_)));
    (whole, whole)
}

/// Several documents as one print, each on a page of its own and lying as it needs.
pub fn write(documents: &[Document], paper: Paper, viewer: &Viewer) -> Printable {
    let words = viewer.words();
    let mut drawings = BTreeMap::new();
    let mut blocks = Vec::new();
    for (at, document) in documents.iter().enumerate() {
        if at > 0 {
            begin(document, &mut blocks);
        }
        for block in &document.blocks {
            write_block(block, words, &mut blocks, &mut drawings);
        }
    }
    let first = documents.first();
    let (landscape, bare) = first.map_or((false, false), page_of);
    let data = json!({
        "title": first.map_or("", |document| document.title.as_str()),
        "subtitle": first.map_or("", |document| document.subtitle.as_str()),
        "language": "en",
        "direction": viewer.locale.direction(),
        "page": {"paper": paper.name(), "landscape": landscape, "bare": bare},
        "footer": words.plain("print-footer"),
        // The typesetter puts the numbers in.
        "page_of": crate::say!(words, "print-page", page = "{page}", pages = "{pages}"),
        "blocks": blocks,
    });
    Printable { data, drawings }
}

/// The head of a document behind others; a bare sheet names itself.
fn begin(document: &Document, out: &mut Vec<Value>) {
    let (landscape, bare) = page_of(document);
    out.push(json!({"kind": "page", "landscape": landscape, "bare": bare}));
    if !bare {
        out.push(json!({"kind": "heading", "level": 1, "text": document.title}));
        if !document.subtitle.is_empty() {
            out.push(json!({"kind": "note", "text": document.subtitle}));
        }
    }
}

fn write_block(block: &Block, words: &Words, out: &mut Vec<Value>, drawings: &mut BTreeMap<String, String>) {
    match block {
        Block::Fold { blocks, .. } | Block::Apart { blocks, .. } => {
            blocks.iter().for_each(|block| write_block(block, words, out, drawings));
            return;
        }
        Block::Answers(answers) => {
            // In one piece, so that no answer stands alone on another page.
            out.push(json!({"kind": "note", "text": answers.join("    "), "turned": true}));
            return;
        }
        _ => {}
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
        Block::Table(table) | Block::DayTable { table, .. } => table_data(table),
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
        Block::Blanks(blanks) => {
            let rows: Vec<Value> = blanks
                .iter()
                .map(|blank| json!({"label": blank.label, "width_percent": blank.width_percent}))
                .collect();
            json!({"kind": "blanks", "rows": rows})
        }
        Block::DayGrid(grid) => {
            let pictures = grid.rows.iter().flat_map(|row| &row.pictures);
            drawings.extend(pictures.map(|one| (format!("{}.svg", one.name), one.svg.clone())));
            grid_data(grid)
        }
        Block::Beside(parts) => {
            let part = |(width, blocks): &(u8, Vec<Block>)| {
                let mut inner = Vec::new();
                blocks.iter().for_each(|block| write_block(block, words, &mut inner, drawings));
                json!({"width_percent": width, "blocks": inner})
            };
            let parts: Vec<Value> = parts.iter().map(part).collect();
            json!({"kind": "beside", "parts": parts})
        }
        Block::Fold { .. } | Block::Apart { .. } | Block::Answers(_) | Block::PageBreak => {
            json!({"kind": "page_break"})
        }
    });
}

/// Room for a pencil in a week, mm.
const WEEK_ROW_MM: f64 = 10.5;

fn grid_data(grid: &DayGrid) -> Value {
    let days: Vec<Value> =
        grid.days.iter().map(|(title, note)| json!({"title": title, "note": note})).collect();
    let row = |row: &GridRow| {
        let (parts, ticks): (&[String], &[String]) = match &row.fill {
            Fill::Parts(parts) => (parts, &[]),
            Fill::Ticks(ticks) => (&[], ticks),
            Fill::Read | Fill::Box => (&[], &[]),
        };
        json!({
            "label": row.label, "note": row.note, "write": row.fill != Fill::Read, "height_mm": WEEK_ROW_MM,
            "parts": parts, "ticks": ticks, "cells": row.cells, "pictured": row.pictured,
            "pictures": row.pictures.iter().map(|one| {
                json!({"name": format!("{}.svg", one.name), "alternative": one.alternative})
            }).collect::<Vec<Value>>(),
        })
    };
    let rows: Vec<Value> = grid.rows.iter().map(row).collect();
    json!({"kind": "day_grid", "corner": grid.corner, "columns": days, "rows": rows, "rest": grid.rest})
}

fn table_data(table: &Table) -> Value {
    let columns: Vec<Value> = table
        .columns
        .iter()
        .map(|(title, align)| {
            let (align, fill) = match align {
                Align::Start => ("start", "words"),
                Align::End => ("end", "words"),
                Align::Tick => ("start", "tick"),
                Align::Line => ("start", "line"),
            };
            json!({"title": title, "align": align, "fill": fill})
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
