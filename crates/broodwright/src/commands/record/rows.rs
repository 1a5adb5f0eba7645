//! Many entries at once, out of a file: a page of paper typed in, a spreadsheet.

use std::path::PathBuf;

use advice::diary::Diary;
use advice::writing::{Seen, Writing};
use book::{BatchId, BookState, Draft, Kind, SeriesEnd, compose};
use present::{Viewer, say};
use quantity::{CivilDay, Raw, Source};

use super::rows_file::{self, Row};
use super::{Said, hindrances, put_down, short};
use crate::clock::now;
use crate::failure::Failure;
use crate::farm_book::{FarmBook, new_entry};
use crate::input;

/// A row with its kind and its day.
struct Filled {
    line: usize,
    kind: &'static Kind,
    day: CivilDay,
    raws: Vec<Raw>,
}

/// Writes all rows, or none unless only the good ones are asked for.
pub async fn write(said: &Said<'_>) -> Result<(), Failure> {
    let words = said.words();
    let Some(file) = said.given.get_one::<PathBuf>("from") else { return Ok(()) };
    let text = input::text(file, words)?;
    let book = FarmBook::to_write(said.given, false, said.locale).await?;
    let batch = book.batch(said.text("batch"))?;
    let (mut filled, mut bad) = (Vec::new(), Vec::new());
    for (line, row) in rows_file::read(&text, words) {
        match row.and_then(|row| fill(row, said)) {
            Ok(row) => filled.push(row),
            Err(why) => bad.push((line, why)),
        }
    }
    // By day, so that each day is judged by those before it.
    filled.sort_by_key(|row| row.day);
    let mut trial = Trial::new(&book);
    for row in &filled {
        if let Err(why) = trial.take(row, batch, said) {
            bad.extend(why.into_iter().map(|why| (row.line, why)));
        }
    }
    finish(said, &book, trial, bad).await
}

fn fill(row: Row, said: &Said) -> Result<Filled, String> {
    let words = said.words();
    let kind = super::kind(&row.kind, words)?;
    let day = CivilDay::parse(&row.day).ok_or_else(|| say!(words, "record-no-day", typed = &row.day))?;
    let raws = row.raws.into_iter().map(|raw| short(kind, Raw { line: None, ..raw })).collect();
    Ok(Filled { line: row.line, kind, day, raws })
}

/// Says which lines are bad, and writes the others where that is right.
async fn finish(
    said: &Said<'_>,
    book: &FarmBook,
    trial: Trial<'_>,
    mut bad: Vec<(usize, String)>,
) -> Result<(), Failure> {
    let words = said.words();
    bad.sort();
    let line =
        |(line, why): &(usize, String)| say!(words, "fault-on-line", line = line.to_string(), fault = why);
    let told: Vec<String> = bad.iter().map(line).collect();
    if !bad.is_empty() && !said.given.get_flag("good-only") {
        return Err(Failure::BadInput(
            told.into_iter().chain([words.plain("record-rows-nothing")]).collect(),
        ));
    }
    for line in told {
        eprintln!("{line}");
    }
    put_down(said, book, trial.drafts, trial.unchanged).await
}

/// The book as it becomes, row by row.
struct Trial<'a> {
    book: &'a FarmBook,
    state: BookState,
    end: Option<SeriesEnd>,
    drafts: Vec<Draft>,
    unchanged: usize,
}

impl<'a> Trial<'a> {
    fn new(book: &'a FarmBook) -> Trial<'a> {
        let state = book.state().clone();
        let own = state.all_records().filter(|record| record.entry().device == book.access().device());
        let end =
            own.max_by_key(|record| record.entry().sequence).map(|record| SeriesEnd::at(record.stored()));
        Trial { book, state, end, drafts: Vec::new(), unchanged: 0 }
    }

    /// Takes a row in, or says what keeps it out.
    fn take(&mut self, row: &Filled, batch: BatchId, said: &Said) -> Result<(), Vec<String>> {
        let viewer: &Viewer = &self.book.viewer;
        let diary = Diary::read(&self.state, batch, row.day);
        let writing = Writing {
            state: &self.state,
            diary: &diary,
            today: self.book.today(),
            reason: said.reason(),
            seen: Seen::WhatCounts,
        };
        let raws = writing.added_to_what_stands(row.kind, row.day, &row.raws);
        let judged = writing.judge(new_entry(), row.kind, row.day, &raws, Source::Hand);
        let hindrances = hindrances(&judged, row.kind, row.day, said.is_sure(), viewer);
        if !hindrances.is_empty() {
            return Err(hindrances);
        }
        match judged.draft {
            None => self.unchanged += 1,
            Some(draft) => self.add(draft).map_err(|error| vec![error.to_string()])?,
        }
        Ok(())
    }

    fn add(&mut self, draft: Draft) -> Result<(), book::ComposeError> {
        let sight = self.state.sight(now());
        let stored = compose(self.book.access(), self.end, draft.clone(), &sight, now())?;
        self.end = Some(SeriesEnd::at(&stored));
        self.state.append(stored);
        self.drafts.push(draft);
        Ok(())
    }
}
