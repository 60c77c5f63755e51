//! `POST /v1/pair`: a code becomes the token of a device, once.

use crate::Hub;
use crate::code::Code;
use crate::limits::BODY_BYTES;
use crate::metrics::add;
use crate::problem::{self, Problem};
use crate::rows::Pairing;
use crate::{body, token};
use axum::Json;
use axum::body::Body;
use axum::extract::State;
use axum::http::{HeaderMap, StatusCode};
use axum::response::{IntoResponse, Response};
use serde::Deserialize;
use serde_json::json;
use std::sync::Arc;
use std::time::Instant;
use uuid::Uuid;

/// Wrong tries after which a code is dead.
pub(crate) const TRIES: u32 = 5;
/// How long a code lives, seconds.
pub(crate) const LIVES: i64 = 600;

#[derive(Deserialize)]
struct PairingRequest {
    code: String,
    device_name: String,
    device_id: Uuid,
}

/// Gives a device its token.
pub(crate) async fn pair(
    State(hub): State<Arc<Hub>>,
    headers: HeaderMap,
    sent: Body,
) -> Result<Response, Problem> {
    // Not of one device yet: all who pair share one rate.
    hub.rates.request("pair", Instant::now())?;
    let request: PairingRequest = body::json(&body::read(&headers, sent, BODY_BYTES).await?)?;
    let name = request.device_name.trim().to_owned();
    if !is_name(&name) {
        return Err(Problem::malformed(
            "this device has no name: give it 1 to 200 signs in one line",
        ));
    }
    let (code, way) = Code::read(&request.code).ok_or_else(not_good)?;
    let drawn =
        token::draw().map_err(|why| Problem::new(problem::Code::Unavailable, why.to_string()))?;
    let (device, token) = (request.device_id.to_string(), drawn.token.clone());
    let pairing = Pairing {
        code,
        way,
        device: request.device_id,
        name,
        drawn,
    };
    let paired = hub.work(move |hub| hub.rows.pair(&pairing)).await?;
    let (company, author) = paired.ok_or_else(not_good)?;
    add(&hub.metrics.paired, 1);
    hub.log
        .tell("paired", json!({ "device": device, "company": company }));
    let body = json!({
        "token": token, "device_id": device, "company": company, "author": author,
    });
    Ok((StatusCode::CREATED, Json(body)).into_response())
}

/// One word for each way in which a code can be bad: who guesses learns nothing.
fn not_good() -> Problem {
    Problem::new(
        problem::Code::Pairing,
        "this code is not good, or no longer: each works once, for ten minutes, and five wrong \
         tries end it; ask for a new one with `eavebook hub code`",
    )
}

/// A name that can be shown in one line.
pub(crate) fn is_name(text: &str) -> bool {
    let signs = text.chars().count();
    (1..=200).contains(&signs) && !text.chars().any(char::is_control)
}
