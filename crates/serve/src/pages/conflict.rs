//! What was written apart, both versions side by side, and a form to say which counts.

use std::collections::BTreeMap;

use advice::plan;
use book::{Conflict, Record};
use maud::{Markup, html};
use present::form::answer_text;
use present::words::key_part;
use present::{say, show};
use quantity::Source;

use crate::before::Before;
use crate::day;
use advice::body::raws_of;

/// Asks about each conflict.
pub(crate) fn markup(conflicts: &[Conflict], before: &Before, may_write: bool) -> Markup {
    let words = before.viewer.words();
    html! {
        @for conflict in conflicts {
            section class="conflict" {
                h2 { (say!(words, "conflict-title", what = what(conflict, before))) }
                p { (words.plain("conflict-why")) }
                form method="post" action=(format!("{}/settle", before.address())) {
                    @for head in &conflict.heads { (version(head, conflict, before)) }
                    @if may_write { button { (words.plain("conflict-settle")) } }
                }
            }
        }
    }
}

fn what(conflict: &Conflict, before: &Before) -> String {
    let kind = conflict.slot.as_ref().map_or("", |slot| slot.kind);
    before.viewer.words().plain(&format!("kind-{}", key_part(kind)))
}

fn version(head: &Record, conflict: &Conflict, before: &Before) -> Markup {
    let words = before.viewer.words();
    let id = head.entry().id.0.to_string();
    let chosen = head.entry().id == conflict.winner.entry().id;
    html! {
        div class="version" {
            label class="tick" {
                input type="radio" name="choose" value=(id) checked[chosen] required;
                " " (written(head, before))
            }
            @if head.entry().withdrawn { p { (words.plain("conflict-withdrawn")) } }
            ul { @for line in differences(head, conflict, before) { li { (line) } } }
        }
    }
}

fn written(head: &Record, before: &Before) -> String {
    let hours = day::offset_hours(&before.answers);
    let (day, time) = day::local(head.entry().clock.millis, hours);
    say!(before.viewer.words(), "conflict-written", day = show::day(day, &before.viewer), time = time)
}

/// The answers of one version that not all versions share.
fn differences(head: &Record, conflict: &Conflict, before: &Before) -> Vec<String> {
    let all: Vec<_> = conflict.heads.iter().map(|head| answers(head, before)).collect();
    let shared =
        |key: &str, text: &str| all.iter().all(|version| version.get(key).is_some_and(|other| other == text));
    let words = before.viewer.words();
    let line = |key: &str, value: String| {
        let field = words.plain(&format!("field-{}", key_part(key)));
        say!(words, "conflict-answer", field = field, value = value)
    };
    let own = answers(head, before);
    own.into_iter().filter(|(key, text)| !shared(key, text)).map(|(key, text)| line(key, text)).collect()
}

/// The answers of a version as people read them.
fn answers(head: &Record, before: &Before) -> BTreeMap<&'static str, String> {
    let Some(body) = head.body() else { return BTreeMap::new() };
    let raws = raws_of(body, &head.entry().kind);
    let read = plan::read(&raws, Source::Hand, false).answers;
    let said = read.iter().filter(|(_, given)| given.usual.is_none());
    said.map(|(key, given)| (key, answer_text(key, &given.value, &before.viewer))).collect()
}
