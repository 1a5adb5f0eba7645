//! Boxes to write a day down in, on whatever page they stand: today's page, the page of one kind, a week of paper. A box
//! is named by its day, its kind, its part and its field, so that one form can hold many days.

use std::borrow::Cow;
use std::collections::{BTreeMap, BTreeSet};

use advice::diary::Diary;
use advice::record::{self, Ask};
use advice::writing::{Judged, Seen};
use book::{BatchId, Body, BookState, Draft, EntryId, Kind, Record, Slot};
use present::Viewer;
use present::form::{self, Input};
use quantity::{Asked, CivilDay, Problem, Question, Raw, Source};
use uuid::Uuid;

use crate::typed;

/// The last part of the name of the hidden box that carries which entry stood in the boxes when the page was made; empty
/// where there was none.
pub(crate) const SEEN: &str = "seen-entry";

/// The last part of the name of the hidden box that carries an id for the entry to be.
pub(crate) const MADE_ID: &str = "entry-id";

/// The boxes of one kind about one day; of a kind with parts, of one part.
#[derive(Clone, Debug)]
pub(crate) struct Boxes {
    /// The kind.
    pub(crate) kind: &'static Kind,
    /// The day they are about.
    pub(crate) day: CivilDay,
    /// The part that the page has chosen, such as the feed; the field that names it is not asked then.
    pub(crate) part: Option<&'static str>,
}

/// What was typed into some boxes.
#[derive(Clone, Debug)]
pub(crate) struct Filled {
    /// The boxes.
    pub(crate) boxes: Boxes,
    /// What was typed, under the fields' own keys.
    pub(crate) raws: Vec<Raw>,
    /// What their author had before them.
    pub(crate) seen: Seen,
    /// The id that was made for the entry when its page was made: a form sent twice is one entry.
    pub(crate) id: Option<EntryId>,
}

/// What becomes of filled boxes.
#[derive(Default)]
pub(crate) struct Outcome {
    /// What is to be written.
    pub(crate) drafts: Vec<Draft>,
    /// What does not hold, by the name of its box.
    pub(crate) problems: Vec<(String, Problem)>,
    /// What is rare, by the name of its box; it is kept once it was confirmed.
    pub(crate) questions: Vec<(String, Question)>,
    /// What only the book finds unlikely, by the name of its box.
    pub(crate) asks: Vec<(String, Ask)>,
    /// The boxes that change what was written before and need a reason.
    pub(crate) unexplained: Vec<Boxes>,
    /// What somebody else wrote meanwhile in boxes that were empty when their page was made.
    pub(crate) meanwhile: Vec<EntryId>,
}

impl Outcome {
    /// Whether all of it can be written.
    pub(crate) fn holds(&self, is_sure: bool) -> bool {
        let doubtful = !self.questions.is_empty() || !self.asks.is_empty();
        self.problems.is_empty() && self.unexplained.is_empty() && (is_sure || !doubtful)
    }
}

impl Boxes {
    /// The boxes of a kind without parts, or of one whose part is asked.
    pub(crate) fn of(kind: &'static str, day: CivilDay) -> Option<Boxes> {
        Some(Boxes { kind: record::kind(kind)?, day, part: None })
    }

    /// The boxes of one part of a kind.
    pub(crate) fn of_part(kind: &'static str, part: &'static str, day: CivilDay) -> Option<Boxes> {
        Some(Boxes { part: Some(part), ..Boxes::of(kind, day)? })
    }

    /// The boxes and the field of a name, as [`Boxes::name`] makes it.
    fn by_name(name: &str) -> Option<(Boxes, &str)> {
        let mut parts = name.splitn(4, '.');
        let (day, kind, part, field) = (parts.next()?, parts.next()?, parts.next()?, parts.next()?);
        let kind = record::kind(kind).filter(|kind| kind.about.contains(&book::About::Batch))?;
        let whole = Boxes { kind, day: CivilDay::parse(day)?, part: None };
        if part.is_empty() {
            return Some((whole, field));
        }
        let key = whole.part_key()?;
        let asked = record::asked(kind).into_iter().find(|one| one.field.name() == key)?;
        let quantity::Kind::Choice(words) = asked.field.kind else { return None };
        let part = words.iter().find(|word| **word == part)?;
        Some((Boxes { part: Some(part), ..whole }, field))
    }

    /// The name of the field that tells the parts of its kind apart.
    fn part_key(&self) -> Option<&'static str> {
        match self.kind.counting {
            book::Counting::OneASlot(span) => span.part,
            book::Counting::Additive => None,
        }
    }

    /// What is asked in them.
    pub(crate) fn asked(&self) -> Vec<Asked> {
        let chosen = self.part.and(self.part_key());
        record::asked(self.kind).into_iter().filter(|one| Some(one.field.name()) != chosen).collect()
    }

    /// The name of the box of a field.
    pub(crate) fn name(&self, field: &str) -> String {
        format!("{}.{}.{}.{field}", self.day, self.kind.name, self.part.unwrap_or_default())
    }

    /// The inputs, with what was typed or stands in the book.
    pub(crate) fn inputs(&self, raws: &[Raw], problems: &[(String, Problem)], viewer: &Viewer) -> Vec<Input> {
        let asked = self.asked();
        let mine = |key: &str| self.name(key.rsplit('.').next().unwrap_or_default());
        let problems: Vec<Problem> = problems
            .iter()
            .filter(|(name, problem)| *name == mine(&problem.key))
            .map(|(_, problem)| problem.clone())
            .collect();
        let mut inputs = form::inputs(&asked, raws, &problems, viewer);
        for (input, asked) in inputs.iter_mut().zip(&asked) {
            input.key = self.name(asked.field.name());
        }
        inputs
    }

    /// The entry that stands in the place of these boxes.
    pub(crate) fn written<'a>(&self, state: &'a BookState, batch: BatchId) -> Option<&'a Record> {
        let part: Body = self
            .part
            .and_then(|part| Some((self.part_key()?.to_owned(), part)))
            .map(|(key, part)| (key, book::Answer { typed: None, value: part.into() }))
            .into_iter()
            .collect();
        state.current(&record::slot(self.kind, batch, self.day, &part)?)
    }

    /// What an entry says, as it was typed.
    pub(crate) fn raws_of(&self, record: &Record) -> Vec<Raw> {
        record.body().map_or_else(Vec::new, |body| record::raws_of(self.kind, body))
    }
}

/// The boxes that a form has, by the names of what it holds; `None` where it holds what no box is called.
pub(crate) fn named(form: &[(String, String)]) -> Option<Vec<Boxes>> {
    let mut found: BTreeMap<String, Boxes> = BTreeMap::new();
    for (name, text) in form.iter().filter(|(name, _)| name.contains('.')) {
        let (boxes, field) = Boxes::by_name(name)?;
        let of_page = [SEEN, MADE_ID].contains(&field);
        if !of_page && !text.is_empty() && !boxes.asked().iter().any(|one| one.field.name() == field) {
            return None;
        }
        found.entry(boxes.name("")).or_insert(boxes);
    }
    Some(found.into_values().collect())
}

/// A form of one kind whose page was made about one day and that is sent about another: its boxes are those of the day that
/// it is sent about.
pub(crate) fn moved(form: &[(String, String)], kind: &str, day: CivilDay) -> Vec<(String, String)> {
    let renamed = |name: &str| {
        let mut parts = name.splitn(3, '.');
        let is_box = parts.next().and_then(CivilDay::parse).is_some() && parts.next() == Some(kind);
        is_box.then(|| format!("{day}.{kind}.{}", parts.next().unwrap_or_default()))
    };
    form.iter().map(|(name, text)| (renamed(name).unwrap_or_else(|| name.clone()), text.clone())).collect()
}

/// The boxes of a form that hold something, among those that the page shows.
pub(crate) fn read(shown: &[Boxes], form: &[(String, String)]) -> Vec<Filled> {
    let mut filled = Vec::new();
    for boxes in shown {
        let mut raws: Vec<Raw> = Vec::new();
        for one in boxes.asked() {
            let name = boxes.name(one.field.name());
            let typed = form.iter().filter(|(key, _)| *key == name);
            let text: Vec<String> = typed
                .map(|(_, text)| typed::of_field(one.field, text))
                .filter(|text| !text.is_empty())
                .collect();
            if !text.is_empty() {
                raws.push(Raw { key: one.field.key.to_owned(), text, line: None });
            }
        }
        if !raws.is_empty() {
            let (seen, id) = (seen(boxes, form), made_id(boxes, form));
            filled.push(Filled { boxes: boxes.clone(), raws, seen, id });
        }
    }
    filled
}

/// What stood in the boxes when their page was made. A form that does not say is taken to have seen what counts now.
fn seen(boxes: &Boxes, form: &[(String, String)]) -> Seen {
    let name = boxes.name(SEEN);
    match form.iter().find(|(key, _)| *key == name) {
        None => Seen::WhatCounts,
        Some((_, id)) => Uuid::try_parse(id).map_or(Seen::Nothing, |id| Seen::Entry(EntryId(id))),
    }
}

fn made_id(boxes: &Boxes, form: &[(String, String)]) -> Option<EntryId> {
    let name = boxes.name(MADE_ID);
    let (_, id) = form.iter().find(|(key, _)| *key == name)?;
    Uuid::try_parse(id).ok().map(EntryId)
}

/// A draft that leaves what others wrote meanwhile as it is.
fn stand_beside(judged: &mut Judged) {
    judged.needs_reason = false;
    if let Some(draft) = &mut judged.draft {
        draft.supersedes.clear();
        draft.reason = None;
    }
}

impl Filled {
    /// What was typed with the part that the page chose.
    fn whole(&self) -> Vec<Raw> {
        let mut raws = self.raws.clone();
        let section = self.boxes.kind.section.unwrap_or_default();
        if let (Some(part), Some(key)) = (self.boxes.part, self.boxes.part_key()) {
            raws.push(Raw { key: format!("{section}.{key}"), text: vec![part.to_owned()], line: None });
        }
        raws
    }
}

/// Where and by whom boxes are written down.
pub(crate) struct Writing<'a> {
    /// The book.
    pub(crate) state: &'a BookState,
    /// The batch's book up to the last of the days.
    pub(crate) diary: &'a Diary,
    /// The day at the farm.
    pub(crate) today: CivilDay,
    /// Why something that was written before is changed, where somebody said it.
    pub(crate) reason: Option<String>,
    /// A fresh id at each call.
    pub(crate) new_id: fn() -> Uuid,
    /// What becomes of what others wrote in the place of boxes since their page was made.
    pub(crate) meanwhile: Meanwhile,
}

/// What becomes of what others wrote in the place of boxes that were empty when their page was made.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Meanwhile {
    /// Its author is here and is asked: it is put right, with a reason.
    IsPutRight,
    /// Its author has gone on: both stand, and somebody is asked later which of them counts.
    Stands,
}

impl Writing<'_> {
    /// What becomes of filled boxes. What says the same as the book already does is left alone.
    pub(crate) fn outcome(&self, all: &[Filled]) -> Outcome {
        let mut outcome = Outcome::default();
        let mut slots: BTreeSet<Slot> = BTreeSet::new();
        let mut diary = Cow::Borrowed(self.diary);
        for filled in all {
            let before = outcome.drafts.len();
            self.add(filled, &diary, &mut slots, &mut outcome);
            // What stands lower on the form is judged by what stands higher as well.
            if let Some(draft) = outcome.drafts.get(before) {
                diary = Cow::Owned(diary.into_owned().expecting(draft));
            }
        }
        outcome
    }

    fn add(&self, filled: &Filled, diary: &Diary, slots: &mut BTreeSet<Slot>, outcome: &mut Outcome) {
        let boxes = &filled.boxes;
        let id = filled.id.unwrap_or_else(|| EntryId((self.new_id)()));
        let mut judged =
            self.judging(diary, filled.seen).judge(id, boxes.kind, boxes.day, &filled.whole(), Source::Hand);
        if let Some(draft) = &mut judged.draft
            && let Some(known) = self.state.records(id).first()
        {
            if known.body().is_some_and(|body| record::says_the_same(body, &draft.body)) {
                return;
            }
            if self.meanwhile == Meanwhile::IsPutRight {
                draft.id = EntryId((self.new_id)());
            }
        }
        if self.meanwhile == Meanwhile::Stands && judged.meanwhile.take().is_some() {
            stand_beside(&mut judged);
        }
        let name = |key: &str| boxes.name(key.rsplit('.').next().unwrap_or_default());
        outcome.problems.extend(judged.problems.into_iter().map(|problem| (name(&problem.key), problem)));
        outcome.questions.extend(judged.questions.into_iter().map(|one| (name(one.key), one)));
        outcome.asks.extend(judged.asks.into_iter().map(|ask| (name(ask.key), ask)));
        outcome.meanwhile.extend(judged.meanwhile);
        if judged.needs_reason {
            outcome.unexplained.push(boxes.clone());
        }
        if judged.slot.is_none_or(|slot| slots.insert(slot)) {
            outcome.drafts.extend(judged.draft);
        }
    }

    fn judging<'b>(&'b self, diary: &'b Diary, seen: Seen) -> advice::writing::Writing<'b> {
        advice::writing::Writing {
            state: self.state,
            diary,
            today: self.today,
            reason: self.reason.as_deref(),
            seen,
        }
    }
}
