//! What an adopted plan says from then on: watch and closing compare with it.

use book::limit::HOUSE_OF_PLAN;
use book::{Answer, BatchId, Body, HouseId};
use quantity::{Answers, FigureValue};
use serde_json::{Value, json};

use crate::RULES_VERSION;
use crate::body::{self, number_json};
use crate::outcome::Worked;
use crate::plan::Plan;

/// The key of the fields that were said to be not known.
const NOT_KNOWN: &str = "not_known";
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

/// The body of an adopted plan: every answer, usual values included; the figures they gave under `figure.NAME`; what is
/// expected of each day, from day 0 on, under `expected.NAME`; by which rules; and the seed of the batch.
///
/// - `house`: the house it stands in, where the book describes it
pub fn body(plan: &Plan, batch: BatchId, house: Option<HouseId>) -> Body {
    let mut body: Body =
        plan.answers.iter().map(|(key, given)| (key.to_owned(), body::answer(given))).collect();
    for worked in plan.outcome.figures() {
        body.insert(format!("figure.{}", worked.figure.id), computed(figure_value(worked)));
    }
    for series in plan.series.iter().filter(|series| EXPECTED.contains(&series.id)) {
        let values: Vec<Value> = series.values.iter().copied().map(number_json).collect();
        body.insert(format!("expected.{}", series.id), computed(json!(values)));
    }
    body.insert(RULES.to_owned(), computed(json!(RULES_VERSION)));
    body.insert(SEED.to_owned(), computed(json!(seed(batch))));
    body.extend(not_known(&plan.answers));
    body.extend(house.map(|house| (HOUSE_OF_PLAN.to_owned(), computed(json!(house.0.to_string())))));
    body
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

/// The seed of all that is drawn at random for a batch: the two halves of its id, exclusive-or, of which the lower 53 bits
/// are taken, so that every reader of JSON reads the same number.
pub fn seed(batch: BatchId) -> u64 {
    let (high, low) = batch.0.as_u64_pair();
    (high ^ low) & ((1 << 53) - 1)
}

#[cfg(test)]
mod tests {
    use uuid::Uuid;

    use super::*;

    #[test]
    fn a_seed_is_the_batchs_own_and_fits_every_reader() {
        let seed_of = |id: u128| seed(BatchId(Uuid::from_u128(id)));
        assert_ne!(seed_of(1), seed_of(2));
        assert_eq!(seed_of(u128::from(u64::MAX) << 64), (1 << 53) - 1);
    }
}
