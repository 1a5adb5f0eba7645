//! `record plan FILE`: adopts a plan file as a batch, and keeps with the farm what stays with it.

use std::path::Path;

use advice::adoption::{self, OfFile};
use advice::body::KEPT_KINDS;
use advice::keep::{self, Said as Kept};
use advice::{plan, plan_file};
use book::{BatchId, Body, BookState, Draft, HouseId, Record, Slot, Subject};
use present::{Viewer, fault, say};
use quantity::{Answers, CivilDay, Raw, Source};
use uuid::Uuid;

use super::{Said, put_down};
use crate::failure::Failure;
use crate::farm_book::{self, FarmBook, new_entry};
use crate::input;

/// Adopts the plan of a file.
pub async fn adopt(said: &Said<'_>) -> Result<(), Failure> {
    let words = said.words();
    let file = said.inputs().next().ok_or_else(|| Failure::input(words.plain("record-plan-file")))?;
    let raws = read(Path::new(file), said)?;
    let day = farm_book::day(said.given, "day", words)?;
    let book = FarmBook::to_write(said.given, true, said.locale).await?;
    let found = Found::of(&book, &raws, said)?;
    let kept: Vec<(&'static str, Body)> = KEPT_KINDS
        .iter()
        .filter_map(|kind| Some((*kind, keep::kept(book.state(), kind, found.house)?)))
        .collect();
    let read = adoption::of_file(&raws, &kept);
    refuse(&read, said, &Viewer { locale: said.locale, ..Viewer::plain() }, file)?;
    ask_about_another_farm(&read, book.state(), found.house, said)?;
    let (drafts, unchanged) = found.drafts(&book, read, day, said)?;
    put_down(said, &book, drafts, unchanged).await
}

fn read(file: &Path, said: &Said) -> Result<Vec<Raw>, Failure> {
    let words = said.words();
    let text = input::text(file, words)?;
    plan_file::read(&text).map_err(|error| {
        let (file, fault) = (file.display().to_string(), fault::file(&error, words));
        Failure::input(say!(words, "command-in-file", file = file, fault = fault))
    })
}

/// Says what does not hold, and asks about what is rare.
fn refuse(read: &OfFile, said: &Said, viewer: &Viewer, file: &str) -> Result<(), Failure> {
    let whole = &read.whole;
    let words = said.words();
    let lacking = adoption::lacking(&whole.answers, &whole.problems);
    let problems = whole.problems.iter().chain(&lacking).map(|problem| {
        say!(words, "command-in-file", file = file, fault = fault::with_place(problem, viewer))
    });
    let mut all: Vec<String> = problems.collect();
    if all.is_empty() && !said.is_sure() && !whole.questions.is_empty() {
        all.extend(whole.questions.iter().map(|question| fault::question(question, viewer)));
        all.push(words.plain("record-sure"));
    }
    if all.is_empty() { Ok(()) } else { Err(Failure::BadInput(all)) }
}

/// What stays with the farm would become that of another farm: asked about, since one book is of one farm.
fn ask_about_another_farm(
    read: &OfFile,
    state: &BookState,
    house: HouseId,
    said: &Said,
) -> Result<(), Failure> {
    let Some(told) = read.said.answers.text("farm.name").filter(|_| !said.is_sure()) else { return Ok(()) };
    let farm = keep::kept(state, "farm", house);
    let known = farm.as_ref().and_then(|body| body.get("farm.name").or_else(|| body.get("name")));
    match known.and_then(|answer| answer.value.as_str()).filter(|known| *known != told) {
        Some(known) => {
            let words = said.words();
            let asked = say!(words, "record-plan-of-another-farm", known = known, told = told);
            Err(Failure::BadInput(vec![asked, words.plain("record-sure")]))
        }
        None => Ok(()),
    }
}

/// The batch and the house that a plan is for.
struct Found {
    batch: BatchId,
    house: HouseId,
}

impl Found {
    fn of(book: &FarmBook, raws: &[Raw], said: &Said) -> Result<Found, Failure> {
        let text = |key: &str| {
            let raw = raws.iter().find(|raw| raw.key == key);
            raw.and_then(|raw| raw.text.first()).map(|text| text.trim())
        };
        let state = book.state();
        let batch = match said.text("batch") {
            Some(named) => Some(book.batch(Some(named))?),
            None => batch_of(state, text("batch.name"), text("batch.placement")),
        };
        let house = batch.and_then(|batch| house_of_batch(state, batch));
        // A file may tell several houses: the name that counts is that of the one its batch stands in.
        let told = plan::read(raws, Source::File, false).answers;
        let house = house.or_else(|| house_of(state, told.text("house.name")));
        Ok(Found {
            batch: batch.unwrap_or_else(|| BatchId(Uuid::now_v7())),
            house: house.unwrap_or_else(|| HouseId(Uuid::now_v7())),
        })
    }

    fn slot(&self) -> Slot {
        Slot::of("plan-adopted", Subject::Batch(self.batch))
    }

    /// What is written: what changed of what stays with the farm, and the plan, unless it says the same.
    fn drafts(
        &self,
        book: &FarmBook,
        read: OfFile,
        day: Option<CivilDay>,
        said: &Said,
    ) -> Result<(Vec<Draft>, usize), Failure> {
        let state = book.state();
        let plan = plan::work_out(read.whole.answers);
        let standing = state.current(&self.slot());
        let day = day.unwrap_or_else(|| adoption::day(&plan, book.today(), standing.is_none()));
        let reason = said.reason().map(str::to_owned);
        let kept =
            Kept { house: self.house, answers: &read.said.answers, problems: &[], was_asked, today: day };
        let draft = |kind: &&'static str| {
            kept.draft(kind, state.current(&keep::slot_of(kind, self.house)), new_entry())
        };
        let mut drafts: Vec<Draft> = KEPT_KINDS.iter().filter_map(draft).collect();
        let has_house = state.has_house(self.house) || drafts.iter().any(|draft| draft.kind == "house");
        let body = adoption::body(&plan, self.batch, has_house.then_some(self.house));
        let is_same =
            standing.and_then(Record::body).is_some_and(|known| advice::record::says_the_same(known, &body));
        if !is_same {
            let mut draft = Draft::new(new_entry(), "plan-adopted", Subject::Batch(self.batch), day, body);
            draft.supersedes = standing.map(|record| record.entry().id).into_iter().collect();
            drafts.push(draft);
        }
        let changes_what_stands = drafts.iter().any(|draft| is_of_another_day(state, draft, book));
        if changes_what_stands && reason.is_none() {
            return Err(Failure::input(said.words().plain("record-plan-reason")));
        }
        for draft in drafts.iter_mut().filter(|draft| !draft.supersedes.is_empty()) {
            draft.reason.clone_from(&reason);
        }
        Ok((drafts, usize::from(is_same)))
    }
}

/// Whether a draft changes what was written on another day than today.
fn is_of_another_day(state: &BookState, draft: &Draft, book: &FarmBook) -> bool {
    let changed = draft.supersedes.iter().flat_map(|id| state.records(*id));
    changed.into_iter().any(|record| book.local(record.entry().clock.millis).0 != book.today())
}

/// A file asks about nothing but what it speaks of.
fn was_asked(answers: &Answers, key: &str) -> bool {
    adoption::speaks_of(answers, key)
}

/// The batch that carries a plan of this name; of a plan without one, a batch without one with chicks on the same day.
pub(in super::super) fn batch_of(
    state: &BookState,
    name: Option<&str>,
    placement: Option<&str>,
) -> Option<BatchId> {
    let all = advice::batches::all(state);
    let is_meant = |listed: &&advice::batches::Listed| match name {
        Some(name) => listed.name.as_deref() == Some(name),
        None => {
            let planned = listed.planned.map(|day| day.to_string());
            listed.name.is_none() && planned.is_some() && planned.as_deref() == placement
        }
    };
    all.iter().find(is_meant).map(|listed| listed.id)
}

/// The house that an adopted plan stands in.
fn house_of_batch(state: &BookState, batch: BatchId) -> Option<HouseId> {
    let plan = state.answers(&Slot::of("plan-adopted", Subject::Batch(batch)))?;
    let house = plan.get(book::limit::HOUSE_OF_PLAN)?.value.as_str()?;
    Uuid::try_parse(house).ok().map(HouseId)
}

/// The house of a name; the only house where the file gives it none.
pub(in super::super) fn house_of(state: &BookState, name: Option<&str>) -> Option<HouseId> {
    let houses = state.houses();
    let name_of = |house: &HouseId| {
        let body = state.answers(&Slot::of("house", Subject::House(*house)))?;
        body.get("house.name").or_else(|| body.get("name"))?.value.as_str().map(str::to_owned)
    };
    match (name, houses.as_slice()) {
        (Some(name), _) => houses.iter().find(|house| name_of(house).as_deref() == Some(name)).copied(),
        (None, [only]) => Some(*only),
        (None, _) => None,
    }
}
