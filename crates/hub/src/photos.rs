//! `/v1/blobs`: photos by their SHA-256, whole or in parts of 1 MiB in any order, each as often as
//! one likes.

use crate::blobs::{Blobs, Joined};
use crate::keep::Keep;
use crate::limits::{BLOB_BYTES, BODY_BYTES, MISSING, PART_BYTES, PARTS};
use crate::metrics::add;
use crate::problem::{Code, Problem};
use crate::token::{self, Caller};
use crate::{Hub, body, hex, is_sha256};
use axum::Json;
use axum::body::{Body, Bytes};
use axum::extract::{Path, State};
use axum::http::{HeaderMap, HeaderValue, StatusCode, header};
use axum::response::{IntoResponse, Response};
use rusqlite::{OptionalExtension, params};
use serde::Deserialize;
use serde_json::{Value, json};
use std::fs::File;
use std::io::{Read, Seek, SeekFrom};
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

/// Size of a photo that is whole here.
fn size(keep: &Keep, blobs: &Blobs, company: i64, sha256: &str) -> Result<Option<u64>, Problem> {
    let row: Option<u64> = keep.read(|conn| {
        let sql = "SELECT size FROM blobs WHERE company = ?1 AND sha256 = ?2";
        Ok(conn
            .prepare_cached(sql)?
            .query_row((company, sha256), |row| row.get(0))
            .optional()?)
    })?;
    // A row whose file is gone is a photo to be sent again.
    Ok(row.filter(|size| blobs.has(company, sha256, *size)))
}

#[derive(Deserialize)]
struct Asks {
    sha256: Vec<String>,
}

/// Which of some photos are not here.
pub(crate) async fn missing(
    caller: Caller,
    State(hub): State<Arc<Hub>>,
    headers: HeaderMap,
    sent: Body,
) -> Result<Json<Value>, Problem> {
    let asks: Asks = body::json(&body::read(&headers, sent, BODY_BYTES).await?)?;
    if asks.sha256.len() > MISSING {
        return Err(Problem::new(
            Code::TooLarge,
            format!("ask for at most {MISSING} photos in one call"),
        ));
    }
    asks.sha256.iter().try_for_each(|sha256| named(sha256))?;
    let blobs = hub.blobs.clone();
    let missing = hub
        .read(move |keep| {
            let mut missing = Vec::new();
            for sha256 in asks.sha256 {
                if size(keep, &blobs, caller.company, &sha256)?.is_none() {
                    missing.push(sha256);
                }
            }
            Ok(missing)
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
    let (blobs, name, company) = (hub.blobs.clone(), sha256.clone(), caller.company);
    let length = bytes.len() as u64;
    let known = hub
        .read(move |keep| {
            if hex(&token::sha256(&bytes)) != name {
                return Err(other_bytes());
            }
            if size(keep, &blobs, company, &name)?.is_some() {
                return Ok(true);
            }
            blobs
                .put(company, &name, &bytes)
                .map_err(|why| Problem::disk(&why))?;
            Ok(false)
        })
        .await?;
    if known {
        return Ok(StatusCode::OK);
    }
    publish(&hub, company, sha256, length).await
}

fn other_bytes() -> Problem {
    Problem::new(
        Code::Hash,
        "these bytes are not the photo of this name: read it from the disk and send it again",
    )
}

/// The row that makes a photo, whose file is on the disk, one that is here.
async fn publish(
    hub: &Hub,
    company: i64,
    sha256: String,
    size: u64,
) -> Result<StatusCode, Problem> {
    let added = hub
        .keep
        .writer
        .write(move |conn| {
            Ok(conn
                .prepare_cached(
                    "INSERT INTO blobs (company, sha256, size) VALUES (?1, ?2, ?3)
                     ON CONFLICT (company, sha256) DO NOTHING",
                )?
                .execute(params![company, sha256, size])?)
        })
        .await?;
    if added == 0 {
        return Ok(StatusCode::OK);
    }
    add(&hub.metrics.photos, 1);
    add(&hub.metrics.photo_bytes, size);
    Ok(StatusCode::CREATED)
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
    let blobs = hub.blobs.clone();
    let first = hub
        .read(move |keep| {
            if size(keep, &blobs, caller.company, &sha256)?.is_some() {
                return Ok(false);
            }
            blobs
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
    let blobs = hub.blobs.clone();
    let parts: Vec<u64> = hub
        .read(move |keep| {
            if let Some(size) = size(keep, &blobs, caller.company, &sha256)? {
                return Ok((0..size.div_ceil(PART_BYTES as u64)).collect());
            }
            let parts = blobs
                .parts(caller.company, &sha256)
                .map_err(|why| Problem::disk(&why))?;
            Ok(parts.into_iter().collect())
        })
        .await?;
    Ok(Json(json!({ "parts": parts })))
}

#[derive(Deserialize)]
struct Whole {
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
    let whole: Whole = body::json(&body::read(&headers, sent, BODY_BYTES).await?)?;
    if whole.size > BLOB_BYTES {
        return Err(Problem::new(
            Code::TooLarge,
            format!("a photo holds at most {BLOB_BYTES} bytes: send a smaller one"),
        ));
    }
    let _upload = hub.rates.upload(&caller.token_id, Instant::now())?;
    let (blobs, name, company) = (hub.blobs.clone(), sha256.clone(), caller.company);
    let joined = hub
        .read(move |keep| {
            if size(keep, &blobs, company, &name)?.is_some() {
                return Ok(None);
            }
            let joined = blobs.join(company, &name, whole.size);
            joined.map(Some).map_err(|why| Problem::disk(&why))
        })
        .await?;
    match joined {
        None => Ok(StatusCode::OK),
        Some(Joined::Missing(parts)) => Err(Problem::new(
            Code::PartsMissing,
            "some parts of this photo have not come: send them, then complete it",
        )
        .with("missing", parts)),
        Some(Joined::OtherBytes) => Err(other_bytes()),
        Some(Joined::Whole) => {
            let told = publish(&hub, company, sha256.clone(), whole.size).await?;
            let blobs = hub.blobs.clone();
            hub.read(move |_| {
                blobs.clear(company, &sha256);
                Ok(())
            })
            .await?;
            Ok(told)
        }
    }
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
    let (blobs, name, company) = (hub.blobs.clone(), sha256.clone(), caller.company);
    let found = hub
        .read(move |keep| {
            let Some(size) = size(keep, &blobs, company, &name)? else {
                return Err(no_photo());
            };
            let file = File::open(blobs.file(company, &name));
            Ok((file.map_err(|why| Problem::disk(&why))?, size))
        })
        .await;
    let (file, size) = found?;
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
        let mut response = (status, Body::new(FileBody::begin(file, from, to))).into_response();
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

/// The bytes of a file as they are read, a few pieces ahead of who takes them.
struct FileBody(mpsc::Receiver<std::io::Result<Bytes>>);

/// Bytes of one piece.
const PIECE: u64 = 128 << 10;

impl FileBody {
    fn begin(file: File, from: u64, to: u64) -> FileBody {
        let (send, pieces) = mpsc::channel(2);
        tokio::spawn(async move {
            let (mut file, mut at) = (file, from);
            while at < to {
                let length = PIECE.min(to - at);
                let read = tokio::task::spawn_blocking(move || {
                    let piece = piece(&mut file, at, length);
                    (file, piece)
                });
                let Ok((back, piece)) = read.await else {
                    return;
                };
                file = back;
                at += length;
                let failed = piece.is_err();
                if send.send(piece).await.is_err() || failed {
                    return;
                }
            }
        });
        FileBody(pieces)
    }
}

fn piece(file: &mut File, at: u64, length: u64) -> std::io::Result<Bytes> {
    file.seek(SeekFrom::Start(at))?;
    let mut bytes = vec![0; usize::try_from(length).unwrap_or_default()];
    file.read_exact(&mut bytes)?;
    Ok(bytes.into())
}

impl http_body::Body for FileBody {
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
        for (text, told) in [
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
            assert_eq!(span(text, 10), told, "{text:?}");
        }
        assert_eq!(span(Some("bytes=0-"), 0), Span::Nothing);
    }
}
