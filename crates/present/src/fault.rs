//! Faults in words: what is wrong, with the value as typed; what is allowed, with unit; what to do next.

use advice::plan_file::FileFault;
use quantity::{CurveFault, Fault, Problem, Question, ScheduleFault, Unit};

use crate::viewer::Viewer;
use crate::words::{Argument, Words, key_part};
use crate::{say, show};

/// What is wrong with one answer, without its place.
pub fn sentence(problem: &Problem, viewer: &Viewer) -> String {
    let words = viewer.words();
    let own = |extra: &[(&str, Argument)]| {
        let mut arguments =
            vec![("key", Argument::from(&problem.key)), ("typed", Argument::from(&problem.typed))];
        arguments.extend_from_slice(extra);
        words.say(&format!("fault-{}", name(&problem.fault)), &arguments)
    };
    let text = match &problem.fault {
        Fault::MissingTable { needs } => own(&[("needs", needs.join(", ").into())]),
        Fault::CommaDecimal { suggestion } => own(&[("suggestion", suggestion.into())]),
        Fault::TwoWays { decimal, thousands } => {
            own(&[("decimal", decimal.into()), ("thousands", thousands.into())])
        }
        Fault::WrongUnit { wanted } => own(&[("unit", show::unit_label(*wanted, viewer).into())]),
        Fault::OutOfRange { low, high, unit, .. } => {
            own(&[("low", limit(*low, *unit, viewer).into()), ("high", limit(*high, *unit, viewer).into())])
        }
        Fault::InList { at, item, low, high, unit } => own(&[
            ("at", at.to_string().into()),
            ("item", item.into()),
            ("low", limit(*low, *unit, viewer).into()),
            ("high", limit(*high, *unit, viewer).into()),
        ]),
        Fault::TooFew { found, at_least } => own(&[
            ("count", (*found as f64).into()),
            ("found", found.to_string().into()),
            ("least", at_least.to_string().into()),
        ]),
        Fault::TooMany { found, at_most } => {
            own(&[("found", found.to_string().into()), ("most", at_most.to_string().into())])
        }
        Fault::NotAChoice { allowed, .. } => own(&[("allowed", allowed.join(", ").into())]),
        Fault::GivenTwice { other } => own(&[("other", other.into())]),
        Fault::NotASchedule { part, why } => {
            let why = words.say(&format!("schedule-{}", schedule_why(why)), &schedule_limits(why));
            own(&[("part", part.into()), ("why", why.into())])
        }
        Fault::NotSteps { part, why } => {
            let why = words.say(&format!("schedule-{}", schedule_why(why)), &schedule_limits(why));
            own(&[("part", part.into()), ("why", why.into())])
        }
        Fault::NotACurve(why) => {
            let why = curve_why(why, words);
            own(&[("why", why.into())])
        }
        Fault::SameName { other } => own(&[("other", other.into())]),
        Fault::NotARow { names, .. } => own(&[("names", names.join(", ").into())]),
        Fault::TooLong { limit } => own(&[("limit", limit.to_string().into())]),
        Fault::Against { rule, other, other_value, low, high, unit } => {
            let arguments = [
                ("key", Argument::from(&problem.key)),
                ("typed", Argument::from(&problem.typed)),
                ("other", Argument::from(*other)),
                ("value", limit(*other_value, *unit, viewer).into()),
                ("low", limit(*low, *unit, viewer).into()),
                ("high", limit(*high, *unit, viewer).into()),
            ];
            words.say(&format!("against-{rule}"), &arguments)
        }
        Fault::UnknownKey { .. }
        | Fault::Missing
        | Fault::NotANumber
        | Fault::NotWhole { .. }
        | Fault::NotARatio
        | Fault::NotADay
        | Fault::NotMonths
        | Fault::ReadFromTheBook
        | Fault::NotACurrency => own(&[]),
    };
    match meant(&problem.fault) {
        Some(meant) => say!(words, "fault-did-you-mean", fault = text, meant = meant),
        None => text,
    }
}

fn name(fault: &Fault) -> &'static str {
    match fault {
        Fault::Missing => "missing",
        Fault::MissingTable { .. } => "missing-table",
        Fault::UnknownKey { .. } => "unknown-key",
        Fault::NotANumber => "not-a-number",
        Fault::CommaDecimal { .. } => "comma-decimal",
        Fault::TwoWays { .. } => "two-ways",
        Fault::WrongUnit { .. } => "wrong-unit",
        Fault::OutOfRange { .. } => "out-of-range",
        Fault::NotWhole { .. } => "not-whole",
        Fault::InList { .. } => "in-list",
        Fault::TooFew { .. } => "too-few",
        Fault::TooMany { .. } => "too-many",
        Fault::NotARatio => "not-a-ratio",
        Fault::NotADay => "not-a-day",
        Fault::NotAChoice { .. } => "not-a-choice",
        Fault::NotMonths => "not-months",
        Fault::NotASchedule { .. } => "not-a-schedule",
        Fault::NotSteps { .. } => "not-steps",
        Fault::NotACurve(_) => "not-a-curve",
        Fault::NotACurrency => "not-a-currency",
        Fault::GivenTwice { .. } => "given-twice",
        Fault::SameName { .. } => "same-name",
        Fault::NotARow { .. } => "not-a-row",
        Fault::TooLong { .. } => "too-long",
        Fault::Against { .. } => "against",
        Fault::ReadFromTheBook => "read-from-book",
    }
}

fn schedule_why(why: &ScheduleFault) -> &'static str {
    match why {
        ScheduleFault::Form => "form",
        ScheduleFault::Day { .. } => "day",
        ScheduleFault::Order => "order",
        ScheduleFault::Number => "number",
        ScheduleFault::AfterRest => "after-rest",
        ScheduleFault::Step { .. } => "step",
    }
}

fn schedule_limits(why: &ScheduleFault) -> Vec<(&'static str, Argument)> {
    match why {
        ScheduleFault::Day { first, last } => {
            vec![("first", first.to_string().into()), ("last", last.to_string().into())]
        }
        ScheduleFault::Step { low, high } => {
            vec![("low", low.to_string().into()), ("high", high.to_string().into())]
        }
        _ => Vec::new(),
    }
}

/// What is wrong with a pasted growth curve, by line and column.
fn curve_why(why: &CurveFault, words: &Words) -> String {
    match why {
        CurveFault::NoColumn { column } => say!(words, "curve-no-column", column = *column),
        CurveFault::NotANumber { line, column, cell } => {
            say!(words, "curve-not-a-number", line = line.to_string(), column = *column, cell = cell)
        }
        CurveFault::OutOfRange { line, column, value, low, high } => say!(
            words,
            "curve-out-of-range",
            line = line.to_string(),
            column = *column,
            value = show::short(*value, 2),
            low = show::short(*low, 0),
            high = show::short(*high, 0),
        ),
        CurveFault::Falls { line, column, value, before } => say!(
            words,
            "curve-falls",
            line = line.to_string(),
            column = *column,
            value = show::short(*value, 2),
            before = show::short(*before, 2),
        ),
        CurveFault::TooManyCells { line } => {
            say!(words, "curve-too-many-cells", line = line.to_string())
        }
        CurveFault::TooShort => words.plain("curve-too-short"),
    }
}

fn meant(fault: &Fault) -> Option<String> {
    match fault {
        Fault::UnknownKey { nearest } => nearest.clone(),
        Fault::OutOfRange { suggestion, .. } | Fault::NotWhole { suggestion } => {
            suggestion.map(|number| show::short(number, 3))
        }
        Fault::NotAChoice { nearest, .. } => nearest.map(str::to_owned),
        _ => None,
    }
}

fn limit(value: f64, unit: Unit, viewer: &Viewer) -> String {
    if value.is_infinite() {
        return viewer.words().plain("no-limit");
    }
    // A limit is given in the unit of its field, whatever the viewer likes: that is what has to be typed.
    let metric = Viewer { units: crate::viewer::Units::Metric, money_shown: true, ..viewer.clone() };
    match unit {
        Unit::One | Unit::Pieces | Unit::Money | Unit::MoneyPerKilogram => show::short(value, 2),
        _ => show::quantity_short(value, unit, &metric),
    }
}

/// The same for a page: it names the field by its label, since keys are for files.
///
/// - `key`: the field's
pub fn labelled(problem: &Problem, key: &str, viewer: &Viewer) -> String {
    let words = viewer.words();
    let label = format!("field-{}", key_part(key));
    if !words.knows(&label) {
        return sentence(problem, viewer);
    }
    let key = say!(words, "field-named", label = words.plain(&label));
    sentence(&Problem { key, ..problem.clone() }, viewer)
}

/// A fault with its place in a file or on a command line.
pub fn with_place(problem: &Problem, viewer: &Viewer) -> String {
    let sentence = sentence(problem, viewer);
    match problem.line {
        Some(line) => say!(viewer.words(), "fault-on-line", line = line.to_string(), fault = sentence),
        None => sentence,
    }
}

/// A rare value, asked about.
pub fn question(question: &Question, viewer: &Viewer) -> String {
    let words = viewer.words();
    let show = |value| show::quantity_short(value, question.unit, viewer);
    say!(
        words,
        "question-rare",
        field = words.plain(&format!("field-{}", key_part(question.key))),
        value = show(question.value),
        low = show(question.usual.0),
        high = show(question.usual.1),
    )
}

/// Why a file is no plan file.
pub fn file(fault: &FileFault, words: &Words) -> String {
    match fault {
        FileFault::TooLarge { bytes, limit } => {
            let megabytes = |bytes: u64| show::short(bytes as f64 / 1e6, 1);
            say!(words, "file-too-large", size = megabytes(*bytes), limit = megabytes(*limit))
        }
        FileFault::NotText => words.plain("file-not-text"),
        FileFault::CommaDecimal { line, key, typed } => {
            let with = |mark: &str| typed.replace(',', mark);
            let fault = if quantity::number::looks_like_thousands(typed) {
                say!(
                    words,
                    "fault-two-ways",
                    key = key,
                    typed = typed,
                    decimal = with("."),
                    thousands = with("")
                )
            } else {
                say!(words, "fault-comma-decimal", key = key, typed = typed, suggestion = with("."))
            };
            say!(words, "fault-on-line", line = line.to_string(), fault = fault)
        }
        FileFault::Unreadable { line, key, typed, why } => {
            let key_word = if typed.is_empty() { "file-no-value" } else { "file-unreadable" };
            let fault = say!(words, key_word, key = key, typed = typed, why = why);
            say!(words, "fault-on-line", line = line.to_string(), fault = fault)
        }
        FileFault::NotToml { line, why } => {
            say!(words, "file-not-toml", line = line.to_string(), why = why)
        }
        FileFault::TooDeep { line, key } => {
            say!(words, "file-too-deep", line = line.to_string(), key = key)
        }
    }
}
