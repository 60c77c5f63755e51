//! The field book in a browser of the same machine: the page, `POST /command`, photos.
//!
//! Listens on the loopback address alone. A page of another origin can reach a loopback port too,
//! and a name of its own can be pointed at 127.0.0.1, so a request that names a foreign host or
//! comes from a foreign origin is turned away before it is read.

use crate::refusal::{RequestRefusal, too_large};
use crate::reply::Reply;
use crate::request::Request;
use crate::{AboutPhoto, AboutPiece, App, LARGEST_PHOTO, LARGEST_PIECE, page};
use axum::body::{Body, Bytes};
use axum::extract::{DefaultBodyLimit, Path, Query, Request as Incoming, State};
use axum::http::{HeaderMap, HeaderName, HeaderValue, StatusCode, header};
use axum::middleware::{self, Next};
use axum::response::{IntoResponse, Response};
use axum::routing::{get, post};
use axum::{Json, Router};
use futures_util::stream::try_unfold;
use std::io::{Read, Write};
use std::net::{Ipv4Addr, SocketAddr};
use std::sync::Arc;
use uuid::Uuid;

/// A request is a few hundred bytes; a body past this is none.
const LARGEST_COMMAND: usize = 64 * 1024;

/// Why the page cannot be served.
#[derive(Debug, thiserror::Error)]
pub enum ServeError {
    /// Another program listens there.
    #[error("port {port} is in use by another program: give another --port, or --port 0 for any")]
    PortInUse {
        /// The port asked for.
        port: u16,
    },
    /// The port cannot be had for another reason.
    #[error("port {port} cannot be opened ({why}): give another --port, or --port 0 for any")]
    Port {
        /// The port asked for.
        port: u16,
        /// What the system says.
        why: std::io::Error,
    },
    /// The machine gives no threads or no output.
    #[error("the page cannot be served ({0}): close other programs and open the book again")]
    System(std::io::Error),
}

/// Serves the page until the program ends. Prints a line when it listens,
/// `listening on http://127.0.0.1:P`, and after it what else is to be said.
///
/// # Errors
/// `PortInUse`, `Port`, `System`.
pub fn serve(app: App, port: u16, more: &str) -> Result<(), ServeError> {
    let runtime = tokio::runtime::Builder::new_multi_thread()
        .worker_threads(2)
        .enable_all()
        .build()
        .map_err(ServeError::System)?;
    runtime.block_on(async {
        let address = SocketAddr::from((Ipv4Addr::LOCALHOST, port));
        let listener = tokio::net::TcpListener::bind(address)
            .await
            .map_err(|why| {
                if why.kind() == std::io::ErrorKind::AddrInUse {
                    ServeError::PortInUse { port }
                } else {
                    ServeError::Port { port, why }
                }
            })?;
        let port = listener.local_addr().map_err(ServeError::System)?.port();
        let mut out = std::io::stdout().lock();
        writeln!(out, "listening on http://127.0.0.1:{port}{more}").map_err(ServeError::System)?;
        out.flush().map_err(ServeError::System)?;
        drop(out);
        axum::serve(listener, router(Arc::new(app), port))
            .await
            .map_err(ServeError::System)
    })
}

/// All routes, for a server at `port`.
pub fn router(app: Arc<App>, port: u16) -> Router {
    Router::new()
        .route(
            "/command",
            post(command).layer(DefaultBodyLimit::max(LARGEST_COMMAND)),
        )
        .route("/photo", post(take_photo))
        .route("/photo/{sha256}", get(photo))
        .route("/square", post(read_square))
        .route(
            "/carried",
            post(carry_in).layer(DefaultBodyLimit::max(LARGEST_PIECE)),
        )
        .route("/copy", post(make_copy))
        .route("/copy/{file}", get(copy))
        .route("/packet/{id}", get(packet))
        .route("/packet/{id}/{*path}", get(paper))
        .fallback(get(static_file))
        .layer(middleware::from_fn(move |incoming, next| {
            at_home(port, incoming, next)
        }))
        .with_state(app)
}

/// Turns strangers away and says how every answer may be used.
async fn at_home(port: u16, incoming: Incoming, next: Next) -> Response {
    let mut response = if is_ours(incoming.headers(), port) {
        next.run(incoming).await
    } else {
        let words = "This field book answers only the page that it serves itself.\n";
        (StatusCode::FORBIDDEN, words).into_response()
    };
    let headers = response.headers_mut();
    for (name, value) in ALWAYS {
        headers
            .entry(name)
            .or_insert(HeaderValue::from_static(value));
    }
    response
}

/// Headers of every answer that does not say otherwise.
const ALWAYS: [(HeaderName, &str); 5] = [
    (
        header::CONTENT_SECURITY_POLICY,
        "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self' blob:; \
         media-src 'self' blob:; font-src 'self'; connect-src 'self'; base-uri 'none'; \
         form-action 'none'; frame-ancestors 'none'",
    ),
    (header::X_CONTENT_TYPE_OPTIONS, "nosniff"),
    (header::CACHE_CONTROL, "no-store"),
    (header::REFERRER_POLICY, "no-referrer"),
    (
        HeaderName::from_static("cross-origin-resource-policy"),
        "same-origin",
    ),
];

/// The host is this server, and so is the page that asks, where one is named.
fn is_ours(headers: &HeaderMap, port: u16) -> bool {
    let names = ["127.0.0.1", "localhost"].map(|name| format!("{name}:{port}"));
    let only = |name: HeaderName| {
        let mut values = headers.get_all(name).iter();
        (
            values.next().and_then(|value| value.to_str().ok()),
            values.next().is_some(),
        )
    };
    let host_is_ours = match only(header::HOST) {
        (Some(host), false) => {
            names.iter().any(|name| name == host)
                || (port == 80 && ["127.0.0.1", "localhost"].contains(&host))
        }
        (Some(_) | None, _) => false,
    };
    let origin_is_ours = match only(header::ORIGIN) {
        (Some(origin), false) => names.iter().any(|name| origin == format!("http://{name}")),
        (Some(_), true) => false,
        (None, _) => !headers.contains_key(header::ORIGIN),
    };
    host_is_ours && origin_is_ours
}

async fn command(State(app): State<Arc<App>>, headers: HeaderMap, body: Bytes) -> Response {
    if !is_json(&headers) {
        let words = "Send a request as application/json.\n";
        return (StatusCode::UNSUPPORTED_MEDIA_TYPE, words).into_response();
    }
    let Ok(value) = serde_json::from_slice::<serde_json::Value>(&body) else {
        return (StatusCode::BAD_REQUEST, "This body is not JSON.\n").into_response();
    };
    match serde_json::from_value::<Request>(value) {
        Ok(request) => reply(move || app.handle(request)).await,
        Err(why) => {
            let words = format!("This body is no request: {why}.\n");
            (StatusCode::UNPROCESSABLE_ENTITY, words).into_response()
        }
    }
}

fn is_json(headers: &HeaderMap) -> bool {
    let kind = headers
        .get(header::CONTENT_TYPE)
        .and_then(|value| value.to_str().ok());
    let kind = kind
        .and_then(|kind| kind.split(';').next())
        .unwrap_or_default();
    kind.trim().eq_ignore_ascii_case("application/json")
}

/// Works off the threads that listen: a commit waits for the disk.
async fn reply(work: impl FnOnce() -> Reply + Send + 'static) -> Response {
    let told = tokio::task::spawn_blocking(work)
        .await
        .unwrap_or_else(|_| crate::broken_off());
    Json(told).into_response()
}

async fn take_photo(
    State(app): State<Arc<App>>,
    Query(about): Query<AboutPhoto>,
    body: Body,
) -> Response {
    match gather(body).await {
        Ok(bytes) => reply(move || app.keep_photo(&bytes, &about)).await,
        Err(refused) => Json(Reply::Refused(refused.said())).into_response(),
    }
}

async fn read_square(State(app): State<Arc<App>>, body: Body) -> Response {
    match gather(body).await {
        Ok(bytes) => reply(move || app.read_square(&bytes)).await,
        Err(refused) => Json(Reply::Refused(refused.said())).into_response(),
    }
}

/// Reads a photo to its end. One that is too large is read to its end too, though not kept: a
/// browser that is cut off while it sends never reads the answer.
async fn gather(mut body: Body) -> Result<Vec<u8>, RequestRefusal> {
    use http_body_util::BodyExt;
    let mut bytes = Vec::new();
    let mut length = 0;
    while let Some(frame) = body.frame().await {
        let frame = frame.map_err(|_| RequestRefusal::PhotoCutOff)?;
        if let Ok(piece) = frame.into_data() {
            length += piece.len();
            if length <= LARGEST_PHOTO {
                bytes.extend_from_slice(&piece);
            }
        }
    }
    if length > LARGEST_PHOTO {
        Err(too_large(length))
    } else {
        Ok(bytes)
    }
}

async fn photo(State(app): State<Arc<App>>, Path(sha256): Path<String>) -> Response {
    let found = tokio::task::spawn_blocking(move || app.photo(&sha256)).await;
    let Ok(Some(kept)) = found else {
        return (StatusCode::NOT_FOUND, "There is no photo of this name.\n").into_response();
    };
    // Named by content, so it never changes.
    let headers = [
        (header::CONTENT_TYPE, kept.media),
        (
            header::CACHE_CONTROL,
            "private, max-age=31536000, immutable",
        ),
    ];
    (headers, kept.bytes).into_response()
}

/// A piece of a file that is carried in by hand.
async fn carry_in(
    State(app): State<Arc<App>>,
    Query(about): Query<AboutPiece>,
    piece: Bytes,
) -> Response {
    reply(move || app.carry_in(&piece, about)).await
}

async fn make_copy(State(app): State<Arc<App>>) -> Response {
    reply(move || app.make_copy()).await
}

/// Bytes of a copy that are read at a time.
const READ_AT_A_TIME: usize = 256 * 1024;

/// A copy of the whole book, to be saved, as it is read: it may be larger than what memory there is.
async fn copy(State(app): State<Arc<App>>, Path(file): Path<Uuid>) -> Response {
    let taken = tokio::task::spawn_blocking(move || {
        let file = app.take_copy(file)?;
        Some((file.metadata().ok()?.len(), file))
    });
    let Ok(Some((length, file))) = taken.await else {
        let words = "This copy was fetched already, or another was made. Save it again.\n";
        return (StatusCode::NOT_FOUND, words).into_response();
    };
    let pieces = try_unfold(file, async |mut file| {
        let read = tokio::task::spawn_blocking(move || {
            let mut piece = vec![0; READ_AT_A_TIME];
            let read = file.read(&mut piece)?;
            piece.truncate(read);
            std::io::Result::Ok((read > 0).then(|| (Bytes::from(piece), file)))
        });
        read.await.map_err(std::io::Error::other)?
    });
    let headers = [
        (header::CONTENT_TYPE, "application/octet-stream".to_owned()),
        (header::CONTENT_DISPOSITION, "attachment".to_owned()),
        (header::CONTENT_LENGTH, length.to_string()),
    ];
    (headers, Body::from_stream(pieces)).into_response()
}

/// A whole packet, to be saved.
async fn packet(State(app): State<Arc<App>>, Path(id): Path<String>) -> Response {
    packet_file(app, id, None, "attachment").await
}

/// One file of a packet, to be looked at.
async fn paper(State(app): State<Arc<App>>, Path((id, path)): Path<(String, String)>) -> Response {
    packet_file(app, id, Some(path), "inline").await
}

/// What a paper may do: show itself and its own pictures. Its page styles itself in its head.
const PAPER_POLICY: &str = "default-src 'none'; img-src 'self' data:; style-src 'unsafe-inline'; \
                            base-uri 'none'; form-action 'none'; frame-ancestors 'none'";

async fn packet_file(
    app: Arc<App>,
    id: String,
    path: Option<String>,
    how: &'static str,
) -> Response {
    let found = tokio::task::spawn_blocking(move || app.packet_file(&id, path.as_deref())).await;
    let Ok(Some(file)) = found else {
        let words = "This packet is not on this device, or has no such paper. Make it again.\n";
        return (StatusCode::NOT_FOUND, words).into_response();
    };
    let headers = [
        (header::CONTENT_TYPE, file.media),
        (
            header::CONTENT_DISPOSITION,
            // Names in a packet are of letters, digits, dots and lines.
            format!("{how}; filename=\"{}\"", file.name.replace(['"', '\\'], "")),
        ),
        (header::CONTENT_SECURITY_POLICY, PAPER_POLICY.to_owned()),
    ];
    (headers, file.bytes).into_response()
}

async fn static_file(incoming: Incoming) -> Response {
    match page::file(incoming.uri().path()) {
        Some(file) => {
            ([(header::CONTENT_TYPE, page::media(file.path))], file.bytes).into_response()
        }
        None => (StatusCode::NOT_FOUND, "There is no such page.\n").into_response(),
    }
}
