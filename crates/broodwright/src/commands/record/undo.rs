//! Taking an entry back.

use book::{Draft, Entry};
use present::say;

use super::{Said, put_down};
use crate::failure::Failure;
use crate::farm_book::{FarmBook, new_entry};

/// Takes an entry back. It stays in the history.
pub async fn withdraw(said: &Said<'_>, wrong: &str) -> Result<(), Failure> {
    let words = said.words();
    let reason = said.reason().ok_or_else(|| Failure::input(words.plain("record-withdraw-reason")))?;
    let book = FarmBook::to_write(said.given, false, said.locale).await?;
    let entry = last_of(&book, wrong)?;
    let draft = Draft { reason: Some(reason.to_owned()), ..Draft::withdrawal(new_entry(), entry) };
    put_down(said, &book, vec![draft], 0).await
}

/// The entry that is meant, if nothing came after it.
pub fn last_of<'a>(book: &'a FarmBook, said: &str) -> Result<&'a Entry, Failure> {
    let entry = book.entry(said)?.entry();
    let words = book.viewer.words();
    if entry.withdrawn {
        return Err(Failure::input(say!(words, "record-takes-back", entry = entry.id.0.to_string())));
    }
    let after = book.state().all_records().find(|record| record.entry().supersedes.contains(&entry.id));
    match after {
        None => Ok(entry),
        Some(later) => {
            let later = later.entry().id.0.to_string();
            Err(Failure::input(say!(words, "record-not-the-last", later = later)))
        }
    }
}
