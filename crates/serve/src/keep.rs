//! What saving a form writes into the book: the answers that are kept from batch to batch, where they changed.

use advice::body::KEPT_KINDS;
use advice::keep::Said;
use book::{BookState, Draft, EntryId, HouseId};
use present::Viewer;
use quantity::{Answers, CivilDay, Problem, Raw};
use uuid::Uuid;

use crate::before::is_shown;
use crate::call::Call;
use crate::seen;

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
        let draft = |kind: &&'static str| {
            let seen = seen::by_author(self.call, state, kind, self.house);
            self.said().draft(kind, seen, EntryId(new_id()))
        };
        shown.filter_map(draft).collect()
    }

    /// What the draft still has to hold: what belongs to this batch alone, and what was not written into the book.
    pub(crate) fn left_for_the_draft(&self, raws: Vec<Raw>) -> Vec<Raw> {
        self.said().left(raws)
    }

    /// A form asks everything: a box left blank says so.
    fn said(&self) -> Said<'_> {
        Said {
            house: self.house,
            answers: self.answers,
            problems: self.problems,
            was_asked: |_, _| true,
            today: self.today,
        }
    }
}
