//! Phones of the farm's network: who of them belongs to the book. A phone is joined once, by a code that only the book's own
//! machine shows, and is known from then on by a secret in its cookie.

use std::sync::{Mutex, PoisonError};

use axum::http::HeaderMap;
use axum::http::header::COOKIE;
use book::{Access, PersonId};
use serde::{Deserialize, Serialize};
use store::{Store, StoreError};
use uuid::Uuid;

use crate::session::Session;
use crate::stamp::digest;

/// How long a code can be used.
const CODE_MILLIS: i64 = 30 * 60_000;

/// The cookie; browsers keep one of such a name to this machine, to secure pages and to all of them.
const COOKIE_NAME: &str = "__Host-phone";

/// A year, seconds.
const COOKIE_AGE_S: u32 = 365 * 86_400;

/// What stands before a phone's key among the drafts: no part of the book, but of the file.
const KEY_PREFIX: &str = "phone/";

/// What stands in the file about a phone.
#[derive(Clone, Debug, Serialize, Deserialize)]
pub(crate) struct Joined {
    person: PersonId,
    /// When it was joined, milliseconds since 1970 UTC.
    pub(crate) joined_millis: i64,
}

/// The code that stands on the page of the book's own machine.
#[derive(Default)]
pub(crate) struct Invitation(Mutex<Option<(String, i64)>>);

impl Invitation {
    /// The code to show; a fresh one where none is left to use.
    pub(crate) fn code(&self, now_millis: i64, new_id: fn() -> Uuid) -> String {
        let mut standing = self.0.lock().unwrap_or_else(PoisonError::into_inner);
        match &*standing {
            // With half of its time before it.
            Some((code, until)) if now_millis < until - CODE_MILLIS / 2 => code.clone(),
            _ => {
                let code = secret(new_id);
                *standing = Some((code.clone(), now_millis + CODE_MILLIS));
                code
            }
        }
    }

    /// Whether a code can be used.
    pub(crate) fn holds(&self, code: &str, now_millis: i64) -> bool {
        let standing = self.0.lock().unwrap_or_else(PoisonError::into_inner);
        standing.as_ref().is_some_and(|(known, until)| same(known, code) && now_millis < *until)
    }

    /// Uses a code: whether it held. It holds once.
    pub(crate) fn take(&self, code: &str, now_millis: i64) -> bool {
        let holds = self.holds(code, now_millis);
        if holds {
            *self.0.lock().unwrap_or_else(PoisonError::into_inner) = None;
        }
        holds
    }
}

/// Compares digests, so that how long it takes says nothing about the code.
fn same(one: &str, other: &str) -> bool {
    digest(&[one]) == digest(&[other])
}

/// What nobody guesses: the chance of two ids.
fn secret(new_id: fn() -> Uuid) -> String {
    format!("{}{}", new_id().simple(), new_id().simple())
}

/// Joins a phone; gives the cookie by which it is known.
pub(crate) async fn join(
    store: &dyn Store,
    session: &Session,
    now_millis: i64,
    new_id: fn() -> Uuid,
) -> Result<String, StoreError> {
    let secret = secret(new_id);
    let joined = Joined { person: PersonId(new_id()), joined_millis: now_millis };
    let body = serde_json::json!(joined);
    store.put_draft(&session.access(), &key_of(&secret), &body, now_millis).await?;
    Ok(format!("{COOKIE_NAME}={secret}; Path=/; Secure; HttpOnly; SameSite=Strict; Max-Age={COOKIE_AGE_S}"))
}

/// Leave for a phone that was joined.
pub(crate) async fn access(
    store: &dyn Store,
    session: &Session,
    headers: &HeaderMap,
) -> Result<Option<Access>, StoreError> {
    let Some(secret) = cookie(headers) else { return Ok(None) };
    let kept = store.draft(&session.access(), &key_of(secret)).await?;
    let joined = kept.and_then(|draft| serde_json::from_value::<Joined>(draft.body).ok());
    Ok(joined.map(|joined| session.helper(joined.person, secret)))
}

fn cookie(headers: &HeaderMap) -> Option<&str> {
    let cookies = headers.get_all(COOKIE).iter().filter_map(|header| header.to_str().ok());
    let mut pairs =
        cookies.flat_map(|header| header.split(';')).filter_map(|pair| pair.trim().split_once('='));
    pairs.find(|(name, _)| *name == COOKIE_NAME).map(|(_, secret)| secret)
}

/// The secret itself is kept nowhere but on the phone.
fn key_of(secret: &str) -> String {
    format!("{KEY_PREFIX}{}", digest(&[secret]))
}

/// The phones that were joined, with the names they are forgotten by.
pub(crate) async fn all(store: &dyn Store, session: &Session) -> Result<Vec<(String, Joined)>, StoreError> {
    let drafts = store.drafts(&session.access()).await?;
    let joined = drafts.into_iter().filter_map(|draft| {
        let name = draft.key.strip_prefix(KEY_PREFIX)?.to_owned();
        Some((name, serde_json::from_value(draft.body).ok()?))
    });
    let mut joined: Vec<(String, Joined)> = joined.collect();
    joined.sort_by_key(|(_, joined)| joined.joined_millis);
    Ok(joined)
}

/// Forgets a phone: what it wrote stays, and it writes no more.
pub(crate) async fn forget(store: &dyn Store, session: &Session, name: &str) -> Result<bool, StoreError> {
    store.delete_draft(&session.access(), &format!("{KEY_PREFIX}{name}")).await
}

#[cfg(test)]
mod tests {
    use super::*;

    fn new_id() -> Uuid {
        use std::sync::atomic::{AtomicU64, Ordering};
        static MADE: AtomicU64 = AtomicU64::new(1);
        Uuid::from_u128(MADE.fetch_add(1, Ordering::Relaxed).into())
    }

    #[test]
    fn a_code_holds_once_and_not_for_long() {
        let invitation = Invitation::default();
        assert!(!invitation.take("", 0));
        let code = invitation.code(0, new_id);
        assert_eq!(invitation.code(1_000, new_id), code, "the page can be looked at again");
        assert!(!invitation.holds(&code, CODE_MILLIS) && !invitation.holds("other", 1));
        assert!(invitation.take(&code, 1_000));
        assert!(!invitation.take(&code, 1_001));
        assert_ne!(invitation.code(2_000, new_id), code);
    }
}
