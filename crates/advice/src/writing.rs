//! What becomes of one filled form of a batch's book, whoever filled it: a page, a command, a file of rows.

use book::{BookState, Counting, Draft, EntryId, Kind, Record, Slot, Subject};
use quantity::{CivilDay, Problem, Question, Raw, Source, Unit, field};

use crate::diary::Diary;
use crate::record::{self, Ask};

/// Kinds that need birds in the house.
const OF_BIRDS: [&str; 9] = [
    "deaths",
    "feed-given",
    "water",
    "crop-fill",
    "chick-check",
    "weighing",
    "birds-out",
    "sale",
    "count-found",
];

/// Where and why something is written down.
#[derive(Clone, Copy)]
pub struct Writing<'a> {
    /// The book.
    pub state: &'a BookState,
    /// The batch's book up to the last of the days that are written down.
    pub diary: &'a Diary,
    /// The day at the farm.
    pub today: CivilDay,
    /// Why something that was written before is changed, where somebody said it.
    pub reason: Option<&'a str>,
    /// What its author had before them.
    pub seen: Seen,
}

/// What the author of a form had before them in its place.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Seen {
    /// Whatever counts now.
    WhatCounts,
    /// Nothing: the place was empty. What somebody else wrote there meanwhile is not overwritten unasked.
    Nothing,
    /// This entry, which is put right.
    Entry(EntryId),
}

/// What becomes of a filled form.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Judged {
    /// What does not hold; then there is nothing else.
    pub problems: Vec<Problem>,
    /// What is to be written; `None` where the book says the same already.
    pub draft: Option<Draft>,
    /// The slot that the draft fills; `None` for kinds of which each entry counts.
    pub slot: Option<Slot>,
    /// Answers that are rare; kept once they were confirmed.
    pub questions: Vec<Question>,
    /// What only the book finds unlikely; kept once it was confirmed.
    pub asks: Vec<Ask>,
    /// Whether it changes what was written before, and nobody said why.
    pub needs_reason: bool,
    /// What somebody else wrote in its place meanwhile.
    pub meanwhile: Option<EntryId>,
}

impl Judged {
    /// Whether it can be written.
    ///
    /// - `is_sure`: whether what is doubtful was confirmed
    pub fn holds(&self, is_sure: bool) -> bool {
        let is_doubtful = !self.questions.is_empty() || !self.asks.is_empty();
        self.problems.is_empty() && !self.needs_reason && (is_sure || !is_doubtful)
    }
}

impl Writing<'_> {
    /// What becomes of a filled form. What says the same as the book already does is left alone.
    ///
    /// - `id`: a fresh one
    /// - `raws`: what was typed, under whole or under short keys
    pub fn judge(&self, id: EntryId, kind: &Kind, day: CivilDay, raws: &[Raw], source: Source) -> Judged {
        let checked = record::check(kind, raws, source);
        if !checked.problems.is_empty() {
            return Judged { problems: checked.problems, ..Judged::default() };
        }
        let mut draft = record::draft(id, kind, self.diary.batch, day, &checked.answers);
        let slot = record::slot(kind, self.diary.batch, day, &draft.body);
        let standing = self.standing(kind, slot.as_ref());
        let current = slot.as_ref().and_then(|slot| self.state.current(slot));
        if standing.into_iter().chain(current).any(|record| says_the_same(record, &draft)) {
            return Judged { slot, ..Judged::default() };
        }
        let meanwhile = current.filter(|_| self.seen == Seen::Nothing).map(|record| record.entry().id);
        let mut needs_reason = false;
        if let Some(standing) = standing.or(current.filter(|_| meanwhile.is_some())) {
            draft.supersedes = vec![standing.entry().id];
            draft.reason = self.reason.map(str::to_owned);
            needs_reason = draft.reason.is_none() && (meanwhile.is_some() || !self.explains_itself(day));
        }
        Judged {
            problems: Vec::new(),
            draft: Some(draft),
            slot,
            questions: checked.questions,
            asks: self.asks(kind, day, &checked.answers),
            needs_reason,
            meanwhile,
        }
    }

    /// What was typed, and behind it what stands in its place in the book already: what is not said again stays. A key that
    /// was typed with nothing behind it takes its answer away.
    ///
    /// - `raws`: what was typed, under short keys
    pub fn added_to_what_stands(&self, kind: &Kind, day: CivilDay, raws: &[Raw]) -> Vec<Raw> {
        let asked = record::asked_short(kind);
        let said = field::check(&asked, raws, Source::Hand, false).answers;
        let slot = record::slot(kind, self.diary.batch, day, &crate::body::of_answers(&said));
        let standing = self.standing(kind, slot.as_ref()).and_then(Record::body);
        let known = standing.map_or_else(Vec::new, |body| record::raws_of(kind, body));
        let typed = |key: &str| field::find(&asked, key).map(|(field, _)| field.key);
        let kept = known
            .into_iter()
            .filter(|known| !raws.iter().any(|raw| typed(&raw.key) == Some(known.key.as_str())));
        let short = |raw: Raw| Raw { key: raw.key.rsplit('.').next().unwrap_or_default().to_owned(), ..raw };
        let is_blank = |raw: &Raw| raw.text.iter().all(|text| text.trim().is_empty());
        raws.iter().filter(|raw| !is_blank(raw)).cloned().chain(kept.map(short)).collect()
    }

    /// What is unlikely about it: what the book says of the numbers, and what it says of the day.
    fn asks(&self, kind: &Kind, day: CivilDay, answers: &quantity::Answers) -> Vec<Ask> {
        let mut asks = record::asks(self.diary, kind, day, answers);
        let Some(first) = record::asked(kind).first().map(|asked| asked.field.key) else { return asks };
        let ask = |name, days: &[i32]| {
            let numbers = days.iter().map(|days| ("days", f64::from(*days), Unit::Day)).collect();
            Ask { name, key: first, numbers }
        };
        if day > self.today {
            asks.push(ask("day-ahead", &[day.days_since(self.today)]));
        }
        let placed = self.state.current(&Slot::of("chicks-placed", Subject::Batch(self.diary.batch)));
        let early = placed.map_or(0, |placed| placed.entry().day.days_since(day));
        if early > 0 && OF_BIRDS.contains(&kind.name) {
            asks.push(ask("before-the-chicks", &[early]));
        }
        if self.is_said_again(kind, day, answers) {
            asks.push(ask("written-already", &[]));
        }
        asks
    }

    /// Whether the book holds the same already, of a kind of which each entry counts.
    fn is_said_again(&self, kind: &Kind, day: CivilDay, answers: &quantity::Answers) -> bool {
        let body = crate::body::of_answers(answers);
        kind.counting == Counting::Additive
            && !matches!(self.seen, Seen::Entry(_))
            && self.diary.on_day(kind.name, day).any(|note| record::says_the_same(&note.body, &body))
    }

    /// What stands in the place of the form.
    fn standing(&self, kind: &Kind, slot: Option<&Slot>) -> Option<&Record> {
        match self.seen {
            Seen::WhatCounts => self.state.current(slot?),
            Seen::Nothing => None,
            Seen::Entry(id) => {
                let seen = self.state.records(id).first().map(|record| &**record);
                seen.filter(|record| record.entry().kind == kind.name)
            }
        }
    }

    /// What is added in the evening of the same day explains itself.
    pub fn explains_itself(&self, day: CivilDay) -> bool {
        day == self.today
    }
}

/// Whether a draft would leave everything as it is: the same words on the same day.
fn says_the_same(standing: &Record, draft: &Draft) -> bool {
    standing.entry().day == draft.day
        && standing.body().is_some_and(|body| record::says_the_same(body, &draft.body))
}
