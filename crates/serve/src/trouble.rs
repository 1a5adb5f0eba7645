//! What keeps a page from being shown, with its status and its words.

use axum::body::Body;
use axum::http::StatusCode;
use axum::response::{IntoResponse, Response};
use store::StoreError;

use crate::desk::WriteError;
use crate::exchange::ExchangeError;

/// What keeps a page from being shown. The words are the messages `trouble-NAME` and `trouble-NAME-what-next`.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Trouble {
    /// No such page, plan or sum.
    NotFound,
    /// A page that is there, asked in a way that it does not answer.
    WrongMethod,
    /// Somebody who may only look wants to write.
    MayOnlyLook,
    /// A phone of the network that was not joined.
    NotJoined,
    /// A code to join with that was used, or is too old.
    NotInvited,
    /// A name that this machine does not go by: the page of somebody else could hide behind it.
    WrongHost,
    /// A form that was sent from a page of somebody else.
    ForeignForm,
    /// More than any form holds.
    TooLarge,
    /// A form that cannot be read, or that chooses what is not there.
    Unreadable,
    /// The book could not be read or written.
    Book,
    /// The disk is full.
    DiskFull,
    /// Another program keeps the book locked.
    Busy,
    /// A fault of this program.
    Broken,
}

impl Trouble {
    /// The status that goes with it.
    pub(crate) fn status(self) -> StatusCode {
        match self {
            Trouble::NotFound => StatusCode::NOT_FOUND,
            Trouble::WrongMethod => StatusCode::METHOD_NOT_ALLOWED,
            Trouble::MayOnlyLook | Trouble::NotJoined | Trouble::NotInvited | Trouble::ForeignForm => {
                StatusCode::FORBIDDEN
            }
            Trouble::WrongHost => StatusCode::MISDIRECTED_REQUEST,
            Trouble::TooLarge => StatusCode::PAYLOAD_TOO_LARGE,
            Trouble::Unreadable => StatusCode::BAD_REQUEST,
            Trouble::DiskFull => StatusCode::INSUFFICIENT_STORAGE,
            Trouble::Busy => StatusCode::SERVICE_UNAVAILABLE,
            Trouble::Book | Trouble::Broken => StatusCode::INTERNAL_SERVER_ERROR,
        }
    }

    /// The message that says it.
    pub(crate) fn message(self) -> &'static str {
        match self {
            Trouble::NotFound => "trouble-not-found",
            Trouble::WrongMethod => "trouble-wrong-method",
            Trouble::MayOnlyLook => "trouble-may-only-look",
            Trouble::NotJoined => "trouble-not-joined",
            Trouble::NotInvited => "trouble-not-invited",
            Trouble::WrongHost => "trouble-wrong-host",
            Trouble::ForeignForm => "trouble-foreign-form",
            Trouble::TooLarge => "trouble-too-large",
            Trouble::Unreadable => "trouble-unreadable",
            Trouble::Book => "trouble-book",
            Trouble::DiskFull => "trouble-disk-full",
            Trouble::Busy => "trouble-busy",
            Trouble::Broken => "trouble-broken",
        }
    }
}

/// Without a page: the outermost layer makes one in the words of whoever looks.
impl IntoResponse for Trouble {
    fn into_response(self) -> Response {
        let mut response = Response::new(Body::empty());
        *response.status_mut() = self.status();
        response.extensions_mut().insert(self);
        response
    }
}

impl From<StoreError> for Trouble {
    fn from(error: StoreError) -> Trouble {
        match error {
            StoreError::DraftTooLarge { .. } => Trouble::TooLarge,
            StoreError::Forbidden { .. } => Trouble::MayOnlyLook,
            StoreError::DiskFull => Trouble::DiskFull,
            StoreError::Busy => Trouble::Busy,
            other => {
                // The grower is told what to do; whoever looks after the machine is told what it was.
                eprintln!("book: {other}");
                Trouble::Book
            }
        }
    }
}

impl From<WriteError> for Trouble {
    fn from(error: WriteError) -> Trouble {
        match error {
            WriteError::Store(error) => error.into(),
            WriteError::Compose(error) => {
                eprintln!("entry: {error}");
                Trouble::Broken
            }
        }
    }
}

impl From<ExchangeError> for Trouble {
    fn from(error: ExchangeError) -> Trouble {
        match error {
            ExchangeError::Store(error) => error.into(),
            ExchangeError::Unsaid(error) => {
                eprintln!("sync: {error}");
                Trouble::Broken
            }
        }
    }
}
