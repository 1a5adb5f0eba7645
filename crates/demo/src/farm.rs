//! The plan files, and what of them stays with the farm from batch to batch.

use advice::body::{KEPT_KINDS, kept_in};
use advice::keep::Said;
use advice::{plan, plan_file};
use book::HouseId;
use quantity::{Answers, CivilDay, Raw, Source};

use crate::batches::BATCHES;
use crate::ids;
use crate::{DemoError, Written};

const LONG: &str = include_str!("../../../demo/mango-ridge.toml");
const LOWER: &str = include_str!("../../../demo/mango-ridge-lower.toml");

/// The day on which the farm was described.
const DESCRIBED: (i16, i8, i8) = (2026, 9, 20);

/// The plan files as read.
pub(crate) struct Files {
    /// The plan of the running batch, in the larger house.
    long: Vec<Raw>,
    /// The plan of the next one, in the smaller house, with what stays with the farm as the larger one says it.
    lower: Vec<Raw>,
}

impl Files {
    pub(crate) fn read() -> Result<Files, DemoError> {
        let (long, lower) = (plan_file::read(LONG)?, plan_file::read(LOWER)?);
        // Saving the next plan tells the farm its prices and equipment: both plans say the same of them.
        let whole = over(&lower, &long);
        let is_of_farm = |raw: &&Raw| matches!(kept_in(&raw.key), Some("prices" | "equipment"));
        let long = over(&whole.iter().filter(is_of_farm).cloned().collect::<Vec<_>>(), &long);
        let stays = |raw: &&Raw| kept_in(&raw.key).is_some_and(|kind| kind != "house");
        let lower = over(&lower, &long.iter().filter(stays).cloned().collect::<Vec<_>>());
        Ok(Files { long, lower })
    }

    /// What is typed for the next batch.
    pub(crate) fn next(&self) -> Vec<Raw> {
        self.lower.clone()
    }

    /// The plan of a batch in the larger house that says some things otherwise, by answers that hold.
    pub(crate) fn plan(&self, otherwise: &str) -> Result<Answers, DemoError> {
        let mut answers = held(&over(&self.long, &plan_file::read(otherwise)?))?;
        // As a page compares the houses of a book.
        answers.set_rows("house", vec![held(&of_kind(&self.lower, "house"))?]);
        Ok(answers)
    }

    /// The farm and its houses, described before the first batch.
    pub(crate) fn drafts(&self) -> Result<Vec<Written>, DemoError> {
        let kinds = KEPT_KINDS.map(|kind| (kind, ids::LONG_HOUSE, &self.long));
        let houses = [("house", ids::LOWER_HOUSE, &self.lower)];
        let mut written = Vec::new();
        for (at, (kind, house, raws)) in kinds.into_iter().chain(houses).enumerate() {
            written.extend(described(kind, house, raws, at)?);
        }
        Ok(written)
    }
}

/// What a kind keeps of a plan, as saving the plan's form writes it; nothing where the plan says nothing of it.
fn described(
    kind: &'static str,
    house: HouseId,
    raws: &[Raw],
    at: usize,
) -> Result<Option<Written>, DemoError> {
    let (year, month, day) = DESCRIBED;
    let today = CivilDay::new(year, month, day).ok_or(DemoError::Unsaid { key: "farm.name" })?;
    let millis = ids::millis(today, 19);
    let answers = held(raws)?;
    let said = Said { house, answers: &answers, problems: &[], was_asked: |_, _| true, today };
    let draft = said.draft(kind, None, ids::entry(BATCHES.len(), at, millis));
    Ok(draft.map(|draft| Written { millis, draft }))
}

/// Raws with others in their place where both answer a field.
fn over(raws: &[Raw], others: &[Raw]) -> Vec<Raw> {
    let is_answered = |raw: &&Raw| !others.iter().any(|other| other.key == raw.key);
    raws.iter().filter(is_answered).chain(others).cloned().collect()
}

fn of_kind(raws: &[Raw], kind: &str) -> Vec<Raw> {
    raws.iter().filter(|raw| kept_in(&raw.key) == Some(kind)).cloned().collect()
}

fn held(raws: &[Raw]) -> Result<Answers, DemoError> {
    let checked = plan::read(raws, Source::Hand, false);
    match checked.problems {
        problems if problems.is_empty() => Ok(checked.answers),
        problems => Err(DemoError::Plan { problems }),
    }
}
