//! A request as the handlers see it, and the answers they give.

use std::collections::BTreeMap;
use std::sync::Arc;

use axum::RequestExt;
use axum::body::{Body, Bytes, to_bytes};
use axum::extract::{Form, FromRequest, Query, RawPathParams, Request};
use axum::http::{HeaderValue, StatusCode, header};
use axum::response::{IntoResponse, Response};
use book::sync::TALK_BYTES_MAX;
use book::{Access, EntryId};
use maud::Markup;
use present::Viewer;
use uuid::Uuid;

use crate::desk::Open;
use crate::network::Way;
use crate::queue::{QUEUE, QUEUE_BYTES_MAX};
use crate::site::Site;
use crate::stamp::Stamp;
use crate::sync::TALK;
use crate::trouble::Trouble;

/// The sort of content a page is.
const HTML: &str = "text/html; charset=utf-8";

/// What a handler answers.
pub(crate) type Reply = Result<Response, Trouble>;

/// One request, with leave to answer it.
pub(crate) struct Call {
    /// The pages it was sent to.
    pub(crate) site: Arc<Site>,
    /// By which way it came.
    pub(crate) way: Way,
    /// Who asks.
    pub(crate) access: Access,
    /// Path and query as sent.
    pub(crate) target: String,
    /// The parameters of the path.
    params: BTreeMap<String, String>,
    /// The parameters of the query, in order.
    pub(crate) query: Vec<(String, String)>,
    /// The fields of the form, in order.
    pub(crate) form: Vec<(String, String)>,
    /// What another book or a phone's queue says, on the rows that answer it.
    pub(crate) talk: Bytes,
    known: Option<String>,
}

/// What a request brings.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Brings {
    /// A form.
    Form,
    /// Messages of another book.
    Talk,
    /// What has waited on a phone.
    Queue,
}

impl Call {
    /// Reads a request.
    pub(crate) async fn read(
        site: Arc<Site>,
        (way, access): (Way, Access),
        brings: Brings,
        mut request: Request,
    ) -> Result<Call, Trouble> {
        let params = request.extract_parts::<RawPathParams>().await.map_err(|_| Trouble::NotFound)?;
        let params = params.iter().map(|(key, value)| (key.to_owned(), value.to_owned())).collect();
        let target = request.uri().path_and_query().map_or_else(String::new, ToString::to_string);
        let Query(query) = Query::try_from_uri(request.uri()).map_err(|_| Trouble::Unreadable)?;
        let known = request.headers().get(header::IF_NONE_MATCH);
        let known = known.and_then(|value| value.to_str().ok()).map(str::to_owned);
        let (form, talk) = match brings {
            Brings::Form => (read_form(request).await?, Bytes::new()),
            Brings::Talk => (Vec::new(), read_whole(request, TALK, TALK_BYTES_MAX).await?),
            Brings::Queue => (Vec::new(), read_whole(request, QUEUE, QUEUE_BYTES_MAX).await?),
        };
        Ok(Call { site, way, access, target, params, query, form, talk, known })
    }

    /// A part of the path.
    pub(crate) fn param(&self, name: &str) -> &str {
        self.params.get(name).map_or("", String::as_str)
    }

    /// The id in the path; whatever is no id is the name of nothing.
    pub(crate) fn id(&self) -> Result<Uuid, Trouble> {
        Uuid::try_parse(self.param("id")).map_err(|_| Trouble::NotFound)
    }

    /// The id of an entry in the path.
    pub(crate) fn entry(&self) -> Result<EntryId, Trouble> {
        Uuid::try_parse(self.param("entry")).map(EntryId).map_err(|_| Trouble::NotFound)
    }

    /// A parameter of the query.
    pub(crate) fn asked(&self, name: &str) -> Option<&str> {
        find(&self.query, name)
    }

    /// A field of the form.
    pub(crate) fn sent(&self, name: &str) -> Option<&str> {
        find(&self.form, name)
    }

    /// The stamp of the answer: of the address, the book as it stands, the rules, who looks, and whatever else is named.
    pub(crate) fn stamp(&self, open: &Open, viewer: &Viewer, more: &[&str]) -> Stamp {
        let options = &self.site.options;
        let standing = format!(
            "{:?} {:?} {:?} {:?} {} {} {}",
            self.access.farm(),
            open.reach,
            viewer,
            self.access.role(),
            advice::RULES_VERSION,
            options.demo,
            options.version
        );
        let mut parts = vec![self.target.as_str(), standing.as_str()];
        parts.extend_from_slice(more);
        Stamp::of(&parts)
    }

    /// What needs no making: `304 Not Modified` where the asker has this very answer, and a page that was made before.
    pub(crate) fn unless_known(&self, stamp: &Stamp) -> Option<Response> {
        if self.known.as_deref().is_some_and(|known| stamp.is_in(known)) {
            return Some(stamped(StatusCode::NOT_MODIFIED.into_response(), stamp));
        }
        let page = self.site.shelf.get(stamp)?;
        Some(stamped(answer(StatusCode::OK, HTML, page.into()), stamp))
    }

    /// A page that was asked for, not sent: whoever asks next gets the same until something changes.
    pub(crate) fn page(&self, stamp: &Stamp, page: Markup) -> Response {
        let page = Bytes::from(page.into_string());
        self.site.shelf.put(stamp, page.clone());
        stamped(answer(StatusCode::OK, HTML, page.into()), stamp)
    }
}

/// The first of some pairs with a name.
pub(crate) fn find<'a>(pairs: &'a [(String, String)], name: &str) -> Option<&'a str> {
    pairs.iter().find(|(key, _)| key == name).map(|(_, value)| value.as_str())
}

/// A form is read where one was sent; a button alone sends none.
async fn read_form(request: Request) -> Result<Vec<(String, String)>, Trouble> {
    if request.method().is_safe() || !request.headers().contains_key(header::CONTENT_TYPE) {
        return Ok(Vec::new());
    }
    match Form::from_request(request, &()).await {
        Ok(Form(pairs)) => Ok(pairs),
        Err(refused) if refused.status() == StatusCode::PAYLOAD_TOO_LARGE => Err(Trouble::TooLarge),
        Err(_) => Err(Trouble::Unreadable),
    }
}

/// What another book or a phone says, whole: half of it would be asked for again anyway. A page of somebody else can send
/// neither sort of content without asking first, and is never answered.
async fn read_whole(request: Request, sort: &str, bytes_max: usize) -> Result<Bytes, Trouble> {
    if request.method().is_safe() {
        return Ok(Bytes::new());
    }
    let named = request.headers().get(header::CONTENT_TYPE);
    if named.is_none_or(|named| named != sort) {
        return Err(Trouble::Unreadable);
    }
    let told = request.headers().get(header::CONTENT_LENGTH).and_then(|length| length.to_str().ok());
    if told.and_then(|length| length.parse().ok()).is_some_and(|length: usize| length > bytes_max) {
        return Err(Trouble::TooLarge);
    }
    to_bytes(request.into_body(), bytes_max).await.map_err(|_| Trouble::Unreadable)
}

/// A page with a status of its own.
pub(crate) fn html(status: StatusCode, page: Markup) -> Response {
    answer(status, HTML, page.into_string().into())
}

/// Bytes of some sort.
pub(crate) fn answer(status: StatusCode, sort: &'static str, body: Body) -> Response {
    (status, [(header::CONTENT_TYPE, HeaderValue::from_static(sort))], body).into_response()
}

/// With its stamp.
pub(crate) fn stamped(mut response: Response, stamp: &Stamp) -> Response {
    if let Ok(tag) = HeaderValue::from_str(stamp.as_str()) {
        response.headers_mut().insert(header::ETAG, tag);
    }
    response
}

/// Sends the asker on after something was written, so that reloading writes nothing twice.
pub(crate) fn see_other(to: &str) -> Response {
    let Ok(to) = HeaderValue::from_str(to) else { return Trouble::Broken.into_response() };
    (StatusCode::SEE_OTHER, [(header::LOCATION, to)]).into_response()
}
