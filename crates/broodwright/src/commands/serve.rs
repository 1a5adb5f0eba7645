//! `serve`: the pages, on this machine.

use std::net::SocketAddr;
use std::sync::Arc;

use clap::ArgMatches;
use present::{Locale, Words, say};
use serve::{Site, SiteOptions};
use store::{SqliteStore, Store};
use uuid::Uuid;

use crate::arguments::VERSION;
use crate::clock::now;
use crate::failure::Failure;
use crate::farm_book;
use crate::training;

/// Serves until it is interrupted.
pub fn run(given: &ArgMatches, locale: Locale) -> Result<(), Failure> {
    let words = Words::of(locale);
    let listen = given.get_one::<String>("listen").map_or("", String::as_str);
    let address: SocketAddr =
        listen.parse().map_err(|_| Failure::input(say!(words, "serve-no-address", typed = listen)))?;
    let runtime = tokio::runtime::Builder::new_multi_thread().enable_all().build();
    let runtime = runtime.map_err(|error| Failure::Failed(error.to_string()))?;
    runtime.block_on(serve_book(given, address, words))
}

async fn serve_book(given: &ArgMatches, address: SocketAddr, words: &Words) -> Result<(), Failure> {
    // Refused before a book is made.
    let listener = serve::bind(address).await.map_err(|error| refused(&error, words))?;
    let phones = super::phones::of(given, words).await?;
    let is_demo = given.get_flag("demo");
    let (store, place) = if is_demo {
        let store = SqliteStore::in_memory().map_err(|error| Failure::Failed(error.to_string()))?;
        (Arc::new(store) as Arc<dyn Store>, words.plain("serve-demo-book"))
    } else {
        farm_book::store(given, true, words).await?
    };
    let cannot_open = |error: store::StoreError| {
        Failure::Failed(say!(words, "serve-cannot-open", book = &place, why = error.to_string()))
    };
    let now: fn() -> i64 = if is_demo { training::now } else { now };
    let new_id: fn() -> Uuid = if is_demo { training::new_id } else { Uuid::now_v7 };
    let loopback = serve::sole_farm(&*store, now(), new_id).await.map_err(cannot_open)?;
    let options = SiteOptions { loopback, demo: is_demo, version: VERSION.to_owned(), now, new_id };
    if is_demo {
        let entered = training::enter(&store, &options).await;
        entered.map_err(|error| Failure::Failed(error.to_string()))?;
    }
    let address = listener.local_addr()?;
    super::print(&(say!(words, "serve-open", address = address.to_string(), book = place) + "\n"))?;
    if let Some(phones) = &phones {
        let port = phones.listener.local_addr()?.port();
        let origin = format!("https://{}:{port}", phones.names.host());
        super::print(&(say!(words, "serve-phones", address = address.to_string(), origin = origin) + "\n"))?;
    }
    let stopped = async {
        // Without a way to hear the interrupt the program simply goes on until it is killed.
        if tokio::signal::ctrl_c().await.is_err() {
            std::future::pending::<()>().await;
        }
    };
    let site = Site::new(store, options);
    let served = match phones {
        Some(phones) => serve::serve_with_phones(site, listener, phones, stopped).await,
        None => serve::serve_on(site, listener, stopped).await,
    };
    served.map_err(|error| refused(&error, words))
}

/// Why it is not served, in words.
pub fn refused(error: &serve::ServeError, words: &Words) -> Failure {
    match error {
        serve::ServeError::NotLoopback { .. }
        | serve::ServeError::NotNear { .. }
        | serve::ServeError::Certificate { .. } => Failure::input(error.in_words(words)),
        _ => Failure::Failed(error.in_words(words)),
    }
}
