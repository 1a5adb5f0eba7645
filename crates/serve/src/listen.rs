//! Listening: on this machine's loopback address, and over TLS for phones of the farm's own network that were joined.

use std::future::{Future, IntoFuture};
use std::net::{IpAddr, SocketAddr};
use std::sync::Arc;

use present::{Words, say};
use tokio::net::TcpListener;
use tokio::sync::watch;

use crate::network::{Certificate, CertificateError, Names, Network, TlsListener, Way, config};
use crate::route::{router, router_for};
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
    /// An address that is none of the farm's own network.
    #[error("{address} is not on a network of one's own")]
    NotNear {
        /// The address.
        address: SocketAddr,
    },
    /// The certificate cannot be used.
    #[error("the certificate {source}")]
    Certificate {
        /// What is wrong with it.
        #[from]
        source: CertificateError,
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
            ServeError::NotNear { address } => {
                say!(words, "listen-not-near", address = address.to_string())
            }
            ServeError::Certificate { source } => {
                say!(words, "listen-certificate", why = source.to_string())
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

/// How phones of the farm's network reach the book.
pub struct Phones {
    /// Where they come in, from [`bind_network`].
    pub listener: TcpListener,
    /// What this machine is called there.
    pub names: Names,
    /// What proves it.
    pub certificate: Certificate,
}

/// Listens on an address of the farm's own network.
///
/// # Errors
/// `NotNear` for an address that the whole world could reach, or that stands for any; `Bind`.
pub async fn bind_network(listen: SocketAddr) -> Result<TcpListener, ServeError> {
    if !is_near(listen.ip()) {
        return Err(ServeError::NotNear { address: listen });
    }
    TcpListener::bind(listen).await.map_err(|source| ServeError::Bind { address: listen, source })
}

/// Serves a site to this machine, and over TLS to the phones that are joined to it.
///
/// # Errors
/// `NotLoopback`, `Certificate`, `Listen`.
pub async fn serve_with_phones(
    mut site: Site,
    listener: TcpListener,
    phones: Phones,
    shutdown: impl Future<Output = ()> + Send + 'static,
) -> Result<(), ServeError> {
    let failed = |source| ServeError::Listen { source };
    loopback_alone(listener.local_addr().map_err(failed)?)?;
    let port = phones.listener.local_addr().map_err(failed)?.port();
    let authority = phones.certificate.authority.as_deref().map(Arc::from);
    let secured = TlsListener::over(phones.listener, config(&phones.certificate)?).map_err(failed)?;
    site.network = Some(Network { names: phones.names, port, authority });
    let site = Arc::new(site);
    let (ends, mut ended) = watch::channel(());
    let here =
        axum::serve(listener, router_for(Arc::clone(&site), Way::Here)).with_graceful_shutdown(async move {
            shutdown.await;
            drop(ends);
        });
    let there = axum::serve(secured, router_for(site, Way::Network)).with_graceful_shutdown(async move {
        // Ends with the other one, by whatever it ended.
        let _ = ended.changed().await;
    });
    tokio::try_join!(here.into_future(), there.into_future()).map(|_| ()).map_err(failed)
}

/// Addresses that routers hand out, and this machine's own.
fn is_near(address: IpAddr) -> bool {
    match address {
        IpAddr::V4(address) => address.is_private() || address.is_link_local() || address.is_loopback(),
        IpAddr::V6(address) => {
            address.is_unique_local() || address.is_unicast_link_local() || address.is_loopback()
        }
    }
}

fn loopback_alone(address: SocketAddr) -> Result<(), ServeError> {
    if address.ip().is_loopback() { Ok(()) } else { Err(ServeError::NotLoopback { address }) }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn phones_come_from_a_network_of_ones_own() {
        for address in
            ["192.168.4.2", "10.0.0.1", "172.16.3.4", "169.254.1.1", "127.0.0.1", "fd00::1", "fe80::1"]
        {
            assert!(is_near(address.parse().unwrap()), "{address}");
        }
        for address in ["0.0.0.0", "::", "8.8.8.8", "172.32.0.1", "2001:db8::1"] {
            assert!(!is_near(address.parse().unwrap()), "{address}");
        }
    }

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
