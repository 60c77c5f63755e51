//! `/v1/devices`: who is paired, for the keeper alone.

use crate::Hub;
use crate::error::HubError;
use crate::place::HubHandle;
use crate::problem::{Code, Problem};
use crate::token::Admin;
use axum::Json;
use axum::extract::{Path, State};
use axum::http::StatusCode;
use serde::Serialize;
use serde_json::{Value, json};
use std::sync::Arc;

/// A device that was paired.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct PairedDevice {
    /// Its id.
    pub device_id: String,
    /// Its name, as it gave it.
    pub name: String,
    /// Whose it is.
    pub company: String,
    /// Who books on it.
    pub author: String,
    /// When it was paired, RFC 3339.
    pub paired: String,
    /// When it was turned out, if it was.
    pub revoked: Option<String>,
    /// Two phones count as this one: one of them is to be paired anew.
    pub duplicate: bool,
}

/// All devices of a hub, also those turned out; the hub may run meanwhile.
///
/// # Errors
/// `NoHub`, `Database`, `Rows`, `Refused`.
pub fn devices(dir: &std::path::Path) -> Result<Vec<PairedDevice>, HubError> {
    HubHandle::open(dir)?.run(|rows| rows.devices())
}

pub(crate) async fn list(_: Admin, State(hub): State<Arc<Hub>>) -> Result<Json<Value>, Problem> {
    let devices = hub.work(|hub| hub.rows.devices()).await?;
    Ok(Json(json!({ "devices": devices })))
}

pub(crate) async fn revoke(
    _: Admin,
    State(hub): State<Arc<Hub>>,
    Path(device): Path<String>,
) -> Result<StatusCode, Problem> {
    let named = device.clone();
    let changed = hub.work(move |hub| hub.rows.revoke(&named)).await?;
    if changed == 0 {
        return Err(Problem::new(
            Code::NotFound,
            "no such device is paired here: `GET /v1/devices` lists them",
        ));
    }
    hub.log.tell("revoked", json!({ "device": device }));
    Ok(StatusCode::NO_CONTENT)
}
