//! Documents and forms as HTML: plain elements, no script, every table able to scroll by itself.

use maud::{Markup, PreEscaped, html};

use crate::document::{
    Align, Block, Caution, DayGrid, Document, Drawing, FigureRow, Fill, FindingView, Level, Table,
    WorkingView,
};
use crate::form::{Control, Input};
use crate::say;
use crate::viewer::Viewer;
use crate::words::Words;

/// The content of a document, without its title.
pub fn blocks(document: &Document, viewer: &Viewer) -> Markup {
    let words = viewer.words();
    html! { @for block in &document.blocks { (block_markup(block, words)) } }
}

fn block_markup(block: &Block, words: &Words) -> Markup {
    match block {
        Block::Heading { level: 3, text, anchor } => html! { h3 id=(anchor) { (text) } },
        Block::Heading { text, anchor, .. } => html! { h2 id=(anchor) { (text) } },
        Block::Paragraph(text) => html! { p { (text) } },
        Block::Lead { label, value, note } => html! {
            div class="lead" {
                p class="lead-label" { (label) }
                p class="lead-value" { (value) }
                @if !note.is_empty() { p { (note) } }
            }
        },
        Block::Figures(rows) => html! { div class="figures" { @for row in rows { (figure(row, words)) } } },
        Block::Table(table) => table_markup(table, words),
        Block::Drawing(drawing) => drawing_markup(drawing, words),
        Block::Steps(steps) => {
            let items = html! {
                @for (text, why) in &steps.items {
                    li { (text) @if !why.is_empty() { " " span class="why" { (why) } } }
                }
            };
            if steps.ordered {
                html! { ol class="steps" { (items) } }
            } else {
                html! { ul class="steps" { (items) } }
            }
        }
        Block::Caution(caution) => caution_markup(caution),
        Block::Finding(finding) => finding_markup(finding, words),
        Block::Note(text) => html! { p class="note" { (text) } },
        Block::Working(view) => {
            html! { section class="working" { h3 { (view.title) } (working(view, words)) } }
        }
        Block::Fold { title, blocks } => html! {
            details class="fold" { summary { (title) } @for inner in blocks { (block_markup(inner, words)) } }
        },
        Block::PageBreak => html! {},
        Block::Blanks(blanks) => {
            html! { ul class="blanks" { @for blank in blanks { li { (blank.label) } } } }
        }
        Block::DayGrid(grid) => day_grid(grid),
        Block::Beside(parts) => html! {
            @for (_, blocks) in parts { @for inner in blocks { (block_markup(inner, words)) } }
        },
        Block::Answers(answers) => html! { @for answer in answers { p class="note" { (answer) } } },
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
                    @for cell in &row.cells { td { (cell) @for tag in tags(&row.fill) { " " span class="why" { (tag) } } } }
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

fn figure(row: &FigureRow, words: &Words) -> Markup {
    let id = anchor(row.id);
    html! {
        div class="figure" id=(id) {
            p class="figure-label" { (row.label) }
            p class="figure-value" { (row.value) }
            @if !row.note.is_empty() { p class="figure-note" { (row.note) } }
            @if let Some(view) = &row.working {
                details {
                    summary { (words.plain("how-worked-out")) span class="hidden" { ": " (row.label) } }
                    (working(view, words))
                }
            }
        }
    }
}

/// The element id of a figure, so that tables, drawings and workings can link to it.
fn anchor(id: &str) -> String {
    format!("figure-{}", crate::words::key_part(id))
}

fn working(view: &WorkingView, words: &Words) -> Markup {
    html! {
        p { (view.sentence) }
        p class="formula" { (view.formula) }
        p class="formula" { (view.substituted) }
        @if !view.rounded.is_empty() { p class="formula" { (words.plain("on-a-blackboard")) " " (view.rounded) } }
        table {
            caption class="hidden" { (words.plain("working-inputs")) }
            thead { tr {
                th scope="col" { (words.plain("column-symbol")) }
                th scope="col" { (words.plain("column-what")) }
                th scope="col" class="end" { (words.plain("column-value")) }
            } }
            tbody { @for input in &view.inputs { tr {
                th scope="row" { (input.symbol) }
                td { (input.label) " " span class="why" { (input.origin) } }
                td class=(value_class(&input.value)) { (input.value) }
            } } }
        }
        p class="note" { (view.source) }
    }
}

/// A long value, such as a list of weights, has to break its lines on a phone.
fn value_class(value: &str) -> &'static str {
    const LONG: usize = 24;
    if value.chars().count() > LONG { "end long" } else { "end" }
}

fn table_markup(table: &Table, words: &Words) -> Markup {
    html! {
        // The caption stands outside the box that scrolls, where it can break its lines.
        p class="table-caption" aria-hidden="true" { (table.caption) }
        div class="scroll" tabindex="0" role="region" aria-label=(table.caption) {
            table {
                caption class="hidden" { (table.caption) }
                thead { tr { @for (title, align) in &table.columns { th scope="col" class=(side(*align)) { (title) } } } }
                tbody { @for (at, row) in table.rows.iter().enumerate() {
                    tr class=[table.emphasis.contains(&at).then_some("emphasis")] {
                        @for (cell, (_, align)) in row.iter().zip(&table.columns) { td class=(side(*align)) { (cell) } }
                    }
                } }
            }
        }
        @if !table.explained_by.is_empty() {
            p class="note" {
                (words.plain("columns-worked-out-at"))
                @for id in &table.explained_by { " " a href=(format!("#{}", anchor(id))) { (words.plain(&figure_key(id))) } }
            }
        }
    }
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

fn drawing_markup(drawing: &Drawing, words: &Words) -> Markup {
    html! {
        figure class="drawing" {
            // Drawn by this program, every text in it escaped when it was drawn.
            (PreEscaped(&drawing.svg))
            figcaption { (drawing.caption) }
            details {
                summary { (words.plain("drawing-in-words")) span class="hidden" { ": " (drawing.caption) } }
                p { (drawing.alternative) }
                table { tbody { @for row in &drawing.data.rows { tr { @for cell in row { td { (cell) } } } } } }
            }
        }
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
            ul { @for item in &caution.items { li { (item) } } }
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

/// Weights are told by a word and a shape: a filled square, a half-filled one, an empty one.
fn finding_markup(finding: &FindingView, words: &Words) -> Markup {
    use advice::finding::Weight;
    let (class, filled) = match finding.weight {
        Weight::Problem => ("finding problem", 18),
        Weight::Look => ("finding look", 9),
        Weight::Note => ("finding remark", 0),
    };
    html! {
        div class=(class) {
            p {
                svg class="sign" viewBox="0 0 22 22" width="18" height="18" aria-hidden="true" {
                    rect x="2" y="2" width="18" height="18" fill="none" stroke="currentColor" stroke-width="2" {}
                    rect x="2" y=(20 - filled) width="18" height=(filled) fill="currentColor" {}
                }
                strong { (finding.weight_word) } " " (finding.text)
            }
            @if !finding.ways_out.is_empty() {
                p { (words.plain("ways-out")) }
                ul { @for way in &finding.ways_out { li { (way) } } }
            }
            @if let Some(field) = finding.field {
                p { a href=(format!("#{}", field_anchor(field))) { (words.plain("change-this")) } }
            }
        }
    }
}

/// The element id of an input.
pub fn field_anchor(key: &str) -> String {
    format!("field-{}", crate::words::key_part(key))
}

/// One input of a form.
pub fn input(input: &Input, words: &Words) -> Markup {
    let id = field_anchor(input.key);
    let (hint_id, fault_id) = (format!("{id}-hint"), format!("{id}-fault"));
    let has_hint = !input.hint.is_empty();
    let described: Vec<&str> = [(has_hint, &hint_id), (input.fault.is_some(), &fault_id)]
        .into_iter()
        .filter(|(there, _)| *there)
        .map(|(_, id)| id.as_str())
        .collect();
    let describes = (!described.is_empty()).then(|| described.join(" "));
    let invalid = input.fault.is_some().then_some("true");
    let notes = html! {
        @if has_hint { p class="hint" id=(hint_id) { (input.hint) } }
        @if let Some(fault) = &input.fault { p class="fault" id=(fault_id) { (fault) } }
    };
    match &input.control {
        Control::Text { typed, numeric, unit } => html! {
            div class="input" {
                label for=(id) { (input.label) }
                (notes)
                span class="box" {
                    input id=(id) name=(input.key) type="text" inputmode=[numeric.then_some("decimal")] value=(typed)
                        autocomplete="off" aria-describedby=[describes] aria-invalid=[invalid];
                    @if !unit.is_empty() { span class="unit" { (unit) } }
                }
            }
        },
        Control::Lines { typed, unit } => html! {
            div class="input" {
                label for=(id) { (input.label) @if !unit.is_empty() { " (" (unit) ")" } }
                (notes)
                textarea id=(id) name=(input.key) rows="4" inputmode="text" spellcheck="false" autocomplete="off"
                    aria-describedby=[describes] aria-invalid=[invalid] { (typed) }
            }
        },
        Control::Day { typed } => html! {
            div class="input" {
                label for=(id) { (input.label) }
                (notes)
                input id=(id) name=(input.key) type="date" value=(typed) aria-describedby=[describes] aria-invalid=[invalid];
            }
        },
        Control::One { options } => html! {
            div class="input" {
                label for=(id) { (input.label) }
                (notes)
                select id=(id) name=(input.key) aria-describedby=[describes] aria-invalid=[invalid] {
                    option value="" { (words.plain("not-said")) }
                    @for (value, label, chosen) in options { option value=(value) selected[*chosen] { (label) } }
                }
            }
        },
        Control::Some { options } => html! {
            fieldset class="input" id=(id) aria-describedby=[describes] {
                legend { (input.label) }
                (notes)
                @for (value, label, chosen) in options {
                    label class="tick" {
                        input type="checkbox" name=(input.key) value=(value) checked[*chosen];
                        " " (label)
                    }
                }
            }
        },
    }
}

/// The summary of faults on top of a form: takes the focus, links to each field.
pub fn fault_summary(inputs: &[&Input], words: &Words) -> Markup {
    let faulty: Vec<(&Input, &String)> =
        inputs.iter().filter_map(|input| Some((*input, input.fault.as_ref()?))).collect();
    html! {
        @if !faulty.is_empty() {
            div class="faults" role="alert" tabindex="-1" id="faults" {
                h2 { (say!(words, "faults-title", count = faulty.len() as f64)) }
                ul { @for (input, fault) in faulty {
                    li { a href=(format!("#{}", field_anchor(input.key))) { (fault) } }
                } }
            }
        }
    }
}
