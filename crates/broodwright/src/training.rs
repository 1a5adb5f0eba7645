//! The invented farm, entered into a book that is gone afterwards: what is over as its entries, the next plan the way a
//! person would, through the pages.

use std::sync::Arc;

use axum::Router;
use axum::body::Body;
use axum::http::{Request, header};
use demo::{DemoError, Farm, NOW_MILLIS};
use quantity::Raw;
use serve::{Site, SiteOptions};
use store::{Store, StoreError};
use tower::ServiceExt;
use uuid::{NoContext, Timestamp, Uuid};

/// The demo's clock, which stands still: whoever shows it finds the running batch on the same day.
pub fn now() -> i64 {
    NOW_MILLIS
}

/// A fresh id by that clock, so that what is begun on a page is younger than what was there.
pub fn new_id() -> Uuid {
    let seconds = u64::try_from(NOW_MILLIS / 1000).unwrap_or_default();
    Uuid::new_v7(Timestamp::from_unix(NoContext, seconds, 0))
}

/// Why the demo could not be entered: a fault of ours.
#[derive(Debug, thiserror::Error)]
pub enum TrainingError {
    /// The farm.
    #[error(transparent)]
    Farm(#[from] DemoError),
    /// The shape of an entry.
    #[error(transparent)]
    Compose(#[from] book::ComposeError),
    /// The book.
    #[error(transparent)]
    Store(#[from] StoreError),
    /// A page did not take what a person would have typed.
    #[error("{path} answered {status}")]
    Page {
        /// The page.
        path: String,
        /// Its status.
        status: u16,
    },
}

/// Enters the whole farm.
pub async fn enter(store: &Arc<dyn Store>, options: &SiteOptions) -> Result<(), TrainingError> {
    let farm = Farm::mango_ridge()?;
    let access = options.loopback.access();
    store.append(&access, farm.entries(&access)?).await?;
    let pages = serve::router(Site::new(Arc::clone(store), options.clone()));
    let page = post(&pages, "/before/new", "").await?;
    post(&pages, &format!("{page}/house"), &format!("house={}", farm.next_house.0)).await?;
    post(&pages, &page, &form(&farm.next)).await?;
    Ok(())
}

fn form(raws: &[Raw]) -> String {
    let mut form = form_urlencoded::Serializer::new(String::new());
    for raw in raws {
        for text in &raw.text {
            form.append_pair(&raw.key, text);
        }
    }
    form.finish()
}

/// Sends a form and follows to the address of the page it leads to.
async fn post(pages: &Router, path: &str, form: &str) -> Result<String, TrainingError> {
    let failed = |status| TrainingError::Page { path: path.to_owned(), status };
    let request = Request::post(path)
        .header(header::HOST, "localhost")
        .header(header::CONTENT_TYPE, "application/x-www-form-urlencoded")
        .body(Body::from(form.to_owned()))
        .map_err(|_| failed(0))?;
    let Ok(response) = pages.clone().oneshot(request).await;
    let led = response.headers().get(header::LOCATION).and_then(|to| to.to_str().ok());
    let path_of = |to: &str| to.split(['?', '#']).next().unwrap_or_default().to_owned();
    match led {
        Some(to) if response.status().is_redirection() => Ok(path_of(to)),
        _ => Err(failed(response.status().as_u16())),
    }
}
