//! What is kept with the farm from batch to batch: the answers of a plan that changed what the book knows.

use book::{Body, BookState, Draft, EntryId, HouseId, Record, Slot, Subject};
use quantity::{Answers, CivilDay, Problem, Raw, field};

use crate::body::{answer, kept_in};
use crate::families;
use crate::record::says_the_same;

/// Where the answers of a kind stand for a plan in this house.
pub fn slot_of(kind: &'static str, house: HouseId) -> Slot {
    let subject = if kind == "house" { Subject::House(house) } else { Subject::Farm };
    Slot::of(kind, subject)
}

/// The answers that count of a kind, for a plan in this house.
pub fn kept(state: &BookState, kind: &'static str, house: HouseId) -> Option<Body> {
    state.answers(&slot_of(kind, house)).cloned()
}

/// A plan's answers as they were sent and checked.
#[derive(Clone, Copy)]
pub struct Said<'a> {
    /// The house it is about.
    pub house: HouseId,
    /// The answers that hold.
    pub answers: &'a Answers,
    /// What does not hold.
    pub problems: &'a [Problem],
    /// Whether a field was asked about: what was asked and not answered is blank now, what was not asked stays.
    pub was_asked: fn(&Answers, &str) -> bool,
    /// The day at the farm.
    pub today: CivilDay,
}

impl Said<'_> {
    /// The entry that keeps the answers of a kind; `None` where nothing changed.
    ///
    /// - `seen`: the entry that the author had before them
    pub fn draft(&self, kind: &'static str, seen: Option<&Record>, id: EntryId) -> Option<Draft> {
        let known = seen.and_then(Record::body).cloned().unwrap_or_default();
        let body = self.body(kind, &known);
        if says_the_same(&known, &body) {
            return None;
        }
        let mut draft = Draft::new(id, kind, slot_of(kind, self.house).subject, self.today, body);
        draft.supersedes = seen.map(|record| record.entry().id).into_iter().collect();
        Some(draft)
    }

    /// The answers of a kind: as sent where they hold, as known where what was sent does not. What was not asked is
    /// carried on.
    fn body(&self, kind: &str, known: &Body) -> Body {
        let is_asked = |key: &str| kept_in(key) == Some(kind) && (self.was_asked)(self.answers, key);
        let mut body: Body = known
            .iter()
            .filter(|(key, _)| !is_asked(&whole(kind, key)) || self.is_faulty(&whole(kind, key)))
            .map(|(key, answer)| (key.clone(), answer.clone()))
            .collect();
        for (key, given) in self.answers.iter() {
            if kept_in(key) == Some(kind) && given.usual.is_none() && !self.is_faulty(key) {
                body.insert(key.to_owned(), answer(given));
            }
        }
        body
    }

    /// Whether what was typed for a field does not hold.
    fn is_faulty(&self, key: &str) -> bool {
        is_faulty(key, self.problems)
    }

    /// What of some raw answers is not in the book after this: what belongs to the batch alone, and what does not hold.
    pub fn left(&self, raws: Vec<Raw>) -> Vec<Raw> {
        let asked = families::plan_fields();
        let is_in_book = |raw: &Raw| {
            let Some((field, _)) = field::find(&asked, &raw.key) else { return false };
            let known = self.answers.get(field.key).is_some_and(|given| given.usual.is_none());
            kept_in(field.key).is_some() && known && !self.is_faulty(field.key)
        };
        raws.into_iter().filter(|raw| !is_in_book(raw)).collect()
    }
}

/// Whether a problem stands at a field, under whatever unit it was typed.
fn is_faulty(key: &str, problems: &[Problem]) -> bool {
    let asked = families::plan_fields();
    let of = |problem: &Problem| field::find(&asked, &problem.key).map(|(field, _)| field.key);
    problems.iter().any(|problem| of(problem) == Some(key))
}

fn whole(kind: &str, key: &str) -> String {
    if key.contains('.') { key.to_owned() } else { format!("{kind}.{key}") }
}
