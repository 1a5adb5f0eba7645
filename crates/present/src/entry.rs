//! What stands in an entry of the book, in words.

use advice::body::raws_of;
use advice::{plan, record};
use book::{Body, Kind};
use quantity::{Given, Source, Value, field};

use crate::form::answer_text;
use crate::say;
use crate::viewer::Viewer;
use crate::words::key_part;

/// One answer of an entry.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Line {
    /// The key of its field.
    pub key: &'static str,
    /// What was asked.
    pub label: String,
    /// What was answered; with what was typed where that is another unit.
    pub text: String,
}

/// The name of a kind. A kind of a newer program keeps the name it has.
pub fn kind_name(kind: &str, viewer: &Viewer) -> String {
    let key = format!("kind-{}", key_part(kind));
    if viewer.words().knows(&key) { viewer.words().plain(&key) } else { kind.to_owned() }
}

/// The answers of a body, in the order in which they are asked. What the program worked out itself is left out.
pub fn lines(kind: &str, body: &Body, viewer: &Viewer) -> Vec<Line> {
    match record::kind(kind) {
        Some(kind) => lines_of_record(kind, body, viewer),
        None => {
            let read = plan::read(&raws_of(body, kind), Source::Hand, false).answers;
            let own = read.iter().filter(|(_, given)| given.usual.is_none());
            own.map(|(key, given)| line(key, given, viewer)).collect()
        }
    }
}

fn lines_of_record(kind: &Kind, body: &Body, viewer: &Viewer) -> Vec<Line> {
    let asked = record::asked(kind);
    let read = field::check(&asked, &record::raws_of(kind, body), Source::Hand, false).answers;
    let known = asked.iter().filter_map(|one| Some((one.field.key, read.get(one.field.key)?)));
    known.map(|(key, given)| line(key, given, viewer)).collect()
}

fn line(key: &'static str, given: &Given, viewer: &Viewer) -> Line {
    let words = viewer.words();
    let shown = answer_text(key, &given.value, viewer);
    let text = match &given.value {
        // 2.08 kg where grams are asked: said once, so that a slip of the unit is seen.
        Value::Number(_) | Value::Numbers(_) if has_another_unit(&given.typed, &shown) => {
            say!(words, "entry-typed", shown = shown, typed = &given.typed)
        }
        _ => shown,
    };
    Line { key, label: words.plain(&format!("field-{}", key_part(key))), text }
}

/// Whether letters were typed that are not shown.
fn has_another_unit(typed: &str, shown: &str) -> bool {
    let letters = |text: &str| -> String { text.chars().filter(|c| c.is_alphabetic()).collect() };
    let typed = letters(typed);
    !typed.is_empty() && typed != letters(shown)
}

#[cfg(test)]
mod tests {
    use super::*;
    use quantity::Raw;

    fn said(kind: &str, typed: &[(&str, &str)]) -> Vec<String> {
        let kind = record::kind(kind).unwrap();
        let raw = |(key, text): &(&str, &str)| Raw {
            key: (*key).to_owned(),
            text: vec![(*text).to_owned()],
            line: None,
        };
        let raws: Vec<Raw> = typed.iter().map(raw).collect();
        let checked = record::check(kind, &raws, Source::Hand);
        assert_eq!(checked.problems, []);
        let body = advice::body::of_answers(&checked.answers);
        let lines = lines(kind.name, &body, &Viewer::plain());
        lines.into_iter().map(|line| format!("{}: {}", line.label, line.text)).collect()
    }

    #[test]
    fn answers_come_in_the_order_they_are_asked() {
        assert_eq!(
            said("deaths", &[("culled", "1"), ("dead", "3")]),
            ["Found dead: 3 birds", "Culled by hand: 1 bird"]
        );
    }

    #[test]
    fn another_unit_is_said_once() {
        let weighed = said("weighing", &[("weights_g", "2.08 kg")]);
        assert_eq!(weighed.len(), 1);
        assert!(weighed[0].contains("2\u{a0}080 g") && weighed[0].contains("2.08 kg"), "{weighed:?}");
        let plain = said("weighing", &[("weights_g", "2080")]);
        assert!(!plain[0].contains("typed"), "{plain:?}");
    }

    #[test]
    fn a_kind_of_a_newer_program_keeps_its_name() {
        assert_eq!(kind_name("deaths", &Viewer::plain()), "deaths and culls");
        assert_eq!(kind_name("moon-phase", &Viewer::plain()), "moon-phase");
    }
}
