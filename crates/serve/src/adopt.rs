//! Adopting a plan: from then on the book says what was meant, and watch and closing compare with it.

use advice::outcome::Worked;
use axum::response::Response;
use book::limit::HOUSE_OF_PLAN;
use book::{Answer, Body, BookState, Draft, EntryId, HouseId};
use quantity::{Answers, Fault, FigureValue, Problem};
use serde_json::{Value, json};
use uuid::Uuid;

use crate::before::{Before, slot_of_plan};
use crate::call::{Call, see_other};
use crate::draft::PlanDraft;
use crate::pages;
use crate::trouble::Trouble;
use advice::body::{self, kept_in, number_json, raws_of};

/// What a plan must say at least before it is adopted: of what and from which day on.
pub(crate) const NEEDED: [&str; 2] = ["batch.placement", "batch.chicks"];

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

/// Writes the plan into the book, unless something of it does not hold.
pub(crate) async fn adopt(call: Call) -> Result<Response, Trouble> {
    let mut before = Before::load(&call).await?;
    before.problems.extend(lacking(&before));
    if !before.problems.is_empty() {
        return Ok(pages::answers::faulty(&call, &before));
    }
    let (id, today) = (EntryId((call.site.options.new_id)()), call.site.today(&before.open.state));
    let (slot, body) = (before.slot(), body(&before));
    let write = |state: &BookState| {
        let mut draft = Draft::new(id, slot.kind, slot.subject, today, body);
        draft.supersedes = state.current(&slot).map(|record| record.entry().id).into_iter().collect();
        vec![draft]
    };
    call.site.write(&call.access, write).await?;
    Ok(see_other(&before.address()))
}

/// What is missing before a plan can be adopted.
pub(crate) fn lacking(before: &Before) -> Vec<Problem> {
    let is_missing = |key: &&str| {
        let said = before.answers.get(key).is_some();
        !said && !before.problems.iter().any(|problem| problem.key == **key)
    };
    let missing =
        |key: &str| Problem { key: key.to_owned(), typed: String::new(), line: None, fault: Fault::Missing };
    NEEDED.iter().filter(|key| is_missing(key)).map(|key| missing(key)).collect()
}

/// The body of an adopted plan: every answer, usual values included; the figures they gave under `figure.NAME`; what is
/// expected of each day, from day 0 on, under `expected.NAME`; by which rules; and the seed of the batch.
pub(crate) fn body(before: &Before) -> Body {
    let plan = before.plan();
    let mut body: Body =
        plan.answers.iter().map(|(key, given)| (key.to_owned(), body::answer(given))).collect();
    for worked in plan.outcome.figures() {
        body.insert(format!("figure.{}", worked.figure.id), computed(figure_value(worked)));
    }
    for series in plan.series.iter().filter(|series| EXPECTED.contains(&series.id)) {
        let values: Vec<Value> = series.values.iter().copied().map(number_json).collect();
        body.insert(format!("expected.{}", series.id), computed(json!(values)));
    }
    body.insert(RULES.to_owned(), computed(json!(advice::RULES_VERSION)));
    body.insert(SEED.to_owned(), computed(json!(seed(before.id))));
    body.extend(not_known(&plan.answers));
    if before.open.state.has_house(before.draft.house) {
        let house = json!(before.draft.house.0.to_string());
        body.insert(HOUSE_OF_PLAN.to_owned(), computed(house));
    }
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
pub(crate) fn seed(batch: Uuid) -> u64 {
    let (high, low) = batch.as_u64_pair();
    (high ^ low) & ((1 << 53) - 1)
}

/// Whether two adopted plans say the same, however it was typed.
pub(crate) fn says_the_same(one: &Body, other: &Body) -> bool {
    let values = |body: &Body| -> Vec<(String, Value)> {
        body.iter().map(|(key, answer)| (key.clone(), answer.value.clone())).collect()
    };
    values(one) == values(other)
}

/// The draft that an adopted plan came from, as far as the book tells: for a plan that was adopted on another device.
pub(crate) fn draft_of(state: &BookState, id: Uuid) -> Option<PlanDraft> {
    let body = state.answers(&slot_of_plan(id))?;
    let house = body.get(HOUSE_OF_PLAN).and_then(|answer| Uuid::try_parse(answer.value.as_str()?).ok());
    let typed: Body = body
        .iter()
        .filter(|(key, answer)| answer.typed.is_some() && kept_in(key).is_none())
        .map(|(key, answer)| (key.clone(), answer.clone()))
        .collect();
    // Without a house of its own the plan stands in one that nobody has described: its own id names none other.
    Some(PlanDraft::of(HouseId(house.unwrap_or(id)), &raws_of(&typed, "batch")))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_seed_is_the_batchs_own_and_fits_every_reader() {
        let seed_of = |id: u128| seed(Uuid::from_u128(id));
        assert_ne!(seed_of(1), seed_of(2));
        assert_eq!(seed_of(u128::from(u64::MAX) << 64), (1 << 53) - 1);
    }
}
