//! Bodies: read up to a limit, unpacked up to a limit, given up when they stall.

use crate::limits::STALL;
use crate::problem::{self, Code, Problem};
use axum::body::{Body, HttpBody};
use axum::http::{HeaderMap, HeaderValue, header};
use axum::response::{IntoResponse, Response};
use http_body_util::{BodyExt, Collected};
use serde::Deserialize;
use std::io::Read;

/// How much of a body that is too large is still read: who is cut off while sending never reads
/// the answer.
const DRAINED: usize = 16 << 20;

/// Compressed bytes may outgrow what they hold by so much.
const SLACK: usize = 4096;

/// Past this size no honest body holds so many times what came: names, hashes and numbers do not
/// pack so well.
const MOST_PACKED: (usize, usize) = (1 << 20, 100);

/// Largest window of a compressed body, as a power of two: 8 MiB of memory.
const WINDOW_LOG: u32 = 23;

/// Reads a body and unpacks it: at most `limit` bytes.
///
/// # Errors
/// `TooLarge`, `Encoding`, `Malformed`, `Stalled`.
pub(crate) async fn read(
    headers: &HeaderMap,
    body: Body,
    limit: usize,
) -> Result<Vec<u8>, Problem> {
    let packed = packing(headers)?;
    let most = match packed {
        Packing::None => limit,
        Packing::Zstd => limit + SLACK,
    };
    let raw = gather(headers, body, most, limit).await?;
    match packed {
        Packing::None => Ok(raw),
        Packing::Zstd => unpack(&raw, limit),
    }
}

/// Reads JSON.
///
/// # Errors
/// `Malformed`, with what is wrong where.
pub(crate) fn json<'a, T: Deserialize<'a>>(bytes: &'a [u8]) -> Result<T, Problem> {
    serde_json::from_slice(bytes)
        .map_err(|why| Problem::malformed(format!("this body is not what is asked for: {why}")))
}

enum Packing {
    None,
    Zstd,
}

fn packing(headers: &HeaderMap) -> Result<Packing, Problem> {
    let Some(named) = headers.get(header::CONTENT_ENCODING) else {
        return Ok(Packing::None);
    };
    match named.to_str().map(str::to_ascii_lowercase).as_deref() {
        Ok("zstd") => Ok(Packing::Zstd),
        Ok("identity") => Ok(Packing::None),
        Ok(_) | Err(_) => Err(Problem::new(
            Code::Encoding,
            "this content encoding is not read here: send zstd, or none",
        )),
    }
}

fn too_large(limit: usize) -> Problem {
    Problem::new(
        Code::TooLarge,
        format!("this body is over {limit} bytes and nothing of it was taken: send less at once"),
    )
}

async fn gather(
    headers: &HeaderMap,
    mut body: Body,
    most: usize,
    limit: usize,
) -> Result<Vec<u8>, Problem> {
    let declared: Option<usize> = headers
        .get(header::CONTENT_LENGTH)
        .and_then(|length| length.to_str().ok())
        .and_then(|length| length.parse().ok());
    if declared.is_some_and(|length| length > most)
        && (headers.contains_key(header::EXPECT) || declared.is_some_and(|length| length > DRAINED))
    {
        return Err(too_large(limit));
    }
    let mut bytes = Vec::with_capacity(declared.unwrap_or(0).min(most));
    let mut length = 0;
    loop {
        let frame = tokio::time::timeout(STALL, body.frame())
            .await
            .map_err(|_| {
                let why = "the body stopped coming for 30 seconds: send it again";
                Problem::new(Code::Stalled, why)
            })?;
        let Some(frame) = frame else {
            break;
        };
        let frame =
            frame.map_err(|_| Problem::malformed("the body was cut off: send it again whole"))?;
        if let Ok(piece) = frame.into_data() {
            length += piece.len();
            if length <= most {
                bytes.extend_from_slice(&piece);
            } else if length > DRAINED {
                break;
            }
        }
    }
    if length > most {
        Err(too_large(limit))
    } else {
        Ok(bytes)
    }
}

/// Unpacks zstd, and stops at the first byte past the limit, however much would follow.
pub(crate) fn unpack(packed: &[u8], limit: usize) -> Result<Vec<u8>, Problem> {
    let hub_error =
        |why| Problem::malformed(format!("this body is no whole zstd ({why}): send it again"));
    let (size, ratio) = MOST_PACKED;
    let limit = limit.min(size.max(packed.len().saturating_mul(ratio)));
    let mut bytes = Vec::new();
    let mut from = zstd::stream::read::Decoder::new(packed).map_err(hub_error)?;
    from.window_log_max(WINDOW_LOG).map_err(hub_error)?;
    from.take(limit as u64 + 1)
        .read_to_end(&mut bytes)
        .map_err(hub_error)?;
    if bytes.len() > limit {
        Err(too_large(limit))
    } else {
        Ok(bytes)
    }
}

/// Whether the asker reads zstd (RFC 9110, 12.5.3): named, or all are, and not with a weight of 0.
fn reads_zstd(headers: &HeaderMap) -> bool {
    let mut any = false;
    for one in headers
        .get_all(header::ACCEPT_ENCODING)
        .iter()
        .filter_map(|value| value.to_str().ok())
        .flat_map(|value| value.split(','))
    {
        let mut parts = one.split(';').map(str::trim);
        let coding = parts.next().unwrap_or_default().to_ascii_lowercase();
        let refused = parts
            .filter_map(|part| part.strip_prefix("q="))
            .any(|weight| weight.parse().is_ok_and(|weight: f32| weight <= 0.0));
        match coding.as_str() {
            "zstd" => return !refused,
            "*" => any = !refused,
            _ => {}
        }
    }
    any
}

/// Packs an answer in JSON where the asker reads zstd and it is worth it.
pub(crate) async fn packed(asked: &HeaderMap, response: Response) -> Response {
    const WORTH: usize = 1024;
    let json = response
        .headers()
        .get(header::CONTENT_TYPE)
        .is_some_and(|kind| kind == "application/json");
    if !json {
        return response;
    }
    let reads = reads_zstd(asked);
    let (mut head, body) = response.into_parts();
    head.headers
        .insert(header::VARY, HeaderValue::from_static("accept-encoding"));
    let size = body.size_hint().exact().unwrap_or(u64::MAX);
    if !reads || size < WORTH as u64 {
        return Response::from_parts(head, body);
    }
    // It was put together in memory: nothing is waited for.
    let Ok(bytes) = body.collect().await.map(Collected::to_bytes) else {
        return problem::stopping().into_response();
    };
    let body = match zstd::stream::encode_all(&bytes[..], 1) {
        Ok(packed) => {
            head.headers.remove(header::CONTENT_LENGTH);
            head.headers
                .insert(header::CONTENT_ENCODING, HeaderValue::from_static("zstd"));
            Body::from(packed)
        }
        Err(_) => Body::from(bytes),
    };
    Response::from_parts(head, body)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_bomb_is_stopped_at_the_limit() {
        let bomb = zstd::stream::encode_all(&vec![0; 64 << 20][..], 3).unwrap();
        assert!(bomb.len() < 8192);
        assert_eq!(unpack(&bomb, 1 << 20), Err(too_large(1 << 20)));
    }

    #[test]
    fn what_unpacks_to_a_hundred_times_its_size_is_stopped_before_the_limit() {
        let packed = |bytes: &[u8]| zstd::stream::encode_all(bytes, 3).unwrap();
        let blanks = packed(&vec![b' '; 7 << 20]);
        assert_eq!(unpack(&blanks, 8 << 20), Err(too_large(1 << 20)));
        let few = packed(&vec![b' '; 1 << 20]);
        assert_eq!(unpack(&few, 8 << 20).unwrap().len(), 1 << 20);
    }

    #[test]
    fn an_asker_says_in_which_coding_it_reads() {
        for (accepted, reads) in [
            ("zstd", true),
            ("gzip, ZSTD;q=0.5", true),
            ("*", true),
            ("zstd;q=0", false),
            ("zstd; q=0, *", false),
            ("gzip", false),
            ("", false),
        ] {
            let value = HeaderValue::from_static(accepted);
            let headers = HeaderMap::from_iter([(header::ACCEPT_ENCODING, value)]);
            assert_eq!(reads_zstd(&headers), reads, "{accepted}");
        }
    }

    #[test]
    fn a_body_cut_off_is_no_body() {
        let packed = zstd::stream::encode_all(&b"a roof"[..], 3).unwrap();
        assert_eq!(unpack(&packed, 100).unwrap(), b"a roof");
        for end in 0..packed.len() {
            let unpacked = unpack(&packed[..end], 100);
            assert!(unpacked.is_err() || unpacked == Ok(Vec::new()), "{end}");
        }
    }
}
