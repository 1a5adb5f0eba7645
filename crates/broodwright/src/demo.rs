//! The invented farm, entered the way a person would: through the pages, into a book that is gone afterwards.

use advice::plan_file;
use axum::Router;
use axum::body::Body;
use axum::http::{Request, header};
use quantity::Raw;
use tower::ServiceExt;

/// The invented plans, the one to look at first last, since pages show the newest first.
const PLANS: &[&str] =
    &[include_str!("../../../demo/mango-ridge-lower.toml"), include_str!("../../../demo/mango-ridge.toml")];

/// Why the demo could not be entered: a fault of ours.
#[derive(Debug, thiserror::Error)]
pub enum DemoError {
    /// A plan file of the demo does not read.
    #[error("a plan of the demo does not read: {0}")]
    Plan(#[from] plan_file::FileFault),
    /// A page did not take what a person would have typed.
    #[error("{path} answered {status}")]
    Page {
        /// The page.
        path: String,
        /// Its status.
        status: u16,
    },
}

/// Enters all plans of the demo.
pub async fn enter(pages: &Router) -> Result<(), DemoError> {
    for (at, plan) in PLANS.iter().enumerate() {
        let raws = plan_file::read(plan)?;
        let page = post(pages, "/before/new", "").await?;
        if at > 0 {
            // Every plan of the demo stands in a house of its own.
            post(pages, &format!("{page}/house"), "house=new").await?;
        }
        post(pages, &page, &form(&raws)).await?;
    }
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
async fn post(pages: &Router, path: &str, form: &str) -> Result<String, DemoError> {
    let failed = |status| DemoError::Page { path: path.to_owned(), status };
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
