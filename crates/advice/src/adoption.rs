//! Adopting a plan: from then on the book says what was meant, and watch and closing compare with it.

use book::limit::HOUSE_OF_PLAN;
use book::{Answer, BatchId, Body, HouseId};
use quantity::{Answers, CivilDay, Fault, FigureValue, Given, Problem, Raw, Source};
use serde_json::{Value, json};

use crate::body::{answer, number_json, raws_of};
use crate::outcome::Worked;
use crate::plan::{self, Plan};

/// What a plan must say at least before it is adopted: of what and from which day on.
pub const NEEDED: [&str; 2] = ["batch.placement", "batch.chicks"];

/// The key of the fields that were said to be not known.
const NOT_KNOWN: &str = "not_known";
/// What the key of a figure begins with.
pub const FIGURE: &str = "figure.";
/// What the key of what is expected day by day begins with.
pub(crate) const EXPECTED_OF: &str = "expected.";
/// The key of the version of the rules.
const RULES: &str = "rules_version";
/// The key of the seed of what is drawn at random for this batch.
const SEED: &str = "seed";

/// What later days are held against, by day of age.
const EXPECTED: [&str; 9] = [
    "batch.birds_alive",
    "batch.losses_by_day",
    "growth.weight",
    "feed.by_day",
    "feed.per_bird_by_day",
    "water.by_day",
    "brooding.temperature_by_day",
    "light.hours_by_day",
    "space.density_by_day",
];

/// What is missing before a plan can be adopted, beside what is wrong with it already.
pub fn lacking(answers: &Answers, problems: &[Problem]) -> Vec<Problem> {
    let is_missing = |key: &&str| {
        let said = answers.get(key).is_some();
        !said && !problems.iter().any(|problem| problem.key == **key)
    };
    let missing =
        |key: &str| Problem { key: key.to_owned(), typed: String::new(), line: None, fault: Fault::Missing };
    NEEDED.iter().filter(|key| is_missing(key)).map(|key| missing(key)).collect()
}

/// The body of an adopted plan: every answer, usual values included; the figures they gave under `figure.NAME`; what is
/// expected of each day, from day 0 on, under `expected.NAME`; by which rules; and the seed of the batch.
///
/// - `house`: the house it stands in, where that is described in the book
pub fn body(plan: &Plan, batch: BatchId, house: Option<HouseId>) -> Body {
    let mut body: Body = plan.answers.iter().map(|(key, given)| (key.to_owned(), answer(given))).collect();
    for worked in plan.outcome.figures() {
        body.insert(format!("{FIGURE}{}", worked.figure.id), computed(figure_value(worked)));
    }
    for series in plan.series.iter().filter(|series| EXPECTED.contains(&series.id)) {
        let values: Vec<Value> = series.values.iter().copied().map(number_json).collect();
        body.insert(format!("{EXPECTED_OF}{}", series.id), computed(json!(values)));
    }
    body.insert(RULES.to_owned(), computed(json!(crate::RULES_VERSION)));
    body.insert(SEED.to_owned(), computed(json!(seed(batch))));
    body.extend(not_known(&plan.answers));
    body.extend(house.map(|house| (HOUSE_OF_PLAN.to_owned(), computed(json!(house.0.to_string())))));
    body
}

/// Whether two bodies of a plan come to other figures, or expect something else of a day.
pub fn moves_a_figure(one: &Body, other: &Body) -> bool {
    let is_figure = |(key, _): &(&String, &Answer)| key.starts_with(FIGURE) || key.starts_with(EXPECTED_OF);
    let value = |(key, answer): (&String, &Answer)| (key.clone(), answer.value.clone());
    let figures =
        |body: &Body| -> Vec<(String, Value)> { body.iter().filter(is_figure).map(value).collect() };
    figures(one) != figures(other)
}

/// Whether two bodies of a plan were worked out by different rules.
pub fn moves_a_rule(one: &Body, other: &Body) -> bool {
    let rules = |body: &Body| body.get(RULES).map(|answer| answer.value.clone());
    rules(one) != rules(other)
}

fn computed(value: Value) -> Answer {
    Answer { typed: None, value }
}

fn figure_value(worked: &Worked) -> Value {
    match worked.figure.value {
        FigureValue::Number(number) => number_json(number),
        FigureValue::Day(day) => json!(day.to_string()),
    }
}

fn not_known(answers: &Answers) -> Option<(String, Answer)> {
    let keys = answers.not_known();
    (!keys.is_empty()).then(|| (NOT_KNOWN.to_owned(), computed(json!(keys))))
}

/// The day that an adoption is about. A plan that is first adopted when the chicks are there already is what was meant from
/// their first day on; a plan that is adopted again leaves the days before as they were.
pub fn day(plan: &Plan, today: CivilDay, is_first: bool) -> CivilDay {
    let placement = plan.answers.day("batch.placement").filter(|_| is_first);
    placement.map_or(today, |placement| placement.min(today))
}

/// The seed of all that is drawn at random for a batch: the two halves of its id, exclusive-or, of which the lower 53 bits
/// are taken, so that every reader of JSON reads the same number.
pub fn seed(batch: BatchId) -> u64 {
    let (high, low) = batch.0.as_u64_pair();
    (high ^ low) & ((1 << 53) - 1)
}

/// A plan file beside what the book keeps.
#[derive(Clone, Debug, PartialEq)]
pub struct OfFile {
    /// What the file says, alone: what of it stays with the farm is kept from it.
    pub said: quantity::Checked,
    /// The whole plan: the file, and where it says nothing what the book keeps.
    pub whole: quantity::Checked,
}

/// Reads a plan file to be adopted. What it says nothing of is taken from what the book keeps.
///
/// - `kept`: the bodies of the kinds that stay with the farm, by kind
pub fn of_file(raws: &[Raw], kept: &[(&'static str, Body)]) -> OfFile {
    let said = plan::read(raws, Source::File, false);
    let from_book: Vec<(&'static str, Given, Raw)> = kept
        .iter()
        .flat_map(|(kind, body)| known(kind, body))
        .filter(|(key, ..)| !speaks_of(&said.answers, key))
        .collect();
    let all: Vec<Raw> = raws.iter().cloned().chain(from_book.iter().map(|(.., raw)| raw.clone())).collect();
    let mut whole = plan::read(&all, Source::File, true);
    for (key, given, _) in from_book {
        if let Some(field) = crate::families::field(key) {
            whole.answers.set(field, given);
        }
    }
    OfFile { said, whole }
}

/// Whether some answers say something of a field, be it that it is not known.
pub fn speaks_of(answers: &Answers, key: &str) -> bool {
    answers.get(key).is_some_and(|given| given.usual.is_none()) || answers.not_known().contains(&key)
}

/// The answers of a kept body: as given, and as a file would write them.
fn known(kind: &'static str, body: &Body) -> Vec<(&'static str, Given, Raw)> {
    let read = plan::read(&raws_of(body, kind), Source::Hand, false).answers;
    let own = read.iter().filter(|(_, given)| given.usual.is_none());
    own.filter_map(|(key, given)| {
        let as_value = Answer { typed: None, value: crate::body::canonical(&given.value) };
        let raw = raws_of(&Body::from([(key.to_owned(), as_value)]), kind).pop()?;
        Some((key, given.clone(), raw))
    })
    .collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::plan_file;
    use crate::record::says_the_same;

    const FILE: &str = include_str!("../../../demo/mango-ridge.toml");

    fn batch(id: u128) -> BatchId {
        // The id of a batch is all zeros but for what the test needs.
        serde_json::from_value(json!(format!("00000000-0000-0000-0000-{id:012x}"))).unwrap()
    }

    #[test]
    fn a_seed_is_the_batchs_own_and_fits_every_reader() {
        assert_ne!(seed(batch(1)), seed(batch(2)));
        let high: BatchId = serde_json::from_value(json!("ffffffff-ffff-ffff-0000-000000000000")).unwrap();
        assert_eq!(seed(high), (1 << 53) - 1);
    }

    #[test]
    fn what_a_file_says_nothing_of_is_taken_from_the_book() {
        let raws = plan_file::read(FILE).unwrap();
        let (prices, rest): (Vec<Raw>, Vec<Raw>) =
            raws.iter().cloned().partition(|raw| raw.key.starts_with("prices."));
        let kept = plan::read(&prices, Source::Hand, false).answers;
        let kept: Body = kept
            .iter()
            .filter(|(key, given)| key.starts_with("prices.") && given.usual.is_none())
            .map(|(key, given)| (key.to_owned(), answer(given)))
            .collect();
        assert!(!kept.is_empty());
        let alone = of_file(&raws, &[]);
        let together = of_file(&rest, &[("prices", kept)]);
        assert_eq!(alone.whole.problems, []);
        assert_eq!(together.whole.problems, []);
        let whole = |of_file: OfFile| body(&plan::work_out(of_file.whole.answers), batch(1), None);
        let (alone, together) = (whole(alone), whole(together));
        assert!(says_the_same(&alone, &together));
        assert!(!says_the_same(&alone, &whole(of_file(&rest, &[]))), "the prices count");
    }

    #[test]
    fn a_plan_of_nothing_cannot_be_adopted() {
        let keys: Vec<String> =
            lacking(&Answers::default(), &[]).into_iter().map(|problem| problem.key).collect();
        assert_eq!(keys, NEEDED);
    }
}
