//! `sync`: makes this book and one that is served elsewhere the same. What is cut off is gone on with the next time.

use std::sync::Arc;

use book::DeviceId;
use book::sync::{Failure as Refusal, Message, Summary, Why};
use clap::ArgMatches;
use present::{Locale, Words, say};
use serve::{Desk, Exchange, ExchangeError, Heard, Loopback};
use store::Store;
use uuid::Uuid;

use crate::clock::now;
use crate::failure::Failure;
use crate::farm_book;
use crate::line::{Line, LineError};

/// How many sessions are held until both books are even: one, and one more for each thing that came up meanwhile.
const SESSIONS_MAX: usize = 8;

/// How often in a row the other end may have nothing to say although something is left.
const SILENCES_MAX: usize = 3;

/// Syncs with the book at an address.
pub fn run(given: &ArgMatches, locale: Locale) -> Result<(), Failure> {
    let words = Words::of(locale);
    let Some(url) = given.get_one::<String>("URL") else { return Ok(()) };
    farm_book::wait(sync(given, url, words))
}

/// What went over the line so far.
#[derive(Default)]
struct Tally {
    /// Entries that were new here.
    added: usize,
    /// Entries that the other end has acknowledged.
    sent: usize,
    /// Entries that stayed behind at either end.
    left_out: usize,
}

/// This end.
struct Here<'a> {
    words: &'a Words,
    url: &'a str,
    store: Arc<dyn Store>,
    place: String,
    desk: Arc<Desk>,
    loopback: Loopback,
    tally: Tally,
}

async fn sync(given: &ArgMatches, url: &str, words: &Words) -> Result<(), Failure> {
    let mut line = Line::to(url).await.map_err(|error| unheard(&error, url, words))?;
    let greeting = line.greeting().await.map_err(|error| unheard(&error, url, words))?;
    let farm = Message::decode_all(&greeting).ok().and_then(|said| said.first().map(|message| message.farm));
    let farm = farm.ok_or_else(|| no_book(url, words))?;
    // Only now, so that no book is made where there is none to fill it from.
    let (store, place) = farm_book::store(given, true, words).await?;
    let loopback = serve::sole_farm_like(&*store, farm, now(), Uuid::now_v7).await;
    let loopback = loopback.map_err(|error| cannot(&error.into(), &place, words))?;
    let (desk, tally) = (Arc::default(), Tally::default());
    let mut here = Here { words, url, store, place, desk, loopback, tally };
    let even = here.sessions(&mut line, greeting.to_vec()).await;
    here.tell(even)
}

impl Here<'_> {
    /// Holds sessions until both books are even; says whether they are.
    async fn sessions(&mut self, line: &mut Line, greeting: Vec<u8>) -> Result<bool, Failure> {
        let mut greeting = greeting;
        for _ in 0..SESSIONS_MAX {
            let summary = self.session(line, greeting).await?;
            self.tally.sent += summary.sent;
            self.tally.left_out += summary.left_out_here + summary.left_out_there;
            if summary.is_even {
                return Ok(true);
            }
            let next = line.greeting().await.map_err(|error| unheard(&error, self.url, self.words))?;
            greeting = next.to_vec();
        }
        Ok(false)
    }

    async fn session(&mut self, line: &mut Line, greeting: Vec<u8>) -> Result<Summary, Failure> {
        let (desk, store, words) = (Arc::clone(&self.desk), Arc::clone(&self.store), self.words);
        let mut exchange = Exchange::new(&desk, &*store, self.loopback.access());
        let mut said = greeting;
        let mut silences = 0;
        loop {
            let mut heard = exchange.hear(&said).await.map_err(|error| cannot(&error, &self.place, words))?;
            if let Some(end) = self.after(&heard).await? {
                return Ok(end);
            }
            if heard.to_send.is_empty() {
                silences += 1;
                heard = exchange.again().await.map_err(|error| cannot(&error, &self.place, words))?;
            } else {
                silences = 0;
            }
            if silences > SILENCES_MAX || heard.to_send.is_empty() {
                return Err(no_book(self.url, words));
            }
            said = line.say(heard.to_send).await.map_err(|error| unheard(&error, self.url, words))?.to_vec();
        }
    }

    /// Does what follows from what was heard.
    async fn after(&mut self, heard: &Heard) -> Result<Option<Summary>, Failure> {
        self.tally.added += heard.added;
        self.tally.left_out += heard.unfit;
        if heard.copied == Some(self.loopback.device) {
            self.go_on_as_another().await?;
        }
        match heard.failed {
            Some(refusal) => Err(refused(refusal, self.url, &self.place, self.words)),
            None => Ok(heard.done),
        }
    }

    async fn go_on_as_another(&mut self) -> Result<(), Failure> {
        let minted = self.loopback.on_a_new_device(&*self.store, DeviceId(Uuid::now_v7()), now()).await;
        self.loopback = minted.map_err(|error| cannot(&error.into(), &self.place, self.words))?;
        super::print(&(self.words.plain("sync-device-copied") + "\n"))
    }

    /// Tells what went over the line, also where it was cut.
    fn tell(&self, ended: Result<bool, Failure>) -> Result<(), Failure> {
        let Tally { added, sent, left_out } = self.tally;
        super::print(
            &(say!(self.words, "sync-done", added = added.to_string(), sent = sent.to_string()) + "\n"),
        )?;
        if left_out > 0 {
            super::print(&(say!(self.words, "sync-left-out", count = left_out.to_string()) + "\n"))?;
        }
        if ended? { Ok(()) } else { Err(Failure::Failed(self.words.plain("sync-not-even"))) }
    }
}

fn unheard(error: &LineError, url: &str, words: &Words) -> Failure {
    match error {
        LineError::NoAddress => Failure::input(say!(words, "sync-no-address", typed = url)),
        LineError::Far { address } => {
            Failure::input(say!(words, "sync-far", url = url, address = address.to_string()))
        }
        LineError::Status { .. } => no_book(url, words),
        LineError::Cut { .. } | LineError::Silent => {
            Failure::Failed(say!(words, "sync-cut", url = url, why = error.to_string()))
        }
    }
}

fn no_book(url: &str, words: &Words) -> Failure {
    Failure::Failed(say!(words, "sync-no-book", url = url))
}

fn cannot(error: &ExchangeError, place: &str, words: &Words) -> Failure {
    Failure::Failed(say!(words, "serve-cannot-open", book = place, why = error.to_string()))
}

fn refused(refusal: Refusal, url: &str, place: &str, words: &Words) -> Failure {
    let (Refusal::WeRefused { why } | Refusal::TheyRefused { why }) = refusal;
    match why {
        Why::OtherFarm => Failure::input(say!(words, "sync-other-farm", url = url, book = place)),
        Why::Version { .. } => Failure::Failed(say!(words, "sync-version", url = url)),
        Why::ReadOnly => Failure::Failed(say!(words, "sync-read-only", url = url)),
        Why::TooLarge | Why::Unreadable => {
            Failure::Failed(say!(words, "sync-cut", url = url, why = refusal.to_string()))
        }
    }
}
