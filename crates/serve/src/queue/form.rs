//! One form of a queue after the other, each judged by the book with those before it in it.

use std::collections::{BTreeMap, BTreeSet};
use std::sync::Arc;

use advice::record;
use book::sync::{Queued, Status, take_drafts};
use book::{Access, BatchId, DeviceId, Draft, EntryId, StoredEntry};
use present::{fault, oddity};
use quantity::CivilDay;
use uuid::Uuid;

use crate::batch::{self, Batch, ON};
use crate::boxes::{self, Boxes, Meanwhile};
use crate::call::find;
use crate::day;
use crate::desk::Open;
use crate::queue::wire::{Fate, Waiting, Word};
use crate::sheet::Sheet;
use crate::site::Site;
use crate::tick::{TASK, ticked};

/// What a form comes to before it is written.
enum Judged {
    /// Entries to write; none where the book says the same.
    Holds { drafts: Vec<Draft>, ids: Vec<EntryId>, at: String },
    /// It is not written, and why.
    Not { word: Word, says: Vec<String> },
}

/// Takes the forms of one call.
pub(crate) struct Taker<'a> {
    site: &'a Site,
    access: Access,
    now: i64,
    sent: i64,
    open: &'a mut Arc<Open>,
    entries: Vec<StoredEntry>,
    /// Which entries the drafts that are in the book became, and where they are shown.
    taken: BTreeMap<Uuid, (Vec<EntryId>, String)>,
}

impl<'a> Taker<'a> {
    /// Begins.
    ///
    /// - `now`, `sent`: the clock here and the phone's as it sent, milliseconds since 1970
    /// - `open`: the book to be
    pub(crate) fn new(
        site: &'a Site,
        access: Access,
        now: i64,
        sent: i64,
        open: &'a mut Arc<Open>,
    ) -> Taker<'a> {
        Taker { site, access, now, sent, open, entries: Vec::new(), taken: BTreeMap::new() }
    }

    /// What becomes of a form.
    pub(crate) fn take(&mut self, waiting: &Waiting) -> Fate {
        // However wrong the phone's clock is, it tells how long ago that was.
        let written_millis = self.now - (self.sent.saturating_sub(waiting.written)).max(0);
        match self.judged(waiting, written_millis) {
            Some(Judged::Not { word, says }) => fate(waiting, word, says),
            Some(Judged::Holds { drafts, ids, at }) => {
                let ids = ids.into_iter().chain(drafts.iter().map(|draft| draft.id)).collect();
                let word = self.write(waiting, drafts, written_millis);
                if matches!(word, Word::Written | Word::Known) {
                    self.taken.insert(waiting.id, (ids, at));
                }
                let why = (word == Word::Refused).then(|| self.word("queue-unreadable"));
                fate(waiting, word, why.into_iter().collect())
            }
            None => fate(waiting, Word::Refused, vec![self.word("queue-no-such-batch")]),
        }
    }

    /// What becomes of what cannot be read.
    pub(crate) fn unreadable(&self, draft: &serde_json::Value) -> Fate {
        let id = draft.get("id").and_then(|id| serde_json::from_value(id.clone()).ok());
        Fate { id, word: Word::Refused, says: vec![self.word("queue-unreadable")], at: None }
    }

    /// What is to be put on disk; and tells of drafts beside which something else stands.
    pub(crate) fn finish(self, fates: &mut [Fate]) -> Vec<StoredEntry> {
        let conflicts = self.open.state.conflicts();
        let apart: BTreeSet<EntryId> =
            conflicts.iter().flat_map(|one| &one.heads).map(|head| head.entry().id).collect();
        for fate in fates {
            let taken = fate.id.and_then(|id| self.taken.get(&id));
            if let Some((_, at)) = taken.filter(|(ids, _)| ids.iter().any(|id| apart.contains(id))) {
                (fate.word, fate.at) = (Word::Asked, Some(at.clone()));
            }
        }
        self.entries
    }

    fn word(&self, key: &str) -> String {
        Site::viewer(&self.open.state).words().plain(key)
    }

    /// What a form comes to; `None` where it is about nothing that is in the book.
    fn judged(&self, waiting: &Waiting, written_millis: i64) -> Option<Judged> {
        let path: Vec<&str> = waiting.to.trim_start_matches('/').split('/').collect();
        let (id, page) = match path[..] {
            ["batch", id, "write", kind] => (id, Page::Write(kind)),
            ["batch", id, "day" | "week"] => (id, Page::Boxes),
            ["batch", id, "tick"] => (id, Page::Tick),
            _ => return None,
        };
        let batch = self.batch(id, &waiting.form, written_millis)?;
        Some(match page {
            Page::Write(kind) => self.of_boxes(&batch, &boxes::moved(&waiting.form, kind, batch.on)),
            Page::Boxes => self.of_boxes(&batch, &waiting.form),
            Page::Tick => self.of_job(&batch, waiting),
        })
    }

    /// The batch as it was to whoever wrote: the day of writing is today.
    fn batch(&self, id: &str, form: &[(String, String)], written_millis: i64) -> Option<Batch> {
        let id = Uuid::try_parse(id).ok().map(BatchId)?;
        let state = &self.open.state;
        if !batch::is_known(state, id) {
            return None;
        }
        let today = day::local(written_millis, day::offset_of(state)).0;
        let on = find(form, ON).and_then(CivilDay::parse).unwrap_or(today);
        Some(Batch { id, open: Arc::clone(self.open), viewer: Site::viewer(state), today, on })
    }

    fn of_boxes(&self, batch: &Batch, form: &[(String, String)]) -> Judged {
        let Some(shown) = boxes::named(form) else {
            return Judged::Not { word: Word::Refused, says: vec![self.word("queue-unreadable")] };
        };
        let sheet = Sheet::filled(batch, shown, form, self.site.options.new_id, Meanwhile::Stands);
        if sheet.is_empty() {
            return Judged::Not { word: Word::Refused, says: vec![self.word("nothing-was-said")] };
        }
        if !sheet.holds() {
            return does_not_hold(&sheet);
        }
        Judged::Holds { drafts: sheet.drafts(), ids: sheet.made_ids().collect(), at: batch.page("") }
    }

    fn of_job(&self, batch: &Batch, waiting: &Waiting) -> Judged {
        let draft = find(&waiting.form, TASK).and_then(|key| ticked(EntryId(waiting.id), batch, key));
        let Some(draft) = draft else {
            return Judged::Not { word: Word::Refused, says: vec![self.word("queue-unreadable")] };
        };
        let slot =
            record::kind(&draft.kind).and_then(|kind| record::slot(kind, batch.id, batch.on, &draft.body));
        let is_done = slot.is_some_and(|slot| batch.open.state.current(&slot).is_some());
        let drafts = if is_done { Vec::new() } else { vec![draft] };
        Judged::Holds { drafts, ids: vec![EntryId(waiting.id)], at: batch.page("") }
    }

    /// Puts the entries of a form into the book to be, all or none.
    fn write(&mut self, waiting: &Waiting, drafts: Vec<Draft>, written_millis: i64) -> Word {
        if drafts.is_empty() {
            return Word::Known;
        }
        let seen: BTreeMap<DeviceId, u64> =
            waiting.seen.iter().map(|(device, sequence)| (DeviceId(*device), *sequence)).collect();
        let queued = |draft| Queued { draft, seen: seen.clone(), written_millis };
        let queued: Vec<Queued> = drafts.into_iter().map(queued).collect();
        let taking = take_drafts(&self.access, &self.open.state, queued, self.now);
        let to_write = taking.to_write.clone();
        let statuses: Vec<Status> = taking.committed().into_iter().map(|(_, status)| status).collect();
        let word = whole(&statuses);
        if matches!(word, Word::Written) {
            let open = Arc::make_mut(self.open);
            open.state.append_all(to_write.iter().cloned());
            self.entries.extend(to_write);
        }
        word
    }
}

/// Which page a form is of.
enum Page<'a> {
    Write(&'a str),
    Boxes,
    Tick,
}

/// What became of a form, of which each entry became something.
fn whole(statuses: &[Status]) -> Word {
    let any = |is: fn(&Status) -> bool| statuses.iter().any(is);
    if any(|status| matches!(status, Status::Refused(_))) {
        Word::Refused
    } else if any(|status| matches!(status, Status::NotYet)) {
        Word::NotYet
    } else if any(|status| matches!(status, Status::IdInUse)) {
        Word::IdInUse
    } else if any(|status| matches!(status, Status::TakenOtherwise)) {
        Word::TakenOtherwise
    } else if any(|status| matches!(status, Status::Written)) {
        Word::Written
    } else {
        Word::Known
    }
}

/// Why a form is not written, in words.
fn does_not_hold(sheet: &Sheet) -> Judged {
    let (outcome, viewer) = (&sheet.outcome, &sheet.batch.viewer);
    if !outcome.problems.is_empty() {
        let says = sheet.every_input().into_iter().filter_map(|input| input.fault).collect();
        return Judged::Not { word: Word::Refused, says };
    }
    let questions = outcome.questions.iter().map(|(_, question)| fault::question(question, viewer));
    let asks = outcome.asks.iter().map(|(_, ask)| oddity::ask(ask, viewer));
    let changed = |_: &Boxes| viewer.words().plain("why-changed");
    let unexplained = outcome.unexplained.iter().take(1).map(changed);
    Judged::Not { word: Word::Doubted, says: questions.chain(asks).chain(unexplained).collect() }
}

fn fate(waiting: &Waiting, word: Word, says: Vec<String>) -> Fate {
    Fate { id: Some(waiting.id), word, says, at: None }
}
