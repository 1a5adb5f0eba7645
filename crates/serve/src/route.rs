//! Every page there is: method, path, who may, and what answers. The router is made of this table and of nothing else.

use std::future::Future;
use std::pin::Pin;
use std::sync::Arc;

use axum::Router;
use axum::extract::{DefaultBodyLimit, Request};
use axum::http::HeaderMap;
use axum::middleware::{from_fn, from_fn_with_state};
use axum::response::{IntoResponse, Response};
use axum::routing::{MethodFilter, on};
use book::Access;
use tower_http::compression::CompressionLayer;
use tower_http::compression::predicate::{DefaultPredicate, NotForContentType, Predicate};
use tower_http::csrf::CsrfLayer;

use crate::call::{Brings, Call, Reply};
use crate::guard;
use crate::network::{Way, joining};
use crate::pages::{
    air, answers, asset, before, entry, home, kept, paste, phones, settle as apart, sight, sums, today, week,
    weigh, working, write,
};
use crate::site::Site;
use crate::trouble::Trouble;
use crate::{adopt, calendar, house, print, queue, settle, sync, tick};

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
    /// Whoever sits at the book's own machine.
    Here,
    /// Anyone who reaches it: what is shown says nothing of the book.
    Anyone,
}

impl Rule {
    /// What keeps somebody out, if anything does.
    fn refuses(self, way: Way, access: Option<&Access>) -> Option<Trouble> {
        match (self, access) {
            (Rule::Anyone, _) => None,
            (_, None) => Some(Trouble::NotJoined),
            (Rule::Here, _) if way != Way::Here => Some(Trouble::NotFound),
            (Rule::Reader, Some(_)) => None,
            (Rule::Writer | Rule::Here, Some(access)) => {
                (!access.may_write()).then_some(Trouble::MayOnlyLook)
            }
        }
    }
}

type Answering = Pin<Box<dyn Future<Output = Reply> + Send>>;

/// One row.
pub(crate) struct Route {
    pub(crate) verb: Verb,
    pub(crate) path: &'static str,
    pub(crate) rule: Rule,
    brings: Brings,
    handler: fn(Call) -> Answering,
}

macro_rules! row {
    ($verb:ident $path:literal $rule:ident $handler:path) => {
        row!($verb $path $rule Form $handler)
    };
    ($verb:ident $path:literal $rule:ident $brings:ident $handler:path) => {
        Route {
            verb: Verb::$verb,
            path: $path,
            rule: Rule::$rule,
            brings: Brings::$brings,
            handler: |call| Box::pin($handler(call)),
        }
    };
}

/// The table.
pub(crate) static ROUTES: &[Route] = &[
    row!(Get "/" Reader home::show),
    row!(Post "/before/new" Writer before::create),
    row!(Get "/before/{id}" Reader before::show),
    row!(Post "/before/{id}" Writer answers::save),
    row!(Get "/before/{id}/answers" Reader answers::show),
    row!(Get "/before/{id}/working/{figure}" Reader working::show),
    row!(Get "/before/{id}/part/{part}" Reader working::part),
    row!(Get "/before/{id}/air" Reader air::of_plan),
    row!(Post "/before/{id}/house" Writer house::choose),
    row!(Post "/before/{id}/adopt" Writer adopt::adopt),
    row!(Post "/before/{id}/settle" Writer settle::settle),
    row!(Get "/before/{id}/print/{sheet}" Reader print::sheet),
    row!(Get "/before/{id}/plan.json" Reader print::json),
    row!(Get "/before/{id}/calendar.ics" Reader calendar::show),
    row!(Get "/batch/{id}" Reader today::show),
    row!(Post "/batch/{id}/day" Writer today::save),
    row!(Post "/batch/{id}/tick" Writer tick::tick),
    row!(Post "/batch/{id}/settle" Writer apart::settle),
    row!(Get "/batch/{id}/write/{kind}" Writer write::show),
    row!(Post "/batch/{id}/write/{kind}" Writer write::save),
    row!(Get "/batch/{id}/entry/{entry}" Reader entry::show),
    row!(Post "/batch/{id}/entry/{entry}" Writer tick::take_back),
    row!(Get "/batch/{id}/day/{date}" Reader entry::of_day),
    row!(Get "/batch/{id}/watch" Reader sight::watch),
    row!(Get "/batch/{id}/growing" Reader sight::growing),
    row!(Get "/batch/{id}/air" Reader air::of_batch),
    row!(Get "/batch/{id}/store" Reader sight::store),
    row!(Get "/batch/{id}/brooding" Reader sight::brooding),
    row!(Get "/batch/{id}/health" Reader sight::of_health),
    row!(Get "/batch/{id}/sale" Reader sight::of_sale),
    row!(Get "/batch/{id}/closing" Reader sight::of_closing),
    row!(Get "/batch/{id}/weigh" Writer weigh::show),
    row!(Get "/batch/{id}/weighed" Reader sight::weighed),
    row!(Get "/batch/{id}/print/{sheet}" Reader print::of_batch),
    row!(Get "/batch/{id}/calendar.ics" Reader calendar::of_batch),
    row!(Get "/batch/{id}/paste" Writer paste::show),
    row!(Post "/batch/{id}/paste" Writer paste::save),
    row!(Get "/batch/{id}/week" Writer week::show),
    row!(Post "/batch/{id}/week" Writer week::save),
    row!(Get "/batch/{id}/working/{figure}" Reader working::of_batch),
    row!(Get "/sums" Reader sums::list),
    row!(Get "/sums/{name}" Reader sums::show),
    row!(Get "/waiting" Reader kept::waiting),
    row!(Get "/no-signal" Reader kept::no_signal),
    row!(Get "/phones" Here phones::show),
    row!(Post "/phones/forget" Here phones::forget),
    row!(Get "/join/{code}" Anyone phones::invited),
    row!(Post "/join/{code}" Anyone phones::join),
    row!(Get "/certificate" Anyone phones::certificate),
    row!(Get "/style.css" Anyone asset::style),
    row!(Get "/queue.js" Anyone asset::queue),
    row!(Get "/script.js" Anyone asset::script),
    row!(Get "/worker.js" Anyone asset::worker),
    row!(Post "/queue" Writer Queue queue::take),
    row!(Get "/sync" Reader Talk sync::greet),
    row!(Post "/sync" Reader Talk sync::hear),
];

/// All pages of a site.
pub fn router(site: Site) -> Router {
    router_of(Arc::new(site), ROUTES, Way::Here)
}

/// The same for phones of the farm's network.
pub(crate) fn router_for(site: Arc<Site>, way: Way) -> Router {
    router_of(site, ROUTES, way)
}

fn router_of(site: Arc<Site>, routes: &'static [Route], way: Way) -> Router {
    let mut router = Router::new();
    for route in routes {
        let site = Arc::clone(&site);
        let answering = move |request: Request| answer(Arc::clone(&site), route, way, request);
        router = router.route(route.path, on(route.verb.filter(), answering));
    }
    let compressed = DefaultPredicate::new().and(NotForContentType::new("application/pdf"));
    router
        .fallback(|| async { Trouble::NotFound })
        .method_not_allowed_fallback(|| async { Trouble::WrongMethod })
        .layer(DefaultBodyLimit::max(FORM_BYTES_MAX))
        .layer(CsrfLayer::new())
        .layer(from_fn_with_state((Arc::clone(&site), way), guard::known_host))
        .layer(from_fn_with_state((site, way), guard::tell_trouble))
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

/// Who asks: the owner at this machine, or a phone that was joined.
async fn access(site: &Site, way: Way, headers: HeaderMap) -> Result<Option<Access>, Trouble> {
    match way {
        Way::Here => Ok(Some(site.session.access())),
        Way::Network => Ok(joining::access(&*site.store, &site.session, &headers).await?),
    }
}

async fn answer(site: Arc<Site>, route: &'static Route, way: Way, request: Request) -> Response {
    let access = match access(&site, way, request.headers().clone()).await {
        Ok(access) => access,
        Err(trouble) => return trouble.into_response(),
    };
    if let Some(trouble) = route.rule.refuses(way, access.as_ref()) {
        return trouble.into_response();
    }
    let access = access.unwrap_or_else(|| site.session.stranger());
    // On a task of its own what was begun is finished although the asker has gone, and a panic ends nothing but the task.
    let task = tokio::spawn(async move {
        let call = Call::read(site, (way, access), route.brings, request).await?;
        (route.handler)(call).await
    });
    match task.await {
        Ok(Ok(response)) => response,
        Ok(Err(trouble)) => trouble.into_response(),
        Err(_) => Trouble::Broken.into_response(),
    }
}

#[cfg(test)]
mod tests {
    use axum::body::{Body, to_bytes};
    use axum::http::StatusCode;
    use book::{DeviceId, FarmId, PersonId, Role};
    use store::{Farm, SqliteStore, Store};
    use tower::ServiceExt;
    use uuid::Uuid;

    use super::*;
    use crate::session::Loopback;
    use crate::site::SiteOptions;

    async fn site(role: Role, farm_is_made: bool) -> Site {
        let id = Uuid::from_u128(1);
        let loopback = Loopback { farm: FarmId(id), person: PersonId(id), device: DeviceId(id), role };
        let store = SqliteStore::in_memory().unwrap();
        if farm_is_made {
            store.create_farm(Farm { id: FarmId(id), created_millis: 1 }).await.unwrap();
        }
        let options = SiteOptions {
            loopback,
            demo: false,
            version: String::new(),
            now: || 1,
            new_id: || Uuid::from_u128(2),
        };
        Site::new(Arc::new(store), options)
    }

    fn request(route: &Route) -> Request {
        let id = Uuid::from_u128(9).to_string();
        let path = route.path.replace("{id}", &id).replace("{sheet}", "plan").replace("{name}", "litter");
        let path = path.replace("{figure}", "space.limit").replace("{part}", "days");
        let path = path.replace("{kind}", "note").replace("{date}", "2027-05-12").replace("{entry}", &id);
        let method = if route.verb == Verb::Get { "GET" } else { "POST" };
        Request::builder().method(method).uri(path).header("host", "localhost").body(Body::empty()).unwrap()
    }

    #[tokio::test]
    async fn each_rows_rule_is_kept() {
        for (role, may_write) in [(Role::Owner, true), (Role::Helper, true), (Role::Viewer, false)] {
            let router = router(site(role, true).await);
            for route in ROUTES {
                let status = router.clone().oneshot(request(route)).await.unwrap().status();
                let refused = status == StatusCode::FORBIDDEN;
                assert_eq!(
                    refused,
                    matches!(route.rule, Rule::Writer | Rule::Here) && !may_write,
                    "{role:?} {}",
                    route.path
                );
                assert_ne!(status, StatusCode::METHOD_NOT_ALLOWED, "{}", route.path);
            }
        }
    }

    #[tokio::test]
    async fn a_stranger_on_the_network_sees_what_is_for_anyone_and_nothing_else() {
        let router = router_for(Arc::new(site(Role::Owner, true).await), Way::Network);
        for route in ROUTES {
            for cookie in ["", "__Host-phone=guessed", "__Host-phone="] {
                let mut request = request(route);
                request.headers_mut().insert("cookie", cookie.parse().unwrap());
                let response = router.clone().oneshot(request).await.unwrap();
                let page = text(response).await;
                assert_eq!(
                    page.contains("not joined to the book"),
                    route.rule != Rule::Anyone,
                    "{}",
                    route.path
                );
            }
        }
    }

    #[test]
    fn whatever_is_sent_by_a_form_is_for_writers() {
        let by_form = |route: &&Route| route.verb == Verb::Post && route.brings == Brings::Form;
        let for_writers = |route: &Route| matches!(route.rule, Rule::Writer | Rule::Here);
        let joins = |route: &Route| route.path == "/join/{code}";
        assert!(ROUTES.iter().filter(by_form).all(|route| for_writers(route) || joins(route)));
    }

    #[tokio::test]
    async fn a_panic_is_a_page_of_trouble_and_nothing_more() {
        async fn panics(_: Call) -> Reply {
            panic!("on purpose, as a test of what then happens")
        }
        static PANICS: &[Route] = &[row!(Get "/" Reader panics)];
        let router = router_of(Arc::new(site(Role::Owner, true).await), PANICS, Way::Here);
        for _ in 0..3 {
            let response = router.clone().oneshot(request(&PANICS[0])).await.unwrap();
            assert_eq!(response.status(), StatusCode::INTERNAL_SERVER_ERROR);
            assert!(text(response).await.contains("Something broke"));
        }
    }

    async fn text(response: Response) -> String {
        let page = to_bytes(response.into_body(), usize::MAX).await.unwrap();
        String::from_utf8(page.to_vec()).unwrap()
    }

    #[tokio::test]
    async fn a_book_that_cannot_be_written_is_told_in_words() {
        let router = router(site(Role::Owner, false).await);
        let new = ROUTES.iter().find(|route| route.path == "/before/new").unwrap();
        let response = router.oneshot(request(new)).await.unwrap();
        assert_eq!(response.status(), StatusCode::INTERNAL_SERVER_ERROR);
        assert!(text(response).await.contains("The book could not be read or written"));
    }
}
