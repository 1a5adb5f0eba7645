//! A working in words: formula, numbers, a blackboard version, inputs with their origin, source with its status.

use std::collections::HashMap;

use advice::outcome::Outcome;
use advice::rule::Origin;
use advice::working::{WorkedInput, Working, working};
use quantity::{Answers, Unit};
use reference::bibliography;

use crate::document::{WorkingRow, WorkingView};
use crate::viewer::{Units, Viewer};
use crate::words::{Argument, Words, key_part};
use crate::{say, show};

/// The working of a figure, in words; `None` when it could not be worked out.
pub fn view(answers: &Answers, outcome: &Outcome, id: &str, viewer: &Viewer) -> Option<WorkingView> {
    working(answers, outcome, id).map(|working| worded(&working, viewer))
}

/// A formula holds in its own units only, so a working speaks metric whatever the viewer likes; the result is then said
/// once more in the viewer's units.
fn worded(working: &Working, viewer: &Viewer) -> WorkingView {
    let words = viewer.words();
    let (spec, rule) = (working.worked.spec, working.worked.rule);
    let metric = Viewer { units: Units::Metric, ..viewer.clone() };
    let result = show::figure(&working.worked.figure, spec, &metric);
    let in_short = |value: f64| show::short(value, 4);
    WorkingView {
        title: label(spec.id, viewer),
        sentence: words.plain(&format!("rule-{}", rule.name)),
        formula: in_symbols(working, words),
        substituted: say!(words, "equals", left = in_numbers(working, &metric, &in_short), right = &result),
        rounded: rounded(working, &metric),
        inputs: working.inputs.iter().map(|input| row(input, &metric)).collect(),
        result: show::figure(&working.worked.figure, spec, viewer),
        source: source(rule.source, rule.status.name(), words),
    }
}

/// The label of a figure.
pub fn label(id: &str, viewer: &Viewer) -> String {
    viewer.words().plain(&format!("figure-{}", key_part(id)))
}

/// The source of a rule and how far it can be trusted, in one sentence.
pub fn source(key: &str, status: &str, words: &Words) -> String {
    let status = words.plain(&format!("status-{status}"));
    let Ok(work) = bibliography::work(key) else { return status };
    let parts = [&work.authors, &work.title, &work.published, &work.year];
    let text = parts.into_iter().filter(|part| !part.is_empty()).cloned().collect::<Vec<_>>().join(", ");
    say!(words, "source-and-status", source = text, status = status)
}

fn row(input: &WorkedInput, viewer: &Viewer) -> WorkingRow {
    let words = viewer.words();
    let (label, origin) = match input.origin {
        Origin::Field(key) => (
            words.plain(&format!("field-{}", key_part(key))),
            match input.usual {
                None => words.plain("origin-typed"),
                Some(status) => {
                    let status = words.plain(&format!("status-{}", status.name()));
                    say!(words, "origin-usual", status = status)
                }
            },
        ),
        Origin::List(key) => (words.plain(&format!("field-{}", key_part(key))), words.plain("origin-typed")),
        Origin::Chosen(key, word) => {
            let choice = words.plain(&format!("choice-{}-{word}", key_part(key)));
            (say!(words, "origin-chosen-label", choice = choice), words.plain("origin-chosen"))
        }
        Origin::Figure(id) => (label(id, viewer), words.plain("origin-figure")),
        Origin::IfChosen { figure, .. } => (label(figure, viewer), words.plain("origin-if-chosen")),
        Origin::Table { table, point, .. } => (
            words.plain(&format!("table-{}-{}", key_part(table), key_part(&point.to_lowercase()))),
            words.plain("origin-table"),
        ),
    };
    let value = match input.origin {
        Origin::List(_) => show::several(&input.list, input.resolved.unit, viewer),
        _ => show::quantity_short(input.resolved.value, input.resolved.unit, viewer),
    };
    WorkingRow { symbol: input.symbol, label, value, origin }
}

/// The formula in its symbols: as the rule's message words it, where signs alone would not be understood.
fn in_symbols(working: &Working, words: &Words) -> String {
    let symbols: Vec<(&str, String)> =
        working.inputs.iter().map(|input| (input.symbol, input.symbol.to_owned())).collect();
    in_words(working, &symbols, words)
        .unwrap_or_else(|| typeset(working.worked.rule.formula, &HashMap::new(), words))
}

/// The formula with numbers in place of symbols.
fn in_numbers(working: &Working, viewer: &Viewer, format: &dyn Fn(f64) -> String) -> String {
    let numbers = numbers(working, viewer, format);
    let named: Vec<(&str, String)> = numbers.iter().map(|(symbol, text)| (*symbol, text.clone())).collect();
    in_words(working, &named, viewer.words())
        .unwrap_or_else(|| typeset(working.worked.rule.formula, &numbers, viewer.words()))
}

fn in_words(working: &Working, named: &[(&str, String)], words: &Words) -> Option<String> {
    let arguments: Vec<(&str, Argument)> =
        named.iter().map(|(symbol, text)| (*symbol, Argument::from(text))).collect();
    words.attribute(&format!("rule-{}", working.worked.rule.name), "formula", &arguments)
}

fn numbers(
    working: &Working,
    viewer: &Viewer,
    format: &dyn Fn(f64) -> String,
) -> HashMap<&'static str, String> {
    let number = |input: &WorkedInput| match (input.origin, input.resolved.unit) {
        (Origin::List(key), _) => how_many(key, input.list.len(), viewer.words()),
        (_, Unit::Date) => show::quantity_short(input.resolved.value, Unit::Date, viewer),
        (_, unit) if unit.is_money() && !viewer.money_shown => show::money(input.resolved.value, viewer),
        _ => format(input.resolved.value),
    };
    working.inputs.iter().map(|input| (input.symbol, number(input))).collect()
}

/// "20 weights": what stands for a list where a number would stand for a number.
fn how_many(key: &str, count: usize, words: &Words) -> String {
    let n = count.to_string();
    let message = format!("field-{}", key_part(key));
    words.attribute(&message, "many", &[("n", Argument::from(&n))]).unwrap_or(n)
}

/// The same sum with every number in two figures, and what that gives: a check by head. Empty where it would mislead: for
/// days and money, where nothing was rounded, and where it lands more than a twentieth off.
fn rounded(working: &Working, viewer: &Viewer) -> String {
    let spec = working.worked.spec;
    let round = |value: f64| show::round_to_figures(value, 2);
    let inputs: Vec<f64> = working.inputs.iter().map(|input| round(input.resolved.value)).collect();
    let as_they_are =
        inputs.iter().zip(&working.inputs).all(|(rounded, input)| *rounded == input.resolved.value);
    let has_list = working.inputs.iter().any(|input| matches!(input.origin, Origin::List(_)));
    if spec.unit == Unit::Date || spec.unit.is_money() || as_they_are || has_list {
        return String::new();
    }
    let exact = working.worked.figure.value.number();
    let Some(about) = (working.worked.rule.compute)(&inputs).map(round) else { return String::new() };
    if (about - exact).abs() > 0.05 * exact.abs() {
        return String::new();
    }
    let result = show::quantity_short(about, spec.unit, viewer);
    let left = in_numbers(working, viewer, &|value| show::short(round(value), 4));
    say!(viewer.words(), "about-equals", left = left, right = result)
}

/// A formula for the eye: × ÷ − √ π, powers raised, functions as words, symbols replaced where numbers are given.
fn typeset(formula: &str, numbers: &HashMap<&'static str, String>, words: &Words) -> String {
    let mut out = String::new();
    let mut rest = formula;
    while let Some(first) = rest.chars().next() {
        let end = if first.is_ascii_alphabetic() {
            rest.find(|c: char| !(c.is_ascii_alphanumeric() || c == '_')).unwrap_or(rest.len())
        } else {
            first.len_utf8()
        };
        let (token, after) = rest.split_at(end);
        rest = after;
        match token {
            "*" => out.push('×'),
            "/" => out.push('÷'),
            "-" => out.push('−'),
            "pi" => out.push('π'),
            "sqrt" => out.push('√'),
            "^" => {
                out.truncate(out.trim_end().len());
                rest = raised(rest, &mut out);
            }
            name if first.is_ascii_alphabetic() && rest.starts_with('(') => {
                out.push_str(&words.plain(&format!("formula-{}", key_part(name))));
                out.push('\u{a0}');
            }
            name => out.push_str(numbers.get(name).map_or(name, String::as_str)),
        }
    }
    out
}

/// Writes a power of 2 or 3 raised, and any other behind a caret.
fn raised<'a>(rest: &'a str, out: &mut String) -> &'a str {
    let rest = rest.trim_start();
    for (digit, raised) in [("2", '²'), ("3", '³')] {
        if let Some(after) = rest.strip_prefix(digit) {
            out.push(raised);
            return after;
        }
    }
    out.push('^');
    rest
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::viewer::Locale;

    #[test]
    fn formulae_are_set_for_the_eye() {
        let words = Words::of(Locale::English);
        let set = |formula| typeset(formula, &HashMap::from([("A", "8".to_owned())]), words);
        assert_eq!(set("sqrt(4 * pi * A) / s"), "√(4 × π × 8) ÷ s");
        assert_eq!(set("(n * s) ^ 2 / (4 * pi)"), "(n × s)² ÷ (4 × π)");
        assert_eq!(set("ceil(A / s)"), "round up\u{a0}(8 ÷ s)");
    }
}
