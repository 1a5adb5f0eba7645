//! The line to another book: plain HTTP to a machine that is near.

use std::net::{IpAddr, SocketAddr};
use std::time::Duration;

use axum::body::Bytes;
use axum::http::{Method, Request, StatusCode, Uri, header};
use book::sync::TALK_BYTES_MAX;
use http_body_util::{BodyExt, Full, Limited};
use hyper::client::conn::http1::{SendRequest, handshake};
use hyper_util::rt::TokioIo;
use tokio::net::{TcpStream, lookup_host};
use tokio::time::timeout;

/// How long an answer may take: a frame on a poor line takes seconds, and the disk of the other end its share.
const PATIENCE: Duration = Duration::from_secs(60);

/// Why nothing was heard.
#[derive(Debug, thiserror::Error)]
pub enum LineError {
    /// Not an address of the sort `http://127.0.0.1:8080`.
    #[error("no address of a book")]
    NoAddress,
    /// A machine somewhere on the internet. Without a certificate anybody on the way could read and change the book.
    #[error("{address} is not on this machine or network")]
    Far {
        /// Its address.
        address: IpAddr,
    },
    /// It cannot be reached, or the line was cut.
    #[error("{why}")]
    Cut {
        /// What the system said.
        why: String,
    },
    /// Something answers, and not as a book does.
    #[error("it answered {status}")]
    Status {
        /// The status.
        status: StatusCode,
    },
    /// It did not answer in time.
    #[error("no answer in {} seconds", PATIENCE.as_secs())]
    Silent,
}

/// A line to another book.
pub struct Line {
    sender: SendRequest<Full<Bytes>>,
    host: String,
}

impl Line {
    /// Connects to the book at an address of the sort `http://127.0.0.1:8080`.
    ///
    /// # Errors
    /// `NoAddress`, `Far`, `Cut`, `Silent`.
    pub async fn to(url: &str) -> Result<Line, LineError> {
        let host = host(url).ok_or(LineError::NoAddress)?;
        let stream = in_time(connect(&host)).await?;
        let (sender, talking) = handshake(TokioIo::new(stream)).await.map_err(cut)?;
        // It ends with the line; what goes wrong on it is told by the request that it goes wrong for.
        tokio::spawn(talking);
        Ok(Line { sender, host })
    }

    /// Asks how far the other book reaches.
    ///
    /// # Errors
    /// `Cut`, `Status`, `Silent`.
    pub async fn greeting(&mut self) -> Result<Bytes, LineError> {
        self.send(Method::GET, Bytes::new()).await
    }

    /// Says something to the other book, and gives what it answers.
    ///
    /// # Errors
    /// `Cut`, `Status`, `Silent`.
    pub async fn say(&mut self, talk: Vec<u8>) -> Result<Bytes, LineError> {
        self.send(Method::POST, talk.into()).await
    }

    async fn send(&mut self, method: Method, talk: Bytes) -> Result<Bytes, LineError> {
        let request = Request::builder()
            .method(method)
            .uri("/sync")
            .header(header::HOST, &self.host)
            .header(header::CONTENT_TYPE, serve::TALK)
            .body(Full::new(talk))
            .map_err(cut)?;
        in_time(self.answer(request)).await
    }

    async fn answer(&mut self, request: Request<Full<Bytes>>) -> Result<Bytes, LineError> {
        self.sender.ready().await.map_err(cut)?;
        let response = self.sender.send_request(request).await.map_err(cut)?;
        let is_a_book = response.headers().get(header::CONTENT_TYPE).is_some_and(|sort| sort == serve::TALK);
        if response.status() != StatusCode::OK || !is_a_book {
            return Err(LineError::Status { status: response.status() });
        }
        let whole = Limited::new(response.into_body(), TALK_BYTES_MAX).collect().await;
        whole.map(|body| body.to_bytes()).map_err(cut)
    }
}

fn cut(why: impl ToString) -> LineError {
    LineError::Cut { why: why.to_string() }
}

async fn in_time<T>(work: impl Future<Output = Result<T, LineError>>) -> Result<T, LineError> {
    timeout(PATIENCE, work).await.map_err(|_| LineError::Silent)?
}

async fn connect(host: &str) -> Result<TcpStream, LineError> {
    let addresses: Vec<SocketAddr> = lookup_host(host).await.map_err(cut)?.collect();
    if let Some(far) = addresses.iter().find(|address| !is_near(address.ip())) {
        return Err(LineError::Far { address: far.ip() });
    }
    TcpStream::connect(&*addresses).await.map_err(cut)
}

/// The machine and port of an address, the port 80 where none is said; nothing but a slash may follow.
fn host(url: &str) -> Option<String> {
    let uri: Uri = url.parse().ok()?;
    let authority = uri.authority()?;
    let is_plain = uri.scheme_str() == Some("http") && uri.path() == "/" && uri.query().is_none();
    let has_user = authority.as_str().contains('@');
    let port = authority.port_u16().unwrap_or(80);
    (is_plain && !has_user).then(|| format!("{}:{port}", authority.host()))
}

/// Whether an address is on this machine or its own network, where nothing on the way belongs to others.
fn is_near(address: IpAddr) -> bool {
    match address {
        IpAddr::V4(four) => four.is_loopback() || four.is_private() || four.is_link_local(),
        IpAddr::V6(six) => match six.to_ipv4_mapped() {
            Some(four) => is_near(IpAddr::V4(four)),
            None => six.is_loopback() || six.is_unique_local() || six.is_unicast_link_local(),
        },
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn an_address_names_a_machine_and_nothing_else() {
        for (url, read) in [
            ("http://127.0.0.1:8080", Some("127.0.0.1:8080")),
            ("http://127.0.0.1:8080/", Some("127.0.0.1:8080")),
            ("http://localhost", Some("localhost:80")),
            ("http://[::1]:9", Some("[::1]:9")),
            ("https://localhost:8080", None),
            ("localhost:8080", None),
            ("http://localhost/sync", None),
            ("http://me@localhost", None),
            ("http://localhost/?a=b", None),
            ("farm.book", None),
            ("", None),
        ] {
            assert_eq!(host(url).as_deref(), read, "{url}");
        }
    }

    #[test]
    fn near_is_this_machine_and_its_own_network() {
        for near in
            ["127.0.0.1", "10.1.2.3", "192.168.1.9", "172.16.0.1", "169.254.1.1", "::1", "fd00::1", "fe80::1"]
        {
            assert!(is_near(near.parse().unwrap()), "{near}");
        }
        for far in ["8.8.8.8", "172.32.0.1", "0.0.0.0", "2001:4860::1", "::ffff:8.8.8.8"] {
            assert!(!is_near(far.parse().unwrap()), "{far}");
        }
    }
}
