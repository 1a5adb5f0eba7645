//! Connections from the farm's network, over TLS.

use std::future::pending;
use std::io;
use std::net::SocketAddr;
use std::sync::Arc;
use std::time::Duration;

use axum::serve::Listener;
use tokio::net::{TcpListener, TcpStream};
use tokio::sync::Semaphore;
use tokio::sync::mpsc::{Receiver, Sender, channel};
use tokio::task::JoinHandle;
use tokio_rustls::TlsAcceptor;
use tokio_rustls::rustls::crypto::ring;
use tokio_rustls::rustls::pki_types::pem::PemObject;
use tokio_rustls::rustls::pki_types::{CertificateDer, PrivateKeyDer};
use tokio_rustls::rustls::{self, ServerConfig};
use tokio_rustls::server::TlsStream;

use crate::network::Certificate;

/// How many phones may be greeting at once; the others wait.
const GREETING_MAX: usize = 32;

/// How long a greeting may take. A poor line takes seconds.
const GREETING: Duration = Duration::from_secs(20);

/// After a fault of the system, such as too many open files.
const PAUSE: Duration = Duration::from_secs(1);

/// Why a certificate is none.
#[derive(Debug, thiserror::Error)]
pub enum CertificateError {
    /// No certificate, or no key, stands in what was given.
    #[error("cannot be read: {0}")]
    Unreadable(#[from] rustls::pki_types::pem::Error),
    /// Certificate and key do not belong together, or are of a sort that is not known.
    #[error("cannot be used: {0}")]
    Unfit(#[from] rustls::Error),
}

/// What proves to phones that they speak with this machine.
pub(crate) fn config(certificate: &Certificate) -> Result<Arc<ServerConfig>, CertificateError> {
    let chain =
        CertificateDer::pem_slice_iter(certificate.chain.as_bytes()).collect::<Result<Vec<_>, _>>()?;
    let key = PrivateKeyDer::from_pem_slice(certificate.key.as_bytes())?;
    let provider = Arc::new(ring::default_provider());
    let config = ServerConfig::builder_with_provider(provider)
        .with_safe_default_protocol_versions()?
        .with_no_client_auth()
        .with_single_cert(chain, key)?;
    Ok(Arc::new(config))
}

/// Phones that have greeted.
pub(crate) struct TlsListener {
    greeted: Receiver<(TlsStream<TcpStream>, SocketAddr)>,
    address: SocketAddr,
    greeting: JoinHandle<()>,
}

impl TlsListener {
    /// Greets whoever connects, each apart, so that a slow phone holds up no other.
    pub(crate) fn over(listener: TcpListener, config: Arc<ServerConfig>) -> io::Result<TlsListener> {
        let address = listener.local_addr()?;
        let (tell, greeted) = channel(GREETING_MAX);
        let greeting = tokio::spawn(greet_all(listener, TlsAcceptor::from(config), tell));
        Ok(TlsListener { greeted, address, greeting })
    }
}

impl Drop for TlsListener {
    fn drop(&mut self) {
        self.greeting.abort();
    }
}

impl Listener for TlsListener {
    type Io = TlsStream<TcpStream>;
    type Addr = SocketAddr;

    async fn accept(&mut self) -> (Self::Io, Self::Addr) {
        match self.greeted.recv().await {
            Some(greeted) => greeted,
            None => pending().await,
        }
    }

    fn local_addr(&self) -> io::Result<SocketAddr> {
        Ok(self.address)
    }
}

type Greeted = (TlsStream<TcpStream>, SocketAddr);

async fn greet_all(listener: TcpListener, acceptor: TlsAcceptor, tell: Sender<Greeted>) {
    let places = Arc::new(Semaphore::new(GREETING_MAX));
    while let Ok(place) = Arc::clone(&places).acquire_owned().await {
        let Ok((stream, address)) = listener.accept().await else {
            tokio::time::sleep(PAUSE).await;
            continue;
        };
        let (acceptor, tell) = (acceptor.clone(), tell.clone());
        tokio::spawn(async move {
            let greeting = tokio::time::timeout(GREETING, acceptor.accept(stream)).await;
            drop(place);
            if let Ok(Ok(stream)) = greeting {
                // Nobody hears any more when the server has ended.
                let _ = tell.send((stream, address)).await;
            }
        });
    }
}
