//! One entry, typed on the command line.

use advice::diary::Diary;
use advice::writing::{Seen, Writing};
use book::{BatchId, Kind, Subject};
use present::say;
use quantity::{CivilDay, Raw, Source};

use super::{Said, hindrances, put_down, short, undo};
use crate::failure::Failure;
use crate::farm_book::{self, FarmBook, new_entry};

/// Where an entry goes.
struct Place {
    kind: &'static Kind,
    batch: BatchId,
    day: CivilDay,
    seen: Seen,
}

/// Writes something down about a batch.
pub async fn write(said: &Said<'_>, kind: &'static Kind) -> Result<(), Failure> {
    let raws = said.raws()?;
    let day = farm_book::day(said.given, "day", said.words())?;
    let book = FarmBook::to_write(said.given, false, said.locale).await?;
    let batch = book.batch(said.text("batch"))?;
    let day = day.unwrap_or_else(|| book.today());
    put(said, &book, Place { kind, batch, day, seen: Seen::WhatCounts }, raws).await
}

/// Puts an entry right: what is not said again stays.
pub async fn correct(said: &Said<'_>, wrong: &str) -> Result<(), Failure> {
    let raws = said.raws()?;
    let day = farm_book::day(said.given, "day", said.words())?;
    let book = FarmBook::to_write(said.given, false, said.locale).await?;
    let entry = undo::last_of(&book, wrong)?;
    let words = said.words();
    let Subject::Batch(batch) = entry.subject else {
        return Err(Failure::input(say!(words, "record-of-the-farm", entry = entry.id.0.to_string())));
    };
    let kind = super::kind(&entry.kind, words).map_err(Failure::input)?;
    if let Some(other) = said.kind_word().filter(|word| *word != kind.name) {
        return Err(Failure::input(say!(words, "record-other-kind", said = other, kind = kind.name)));
    }
    let place = Place { kind, batch, day: day.unwrap_or(entry.day), seen: Seen::Entry(entry.id) };
    put(said, &book, place, raws).await
}

async fn put(said: &Said<'_>, book: &FarmBook, place: Place, raws: Vec<Raw>) -> Result<(), Failure> {
    let Place { kind, batch, day, seen } = place;
    let diary = Diary::read(book.state(), batch, day);
    let writing =
        Writing { state: book.state(), diary: &diary, today: book.today(), reason: said.reason(), seen };
    let raws: Vec<Raw> = raws.into_iter().map(|raw| short(kind, raw)).collect();
    let raws = writing.added_to_what_stands(kind, day, &raws);
    let judged = writing.judge(new_entry(), kind, day, &raws, Source::Hand);
    let hindrances = hindrances(&judged, kind, day, said.is_sure(), &book.viewer);
    if !hindrances.is_empty() {
        return Err(Failure::BadInput(hindrances));
    }
    let unchanged = usize::from(judged.draft.is_none());
    put_down(said, book, judged.draft.into_iter().collect(), unchanged).await
}
