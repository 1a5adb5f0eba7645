//! Pages of the manual that are made from the program's own tables, so that they cannot fall behind it.

use advice::families;
use advice::series::{DayRule, Way};
use quantity::fields::is_retired;
use quantity::{Asked, Kind, Need, Unit};
use serde_json::{Map, Value, json};

use crate::viewer::Viewer;
use crate::words::{Words, key_part};
use crate::{show, working};

/// The keys of a plan file in Markdown: meaning, unit, range, and what is taken when nothing is said.
pub fn plan_file(viewer: &Viewer) -> String {
    let words = viewer.words();
    let mut page =
        format!("# {}\n\n{}\n", words.plain("manual-plan-file"), words.plain("manual-plan-file-intro"));
    let mut section = "";
    let headings =
        ["manual-key", "manual-meaning", "manual-range", "manual-left-out"].map(|key| words.plain(key));
    for asked in families::plan_fields().into_iter().filter(|asked| !is_retired(asked.field.key)) {
        if asked.field.section() != section {
            section = asked.field.section();
            page.push_str(&format!("\n## [{section}]\n\n| {} |\n|---|---|---|---|\n", headings.join(" | ")));
        }
        let label = words.plain(&format!("field-{}", key_part(asked.key)));
        let cells =
            [format!("`{}`", asked.field.name()), label, range(&asked, viewer), left_out(&asked, viewer)];
        page.push_str(&format!("| {} |\n", cells.join(" | ")));
    }
    page
}

/// What a field takes, in a few words.
pub fn range(asked: &Asked, viewer: &Viewer) -> String {
    let words = viewer.words();
    match asked.field.kind {
        Kind::Number { unit, low, high, .. } | Kind::Numbers { unit, low, high, .. } => {
            let range =
                crate::say!(words, "sum-range", low = show::short(low, 3), high = show::short(high, 3));
            let unit = if unit == Unit::One { String::new() } else { show::unit_label(unit, viewer) };
            format!("{range} {unit}").trim_end().to_owned()
        }
        Kind::Ratio { low, high, .. } => format!("1:{} … 1:{}", show::short(low, 0), show::short(high, 0)),
        Kind::Choice(allowed) | Kind::Choices(allowed) => {
            allowed.iter().map(|word| format!("`{word}`")).collect::<Vec<_>>().join(", ")
        }
        Kind::Months => "1 … 12".to_owned(),
        Kind::Day => "YYYY-MM-DD".to_owned(),
        Kind::Schedule { .. } => "\"42: 400, 45: 600, 49: rest\"".to_owned(),
        Kind::Steps { .. } => "\"0: 60, 21: 40\"".to_owned(),
        Kind::Curve => words.plain("manual-curve"),
        Kind::Words { characters, .. } => {
            crate::say!(words, "manual-characters", limit = characters.to_string())
        }
        Kind::ByDay { .. } => words.plain("origin-written"),
        Kind::Currency => "XXX".to_owned(),
        Kind::Text(limit) => crate::say!(words, "manual-characters", limit = limit.to_string()),
    }
}

fn left_out(asked: &Asked, viewer: &Viewer) -> String {
    let words = viewer.words();
    match asked.need {
        Need::Required => words.plain("manual-needed"),
        Need::Optional => words.plain("manual-optional"),
        Need::Usual(text, status) => {
            let status = words.plain(&format!("status-{}", status.name()));
            crate::say!(words, "manual-usual", value = text, status = status)
        }
    }
}

/// Every figure in Markdown: its name in JSON, meaning, unit, and each rule with its formula, source and status.
pub fn figures(viewer: &Viewer) -> String {
    let words = viewer.words();
    let mut page =
        format!("# {}\n\n{}\n", words.plain("manual-figures"), words.plain("manual-figures-intro"));
    for spec in families::figures() {
        page.push_str(&format!(
            "\n## `{}`\n\n{} ({})\n\n",
            spec.id,
            working::label(spec.id, viewer),
            spec.unit.name()
        ));
        for rule in spec.rules {
            let sentence = words.plain(&format!("rule-{}", rule.name));
            let source = working::source(rule.source, rule.status.name(), words);
            page.push_str(&format!("- `{}`\n  {sentence}\n  {source}\n", rule.formula));
        }
    }
    for spec in families::series() {
        let label = working::label(spec.id, viewer);
        let unit = spec.unit.name();
        page.push_str(&format!(
            "\n## `{}`\n\n{label} ({unit}; {})\n\n",
            spec.id,
            words.plain("manual-by-day")
        ));
        page.push_str(&series_ways(&spec.way, words));
    }
    page
}

/// How the days of a figure come about: each rule, or the figures a procedure goes by.
fn series_ways(way: &Way, words: &Words) -> String {
    let rule = |rule: &DayRule| {
        let sentence = words.plain(&format!("rule-{}", rule.name));
        let source = working::source(rule.source, rule.status.name(), words);
        format!("- `{}`\n  {sentence}\n  {source}\n", rule.formula)
    };
    match way {
        Way::Rules(rules) => rules.iter().map(rule).collect(),
        Way::Procedure { made_from, source, status, .. } => {
            let from: Vec<String> = made_from.iter().map(|id| format!("`{id}`")).collect();
            format!("- {}\n  {}\n", from.join(", "), working::source(source, status.name(), words))
        }
    }
}

/// The JSON schema of a plan file, made from the table of fields.
pub fn plan_file_schema() -> Value {
    let mut sections: Map<String, Value> = Map::new();
    for asked in families::plan_fields() {
        let field = asked.field;
        let section = sections
            .entry(field.section())
            .or_insert_with(|| json!({"type": "object", "additionalProperties": false, "properties": {}}));
        section["properties"][field.name()] =
            json!({"anyOf": [kind_schema(field.kind), {"const": quantity::field::NOT_KNOWN}]});
    }
    json!({
        "$schema": "https://json-schema.org/draft/2020-12/schema",
        "title": "PlanFile",
        "type": "object",
        "properties": sections,
    })
}

fn kind_schema(kind: Kind) -> Value {
    match kind {
        Kind::Number { low, high, whole, unit, .. } => json!({
            "type": if whole { "integer" } else { "number" }, "minimum": low, "maximum": high, "x-unit": unit.name(),
        }),
        Kind::Numbers { unit, low, high, at_least, at_most } => json!({
            "type": "array", "minItems": at_least, "maxItems": at_most,
            "items": {"type": "number", "minimum": low, "maximum": high, "x-unit": unit.name()},
        }),
        Kind::Ratio { .. } => json!({"type": "string", "pattern": "^1 ?: ?[0-9]+([.,][0-9]+)?$"}),
        Kind::Choice(allowed) => json!({"enum": allowed}),
        Kind::Choices(allowed) => json!({"type": "array", "items": {"enum": allowed}}),
        Kind::Months => json!({"type": "array", "items": {"type": "integer", "minimum": 1, "maximum": 12}}),
        Kind::Day => json!({"type": "string", "format": "date"}),
        Kind::Schedule { .. } => json!({"type": ["string", "array"], "items": {"type": "string"}}),
        Kind::Steps { .. } => json!({"type": ["string", "array", "integer"], "items": {"type": "string"}}),
        Kind::Curve => json!({"type": "string"}),
        Kind::Words { at_most, characters } => json!({
            "type": "array", "maxItems": at_most, "items": {"type": "string", "maxLength": characters},
        }),
        Kind::ByDay { unit } => {
            json!({"type": "object", "additionalProperties": {"type": "number", "x-unit": unit.name()}})
        }
        Kind::Currency => json!({"type": "string", "pattern": "^[A-Z]{3}$"}),
        Kind::Text(limit) => json!({"type": "string", "maxLength": limit}),
    }
}
