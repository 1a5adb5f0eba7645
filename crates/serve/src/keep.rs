//! What saving a form writes into the book: the answers that are kept from batch to batch, where they changed.

use advice::families;
use book::{Answer, Body, BookState, Draft, EntryId, HouseId};
use quantity::{Answers, CivilDay, Problem, Raw, field};
use uuid::Uuid;

use crate::before::{is_shown, slot_of};
use crate::call::Call;
use crate::seen;
use advice::body::{self, KEPT_KINDS, kept_in};
use present::Viewer;

/// A form as it was sent and checked.
pub(crate) struct Saved<'a> {
    /// The call that sent it.
    pub(crate) call: &'a Call,
    /// The house it is about.
    pub(crate) house: HouseId,
    /// The answers that hold.
    pub(crate) answers: &'a Answers,
    /// What does not hold.
    pub(crate) problems: &'a [Problem],
    /// Who looks.
    pub(crate) viewer: &'a Viewer,
    /// The day at the farm.
    pub(crate) today: CivilDay,
}

impl Saved<'_> {
    /// The entries it makes, given the book.
    pub(crate) fn drafts(&self, state: &BookState, new_id: fn() -> Uuid) -> Vec<Draft> {
        let shown = KEPT_KINDS.iter().filter(|kind| is_shown(Some(**kind), self.viewer));
        shown.filter_map(|kind| self.draft(state, kind, EntryId(new_id()))).collect()
    }

    fn draft(&self, state: &BookState, kind: &'static str, id: EntryId) -> Option<Draft> {
        let seen = seen::by_author(self.call, state, kind, self.house);
        let known = seen.and_then(|record| record.body()).cloned().unwrap_or_default();
        let body = self.body(kind, &known);
        if same_values(&known, &body) {
            return None;
        }
        let subject = slot_of(kind, self.house).subject;
        let mut draft = Draft::new(id, kind, subject, self.today, body);
        draft.supersedes = seen.map(|record| record.entry().id).into_iter().collect();
        Some(draft)
    }

    /// The answers of a kind: as sent where they hold, as known where what was sent does not. What this program does not
    /// ask is carried on.
    fn body(&self, kind: &str, known: &Body) -> Body {
        let is_asked = |key: &str| kept_in(&whole(kind, key)) == Some(kind);
        let mut body: Body = known
            .iter()
            .filter(|(key, _)| !is_asked(key) || self.is_faulty(&whole(kind, key)))
            .map(|(key, answer)| (key.clone(), answer.clone()))
            .collect();
        for (key, given) in self.answers.iter() {
            if kept_in(key) == Some(kind) && given.usual.is_none() && !self.is_faulty(key) {
                body.insert(key.to_owned(), body::answer(given));
            }
        }
        body
    }

    /// Whether what was typed for a field does not hold.
    fn is_faulty(&self, key: &str) -> bool {
        is_faulty(key, self.problems)
    }

    /// What the draft still has to hold: what belongs to this batch alone, and what was not written into the book.
    pub(crate) fn left_for_the_draft(&self, raws: Vec<Raw>) -> Vec<Raw> {
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

/// Typing 18.0 where 18 stood changes nothing.
fn same_values(one: &Body, other: &Body) -> bool {
    let values = |body: &Body| -> Vec<(String, serde_json::Value)> {
        body.iter().map(|(key, answer): (&String, &Answer)| (key.clone(), answer.value.clone())).collect()
    };
    values(one) == values(other)
}
