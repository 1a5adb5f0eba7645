//! Forms: the table of fields as things to fill in, with what was typed kept and every fault tied to its field.

use quantity::field::NOT_KNOWN;
use quantity::{Asked, CivilDay, Count, Kind, Need, Problem, Raw, Schedule, Unit, Value};

use crate::viewer::Viewer;
use crate::words::key_part;
use crate::{fault, say, show};

/// One thing to fill in.
#[derive(Clone, Debug, PartialEq)]
pub struct Input {
    /// The key it is sent under.
    pub key: String,
    /// What it is.
    pub label: String,
    /// How to answer; may be empty.
    pub hint: String,
    /// How it is answered.
    pub control: Control,
    /// What is wrong with what was typed, if anything.
    pub fault: Option<String>,
}

impl Input {
    /// Whether something was typed or chosen.
    pub fn is_filled(&self) -> bool {
        match &self.control {
            Control::Text { typed, .. } | Control::Lines { typed, .. } | Control::Day { typed } => {
                !typed.is_empty()
            }
            Control::One { options } | Control::Some { options } => {
                options.iter().any(|(.., chosen)| *chosen)
            }
        }
    }
}

/// How a thing is filled in.
#[derive(Clone, Debug, PartialEq)]
pub enum Control {
    /// A box; numbers get a numeric keypad.
    Text {
        /// What was typed.
        typed: String,
        /// Whether a number is wanted.
        numeric: bool,
        /// The unit beside the box; may be empty.
        unit: String,
    },
    /// A box of several lines for several numbers or pasted rows.
    Lines {
        /// What was typed.
        typed: String,
        /// The unit beside the box; may be empty.
        unit: String,
    },
    /// A day.
    Day {
        /// What was typed.
        typed: String,
    },
    /// One of some words, or none.
    One {
        /// Value, label and whether chosen.
        options: Vec<(String, String, bool)>,
    },
    /// Any of some words.
    Some {
        /// Value, label and whether chosen.
        options: Vec<(String, String, bool)>,
    },
}

/// The inputs of what is asked, filled with what was typed.
pub fn inputs(asked: &[Asked], raws: &[Raw], problems: &[Problem], viewer: &Viewer) -> Vec<Input> {
    asked.iter().map(|one| input(one, raws, problems, viewer)).collect()
}

fn input(asked: &Asked, raws: &[Raw], problems: &[Problem], viewer: &Viewer) -> Input {
    let words = viewer.words();
    let mine = |key: &str| key == asked.key || asked.unit_of_key(key).is_some();
    let typed: Vec<String> =
        raws.iter().filter(|raw| mine(&raw.key)).flat_map(|raw| raw.text.clone()).collect();
    let message = format!("field-{}", key_part(asked.field.key));
    let own = words.attribute(&message, "hint", &[]).unwrap_or_default();
    let hint = [own, allowed(asked, viewer)].into_iter().filter(|part| !part.is_empty());
    Input {
        key: asked.key.to_owned(),
        label: words.plain(&message),
        hint: hint.collect::<Vec<_>>().join(" "),
        control: control(asked, &typed, viewer),
        fault: problems
            .iter()
            .find(|problem| mine(&problem.key))
            .map(|problem| fault::labelled(problem, asked.field.key, viewer)),
    }
}

/// What is taken when nothing is said.
fn allowed(asked: &Asked, viewer: &Viewer) -> String {
    let words = viewer.words();
    match asked.need {
        Need::Usual(text, _) => {
            let value = match asked.field.kind {
                Kind::Choice(_) => words.plain(&format!("choice-{}-{text}", key_part(asked.field.key))),
                _ => text.to_owned(),
            };
            say!(words, "hint-usual", value = value)
        }
        Need::Required | Need::Optional => String::new(),
    }
}

/// The most characters that are asked for on one line.
const LINE_CHARACTERS: usize = 400;

fn control(asked: &Asked, typed: &[String], viewer: &Viewer) -> Control {
    let words = viewer.words();
    let first = typed.first().cloned().unwrap_or_default();
    let label = |word: &str| words.plain(&format!("choice-{}-{word}", key_part(asked.field.key)));
    match asked.field.kind {
        Kind::Number { unit, .. } => {
            let unit = if unit == Unit::One { String::new() } else { show::unit_label(unit, viewer) };
            Control::Text { typed: first, numeric: true, unit }
        }
        Kind::Numbers { unit, .. } => {
            Control::Lines { typed: typed.join(" "), unit: show::unit_label(unit, viewer) }
        }
        Kind::Ratio { .. } => Control::Text { typed: first, numeric: false, unit: String::new() },
        Kind::Curve => Control::Lines { typed: typed.join("\n"), unit: String::new() },
        Kind::Words { .. } => Control::Lines { typed: typed.join(", "), unit: String::new() },
        // Several lines are wanted of whoever has many characters to say.
        Kind::Text(limit) if limit > LINE_CHARACTERS => {
            Control::Lines { typed: typed.join("\n"), unit: String::new() }
        }
        Kind::Text(_) | Kind::Currency | Kind::Schedule { .. } | Kind::Steps { .. } | Kind::ByDay { .. } => {
            Control::Text { typed: first, numeric: false, unit: String::new() }
        }
        // A box for days shows nothing but a day; whatever else was typed needs a box for text.
        Kind::Day if first.is_empty() || CivilDay::parse(&first).is_some() => Control::Day { typed: first },
        Kind::Day => Control::Text { typed: first, numeric: false, unit: String::new() },
        Kind::Choice(allowed) => {
            let mut options: Vec<_> =
                allowed.iter().map(|word| ((*word).to_owned(), label(word), *word == first)).collect();
            options.push((NOT_KNOWN.to_owned(), words.plain("answer-not-known"), first == NOT_KNOWN));
            // What was sent and is none of them stays, so that it can be seen beside its fault.
            if !first.is_empty() && !options.iter().any(|(.., chosen)| *chosen) {
                options.push((first.clone(), first, true));
            }
            Control::One { options }
        }
        Kind::Choices(allowed) => {
            let chosen = chosen(typed);
            let option =
                |word: &&str| ((*word).to_owned(), label(word), chosen.iter().any(|one| one == word));
            Control::Some { options: allowed.iter().map(option).collect() }
        }
        Kind::Months => {
            let chosen = chosen(typed);
            let option = |month: i32| {
                let (number, name) = (month.to_string(), words.plain(&format!("month-{month}")));
                let ticked = chosen.contains(&number);
                (number, name, ticked)
            };
            Control::Some { options: (1..=12).map(option).collect() }
        }
    }
}

/// A schedule as it was typed: day and count.
fn schedule_text(schedule: &Schedule, viewer: &Viewer) -> String {
    let step = |(day, count): (i32, Count)| match count {
        Count::Number(number) => format!("{day}: {}", show::short(number, 0)),
        Count::Rest => format!("{day}: {}", viewer.words().plain("the-rest")),
    };
    schedule.steps().map(step).collect::<Vec<_>>().join(", ")
}

/// Lists come as several values or as one with commas.
fn chosen(typed: &[String]) -> Vec<String> {
    typed.iter().flat_map(|text| text.split(',')).map(|item| item.trim().to_owned()).collect()
}

/// A checked answer as people read it.
pub fn answer_text(key: &str, value: &Value, viewer: &Viewer) -> String {
    let words = viewer.words();
    let label = |word: &&str| words.plain(&format!("choice-{}-{word}", key_part(key)));
    match value {
        Value::Number(number) => show::quantity_short(*number, unit(key), viewer),
        Value::Numbers(numbers) => show::several(numbers, unit(key), viewer),
        Value::Choice(word) => label(word),
        Value::Choices(chosen) => chosen.iter().map(label).collect::<Vec<_>>().join(", "),
        Value::Months(months) => {
            let name = |month: &i8| words.plain(&format!("month-{month}"));
            months.iter().map(name).collect::<Vec<_>>().join(", ")
        }
        Value::Day(day) => show::day(*day, viewer),
        Value::Schedule(schedule) => schedule_text(schedule, viewer),
        Value::Curve(points) => say!(words, "curve-rows", rows = points.len().to_string()),
        Value::Currency(currency) => currency.code().to_owned(),
        Value::Text(text) => text.clone(),
        Value::Words(written) => written.join(", "),
        Value::ByDay(days) => say!(words, "curve-rows", rows = days.len().to_string()),
    }
}

fn unit(key: &str) -> Unit {
    advice::families::field(key).and_then(quantity::Field::unit).unwrap_or(Unit::One)
}
