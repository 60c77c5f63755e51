//! The way to one hub: HTTP/1.1 over TLS with a pinned key, or plain where the hub has none.
//!
//! No proxy, no redirect, no other host: it speaks to the address it was given and to nobody else.

use crate::sync_loop::Wake;
use crate::wire::{Method, Request, Response};
use crate::{packing, pin};
use http_body_util::{BodyExt, Full};
use hyper::body::Bytes;
use hyper::client::conn::http1::{SendRequest, handshake};
use hyper::{Uri, header};
use hyper_util::rt::TokioIo;
use rustls::pki_types::ServerName;
use std::sync::{Arc, OnceLock};
use std::time::Duration;
use tokio::net::TcpStream;
use tokio::runtime::Runtime;
use tokio::time::timeout;
use tokio_rustls::TlsConnector;

/// How long reaching the hub may take.
const CONNECT: Duration = Duration::from_secs(10);
/// How long nothing may come.
const STALL: Duration = Duration::from_secs(30);
/// The slowest way up on which a body still arrives, bytes a second.
const SLOWEST: u64 = 4096;
/// So many hex digits of a pin are typed: 48 bits, far more keys than anybody can draw in the ten
/// minutes for which a code is good.
pub(crate) const KEY_DIGITS: usize = 12;
/// The largest answer: a photo.
const LARGEST: usize = 64 << 20;

/// Why the hub did not answer.
#[derive(Debug, thiserror::Error)]
pub enum LinkError {
    /// Not an address.
    #[error("\"{0}\" is no address of a hub: write it as https://192.168.1.20:7443")]
    Address(String),
    /// The pin is none.
    #[error("the pin of {url} is not 64 hex digits: take the link as the hub's keeper gave it")]
    Pin {
        /// The address.
        url: String,
    },
    /// Another key answered.
    #[error(
        "who answers at {url} has another key than the one in the link, so nothing was sent: check \
         the address, and take a new link from the hub's keeper"
    )]
    OtherKey {
        /// The address.
        url: String,
    },
    /// It cannot be reached.
    #[error("the hub at {url} cannot be reached ({what}): check that both are on one network")]
    Unreached {
        /// The address.
        url: String,
        /// What the system said.
        what: String,
    },
    /// The machine gives no thread or socket.
    #[error("this machine cannot begin a connection ({0}): close other programs and try again")]
    System(String),
}

/// The way to one hub.
pub struct Link {
    url: String,
    host: String,
    port: u16,
    tls: Option<TlsConnector>,
    taken: Arc<OnceLock<String>>,
    token: Option<String>,
    open: Option<SendRequest<Full<Bytes>>>,
    runtime: Runtime,
}

impl std::fmt::Debug for Link {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        // The token is a secret.
        f.debug_struct("Link")
            .field("url", &self.url)
            .finish_non_exhaustive()
    }
}

impl Link {
    /// The way to the hub at an address, by the pin of its key where that is `https`. Nothing is
    /// asked yet.
    ///
    /// # Errors
    /// `Address`, `Pin`, `System`.
    pub fn new(url: &str, pin: Option<&str>, token: Option<&str>) -> Result<Link, LinkError> {
        Link::by(url, pin, 64, token)
    }

    /// As [`Link::new`], by at least the first [`KEY_DIGITS`] digits of the pin.
    pub(crate) fn by_first_digits(url: &str, digits: Option<&str>) -> Result<Link, LinkError> {
        Link::by(url, digits, KEY_DIGITS, None)
    }

    fn by(
        url: &str,
        pin: Option<&str>,
        least: usize,
        token: Option<&str>,
    ) -> Result<Link, LinkError> {
        let no_address = || LinkError::Address(url.to_owned());
        let read: Uri = url.parse().map_err(|_| no_address())?;
        let (scheme, host) = match (read.scheme_str(), read.host()) {
            (Some(scheme @ ("http" | "https")), Some(host)) if !host.is_empty() => (scheme, host),
            _ => return Err(no_address()),
        };
        let taken = Arc::new(OnceLock::new());
        let tls = if scheme == "https" {
            let pin = pin.unwrap_or_default().to_ascii_lowercase();
            if !(least..=64).contains(&pin.len())
                || !pin.bytes().all(|digit| digit.is_ascii_hexdigit())
            {
                return Err(LinkError::Pin {
                    url: url.to_owned(),
                });
            }
            let config = pin::config(&pin, taken.clone())
                .map_err(|why| LinkError::System(why.to_string()))?;
            Some(TlsConnector::from(Arc::new(config)))
        } else {
            None
        };
        let runtime = tokio::runtime::Builder::new_current_thread()
            .enable_all()
            .build()
            .map_err(|why| LinkError::System(why.to_string()))?;
        Ok(Link {
            url: url.trim_end_matches('/').to_owned(),
            host: host.trim_matches(['[', ']']).to_owned(),
            port: read
                .port_u16()
                .unwrap_or(if scheme == "https" { 443 } else { 80 }),
            tls,
            taken,
            token: token.map(str::to_owned),
            open: None,
            runtime,
        })
    }

    /// The whole pin of the key that answered.
    pub(crate) fn pin(&self) -> Option<String> {
        self.taken.get().cloned()
    }

    /// Asks, and waits for the whole answer.
    ///
    /// # Errors
    /// `OtherKey`, before anything was sent; `Unreached`.
    pub fn ask(&mut self, request: &Request) -> Result<Response, LinkError> {
        self.ask_unless(request, std::future::pending())
            .unwrap_or_else(|| Err(LinkError::System("no answer was waited for".to_owned())))
    }

    /// Asks, and waits for the answer or a word, whichever comes first; `None` for the word.
    pub(crate) fn listen(
        &mut self,
        request: &Request,
        wake: &Wake,
    ) -> Option<Result<Response, LinkError>> {
        self.ask_unless(request, wake.word.notified())
    }

    /// Waits so many milliseconds, or for a word.
    pub(crate) fn rest(&self, ms: u64, wake: &Wake) {
        let word = wake.word.notified();
        let _ = self
            .runtime
            .block_on(async { timeout(Duration::from_millis(ms), word).await });
    }

    fn ask_unless(
        &mut self,
        request: &Request,
        word: impl Future<Output = ()>,
    ) -> Option<Result<Response, LinkError>> {
        let kept = self.open.take();
        let route = Route {
            url: &self.url,
            host: &self.host,
            port: self.port,
            tls: self.tls.as_ref(),
        };
        let token = self.token.as_deref();
        let asking = async {
            let mut sender = route.sender(kept).await?;
            let answer = route.ask(&mut sender, request, token).await?;
            Ok((answer, sender))
        };
        // A question left without its answer takes its connection with it.
        let outcome = self.runtime.block_on(async {
            tokio::select! {
                answer = asking => Some(answer),
                () = word => None,
            }
        })?;
        Some(outcome.map(|(answer, sender)| {
            self.open = Some(sender);
            answer
        }))
    }
}

struct Route<'a> {
    url: &'a str,
    host: &'a str,
    port: u16,
    tls: Option<&'a TlsConnector>,
}

impl Route<'_> {
    fn unreached(&self, what: impl ToString) -> LinkError {
        LinkError::Unreached {
            url: self.url.to_owned(),
            what: what.to_string(),
        }
    }

    /// The connection kept from before, where it still holds, or a new one.
    async fn sender(
        &self,
        kept: Option<SendRequest<Full<Bytes>>>,
    ) -> Result<SendRequest<Full<Bytes>>, LinkError> {
        if let Some(mut kept) = kept {
            // One turn for the task that watches the connection: the hub may have closed it.
            tokio::task::yield_now().await;
            if !kept.is_closed() && kept.ready().await.is_ok() {
                return Ok(kept);
            }
        }
        timeout(CONNECT, self.connect())
            .await
            .map_err(|_| self.unreached("no answer within 10 seconds"))?
    }

    async fn connect(&self) -> Result<SendRequest<Full<Bytes>>, LinkError> {
        let stream = TcpStream::connect((self.host, self.port))
            .await
            .map_err(|why| self.unreached(why))?;
        stream
            .set_nodelay(true)
            .map_err(|why| self.unreached(why))?;
        let Some(tls) = self.tls else {
            let (sender, connection) = handshake(TokioIo::new(stream))
                .await
                .map_err(|why| self.unreached(why))?;
            tokio::spawn(connection);
            return Ok(sender);
        };
        let name = ServerName::try_from(self.host.to_owned())
            .map_err(|_| LinkError::Address(self.url.to_owned()))?;
        let stream = tls.connect(name, stream).await.map_err(|why| {
            let other_key = why
                .get_ref()
                .and_then(|inner| inner.downcast_ref::<rustls::Error>())
                .is_some_and(|inner| *inner == pin::OTHER_KEY);
            if other_key {
                LinkError::OtherKey {
                    url: self.url.to_owned(),
                }
            } else {
                self.unreached(why)
            }
        })?;
        let (sender, connection) = handshake(TokioIo::new(stream))
            .await
            .map_err(|why| self.unreached(why))?;
        tokio::spawn(connection);
        Ok(sender)
    }

    async fn ask(
        &self,
        sender: &mut SendRequest<Full<Bytes>>,
        asked: &Request,
        token: Option<&str>,
    ) -> Result<Response, LinkError> {
        let mut request = hyper::Request::builder()
            .method(asked.method.name())
            .uri(&asked.path)
            .header(header::HOST, format!("{}:{}", self.host, self.port));
        if let Some(token) = token {
            request = request.header(header::AUTHORIZATION, format!("Bearer {token}"));
        }
        if let Some((first, last)) = asked.span {
            request = request.header(header::RANGE, format!("bytes={first}-{last}"));
        }
        let mut sent = Bytes::from(asked.body.clone());
        match asked.method {
            // Photos are packed already.
            Method::Get | Method::Put => {}
            Method::Post => {
                request = request.header(header::CONTENT_TYPE, "application/json");
                if let Some(packed) = packing::pack(&sent) {
                    request = request.header(header::CONTENT_ENCODING, "zstd");
                    sent = packed.into();
                }
            }
        }
        let patience = STALL + Duration::from_secs(sent.len() as u64 / SLOWEST);
        let request = request
            .header(header::ACCEPT_ENCODING, "zstd")
            .body(Full::new(sent))
            .map_err(|why| self.unreached(why))?;
        let stalled = |_| self.unreached("the answer stopped coming");
        let answer = timeout(patience, sender.send_request(request))
            .await
            .map_err(stalled)?
            .map_err(|why| self.unreached(why))?;
        let status = answer.status().as_u16();
        let retry_after = answer
            .headers()
            .get(header::RETRY_AFTER)
            .and_then(|value| value.to_str().ok()?.parse().ok());
        // "bytes 0-9/12" and "bytes */12" (RFC 9110, 14.4).
        let whole = answer
            .headers()
            .get(header::CONTENT_RANGE)
            .and_then(|value| value.to_str().ok()?.rsplit_once('/')?.1.parse().ok());
        let packed = answer
            .headers()
            .get(header::CONTENT_ENCODING)
            .is_some_and(|coding| coding == "zstd");
        let mut from = answer.into_body();
        let mut body = Vec::new();
        while let Some(frame) = timeout(STALL, from.frame()).await.map_err(stalled)? {
            let frame = frame.map_err(|why| self.unreached(why))?;
            if let Ok(piece) = frame.into_data() {
                if body.len() + piece.len() > LARGEST {
                    return Err(self.unreached("the answer is larger than any photo"));
                }
                body.extend_from_slice(&piece);
            }
        }
        if packed {
            body = packing::unpack(&body)
                .ok_or_else(|| self.unreached("the answer does not unpack"))?;
        }
        Ok(Response {
            status,
            retry_after,
            whole,
            body,
        })
    }
}
