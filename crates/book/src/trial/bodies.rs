//! Bodies such as forms write them: of every kind, straight from the table of fields, so that a new kind is generated
//! as soon as it stands there.

use std::collections::BTreeMap;
use std::sync::LazyLock;

use quantity::field::{Field, Kind as Takes, Need};
use quantity::{fields, records};
use serde_json::{Value, json};
use uuid::Uuid;

use super::luck::Luck;
use super::make;
use crate::entry::{Answer, Body};
use crate::kind::{KINDS, Kind};
use crate::limit::HOUSE_OF_PLAN;

/// Both tables of fields by section.
static SECTIONS: LazyLock<BTreeMap<&'static str, Vec<&'static Field>>> = LazyLock::new(|| {
    let mut sections: BTreeMap<&'static str, Vec<&'static Field>> = BTreeMap::new();
    for field in records::RECORD_FIELDS.iter().chain(fields::FIELDS) {
        sections.entry(field.section()).or_default().push(field);
    }
    sections
});

/// A body of a kind: what is asked for, and some of what may be left out.
pub(super) fn body(kind: &str, luck: &mut Luck) -> Body {
    if kind == "plan-adopted" {
        return plan(luck);
    }
    let section = Kind::named(kind, KINDS).and_then(|kind| kind.section).unwrap_or_default();
    let mut body = Body::new();
    for field in SECTIONS.get(section).into_iter().flatten() {
        if field.need == Need::Required || luck.chance(20) {
            let value = value(field.kind, luck);
            body.insert(field.name().to_owned(), Answer { typed: None, value });
        }
    }
    body
}

/// What of an adopted plan the book itself reads: the house, and the day the chicks are to come.
fn plan(luck: &mut Luck) -> Body {
    let house = Uuid::from_u128(1 + luck.below(3) as u128);
    let mut body = make::body(HOUSE_OF_PLAN, json!(house));
    if luck.chance(70) {
        body.extend(make::body("batch.placement", json!(a_day(luck))));
    }
    body
}

/// A day some weeks before or after those that entries are about.
fn a_day(luck: &mut Luck) -> String {
    make::day(luck.below(50) as i32 - 25).to_string()
}

fn value(takes: Takes, luck: &mut Luck) -> Value {
    match takes {
        Takes::Number { low, high, whole, .. } => json!(number(low, high, whole, luck)),
        Takes::Ratio { low, high, .. } => json!(number(low, high, true, luck)),
        Takes::Numbers { low, high, at_least, .. } => {
            (0..at_least.max(1) + luck.below(2)).map(|_| number(low, high, true, luck)).collect()
        }
        Takes::Choice(words) => json!(luck.pick(words)),
        Takes::Choices(words) => json!([luck.pick(words)]),
        Takes::Months => json!([1 + luck.below(12)]),
        Takes::Day => json!(a_day(luck)),
        Takes::Schedule { .. } => json!(["42: rest"]),
        Takes::Steps { first, low, .. } => json!([format!("{first}: {low}")]),
        Takes::Curve => json!(["age_d,body_weight_g", "0,42", "42,2400"]),
        Takes::Currency => json!("XTS"),
        // Few words, so that parts of a slot are met again.
        Takes::Words { .. } | Takes::ByDay { .. } | Takes::Text(_) => json!(luck.pick(&["a", "b", "c"])),
    }
}

/// A small number near the least possible, in halves, so that sums are exact in every order.
fn number(low: f64, high: f64, whole: bool, luck: &mut Luck) -> f64 {
    let steps = luck.below(20) as f64;
    let step = if whole { 1.0 } else { 0.5 };
    (low.ceil() + steps * step).min(high)
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Kinds whose answers stand in no section of the table of fields.
    const WITHOUT_SECTION: [&str; 1] = ["plan-adopted"];

    #[test]
    fn every_kind_can_be_written() {
        for kind in KINDS {
            let bodies: Vec<Body> = (0..20).map(|seed| body(kind.name, &mut Luck::new(seed))).collect();
            assert!(bodies.iter().any(|body| !body.is_empty()), "{} has no answers", kind.name);
            assert!(kind.section.is_some() != WITHOUT_SECTION.contains(&kind.name), "{}", kind.name);
        }
    }
}
