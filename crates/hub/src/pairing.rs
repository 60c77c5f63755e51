//! `POST /v1/pair`: a code becomes the token of a device, once.

use crate::Hub;
use crate::code::{Code, Way};
use crate::limits::BODY_BYTES;
use crate::metrics::add;
use crate::problem::{self, Problem};
use crate::token::{self, Drawn};
use crate::{body, now};
use axum::Json;
use axum::body::Body;
use axum::extract::State;
use axum::http::{HeaderMap, StatusCode};
use axum::response::{IntoResponse, Response};
use rusqlite::{Connection, OptionalExtension, params};
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
struct Asks {
    code: String,
    device_name: String,
    device_id: Uuid,
}

/// A code that was good: whose it was.
struct Company {
    id: i64,
    name: String,
    author: Option<String>,
}

/// Gives a device its token.
pub(crate) async fn pair(
    State(hub): State<Arc<Hub>>,
    headers: HeaderMap,
    sent: Body,
) -> Result<Response, Problem> {
    // Not of one device yet: all who pair share one rate.
    hub.rates.request("pair", Instant::now())?;
    let asks: Asks = body::json(&body::read(&headers, sent, BODY_BYTES).await?)?;
    let name = asks.device_name.trim().to_owned();
    if !is_name(&name) {
        return Err(Problem::malformed(
            "this device has no name: give it 1 to 200 signs in one line",
        ));
    }
    let (code, way) = Code::read(&asks.code).ok_or_else(not_good)?;
    let drawn =
        token::draw().map_err(|why| Problem::new(problem::Code::Unavailable, why.to_string()))?;
    let (kept, device) = (Kept::of(&drawn), asks.device_id.to_string());
    let (device_row, today) = (device.clone(), now());
    let paired = hub
        .keep
        .writer
        .write(move |conn| {
            // A wrong try is written too, so it is no failure of the writing.
            let Some(company) = spend(conn, &code, way)? else {
                return Ok(None);
            };
            let author = company.author.clone().unwrap_or_else(|| name.clone());
            conn.execute(
                "INSERT INTO devices (company, device, name, author, paired, token_id, token_sha256)
                 VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7)
                 ON CONFLICT (company, device) DO UPDATE SET name = ?3, author = ?4, paired = ?5,
                     token_id = ?6, token_sha256 = ?7, revoked = NULL, duplicate = 0",
                params![
                    company.id,
                    device_row,
                    name,
                    author,
                    today,
                    kept.id,
                    &kept.sha256[..]
                ],
            )?;
            Ok(Some((company.name, author)))
        })
        .await?;
    let (company, author) = paired.ok_or_else(not_good)?;
    add(&hub.metrics.paired, 1);
    hub.log
        .tell("paired", json!({ "device": device, "company": company }));
    let told = json!({
        "token": drawn.token, "device_id": device, "company": company, "author": author,
    });
    Ok((StatusCode::CREATED, Json(told)).into_response())
}

struct Kept {
    id: String,
    sha256: [u8; 32],
}

impl Kept {
    fn of(drawn: &Drawn) -> Kept {
        Kept {
            id: drawn.id.clone(),
            sha256: drawn.sha256,
        }
    }
}

/// One word for each way in which a code can be bad: who guesses learns nothing.
fn not_good() -> Problem {
    Problem::new(
        problem::Code::Pairing,
        "this code is not good, or no longer: each works once, for ten minutes, and five wrong \
         tries end it; ask for a new one with `eavebook hub code`",
    )
}

/// Takes a code out of use where it is the right one; counts a wrong try against its name.
fn spend(conn: &Connection, code: &Code, way: Way) -> Result<Option<Company>, Problem> {
    let found = conn
        .prepare_cached(
            "SELECT o.company, c.name, o.author, o.typed_sha256, o.link_sha256
             FROM codes o JOIN companies c ON c.id = o.company
             WHERE o.name = ?1 AND o.ends > ?2 AND o.tries < ?3",
        )?
        .query_row(
            (code.name(), chrono::Utc::now().timestamp(), TRIES),
            |row| {
                let company = Company {
                    id: row.get(0)?,
                    name: row.get(1)?,
                    author: row.get(2)?,
                };
                let kept: Vec<u8> = match way {
                    Way::Typed => row.get(3)?,
                    Way::Link => row.get(4)?,
                };
                Ok((company, kept))
            },
        )
        .optional()?;
    let Some((company, kept)) = found else {
        return Ok(None);
    };
    if token::same(&kept, &code.sha256()) {
        conn.execute("DELETE FROM codes WHERE name = ?1", [code.name()])?;
        Ok(Some(company))
    } else {
        conn.execute(
            "UPDATE codes SET tries = tries + 1 WHERE name = ?1",
            [code.name()],
        )?;
        Ok(None)
    }
}

/// A name that can be shown in one line.
pub(crate) fn is_name(text: &str) -> bool {
    let signs = text.chars().count();
    (1..=200).contains(&signs) && !text.chars().any(char::is_control)
}
