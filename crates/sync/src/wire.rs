//! Requests and answers as bytes, and the shapes in them that a client reads.

use serde::Deserialize;
use serde_json::value::RawValue;
use uuid::Uuid;

/// How a request goes.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Method {
    /// Asks.
    Get,
    /// Tells, or asks with a body.
    Post,
    /// Puts bytes under a name.
    Put,
}

impl Method {
    /// As HTTP writes it.
    #[must_use]
    pub fn name(self) -> &'static str {
        match self {
            Method::Get => "GET",
            Method::Post => "POST",
            Method::Put => "PUT",
        }
    }
}

/// What is to be asked of the hub.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Request {
    /// How.
    pub method: Method,
    /// Path and query: `/v1/hello`.
    pub path: String,
    /// Body; empty for none.
    pub body: Vec<u8>,
    /// First and last byte asked for, where not all are.
    pub span: Option<(u64, u64)>,
}

impl Request {
    pub(crate) fn get(path: impl Into<String>) -> Request {
        Request {
            method: Method::Get,
            path: path.into(),
            body: Vec::new(),
            span: None,
        }
    }

    /// Asks for a span only: bytes from `first` to `last`, both of them too.
    pub(crate) fn span(path: impl Into<String>, first: u64, last: u64) -> Request {
        Request {
            span: Some((first, last)),
            ..Request::get(path)
        }
    }

    pub(crate) fn post(path: impl Into<String>, body: String) -> Request {
        Request {
            method: Method::Post,
            path: path.into(),
            body: body.into_bytes(),
            span: None,
        }
    }

    pub(crate) fn put(path: impl Into<String>, body: Vec<u8>) -> Request {
        Request {
            method: Method::Put,
            path: path.into(),
            body,
            span: None,
        }
    }
}

/// What the hub answered.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Response {
    /// HTTP status.
    pub status: u16,
    /// Seconds of `Retry-After`.
    pub retry_after: Option<u64>,
    /// Bytes of the whole, where this is a span of it.
    pub whole: Option<u64>,
    /// Body.
    pub body: Vec<u8>,
}

impl Response {
    /// The body as a shape; `None` where it is another.
    pub(crate) fn read<'a, T: Deserialize<'a>>(&'a self) -> Option<T> {
        serde_json::from_slice(&self.body).ok()
    }

    /// Why it was refused: a code for programs, a sentence for a person.
    pub(crate) fn problem(&self) -> Problem {
        self.read().unwrap_or_default()
    }
}

/// A refusal (RFC 9457).
#[derive(Clone, Debug, Default, Deserialize)]
#[serde(default)]
pub(crate) struct Problem {
    pub code: String,
    pub detail: String,
}

#[derive(Deserialize)]
pub(crate) struct Hello {
    pub hub_id: String,
    pub epoch: String,
    pub protocol: Range,
    #[serde(default)]
    pub own: Vec<OwnLife>,
    #[serde(default)]
    pub duplicate: bool,
}

#[derive(Deserialize)]
pub(crate) struct Range {
    pub min: u32,
    pub max: u32,
}

#[derive(Deserialize)]
pub(crate) struct OwnLife {
    pub incarnation: String,
    pub max_dseq: u64,
}

#[derive(Deserialize)]
pub(crate) struct PushReply {
    pub results: Vec<EntryStatus>,
}

#[derive(Deserialize)]
pub(crate) struct EntryStatus {
    pub id: serde_json::Value,
    pub status: String,
    pub reason: Option<String>,
}

#[derive(Deserialize)]
pub(crate) struct Page {
    pub entries: Vec<FeedEntry>,
    pub next: String,
    pub more: bool,
}

#[derive(Deserialize)]
pub(crate) struct FeedEntry {
    pub entry: Box<RawValue>,
}

#[derive(Deserialize)]
pub(crate) struct MissingPhotos {
    pub missing: Vec<String>,
}

#[derive(Deserialize)]
pub(crate) struct Parts {
    pub parts: Vec<u64>,
}

#[derive(Deserialize)]
pub(crate) struct DigestReply {
    pub same: bool,
    #[serde(default)]
    pub scopes: Vec<Sum>,
    #[serde(default)]
    pub ids: Vec<Uuid>,
}

#[derive(Deserialize)]
pub(crate) struct Sum {
    pub scope: String,
    pub count: u64,
    pub sum: String,
}

#[derive(Deserialize)]
pub(crate) struct Conflicts {
    pub conflicts: Vec<Box<RawValue>>,
}
