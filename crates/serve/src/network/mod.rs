//! The farm's own network: phones reach the book over TLS, and only those that were joined.

mod authority;
pub(crate) mod joining;
mod listener;

pub use authority::{Certificate, Names, certificate};
pub use listener::CertificateError;
pub(crate) use listener::{TlsListener, config};

use std::sync::Arc;

/// How the farm's network reaches the book.
#[derive(Clone)]
pub(crate) struct Network {
    /// What this machine is called there.
    pub(crate) names: Names,
    /// The port.
    pub(crate) port: u16,
    /// The authority that phones install, PEM; none where the certificate was given.
    pub(crate) authority: Option<Arc<str>>,
}

impl Network {
    /// The address that phones open.
    pub(crate) fn origin(&self) -> String {
        format!("https://{}:{}", self.names.host(), self.port)
    }
}

/// The way by which a request came.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Way {
    /// From this very machine: its owner.
    Here,
    /// From the farm's network.
    Network,
}
