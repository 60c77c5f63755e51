//! `POST /v1/digest`: whether two sets of entries are one, and where they differ: by job, then by
//! the last byte of the id (the first bytes are a time, so they would not spread), then by id.

use crate::limits::BODY_BYTES;
use crate::problem::Problem;
use crate::token::Caller;
use crate::{Hub, body};
use axum::Json;
use axum::body::Body;
use axum::extract::State;
use axum::http::HeaderMap;
use eavebook_core::book::digest::SetDigest;
use eavebook_core::book::scope::Scope;
use serde::Deserialize;
use serde_json::{Value, json};
use std::collections::BTreeMap;
use std::sync::Arc;
use uuid::Uuid;

#[derive(Deserialize)]
struct DigestQuery {
    scope: String,
    count: u64,
    sum: String,
}

/// Compares; where they differ, says how the next smaller sets stand here.
pub(crate) async fn digest(
    caller: Caller,
    State(hub): State<Arc<Hub>>,
    headers: HeaderMap,
    sent: Body,
) -> Result<Json<Value>, Problem> {
    let query: DigestQuery = body::json(&body::read(&headers, sent, BODY_BYTES).await?)?;
    let scope = Scope::read(&query.scope).ok_or_else(|| {
        Problem::malformed("a scope is `company`, `book:ID`, or `book:ID/hh` with a byte in hex")
    })?;
    let reply = hub
        .work(move |hub| compare(hub, &caller, scope, &query))
        .await?;
    Ok(Json(reply))
}

fn compare(
    hub: &Hub,
    caller: &Caller,
    scope: Scope,
    query: &DigestQuery,
) -> Result<Value, Problem> {
    let is = |digest: SetDigest| {
        digest.count == query.count && digest.hex() == query.sum.to_ascii_lowercase()
    };
    if scope == Scope::Company && is(hub.rows.company_state(caller)?.digest) {
        return Ok(json!({ "same": true }));
    }
    let mut whole = SetDigest::default();
    let mut parts: BTreeMap<String, SetDigest> = BTreeMap::new();
    let mut ids = Vec::new();
    let mut look = |id: Uuid, book: Uuid, sha256: &str| {
        if !scope.holds(book, id) {
            return;
        }
        if matches!(scope, Scope::Byte(..)) {
            ids.push(id);
        }
        whole = whole.with(id, sha256);
        let part = parts.entry(scope.part(book, id).to_string()).or_default();
        *part = part.with(id, sha256);
    };
    let book = match scope {
        Scope::Company => None,
        Scope::Book(book) | Scope::Byte(book, _) => Some(book),
    };
    hub.rows.walk(caller.company, book, &mut look)?;
    if is(whole) {
        return Ok(json!({ "same": true }));
    }
    Ok(match scope {
        Scope::Byte(..) => json!({ "same": false, "ids": ids }),
        Scope::Company | Scope::Book(_) => {
            let scopes: Vec<Value> = parts
                .iter()
                .map(|(scope, digest)| {
                    json!({ "scope": scope, "count": digest.count, "sum": digest.hex() })
                })
                .collect();
            json!({ "same": false, "scopes": scopes })
        }
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_scope_is_read_or_refused() {
        let book = Uuid::from_u128(7);
        assert_eq!(Scope::read("company"), Some(Scope::Company));
        assert_eq!(
            Scope::read(&format!("book:{book}")),
            Some(Scope::Book(book))
        );
        assert_eq!(
            Scope::read(&format!("book:{book}/fe")),
            Some(Scope::Byte(book, 0xfe))
        );
        for bad in ["", "book:", "book:7", "all"] {
            assert_eq!(Scope::read(bad), None, "{bad}");
        }
        for bad in ["/f", "/+f", "/fff", "/", "/gg"] {
            assert_eq!(Scope::read(&format!("book:{book}{bad}")), None, "{bad}");
        }
    }
}
