//! Every page there is: method, path, who may, and what answers. The router is made of this table and of nothing else.

use std::future::Future;
use std::pin::Pin;
use std::sync::Arc;

use axum::Router;
use axum::extract::{DefaultBodyLimit, Request};
use axum::middleware::{from_fn, from_fn_with_state};
use axum::response::{IntoResponse, Response};
use axum::routing::{MethodFilter, on};
use book::Access;
use tower_http::compression::CompressionLayer;
use tower_http::compression::predicate::{DefaultPredicate, NotForContentType, Predicate};
use tower_http::csrf::CsrfLayer;

use crate::call::{Call, Reply};
use crate::guard;
use crate::pages::{before, home, style, sums};
use crate::site::Site;
use crate::trouble::Trouble;
use crate::{adopt, house, print, settle};

/// The most bytes of a form: some seventy answers of a line each, many times over.
const FORM_BYTES_MAX: usize = 256 * 1024;

/// Which method a row answers; a row for `Get` answers HEAD too.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Verb {
    Get,
    Post,
}

/// Who may.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Rule {
    /// Whoever belongs to the farm.
    Reader,
    /// Whoever may write in its book.
    Writer,
}

impl Rule {
    fn allows(self, access: &Access) -> bool {
        match self {
            Rule::Reader => true,
            Rule::Writer => access.may_write(),
        }
    }
}

type Answering = Pin<Box<dyn Future<Output = Reply> + Send>>;

/// One row.
pub(crate) struct Route {
    pub(crate) verb: Verb,
    pub(crate) path: &'static str,
    pub(crate) rule: Rule,
    handler: fn(Call) -> Answering,
}

macro_rules! row {
    ($verb:ident $path:literal $rule:ident $handler:path) => {
        Route { verb: Verb::$verb, path: $path, rule: Rule::$rule, handler: |call| Box::pin($handler(call)) }
    };
}

/// The table.
pub(crate) static ROUTES: &[Route] = &[
    row!(Get "/" Reader home::show),
    row!(Post "/before/new" Writer before::create),
    row!(Get "/before/{id}" Reader before::show),
    row!(Post "/before/{id}" Writer before::save),
    row!(Post "/before/{id}/house" Writer house::choose),
    row!(Post "/before/{id}/adopt" Writer adopt::adopt),
    row!(Post "/before/{id}/settle" Writer settle::settle),
    row!(Get "/before/{id}/print/{sheet}" Reader print::sheet),
    row!(Get "/before/{id}/plan.json" Reader print::json),
    row!(Get "/sums" Reader sums::list),
    row!(Get "/sums/{name}" Reader sums::show),
    row!(Get "/style.css" Reader style::show),
];

/// All pages of a site.
pub fn router(site: Site) -> Router {
    let site = Arc::new(site);
    let mut router = Router::new();
    for route in ROUTES {
        let site = Arc::clone(&site);
        let answering = move |request: Request| answer(Arc::clone(&site), route, request);
        router = router.route(route.path, on(route.verb.filter(), answering));
    }
    let compressed = DefaultPredicate::new().and(NotForContentType::new("application/pdf"));
    router
        .fallback(|| async { Trouble::NotFound })
        .method_not_allowed_fallback(|| async { Trouble::WrongMethod })
        .layer(DefaultBodyLimit::max(FORM_BYTES_MAX))
        .layer(CsrfLayer::new())
        .layer(from_fn(guard::known_host))
        .layer(from_fn_with_state(site, guard::tell_trouble))
        .layer(CompressionLayer::new().compress_when(compressed))
        .layer(from_fn(guard::harden))
}

impl Verb {
    fn filter(self) -> MethodFilter {
        match self {
            Verb::Get => MethodFilter::GET,
            Verb::Post => MethodFilter::POST,
        }
    }
}

async fn answer(site: Arc<Site>, route: &'static Route, request: Request) -> Response {
    let access = site.session.access();
    if !route.rule.allows(&access) {
        return Trouble::MayOnlyLook.into_response();
    }
    // On a task of its own what was begun is finished although the asker has gone, and a panic ends nothing but the task.
    let task = tokio::spawn(async move {
        let call = Call::read(site, access, request).await?;
        (route.handler)(call).await
    });
    match task.await {
        Ok(Ok(response)) => response,
        Ok(Err(trouble)) => trouble.into_response(),
        Err(_) => Trouble::Broken.into_response(),
    }
}
