//! Tokens: who asks. A hub keeps the SHA-256 of a secret, never the secret.

use crate::Hub;
use crate::error::HubError;
use crate::problem::{Code, Problem};
use axum::extract::FromRequestParts;
use axum::http::request::Parts;
use axum::http::{HeaderMap, header};
use base64::Engine;
use base64::engine::general_purpose::URL_SAFE_NO_PAD;
use sha2::{Digest, Sha256};
use std::sync::{Arc, OnceLock};
use std::time::Instant;
use subtle::ConstantTimeEq;
use uuid::Uuid;

/// The device that asks, and its company: both from the token, never from a body.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(crate) struct Caller {
    pub(crate) token_id: String,
    pub(crate) device: String,
    pub(crate) company: i64,
    pub(crate) company_name: String,
    pub(crate) author: String,
    pub(crate) duplicate: bool,
    /// The hub's, as it asked.
    pub(crate) epoch: String,
}

/// Where a request's log line finds who asked.
#[derive(Clone, Debug, Default)]
pub(crate) struct CallerSlot(pub(crate) Arc<OnceLock<Caller>>);

/// A token as it is shown once, and what is kept of it.
pub(crate) struct NewToken {
    pub(crate) token: String,
    pub(crate) id: String,
    pub(crate) sha256: [u8; 32],
}

/// Draws the token of a device.
///
/// # Errors
/// `System`.
pub(crate) fn draw() -> Result<NewToken, HubError> {
    let id = Uuid::new_v4().to_string();
    let secret = URL_SAFE_NO_PAD.encode(random::<32>()?);
    Ok(NewToken {
        token: format!("dev_{id}.{secret}"),
        id,
        sha256: sha256(secret.as_bytes()),
    })
}

pub(crate) fn random<const N: usize>() -> Result<[u8; N], HubError> {
    let mut bytes = [0; N];
    getrandom::fill(&mut bytes).map_err(|why| HubError::System(format!("no randomness: {why}")))?;
    Ok(bytes)
}

pub(crate) fn sha256(bytes: &[u8]) -> [u8; 32] {
    Sha256::digest(bytes).into()
}

/// Whether two hashes are one, in a time that does not tell where they differ.
pub(crate) fn same(left: &[u8], right: &[u8]) -> bool {
    left.ct_eq(right).into()
}

fn unknown() -> Problem {
    Problem::new(
        Code::Token,
        "this device is not paired with this hub, or no longer: pair it anew with a code of the hub",
    )
}

/// The token after `Bearer`.
fn bearer(headers: &HeaderMap) -> Result<&str, Problem> {
    let mut values = headers.get_all(header::AUTHORIZATION).iter();
    let (Some(value), None) = (values.next(), values.next()) else {
        return Err(unknown());
    };
    let text = value.to_str().map_err(|_| unknown())?;
    let (scheme, token) = text.split_once(' ').ok_or_else(unknown)?;
    if scheme.eq_ignore_ascii_case("bearer") {
        Ok(token.trim())
    } else {
        Err(unknown())
    }
}

impl Caller {
    /// Who sends these headers. Looked up anew each time, so that who is revoked is out at once.
    ///
    /// # Errors
    /// `Token`, `Rate`, `Unavailable`.
    pub(crate) async fn from_headers(
        hub: &Arc<Hub>,
        headers: &HeaderMap,
    ) -> Result<Caller, Problem> {
        let token = bearer(headers)?;
        let (id, secret) = token
            .strip_prefix("dev_")
            .and_then(|rest| rest.split_once('.'))
            .ok_or_else(unknown)?;
        let (id, given) = (id.to_owned(), sha256(secret.as_bytes()));
        let caller = hub.work(move |hub| find(hub, &id, &given)).await?;
        hub.rates.request(&caller.token_id, Instant::now())?;
        Ok(caller)
    }
}

fn find(hub: &Hub, id: &str, given: &[u8; 32]) -> Result<Caller, Problem> {
    match hub.rows.device(id)? {
        Some((kept, caller)) if same(&kept, given) => Ok(caller),
        Some(_) | None => Err(unknown()),
    }
}

impl FromRequestParts<Arc<Hub>> for Caller {
    type Rejection = Problem;

    async fn from_request_parts(parts: &mut Parts, hub: &Arc<Hub>) -> Result<Caller, Problem> {
        let caller = Caller::from_headers(hub, &parts.headers).await?;
        if let Some(slot) = parts.extensions.get::<CallerSlot>() {
            let _ = slot.0.set(caller.clone());
        }
        Ok(caller)
    }
}

/// The keeper of the hub, who has its folder and so the token in it.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Admin;

impl FromRequestParts<Arc<Hub>> for Admin {
    type Rejection = Problem;

    async fn from_request_parts(parts: &mut Parts, hub: &Arc<Hub>) -> Result<Admin, Problem> {
        let token = bearer(&parts.headers)?;
        if same(&sha256(token.as_bytes()), &hub.admin) {
            return Ok(Admin);
        }
        Caller::from_headers(hub, &parts.headers).await?;
        Err(Problem::new(
            Code::AdminOnly,
            "a device may not see or revoke devices: ask at the hub, whose folder holds the \
             keeper's token",
        ))
    }
}
