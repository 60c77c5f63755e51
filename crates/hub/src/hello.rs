//! `GET /v1/hello`: which hub this is, what it speaks, and to a device where it stands.

use crate::problem::Problem;
use crate::rows::CompanyState;
use crate::token::{Caller, CallerSlot};
use crate::{Hub, limits, now};
use axum::extract::State;
use axum::http::{HeaderMap, header};
use axum::{Extension, Json};
use serde_json::{Value, json};
use std::sync::Arc;

/// The protocol spoken.
pub(crate) const PROTOCOL: std::ops::RangeInclusive<u32> = 1..=1;

pub(crate) async fn hello(
    State(hub): State<Arc<Hub>>,
    Extension(slot): Extension<CallerSlot>,
    headers: HeaderMap,
) -> Result<Json<Value>, Problem> {
    let identity = hub.work(|hub| hub.rows.identity()).await?;
    let mut body = json!({
        "hub_id": identity.hub_id,
        "epoch": identity.epoch,
        "protocol": { "min": PROTOCOL.start(), "max": PROTOCOL.end() },
        "limits": {
            "entries": limits::ENTRIES,
            "entries_bytes": limits::ENTRIES_BYTES,
            "entry_bytes": limits::ENTRY_BYTES,
            "body_bytes": limits::BODY_BYTES,
            "part_bytes": limits::PART_BYTES,
            "parts": limits::PARTS,
            "blob_bytes": limits::BLOB_BYTES,
            "missing": limits::MISSING,
            "requests_per_second": hub.per_second,
            "uploads": hub.uploads,
        },
        "time": now(),
    });
    // Without a token it says nothing of anybody; with a bad one it refuses.
    if headers.contains_key(header::AUTHORIZATION) {
        let caller = Caller::from_headers(&hub, &headers).await?;
        let _ = slot.0.set(caller.clone());
        let mine = caller.clone();
        let CompanyState { head, digest, own } =
            hub.work(move |hub| hub.rows.company_state(&mine)).await?;
        // The last count of each life of this device's store: a restored phone finds out by it.
        let own: Vec<Value> = own
            .iter()
            .map(|(life, max)| json!({ "incarnation": life, "max_dseq": max }))
            .collect();
        if let Some(fields) = body.as_object_mut() {
            let more = [
                ("head", json!(head)),
                (
                    "digest",
                    json!({ "count": digest.count, "sum": digest.hex() }),
                ),
                ("own", Value::Array(own)),
                ("company", json!(caller.company_name)),
                ("author", json!(caller.author)),
                ("device_id", json!(caller.device)),
                ("duplicate", json!(caller.duplicate)),
            ];
            fields.extend(more.map(|(name, value)| (name.to_owned(), value)));
        }
    }
    Ok(Json(body))
}
