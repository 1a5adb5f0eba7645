//! `sums NAME key=value …`: small calculators that need no batch.

use std::path::Path;

use advice::families;
use advice::sums::{self, Sum};
use clap::ArgMatches;
use present::words::key_part;
use present::{Locale, Viewer, Words, fault, say, show, sum, text, view};
use quantity::{Kind, Raw};

use crate::failure::Failure;
use crate::input;

/// Works a sum out; without a name lists them, without inputs says what the sum asks.
pub fn run(given: &ArgMatches, locale: Locale) -> Result<(), Failure> {
    let words = Words::of(locale);
    let plain = Viewer { locale, ..Viewer::plain() };
    let Some(name) = given.get_one::<String>("NAME") else {
        return super::print(&list(&plain));
    };
    let sum = sums::by_name(name).ok_or_else(|| Failure::input(no_sum(name, words)))?;
    let raws = given
        .get_many::<String>("INPUT")
        .unwrap_or_default()
        .map(|input| raw(sum, input, words))
        .collect::<Result<Vec<_>, _>>()?;
    if raws.is_empty() {
        return super::print(&asks(sum, &plain));
    }
    let result = sum.work_out(&raws, true);
    if !result.checked.problems.is_empty() {
        let faults = result.checked.problems.iter().map(|problem| fault::with_place(problem, &plain));
        return Err(Failure::BadInput(faults.collect()));
    }
    let viewer = super::viewer(Viewer::of(&result.checked.answers), given, locale);
    let with_workings = given.get_flag("working");
    if given.get_flag("json") {
        return super::print_json(&view::sum(&result, &viewer, with_workings));
    }
    let asked = result.checked.questions.iter().map(|question| fault::question(question, &viewer) + "\n");
    let document = sum::document(sum, &result, &viewer);
    super::print(&(asked.collect::<String>() + &text::write(&document, &viewer, with_workings)))
}

/// A curve can be typed, or be in the file named behind an `@`.
fn raw(sum: &Sum, input: &str, words: &Words) -> Result<Raw, Failure> {
    let (key, text) = input
        .split_once('=')
        .ok_or_else(|| Failure::input(say!(words, "command-not-key-value", input = input)))?;
    let key = key.trim();
    let is_curve = sum.asked().iter().any(|asked| asked.key == key && asked.field.kind == Kind::Curve);
    let text = match text.strip_prefix('@').filter(|_| is_curve) {
        Some(file) => input::text(Path::new(file), words)?,
        None => text.to_owned(),
    };
    Ok(Raw { key: key.to_owned(), text: vec![text], line: None })
}

fn no_sum(name: &str, words: &Words) -> String {
    let names: Vec<&str> = families::sums().map(|sum| sum.name).collect();
    let known = names.join(", ");
    match quantity::field::nearest(name, names.into_iter()) {
        Some(meant) => {
            let fault = say!(words, "command-no-sum", name = name, known = known);
            say!(words, "fault-did-you-mean", fault = fault, meant = meant)
        }
        None => say!(words, "command-no-sum", name = name, known = known),
    }
}

fn list(viewer: &Viewer) -> String {
    families::sums().map(|sum| format!("{:<16} {}\n", sum.name, sum::title(sum, viewer))).collect()
}

/// What a sum asks, one key a line with its label, range and whether it is needed.
fn asks(sum: &Sum, viewer: &Viewer) -> String {
    let words = viewer.words();
    let mut text = sum::title(sum, viewer) + "\n";
    for (asked, input) in sum.asked().iter().zip(sum.inputs) {
        let label = words.plain(&format!("field-{}", key_part(asked.field.key)));
        let range = match asked.field.kind {
            Kind::Number { low, high, .. }
            | Kind::Numbers { low, high, .. }
            | Kind::Ratio { low, high, .. } => {
                say!(words, "sum-range", low = show::short(low, 3), high = show::short(high, 3))
            }
            Kind::Choice(allowed) | Kind::Choices(allowed) => allowed.join(" | "),
            Kind::Curve => words.plain("sum-curve"),
            _ => String::new(),
        };
        let need = words.plain(if input.required { "sum-needed" } else { "sum-not-needed" });
        text.push_str(&format!("  {:<26} {label}  {range}  ({need})\n", asked.key));
    }
    text
}
