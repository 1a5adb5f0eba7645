//! A working in words: formula, numbers, a blackboard version, inputs with their origin, source with its status.

use std::collections::HashMap;

use advice::outcome::{Outcome, Resolved};
use advice::procedure::{By, ProcedureRun};
use advice::rule::{Origin, Rule};
use advice::series::DayOrigin;
use advice::working::{WorkedInput, Working, working};
use quantity::{Answers, Status, Unit};
use reference::bibliography;

use crate::document::{WorkingRow, WorkingView};
use crate::viewer::{Units, Viewer};
use crate::words::{Argument, Words, key_part};
use crate::{say, show};

/// The working of a figure, in words; `None` when it could not be worked out.
pub fn view(answers: &Answers, outcome: &Outcome, id: &str, viewer: &Viewer) -> Option<WorkingView> {
    let working = working(answers, outcome, id)?;
    let view = match &working.worked.by {
        By::Rule(rule) => worded(&Said::of_figure(&working, rule, viewer), viewer),
        By::Procedure(run) => by_procedure(&working, run, viewer),
    };
    Some(leading_on(view, outcome))
}

/// A working whose rows lead on only to what itself can be shown: what is 0 because it is not known has no working.
fn leading_on(mut view: WorkingView, outcome: &Outcome) -> WorkingView {
    for row in &mut view.inputs {
        row.figure = row.figure.filter(|id| outcome.explains(id));
    }
    view
}

/// The working of a figure by day on one day of age, in words.
pub fn of_day(
    answers: &Answers,
    outcome: &Outcome,
    id: &str,
    day: i32,
    viewer: &Viewer,
) -> Option<WorkingView> {
    let spec = advice::families::series_named(id)?;
    let value = outcome.on_day(id, day)?;
    let (rule, resolved) = outcome.day_inputs(answers, spec, day)?;
    let title = say!(viewer.words(), "on-day-of-age", figure = label(id, viewer), day = day.to_string());
    let inputs = rule.inputs.iter().zip(resolved);
    let said = Said {
        title,
        rule: rule.name,
        formula: rule.formula,
        source: rule.source,
        status: rule.status,
        unit: spec.unit,
        decimals: spec.decimals,
        value,
        compute: rule.compute,
        inputs: inputs
            .map(|(input, resolved)| {
                let (label, origin) = day_origin(&input.origin, answers, viewer);
                SaidInput {
                    symbol: input.symbol,
                    value: resolved.value,
                    unit: resolved.unit,
                    label,
                    origin,
                    figure: figure_of_day(&input.origin),
                    list: None,
                    shown: None,
                }
            })
            .collect(),
    };
    Some(leading_on(worded(&said, viewer), outcome))
}

/// A working being worded: of a figure, or of a figure by day on one day.
struct Said {
    title: String,
    rule: &'static str,
    formula: &'static str,
    source: &'static str,
    status: Status,
    unit: Unit,
    decimals: u8,
    value: f64,
    compute: fn(&[f64]) -> Option<f64>,
    inputs: Vec<SaidInput>,
}

struct SaidInput {
    symbol: &'static str,
    value: f64,
    unit: Unit,
    label: String,
    origin: String,
    figure: Option<&'static str>,
    /// "20 weights", where the input is a list.
    list: Option<String>,
    /// The list itself, as far as a page holds it.
    shown: Option<String>,
}

impl Said {
    fn of_figure(working: &Working, rule: &'static Rule, viewer: &Viewer) -> Said {
        let spec = working.worked.spec;
        Said {
            title: label(spec.id, viewer),
            rule: rule.name,
            formula: rule.formula,
            source: rule.source,
            status: rule.status,
            unit: spec.unit,
            decimals: spec.decimals,
            value: working.worked.figure.value.number(),
            compute: rule.compute,
            inputs: working.inputs.iter().map(|input| SaidInput::of(input, viewer)).collect(),
        }
    }
}

impl SaidInput {
    fn of(input: &WorkedInput, viewer: &Viewer) -> SaidInput {
        let (label, origin) = origin(&input.origin, input.usual, input.chosen, viewer);
        let Resolved { value, unit, .. } = input.resolved;
        let list = match input.origin {
            Origin::List(key) => Some(how_many(key, input.list.len(), viewer.words())),
            _ => None,
        };
        let shown = list.is_some().then(|| show::several(&input.list, unit, viewer));
        let figure = figure_of(&input.origin);
        SaidInput { symbol: input.symbol, value, unit, label, origin, figure, list, shown }
    }

    fn row(&self, viewer: &Viewer) -> WorkingRow {
        WorkingRow {
            symbol: self.symbol,
            label: self.label.clone(),
            value: self.shown.clone().unwrap_or_else(|| show::quantity_short(self.value, self.unit, viewer)),
            origin: self.origin.clone(),
            figure: self.figure,
        }
    }
}

/// A simulation cannot be redone by hand: its working says what makes it repeatable, and how far it may be off.
fn by_procedure(working: &Working, run: &ProcedureRun, viewer: &Viewer) -> WorkingView {
    let words = viewer.words();
    let spec = working.worked.spec;
    let off = show::quantity_short(run.accuracy.size(), spec.unit, viewer);
    let accuracy = words.say(&format!("accuracy-{}", run.accuracy.name()), &[("size", off.into())]);
    let repeat = match run.seed {
        None => words.plain("procedure-without-chance"),
        Some(seed) => {
            let count = show::number(run.count as f64, 0);
            say!(words, "procedure-repeat", count = count, seed = seed.to_string())
        }
    };
    WorkingView {
        title: label(spec.id, viewer),
        sentence: words.plain(&format!("procedure-{}", run.procedure.name)),
        formula: repeat,
        substituted: accuracy,
        rounded: String::new(),
        inputs: working.inputs.iter().map(|input| SaidInput::of(input, viewer).row(viewer)).collect(),
        result: show::figure(&working.worked.figure, spec, viewer),
        source: source(run.procedure.source, run.procedure.status.name(), words),
    }
}

/// A formula holds in its own units only, so a working speaks metric whatever the viewer likes; the result is then said
/// once more in the viewer's units.
fn worded(said: &Said, viewer: &Viewer) -> WorkingView {
    let words = viewer.words();
    let metric = Viewer { units: Units::Metric, ..viewer.clone() };
    let result = show::quantity(said.value, said.unit, said.decimals, &metric);
    let in_short = |value: f64| show::short(value, 4);
    WorkingView {
        title: said.title.clone(),
        sentence: words.plain(&format!("rule-{}", said.rule)),
        formula: in_symbols(said, words),
        substituted: say!(words, "equals", left = in_numbers(said, &metric, &in_short), right = &result),
        rounded: rounded(said, &metric),
        inputs: said.inputs.iter().map(|input| input.row(&metric)).collect(),
        result: show::quantity(said.value, said.unit, said.decimals, viewer),
        source: source(said.source, said.status.name(), words),
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

/// The label of a figure, by day or not, or of a field that stands for one.
pub fn named(id: &str, viewer: &Viewer) -> String {
    if advice::families::figure(id).is_some() || advice::families::series_named(id).is_some() {
        return label(id, viewer);
    }
    viewer.words().plain(&format!("field-{}", key_part(id)))
}

/// What an input of a day is, and where it comes from.
fn day_origin(origin_of: &DayOrigin, answers: &Answers, viewer: &Viewer) -> (String, String) {
    let words = viewer.words();
    match *origin_of {
        DayOrigin::Age => (words.plain("symbol-day-of-age"), String::new()),
        DayOrigin::Fixed(fixed) => {
            let usual = match fixed {
                Origin::Field(key) => answers.get(key).and_then(|given| given.usual),
                _ => None,
            };
            origin(&fixed, usual, None, viewer)
        }
        DayOrigin::Same(series) | DayOrigin::SameIfAny(series) => {
            (label(series, viewer), words.plain("origin-same-day"))
        }
        DayOrigin::Before { series, .. } => (label(series, viewer), words.plain("origin-day-before")),
        DayOrigin::Table { table, point, .. } => {
            (table_point(table, point, words), words.plain("origin-table"))
        }
        DayOrigin::Recorded(key) => {
            (words.plain(&format!("field-{}", key_part(key))), words.plain("origin-written"))
        }
        DayOrigin::RecordedIfAny(key) => {
            (words.plain(&format!("field-{}", key_part(key))), words.plain("origin-written-if-any"))
        }
        DayOrigin::Scheduled(key) | DayOrigin::Holding(key) => {
            (words.plain(&format!("field-{}", key_part(key))), words.plain("origin-typed"))
        }
        DayOrigin::Listed { list, .. } => {
            (words.plain(&format!("list-{list}")), words.plain("origin-figure"))
        }
    }
}

fn table_point(table: &str, point: &str, words: &Words) -> String {
    words.plain(&format!("table-{}-{}", key_part(table), key_part(&point.to_lowercase())))
}

/// The figure that an input of a day is, if it was worked out.
fn figure_of_day(origin_of: &DayOrigin) -> Option<&'static str> {
    match *origin_of {
        DayOrigin::Fixed(fixed) => figure_of(&fixed),
        DayOrigin::Same(series) | DayOrigin::SameIfAny(series) | DayOrigin::Before { series, .. } => {
            Some(series)
        }
        _ => None,
    }
}

/// The figure that an input is, if it was worked out.
fn figure_of(origin_of: &Origin) -> Option<&'static str> {
    match *origin_of {
        Origin::Figure(id) | Origin::IfKnown(id) | Origin::IfChosen { figure: id, .. } => Some(id),
        Origin::OnDay { series, .. } | Origin::OfDays(_, series) | Origin::OfKnownDays(_, series) => {
            Some(series)
        }
        Origin::FirstDayOver { series, .. } => Some(series),
        _ => None,
    }
}

/// What an input is, and where it comes from.
fn origin(
    origin_of: &Origin,
    usual: Option<Status>,
    chosen: Option<&str>,
    viewer: &Viewer,
) -> (String, String) {
    let words = viewer.words();
    match *origin_of {
        Origin::Field(key) => (
            words.plain(&format!("field-{}", key_part(key))),
            match usual {
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
        Origin::IfKnown(id) => (label(id, viewer), words.plain("origin-if-known")),
        Origin::IfTold(key) => {
            (words.plain(&format!("field-{}", key_part(key))), words.plain("origin-if-told"))
        }
        Origin::EndOf(key, _) => {
            (words.plain(&format!("field-{}", key_part(key))), words.plain("origin-typed"))
        }
        Origin::OnDay { series, day } => (
            say!(words, "series-on-day", series = label(series, viewer), day = named(day, viewer)),
            words.plain("origin-figure"),
        ),
        Origin::OfDays(over, series) | Origin::OfKnownDays(over, series) => {
            let key = format!("series-{}", over.name());
            let known = matches!(origin_of, Origin::OfKnownDays(..));
            let from = if known { "origin-of-known-days" } else { "origin-figure" };
            (words.say(&key, &[("series", label(series, viewer).into())]), words.plain(from))
        }
        Origin::SumOfDays { series, after, until } => (
            match after {
                Some(after) => say!(
                    words,
                    "series-between",
                    series = label(series, viewer),
                    after = label(after, viewer),
                    until = label(until, viewer)
                ),
                None => {
                    say!(words, "series-up-to", series = label(series, viewer), until = label(until, viewer))
                }
            },
            words.plain("origin-figure"),
        ),
        Origin::FirstDayOver { series, limit } => (
            match limit {
                Some(limit) => say!(
                    words,
                    "series-first-over",
                    series = label(series, viewer),
                    limit = label(limit, viewer)
                ),
                None => say!(words, "series-first-above-nothing", series = label(series, viewer)),
            },
            words.plain("origin-figure"),
        ),
        Origin::Listed { list, .. } => (words.plain(&format!("list-{list}")), words.plain("origin-figure")),
        Origin::TableBy { table, point, field, .. } => {
            let choice = words.plain(&format!("choice-{}-{}", key_part(field), chosen.unwrap_or_default()));
            let key = format!("table-{}-{}", key_part(table), key_part(&point.to_lowercase()));
            (say!(words, &key, choice = choice), words.plain("origin-table"))
        }
        Origin::TableAt { table, point, .. } | Origin::Table { table, point, .. } => {
            (table_point(table, point, words), words.plain("origin-table"))
        }
    }
}

/// The formula in its symbols: as the rule's message words it, where signs alone would not be understood.
fn in_symbols(said: &Said, words: &Words) -> String {
    let symbols: Vec<(&str, String)> =
        said.inputs.iter().map(|input| (input.symbol, input.symbol.to_owned())).collect();
    in_words(said, &symbols, words).unwrap_or_else(|| typeset(said.formula, &HashMap::new(), words))
}

/// The formula with numbers in place of symbols.
fn in_numbers(said: &Said, viewer: &Viewer, format: &dyn Fn(f64) -> String) -> String {
    let numbers = numbers(said, viewer, format);
    let named: Vec<(&str, String)> = numbers.iter().map(|(symbol, text)| (*symbol, text.clone())).collect();
    in_words(said, &named, viewer.words()).unwrap_or_else(|| typeset(said.formula, &numbers, viewer.words()))
}

fn in_words(said: &Said, named: &[(&str, String)], words: &Words) -> Option<String> {
    let arguments: Vec<(&str, Argument)> =
        named.iter().map(|(symbol, text)| (*symbol, Argument::from(text))).collect();
    words.attribute(&format!("rule-{}", said.rule), "formula", &arguments)
}

fn numbers(said: &Said, viewer: &Viewer, format: &dyn Fn(f64) -> String) -> HashMap<&'static str, String> {
    let number = |input: &SaidInput| match input.unit {
        Unit::Date => show::quantity_short(input.value, Unit::Date, viewer),
        unit if unit.is_money() && !viewer.money_shown => show::money(input.value, viewer),
        _ => format(input.value),
    };
    let text = |input: &SaidInput| input.list.clone().unwrap_or_else(|| number(input));
    said.inputs.iter().map(|input| (input.symbol, text(input))).collect()
}

/// "20 weights": what stands for a list where a number would stand for a number.
fn how_many(key: &str, count: usize, words: &Words) -> String {
    let n = count.to_string();
    let message = format!("field-{}", key_part(key));
    words.attribute(&message, "many", &[("n", Argument::from(&n))]).unwrap_or(n)
}

/// The same sum with every number in two figures, and what that gives: a check by head. Empty where it would mislead: for
/// days and money, where nothing was rounded, and where it lands more than a twentieth off.
fn rounded(said: &Said, viewer: &Viewer) -> String {
    let round = |value: f64| show::round_to_figures(value, 2);
    let inputs: Vec<f64> = said.inputs.iter().map(|input| round(input.value)).collect();
    let as_they_are = inputs.iter().zip(&said.inputs).all(|(rounded, input)| *rounded == input.value);
    let has_list = said.inputs.iter().any(|input| input.list.is_some());
    if said.unit == Unit::Date || said.unit.is_money() || as_they_are || has_list {
        return String::new();
    }
    let Some(about) = (said.compute)(&inputs).map(round) else { return String::new() };
    if (about - said.value).abs() > 0.05 * said.value.abs() {
        return String::new();
    }
    let result = show::quantity_short(about, said.unit, viewer);
    let left = in_numbers(said, viewer, &|value| show::short(round(value), 4));
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
