//! The plan files, and what of them stays with the farm from batch to batch.

use advice::body::{self, KEPT_KINDS, kept_in};
use advice::{plan, plan_file};
use book::{Body, Draft, HouseId, Subject};
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
        let prices = over(&lower, &long);
        let is_price = |raw: &&Raw| kept_in(&raw.key) == Some("prices");
        let long = over(&prices.iter().filter(is_price).cloned().collect::<Vec<_>>(), &long);
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
        let (year, month, day) = DESCRIBED;
        let day = CivilDay::new(year, month, day).ok_or(DemoError::Unsaid { key: "farm.name" })?;
        let mut kept = Vec::new();
        for kind in KEPT_KINDS {
            kept.push((kind, ids::LONG_HOUSE, body_of(&self.long, kind)?));
        }
        kept.push(("house", ids::LOWER_HOUSE, body_of(&self.lower, "house")?));
        kept.retain(|(_, _, body)| !body.is_empty());
        let millis = ids::millis(day, 19);
        let written = |(at, (kind, house, body)): (usize, (&str, HouseId, Body))| {
            let subject = if kind == "house" { Subject::House(house) } else { Subject::Farm };
            let id = ids::entry(BATCHES.len(), at, millis);
            Written { millis, draft: Draft::new(id, kind, subject, day, body) }
        };
        Ok(kept.into_iter().enumerate().map(written).collect())
    }
}

/// Raws with others in their place where both answer a field.
fn over(raws: &[Raw], others: &[Raw]) -> Vec<Raw> {
    let is_answered = |raw: &&Raw| !others.iter().any(|other| other.key == raw.key);
    raws.iter().filter(is_answered).chain(others).cloned().collect()
}

fn of_kind(raws: &[Raw], kind: &str) -> Vec<Raw> {
    raws.iter().filter(|raw| kept_in(&raw.key) == Some(kind)).cloned().collect()
}

/// The answers that a kind keeps, as the form of a plan writes them.
fn body_of(raws: &[Raw], kind: &str) -> Result<Body, DemoError> {
    let answers = held(&of_kind(raws, kind))?;
    let told = answers.iter().filter(|(key, given)| given.usual.is_none() && kept_in(key) == Some(kind));
    Ok(told.map(|(key, given)| (key.to_owned(), body::answer(given))).collect())
}

fn held(raws: &[Raw]) -> Result<Answers, DemoError> {
    let checked = plan::read(raws, Source::Hand, false);
    match checked.problems {
        problems if problems.is_empty() => Ok(checked.answers),
        problems => Err(DemoError::Plan { problems }),
    }
}
