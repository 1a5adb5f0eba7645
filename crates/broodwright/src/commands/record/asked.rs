//! What can be written down, and what a kind asks.

use advice::record;
use book::{About, Kind};
use present::words::key_part;
use present::{Viewer, entry, manual};

/// The names of the kinds that are written about a batch.
pub fn names() -> impl Iterator<Item = &'static str> {
    record::kinds().filter(|kind| kind.about.contains(&About::Batch)).map(|kind| kind.name)
}

/// The kinds, a line each.
pub fn kinds(viewer: &Viewer) -> String {
    let line = |name: &str| format!("{name:<18} {}\n", entry::kind_name(name, viewer));
    let plan = format!("{:<18} {}\n", super::PLAN, viewer.words().plain("record-plan"));
    names().map(line).collect::<String>() + &plan
}

/// What a kind asks, a key a line.
pub fn of_kind(kind: &Kind, viewer: &Viewer) -> String {
    let words = viewer.words();
    let line = |asked: &quantity::Asked| {
        let label = words.plain(&format!("field-{}", key_part(asked.field.key)));
        let need = match asked.need {
            quantity::Need::Required => words.plain("sum-needed"),
            _ => words.plain("sum-not-needed"),
        };
        let range = manual::range(asked, viewer).replace('`', "");
        format!("  {:<20} {label}  {range}  ({need})\n", asked.key)
    };
    let asked = record::asked_short(kind);
    format!("{}\n{}", entry::kind_name(kind.name, viewer), asked.iter().map(line).collect::<String>())
}
