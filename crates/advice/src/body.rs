//! Between answers and the bodies of entries.

use book::{Answer, Body, BookState, Slot, Subject};
use quantity::{Answers, Count, CurvePoint, Field, Given, Raw, Source, Value, fields};
use serde_json::{Number, json};

use crate::families;

/// The kinds of entries that a plan's answers are kept in from batch to batch, in the order they are written.
pub const KEPT_KINDS: [&str; 5] = ["farm", "settings", "prices", "house", "equipment"];

/// The kind that keeps the field of a key; `None` for what belongs to one batch alone.
pub fn kept_in(key: &str) -> Option<&'static str> {
    families::field(key).and_then(fields::kept_in)
}

/// An answer as it is written: the characters typed, and the value in the field's unit.
pub fn answer(given: &Given) -> Answer {
    let typed = given.usual.is_none().then(|| given.typed.clone());
    Answer { typed, value: canonical(&given.value) }
}

/// Answers as the body of an entry of one kind: the keys without their section, usual values left out, since they are
/// the program's and not the grower's.
pub fn of_answers(answers: &Answers) -> Body {
    let told = answers.iter().filter(|(_, given)| given.usual.is_none());
    let short = |key: &str| key.split_once('.').map_or(key, |(_, name)| name).to_owned();
    told.map(|(key, given)| (short(key), answer(given))).collect()
}

/// A value as JSON: numbers in the field's unit, days as YYYY-MM-DD, words as they stand in the table of fields.
pub fn canonical(value: &Value) -> serde_json::Value {
    match value {
        Value::Number(number) => number_json(*number),
        Value::Numbers(numbers) => numbers.iter().copied().map(number_json).collect(),
        Value::Choice(word) => json!(word),
        Value::Choices(words) => json!(words),
        Value::Months(months) => json!(months),
        Value::Day(day) => json!(day.to_string()),
        Value::Schedule(schedule) => schedule.steps().map(step_json).collect(),
        Value::Curve(points) => curve_rows(points).into(),
        Value::Words(words) => json!(words),
        // Never typed and never written: it is read from entries.
        Value::ByDay(days) => days.iter().map(|(day, number)| json!(format!("{day}: {number}"))).collect(),
        Value::Currency(currency) => json!(currency.code()),
        Value::Text(text) => json!(text),
    }
}

/// A curve as somebody would type it, a row an item: the book holds plain values and lists of them, no lists of lists.
fn curve_rows(points: &[CurvePoint]) -> Vec<String> {
    let with_feed = points.iter().all(|point| point.feed_to_date_g.is_some());
    let header = if with_feed { "age_d,body_weight_g,cum_feed_g" } else { "age_d,body_weight_g" };
    let row = |point: &CurvePoint| match point.feed_to_date_g.filter(|_| with_feed) {
        Some(feed) => format!("{},{},{feed}", point.age_d, point.weight_g),
        None => format!("{},{}", point.age_d, point.weight_g),
    };
    std::iter::once(header.to_owned()).chain(points.iter().map(row)).collect()
}

/// A step of a schedule as somebody would type it.
fn step_json((day, count): (i32, Count)) -> serde_json::Value {
    match count {
        Count::Number(number) => json!(format!("{day}: {number}")),
        Count::Rest => json!(format!("{day}: rest")),
    }
}

/// A number, without a fraction where it has none.
pub fn number_json(number: f64) -> serde_json::Value {
    const WHOLE_UP_TO: f64 = 9e15;
    if number.fract() == 0.0 && number.abs() < WHOLE_UP_TO {
        return json!(number as i64);
    }
    Number::from_f64(number).map_or(serde_json::Value::Null, serde_json::Value::Number)
}

/// The answers of a body as somebody would type them. Keys come whole (`house.length_m`) or, from older programs, without
/// the section.
pub fn raws_of(body: &Body, kind: &str) -> Vec<Raw> {
    let whole = |key: &str| if key.contains('.') { key.to_owned() } else { format!("{kind}.{key}") };
    let raw = |(key, answer): (&String, &Answer)| {
        let key = whole(key);
        let field = families::field(&key)?;
        Some(Raw { key, text: texts(field, answer), line: None })
    };
    body.iter().filter_map(raw).collect()
}

/// What was typed, where it still says what it was taken for; else the value. A number typed under a key of another unit
/// (`length_ft`) does not.
fn texts(field: &'static Field, answer: &Answer) -> Vec<String> {
    if let Some(typed) = answer.typed.as_ref().filter(|typed| reads_as(field, typed, &answer.value)) {
        return vec![typed.clone()];
    }
    match &answer.value {
        serde_json::Value::Array(items) => items.iter().map(text).collect(),
        one => vec![text(one)],
    }
}

fn reads_as(field: &'static Field, typed: &str, value: &serde_json::Value) -> bool {
    let raw = Raw { key: field.key.to_owned(), text: vec![typed.to_owned()], line: None };
    let read = quantity::field::check(&[field.asked()], &[raw], Source::Hand, false).answers;
    read.get(field.key).is_some_and(|given| canonical(&given.value) == *value)
}

fn text(value: &serde_json::Value) -> String {
    value.as_str().map_or_else(|| value.to_string(), str::to_owned)
}

/// The answers that count about the farm, of some kinds.
pub fn raws(state: &BookState, kinds: &[&'static str]) -> Vec<Raw> {
    let of = |kind: &&'static str| {
        let body = state.answers(&Slot::of(kind, Subject::Farm));
        body.map_or_else(Vec::new, |body| raws_of(body, kind))
    };
    kinds.iter().flat_map(of).collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn whole_numbers_stay_whole() {
        assert_eq!(number_json(1600.0).to_string(), "1600");
        assert_eq!(number_json(2.44).to_string(), "2.44");
        assert_eq!(number_json(f64::NAN), serde_json::Value::Null);
    }

    #[test]
    fn a_number_typed_under_a_key_of_another_unit_keeps_its_value() {
        let typed = |typed: &str, value| Answer { typed: Some(typed.to_owned()), value };
        let body = Body::from([
            ("length_m".to_owned(), typed("59", json!(17.9832))),
            ("width_m".to_owned(), typed("9,5", json!(9.5))),
            ("eave_height_m".to_owned(), typed("8 ft", json!(2.4384))),
        ]);
        let read: Vec<(String, String)> =
            raws_of(&body, "house").into_iter().map(|raw| (raw.key, raw.text.join("|"))).collect();
        let expected =
            [("house.eave_height_m", "8 ft"), ("house.length_m", "17.9832"), ("house.width_m", "9,5")];
        assert_eq!(read, expected.map(|(key, text)| (key.to_owned(), text.to_owned())));
    }

    #[test]
    fn short_and_whole_keys_are_read_and_unknown_ones_left_out() {
        let answer = |value| Answer { typed: None, value };
        let body = Body::from([
            ("length_m".to_owned(), answer(json!(18))),
            ("house.width_m".to_owned(), answer(json!(9.5))),
            ("house.moat_m".to_owned(), answer(json!(3))),
        ]);
        let read: Vec<(String, Vec<String>)> =
            raws_of(&body, "house").into_iter().map(|raw| (raw.key, raw.text)).collect();
        assert_eq!(
            read,
            [
                ("house.width_m".to_owned(), vec!["9.5".to_owned()]),
                ("house.length_m".to_owned(), vec!["18".to_owned()]),
            ]
        );
    }
}
