//! Listening, on this machine's loopback address alone.

use std::future::Future;
use std::net::SocketAddr;

use present::{Words, say};
use tokio::net::TcpListener;

use crate::route::router;
use crate::site::Site;

/// Why pages are not served.
#[derive(Debug, thiserror::Error)]
pub enum ServeError {
    /// An address that other machines can reach. Without accounts they would all be the owner.
    #[error("{address} can be reached from other machines, and there are no accounts yet")]
    NotLoopback {
        /// The address.
        address: SocketAddr,
    },
    /// The address cannot be listened on: most likely another program does.
    #[error("cannot listen on {address}: {source}")]
    Bind {
        /// The address.
        address: SocketAddr,
        /// The system's reason.
        source: std::io::Error,
    },
    /// Listening came to an end.
    #[error("listening failed: {source}")]
    Listen {
        /// The system's reason.
        source: std::io::Error,
    },
}

impl ServeError {
    /// The error in words for people.
    pub fn in_words(&self, words: &Words) -> String {
        match self {
            ServeError::NotLoopback { address } => {
                say!(words, "listen-refused", address = address.to_string())
            }
            ServeError::Bind { address, source } => {
                say!(words, "listen-taken", address = address.to_string(), why = source.to_string())
            }
            ServeError::Listen { source } => say!(words, "listen-failed", why = source.to_string()),
        }
    }
}

/// Serves a site until `shutdown` is ready; requests under way are then still answered.
///
/// # Errors
/// [`ServeError`]; an address that other machines can reach is refused before anything is opened.
pub async fn serve(
    site: Site,
    listen: SocketAddr,
    shutdown: impl Future<Output = ()> + Send + 'static,
) -> Result<(), ServeError> {
    serve_on(site, bind(listen).await?, shutdown).await
}

/// Listens on a loopback address; port 0 takes any free one, which the listener tells.
///
/// # Errors
/// `NotLoopback`, `Bind`.
pub async fn bind(listen: SocketAddr) -> Result<TcpListener, ServeError> {
    loopback_alone(listen)?;
    TcpListener::bind(listen).await.map_err(|source| ServeError::Bind { address: listen, source })
}

/// Serves a site on a listener that was made before.
///
/// # Errors
/// `NotLoopback`, `Listen`.
pub async fn serve_on(
    site: Site,
    listener: TcpListener,
    shutdown: impl Future<Output = ()> + Send + 'static,
) -> Result<(), ServeError> {
    loopback_alone(listener.local_addr().map_err(|source| ServeError::Listen { source })?)?;
    let serving = axum::serve(listener, router(site)).with_graceful_shutdown(shutdown);
    serving.await.map_err(|source| ServeError::Listen { source })
}

fn loopback_alone(address: SocketAddr) -> Result<(), ServeError> {
    if address.ip().is_loopback() { Ok(()) } else { Err(ServeError::NotLoopback { address }) }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn only_the_loopback_is_listened_on() {
        for address in ["127.0.0.1:80", "[::1]:8080", "127.9.9.9:1"] {
            assert!(loopback_alone(address.parse().unwrap()).is_ok(), "{address}");
        }
        for address in ["0.0.0.0:80", "[::]:80", "192.168.1.7:80", "8.8.8.8:80", "[::ffff:127.0.0.1]:80"] {
            let refused = loopback_alone(address.parse().unwrap());
            assert!(matches!(refused, Err(ServeError::NotLoopback { .. })), "{address}");
        }
    }
}
