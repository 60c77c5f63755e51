//! A refusal over HTTP: a status, a code that stays the same for programs, a sentence for a person
//! (RFC 9457).

use axum::http::{HeaderValue, StatusCode, header};
use axum::response::{IntoResponse, Response};
use std::io;

/// What is refused, and why.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(crate) struct Problem {
    code: Code,
    detail: String,
    /// Fields more, as JSON: what is missing, where the head is.
    more: Option<(&'static str, serde_json::Value)>,
}

/// The reasons there are. Their names are part of the protocol.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Code {
    /// The request cannot be read.
    Malformed,
    /// No token, an unknown one, one that was revoked.
    Token,
    /// A pairing code that is not good, or no longer.
    Pairing,
    /// A device asks for what only the hub's keeper may.
    AdminOnly,
    /// Not there, or another company's.
    NotFound,
    /// No such method here.
    Method,
    /// The body stopped coming.
    Stalled,
    /// The hub was restored since.
    Epoch,
    /// Some parts of a photo have not come.
    PartsMissing,
    /// A cursor past the last entry.
    CursorAhead,
    /// Over a limit of size.
    TooLarge,
    /// An encoding that is not spoken.
    Encoding,
    /// A range that the photo has not.
    Range,
    /// Bytes that are not what their name says.
    Hash,
    /// A protocol that is not spoken.
    Version,
    /// Too many requests at once.
    Rate,
    /// The database or the disk failed, or the hub is stopping.
    Unavailable,
    /// No space.
    Full,
}

impl Code {
    /// All of them, in the order of their declaration.
    #[cfg(test)]
    pub(crate) const ALL: [Code; 18] = [
        Code::Malformed,
        Code::Token,
        Code::Pairing,
        Code::AdminOnly,
        Code::NotFound,
        Code::Method,
        Code::Stalled,
        Code::Epoch,
        Code::PartsMissing,
        Code::CursorAhead,
        Code::TooLarge,
        Code::Encoding,
        Code::Range,
        Code::Hash,
        Code::Version,
        Code::Rate,
        Code::Unavailable,
        Code::Full,
    ];

    pub(crate) fn name(self) -> &'static str {
        match self {
            Code::Malformed => "malformed",
            Code::Token => "token",
            Code::Pairing => "pair_code",
            Code::AdminOnly => "admin_only",
            Code::NotFound => "not_found",
            Code::Method => "method",
            Code::Stalled => "stalled",
            Code::Epoch => "epoch",
            Code::PartsMissing => "parts_missing",
            Code::CursorAhead => "cursor_ahead",
            Code::TooLarge => "too_large",
            Code::Encoding => "encoding",
            Code::Range => "range",
            Code::Hash => "hash",
            Code::Version => "version",
            Code::Rate => "rate",
            Code::Unavailable => "unavailable",
            Code::Full => "full",
        }
    }

    fn status(self) -> StatusCode {
        match self {
            Code::Malformed => StatusCode::BAD_REQUEST,
            Code::Token | Code::Pairing => StatusCode::UNAUTHORIZED,
            Code::AdminOnly => StatusCode::FORBIDDEN,
            Code::NotFound => StatusCode::NOT_FOUND,
            Code::Method => StatusCode::METHOD_NOT_ALLOWED,
            Code::Stalled => StatusCode::REQUEST_TIMEOUT,
            Code::Epoch | Code::PartsMissing => StatusCode::CONFLICT,
            Code::CursorAhead => StatusCode::GONE,
            Code::TooLarge => StatusCode::PAYLOAD_TOO_LARGE,
            Code::Encoding => StatusCode::UNSUPPORTED_MEDIA_TYPE,
            Code::Range => StatusCode::RANGE_NOT_SATISFIABLE,
            Code::Hash => StatusCode::UNPROCESSABLE_ENTITY,
            Code::Version => StatusCode::UPGRADE_REQUIRED,
            Code::Rate => StatusCode::TOO_MANY_REQUESTS,
            Code::Unavailable => StatusCode::SERVICE_UNAVAILABLE,
            Code::Full => StatusCode::INSUFFICIENT_STORAGE,
        }
    }
}

impl Problem {
    pub(crate) fn new(code: Code, detail: impl Into<String>) -> Problem {
        Problem {
            code,
            detail: detail.into(),
            more: None,
        }
    }

    pub(crate) fn malformed(detail: impl Into<String>) -> Problem {
        Problem::new(Code::Malformed, detail)
    }

    pub(crate) fn with(mut self, name: &'static str, value: impl Into<serde_json::Value>) -> Self {
        self.more = Some((name, value.into()));
        self
    }

    /// The database failed, whichever it is.
    pub(crate) fn database(why: &str) -> Problem {
        Problem::new(
            Code::Unavailable,
            format!(
                "the hub's database failed ({why}) and nothing of this was kept: send it again"
            ),
        )
    }

    /// The sentence for a person.
    pub(crate) fn detail(&self) -> &str {
        &self.detail
    }

    /// The file of a photo failed.
    pub(crate) fn disk(why: &io::Error) -> Problem {
        if matches!(
            why.kind(),
            io::ErrorKind::StorageFull | io::ErrorKind::QuotaExceeded
        ) {
            return full();
        }
        Problem::new(
            Code::Unavailable,
            format!("the hub's disk failed ({why}) and nothing of this was kept: send it again"),
        )
    }
}

impl From<rusqlite::Error> for Problem {
    fn from(why: rusqlite::Error) -> Problem {
        if why.sqlite_error_code() == Some(rusqlite::ErrorCode::DiskFull) {
            return full();
        }
        Problem::database(&why.to_string())
    }
}

pub(crate) fn full() -> Problem {
    Problem::new(
        Code::Full,
        "the hub's disk is full and nothing of this was kept: free some space there, then send it \
         again; reading still works",
    )
}

/// What to do when the hub cannot say more.
pub(crate) fn stopping() -> Problem {
    Problem::new(
        Code::Unavailable,
        "the hub is stopping and nothing of this was kept: send it again",
    )
}

impl IntoResponse for Problem {
    fn into_response(self) -> Response {
        let status = self.code.status();
        let mut body = serde_json::json!({
            "type": "about:blank",
            "title": status.canonical_reason().unwrap_or_default(),
            "status": status.as_u16(),
            "code": self.code.name(),
            "detail": self.detail,
        });
        if let (Some(fields), Some((name, value))) = (body.as_object_mut(), self.more) {
            fields.insert(name.to_owned(), value);
        }
        let kind = HeaderValue::from_static("application/problem+json");
        let mut response =
            (status, [(header::CONTENT_TYPE, kind)], body.to_string()).into_response();
        let headers = response.headers_mut();
        match self.code {
            Code::Token => {
                headers.insert(header::WWW_AUTHENTICATE, HeaderValue::from_static("Bearer"));
            }
            Code::Rate | Code::Unavailable => {
                headers.insert(header::RETRY_AFTER, HeaderValue::from_static("1"));
            }
            Code::Full => {
                headers.insert(header::RETRY_AFTER, HeaderValue::from_static("60"));
            }
            Code::Malformed
            | Code::Pairing
            | Code::AdminOnly
            | Code::NotFound
            | Code::Method
            | Code::Stalled
            | Code::Epoch
            | Code::PartsMissing
            | Code::CursorAhead
            | Code::TooLarge
            | Code::Encoding
            | Code::Range
            | Code::Hash
            | Code::Version => {}
        }
        response
    }
}
