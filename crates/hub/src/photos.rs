//! `/v1/blobs`: photos by their SHA-256, whole or in parts of 1 MiB in any order, each as often as
//! one likes.

use crate::blobs::JoinResult;
use crate::limits::{BLOB_BYTES, BODY_BYTES, MISSING, PART_BYTES, PARTS};
use crate::metrics::add;
use crate::problem::{Code, Problem};
use crate::rows::{Arrival, Photo};
use crate::token::{self, Caller};
use crate::{Hub, body, hex, is_sha256};
use axum::Json;
use axum::body::{Body, Bytes};
use axum::extract::{Path, State};
use axum::http::{HeaderMap, HeaderValue, StatusCode, header};
use axum::response::{IntoResponse, Response};
use serde::Deserialize;
use serde_json::{Value, json};
use std::collections::BTreeSet;
use std::io::{ErrorKind, Read};
use std::pin::Pin;
use std::sync::Arc;
use std::task::{Context, Poll};
use std::time::Instant;
use tokio::sync::mpsc;

fn no_photo() -> Problem {
    Problem::new(
        Code::NotFound,
        "this photo is not here: send it from a device that has it",
    )
}

fn named(sha256: &str) -> Result<(), Problem> {
    if is_sha256(sha256) {
        Ok(())
    } else {
        Err(Problem::malformed(
            "a photo is named by its SHA-256 in 64 small hex digits",
        ))
    }
}

/// A photo that is whole here.
fn whole(hub: &Hub, company: i64, sha256: &str) -> Result<Option<Photo>, Problem> {
    let kept = hub.rows.photos(company, &[sha256.to_owned()])?;
    Ok(kept.into_iter().next().and_then(|(sha256, size)| {
        let photo = Photo {
            company,
            sha256,
            size,
        };
        hub.blobs.is_kept(&photo).then_some(photo)
    }))
}

#[derive(Deserialize)]
struct MissingQuery {
    sha256: Vec<String>,
}

/// Which of some photos are not here.
pub(crate) async fn missing(
    caller: Caller,
    State(hub): State<Arc<Hub>>,
    headers: HeaderMap,
    sent: Body,
) -> Result<Json<Value>, Problem> {
    let query: MissingQuery = body::json(&body::read(&headers, sent, BODY_BYTES).await?)?;
    if query.sha256.len() > MISSING {
        return Err(Problem::new(
            Code::TooLarge,
            format!("ask for at most {MISSING} photos in one call"),
        ));
    }
    query.sha256.iter().try_for_each(|sha256| named(sha256))?;
    let missing = hub
        .work(move |hub| {
            let kept = hub.rows.photos(caller.company, &query.sha256)?;
            let readable: BTreeSet<String> = kept
                .into_iter()
                .map(|(sha256, size)| Photo {
                    company: caller.company,
                    sha256,
                    size,
                })
                .filter(|photo| hub.blobs.is_kept(photo))
                .map(|photo| photo.sha256)
                .collect();
            let missing = query.sha256.into_iter();
            Ok(missing
                .filter(|sha256| !readable.contains(sha256))
                .collect::<Vec<_>>())
        })
        .await?;
    Ok(Json(json!({ "missing": missing })))
}

/// Takes a photo whole.
pub(crate) async fn put(
    caller: Caller,
    State(hub): State<Arc<Hub>>,
    Path(sha256): Path<String>,
    headers: HeaderMap,
    sent: Body,
) -> Result<StatusCode, Problem> {
    named(&sha256)?;
    let _upload = hub.rates.upload(&caller.token_id, Instant::now())?;
    let bytes = body::read(&headers, sent, PART_BYTES).await?;
    hub.work(move |hub| {
        let photo = Photo {
            company: caller.company,
            size: bytes.len() as u64,
            sha256,
        };
        if hex(&token::sha256(&bytes)) != photo.sha256 {
            return Err(other_bytes());
        }
        if whole(hub, photo.company, &photo.sha256)?.is_some() {
            return Ok(StatusCode::OK);
        }
        hub.blobs
            .put(photo.company, &photo.sha256, &bytes)
            .map_err(|why| Problem::disk(&why))?;
        publish(hub, &photo)
    })
    .await
}

fn other_bytes() -> Problem {
    Problem::new(
        Code::Hash,
        "these bytes are not the photo of this name: read it from the disk and send it again",
    )
}

/// The row that makes a photo, whose bytes are safe, one that is here.
fn publish(hub: &Hub, photo: &Photo) -> Result<StatusCode, Problem> {
    match hub.rows.publish(photo)? {
        Arrival::Known => Ok(StatusCode::OK),
        Arrival::New => {
            add(&hub.metrics.photos, 1);
            add(&hub.metrics.photo_bytes, photo.size);
            Ok(StatusCode::CREATED)
        }
    }
}

/// Takes a part of a photo.
pub(crate) async fn put_part(
    caller: Caller,
    State(hub): State<Arc<Hub>>,
    Path((sha256, part)): Path<(String, String)>,
    headers: HeaderMap,
    sent: Body,
) -> Result<StatusCode, Problem> {
    named(&sha256)?;
    let part: u64 = part
        .parse()
        .map_err(|_| Problem::malformed("a part is named by its number, from 0"))?;
    if part >= PARTS {
        return Err(Problem::new(
            Code::TooLarge,
            format!("a photo has at most {PARTS} parts, numbered from 0: send a smaller photo"),
        ));
    }
    let _upload = hub.rates.upload(&caller.token_id, Instant::now())?;
    let bytes = body::read(&headers, sent, PART_BYTES).await?;
    if bytes.is_empty() {
        return Err(Problem::malformed("a part holds at least one byte"));
    }
    let first = hub
        .work(move |hub| {
            if whole(hub, caller.company, &sha256)?.is_some() {
                return Ok(false);
            }
            hub.blobs
                .put_part(caller.company, &sha256, part, &bytes)
                .map_err(|why| Problem::disk(&why))
        })
        .await?;
    Ok(if first {
        StatusCode::CREATED
    } else {
        StatusCode::OK
    })
}

/// Which parts are here; all of them, when the photo is whole.
pub(crate) async fn parts(
    caller: Caller,
    State(hub): State<Arc<Hub>>,
    Path(sha256): Path<String>,
) -> Result<Json<Value>, Problem> {
    named(&sha256)?;
    let parts: Vec<u64> = hub
        .work(move |hub| {
            if let Some(photo) = whole(hub, caller.company, &sha256)? {
                return Ok((0..photo.size.div_ceil(PART_BYTES as u64)).collect());
            }
            let parts = hub
                .blobs
                .parts(caller.company, &sha256)
                .map_err(|why| Problem::disk(&why))?;
            Ok(parts.into_iter().collect())
        })
        .await?;
    Ok(Json(json!({ "parts": parts })))
}

#[derive(Deserialize)]
struct Complete {
    size: u64,
}

/// Puts the parts of a photo together and proves them.
pub(crate) async fn complete(
    caller: Caller,
    State(hub): State<Arc<Hub>>,
    Path(sha256): Path<String>,
    headers: HeaderMap,
    sent: Body,
) -> Result<StatusCode, Problem> {
    named(&sha256)?;
    let complete: Complete = body::json(&body::read(&headers, sent, BODY_BYTES).await?)?;
    if complete.size > BLOB_BYTES {
        return Err(Problem::new(
            Code::TooLarge,
            format!("a photo holds at most {BLOB_BYTES} bytes: send a smaller one"),
        ));
    }
    let _upload = hub.rates.upload(&caller.token_id, Instant::now())?;
    hub.work(move |hub| {
        let photo = Photo {
            company: caller.company,
            sha256,
            size: complete.size,
        };
        if whole(hub, photo.company, &photo.sha256)?.is_some() {
            return Ok(StatusCode::OK);
        }
        match hub.blobs.join(&photo).map_err(|why| Problem::disk(&why))? {
            JoinResult::Missing(parts) => Err(Problem::new(
                Code::PartsMissing,
                "some parts of this photo have not come: send them, then complete it",
            )
            .with("missing", parts)),
            JoinResult::OtherBytes => Err(other_bytes()),
            JoinResult::Whole => {
                let published = publish(hub, &photo)?;
                hub.blobs.clear(photo.company, &photo.sha256);
                Ok(published)
            }
        }
    })
    .await
}

/// What of a photo is asked for.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Span {
    Whole,
    /// First and last byte.
    Part(u64, u64),
    Nothing,
}

/// Reads `bytes=a-b`, `bytes=a-`, `bytes=-n` (RFC 9110, 14.1.2). Several spans, or what is no span:
/// the whole, as the standard allows.
fn span(text: Option<&str>, size: u64) -> Span {
    let Some((first, last)) = text
        .and_then(|text| text.trim().strip_prefix("bytes="))
        .and_then(|span| span.trim().split_once('-'))
    else {
        return Span::Whole;
    };
    let (from, to) = match (first.trim().parse::<u64>(), last.trim().parse::<u64>()) {
        (Ok(from), Ok(to)) if from <= to => (from, to.min(size.saturating_sub(1))),
        (Ok(from), Err(_)) if last.trim().is_empty() => (from, size.saturating_sub(1)),
        (Err(_), Ok(0)) if first.trim().is_empty() => return Span::Nothing,
        (Err(_), Ok(tail)) if first.trim().is_empty() => {
            (size.saturating_sub(tail), size.saturating_sub(1))
        }
        _ => return Span::Whole,
    };
    if from >= size {
        Span::Nothing
    } else {
        Span::Part(from, to)
    }
}

/// Hands out a photo or a span of it.
pub(crate) async fn get(
    caller: Caller,
    State(hub): State<Arc<Hub>>,
    Path(sha256): Path<String>,
    headers: HeaderMap,
) -> Result<Response, Problem> {
    named(&sha256)?;
    let (name, company) = (sha256.clone(), caller.company);
    let photo = hub
        .work(move |hub| whole(hub, company, &name)?.ok_or_else(no_photo))
        .await?;
    let size = photo.size;
    let tag = format!("\"{sha256}\"");
    let text = |name| headers.get(name).and_then(|value| value.to_str().ok());
    let always = |response: &mut Response| {
        let headers = response.headers_mut();
        if let Ok(tag) = HeaderValue::from_str(&tag) {
            headers.insert(header::ETAG, tag);
        }
        headers.insert(
            header::CACHE_CONTROL,
            // Named by content, so it never changes.
            HeaderValue::from_static("private, max-age=31536000, immutable"),
        );
        headers.insert(header::ACCEPT_RANGES, HeaderValue::from_static("bytes"));
        headers.insert(
            header::CONTENT_TYPE,
            HeaderValue::from_static("application/octet-stream"),
        );
    };
    let known = text(header::IF_NONE_MATCH).is_some_and(|tags| {
        tags.split(',')
            .any(|one| one.trim() == tag || one.trim() == "*")
    });
    let mut response = if known {
        StatusCode::NOT_MODIFIED.into_response()
    } else {
        let asked = text(header::RANGE)
            .filter(|_| text(header::IF_RANGE).is_none_or(|unchanged| unchanged == tag));
        let (status, from, to) = match span(asked, size) {
            Span::Whole => (StatusCode::OK, 0, size),
            Span::Part(first, last) => (StatusCode::PARTIAL_CONTENT, first, last + 1),
            Span::Nothing => {
                let mut refused = Problem::new(Code::Range, format!("this photo has {size} bytes"))
                    .into_response();
                if let Ok(range) = HeaderValue::from_str(&format!("bytes */{size}")) {
                    refused.headers_mut().insert(header::CONTENT_RANGE, range);
                }
                return Ok(refused);
            }
        };
        let body = PhotoStream::begin(open(&hub, photo, from, to).await?);
        let mut response = (status, Body::new(body)).into_response();
        response
            .headers_mut()
            .insert(header::CONTENT_LENGTH, HeaderValue::from(to - from));
        if status == StatusCode::PARTIAL_CONTENT
            && let Ok(range) = HeaderValue::from_str(&format!("bytes {from}-{}/{size}", to - 1))
        {
            response.headers_mut().insert(header::CONTENT_RANGE, range);
        }
        response
    };
    always(&mut response);
    Ok(response)
}

/// Opens a span of a photo. One whose bytes are gone is taken out of the rows, so that it is asked
/// for again.
async fn open(
    hub: &Arc<Hub>,
    photo: Photo,
    from: u64,
    to: u64,
) -> Result<Box<dyn Read + Send>, Problem> {
    hub.work(move |hub| match hub.blobs.read(&photo, from, to) {
        Ok(bytes) => Ok(bytes),
        Err(why) if why.kind() == ErrorKind::NotFound => {
            hub.rows.forget(photo.company, &photo.sha256)?;
            hub.log
                .tell("photo_gone", json!({ "sha256": photo.sha256 }));
            Err(no_photo())
        }
        Err(why) => Err(Problem::disk(&why)),
    })
    .await
}

/// The bytes of a photo as they are read, a few pieces ahead of who takes them.
struct PhotoStream(mpsc::Receiver<std::io::Result<Bytes>>);

/// Bytes of one piece.
const PIECE: u64 = 128 << 10;

impl PhotoStream {
    fn begin(mut from: Box<dyn Read + Send>) -> PhotoStream {
        let (send, pieces) = mpsc::channel(2);
        tokio::spawn(async move {
            loop {
                let read = tokio::task::spawn_blocking(move || {
                    let mut bytes = Vec::new();
                    let piece = (&mut from).take(PIECE).read_to_end(&mut bytes);
                    (from, piece.map(|_| Bytes::from(bytes)))
                });
                let Ok((back, piece)) = read.await else {
                    return;
                };
                from = back;
                let last = piece.as_ref().map_or(true, Bytes::is_empty);
                // One that ends short breaks the answer off: its length was told.
                if piece.as_ref().is_ok_and(Bytes::is_empty)
                    || send.send(piece).await.is_err()
                    || last
                {
                    return;
                }
            }
        });
        PhotoStream(pieces)
    }
}

impl http_body::Body for PhotoStream {
    type Data = Bytes;
    type Error = std::io::Error;

    fn poll_frame(
        mut self: Pin<&mut Self>,
        context: &mut Context<'_>,
    ) -> Poll<Option<std::io::Result<http_body::Frame<Bytes>>>> {
        self.0
            .poll_recv(context)
            .map(|piece| piece.map(|piece| piece.map(http_body::Frame::data)))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn spans_are_read_as_the_standard_says() {
        for (text, expected) in [
            (None, Span::Whole),
            (Some("bytes=0-0"), Span::Part(0, 0)),
            (Some("bytes=3-"), Span::Part(3, 9)),
            (Some("bytes=-4"), Span::Part(6, 9)),
            (Some("bytes=-40"), Span::Part(0, 9)),
            (Some("bytes=8-400"), Span::Part(8, 9)),
            (Some("bytes=10-"), Span::Nothing),
            (Some("bytes=-0"), Span::Nothing),
            (Some("bytes=5-2"), Span::Whole),
            (Some("bytes=0-1,3-4"), Span::Whole),
            (Some("pages=1-2"), Span::Whole),
        ] {
            assert_eq!(span(text, 10), expected, "{text:?}");
        }
        assert_eq!(span(Some("bytes=0-"), 0), Span::Nothing);
    }
}
