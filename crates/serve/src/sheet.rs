//! A form of boxes: as it is first shown, as it was sent, and as it is written into the book.

use book::{Draft, EntryId, Record};
use present::form::Input;
use quantity::Raw;
use uuid::Uuid;

use crate::batch::Batch;
use crate::boxes::{self, Boxes, Filled, Meanwhile, Outcome, SEEN, Writing};
use crate::call::{Call, find};
use crate::trouble::Trouble;

/// The form field by which somebody confirms what is doubtful.
pub(crate) const SURE: &str = "sure";
/// The form field that says why something written before is changed.
pub(crate) const REASON: &str = "reason";
/// The most characters kept of a reason.
const REASON_CHARACTERS: usize = 200;

/// A form of boxes.
pub(crate) struct Sheet<'a> {
    /// The batch it writes about.
    pub(crate) batch: &'a Batch,
    /// The boxes, in order.
    pub(crate) shown: Vec<Boxes>,
    /// What becomes of what was sent; nothing yet of a form that was not.
    pub(crate) outcome: Outcome,
    /// Why something is changed, as typed.
    pub(crate) reason: Option<String>,
    is_sure: bool,
    filled: Vec<Filled>,
    was_sent: bool,
    corrects: Option<EntryId>,
}

impl<'a> Sheet<'a> {
    /// The form as it is first shown, filled with what the book has.
    pub(crate) fn blank(batch: &'a Batch, shown: Vec<Boxes>) -> Sheet<'a> {
        Sheet {
            batch,
            shown,
            outcome: Outcome::default(),
            reason: None,
            is_sure: false,
            filled: Vec::new(),
            was_sent: false,
            corrects: None,
        }
    }

    /// The form as it was sent.
    pub(crate) fn sent(batch: &'a Batch, shown: Vec<Boxes>, call: &Call) -> Sheet<'a> {
        Sheet::filled(batch, shown, &call.form, call.site.options.new_id, Meanwhile::IsPutRight)
    }

    /// The form as it was filled in.
    ///
    /// - `meanwhile`: what becomes of what others wrote in its place since its page was made
    pub(crate) fn filled(
        batch: &'a Batch,
        shown: Vec<Boxes>,
        form: &[(String, String)],
        new_id: fn() -> Uuid,
        meanwhile: Meanwhile,
    ) -> Sheet<'a> {
        let filled = boxes::read(&shown, form);
        let mut sheet = Sheet { was_sent: true, filled, ..Sheet::blank(batch, shown) };
        sheet.reason = find(form, REASON).and_then(reason_of);
        sheet.is_sure = find(form, SURE).is_some();
        let last = sheet.shown.iter().map(|one| one.day).max().unwrap_or(batch.on);
        let diary = batch.diary_of(last);
        let writing = Writing {
            state: &batch.open.state,
            diary: &diary,
            today: batch.today,
            reason: sheet.reason.clone(),
            new_id,
            meanwhile,
        };
        sheet.outcome = writing.outcome(&sheet.filled);
        sheet
    }

    /// The form that puts one entry right, filled with what it says.
    pub(crate) fn correcting(mut self, entry: EntryId) -> Sheet<'a> {
        self.corrects = Some(entry);
        self
    }

    /// Whether nothing was typed.
    pub(crate) fn is_empty(&self) -> bool {
        self.filled.is_empty()
    }

    /// Whether it was sent with nothing typed.
    pub(crate) fn is_empty_sent(&self) -> bool {
        self.was_sent && self.filled.is_empty()
    }

    /// Whether all that was sent can be written.
    pub(crate) fn holds(&self) -> bool {
        self.outcome.holds(self.is_sure)
    }

    /// What there is to write.
    pub(crate) fn drafts(&self) -> Vec<Draft> {
        self.outcome.drafts.clone()
    }

    /// The inputs of some boxes: as sent; else as the book has them.
    pub(crate) fn inputs(&self, boxes: &Boxes) -> Vec<Input> {
        boxes.inputs(&self.raws(boxes), &self.outcome.problems, &self.batch.viewer)
    }

    fn raws(&self, boxes: &Boxes) -> Vec<Raw> {
        let sent = self.filled.iter().find(|filled| filled.boxes.name(SEEN) == boxes.name(SEEN));
        match sent {
            Some(filled) => filled.raws.clone(),
            None if self.was_sent => Vec::new(),
            None => self.standing(boxes).map_or_else(Vec::new, |record| boxes.raws_of(record)),
        }
    }

    /// The entry that the boxes show, or put right.
    pub(crate) fn standing(&self, boxes: &Boxes) -> Option<&'a Record> {
        let state = &self.batch.open.state;
        match self.corrects {
            Some(id) => state.records(id).first().map(|record| &**record),
            None => boxes.written(state, self.batch.id),
        }
    }

    /// Which entry stood in the boxes when their author saw them, to be carried along.
    pub(crate) fn seen(&self, boxes: &Boxes) -> String {
        let sent = self.filled.iter().find(|filled| filled.boxes.name(SEEN) == boxes.name(SEEN));
        match sent.map(|filled| filled.seen) {
            Some(advice::writing::Seen::Entry(id)) => id.0.to_string(),
            // What was written meanwhile is shown now, so that whoever sends the form again has seen it.
            _ => self.standing(boxes).map_or_else(String::new, |record| record.entry().id.0.to_string()),
        }
    }

    /// Every input, for the summary of faults.
    pub(crate) fn every_input(&self) -> Vec<Input> {
        self.shown.iter().flat_map(|boxes| self.inputs(boxes)).collect()
    }

    /// The ids that were made for the entries to be.
    pub(crate) fn made_ids(&self) -> impl Iterator<Item = EntryId> {
        self.filled.iter().filter_map(|filled| filled.id)
    }

    /// Writes what was sent.
    pub(crate) async fn write(&self, call: &Call) -> Result<(), Trouble> {
        let drafts = self.drafts();
        call.site.write(&call.access, |_| drafts).await
    }
}

/// Why something is changed, where the form says it.
pub(crate) fn reason(call: &Call) -> Option<String> {
    call.sent(REASON).and_then(reason_of)
}

fn reason_of(typed: &str) -> Option<String> {
    let text: String = typed.trim().chars().filter(|c| !c.is_control()).take(REASON_CHARACTERS).collect();
    (!text.is_empty()).then_some(text)
}
