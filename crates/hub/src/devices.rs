//! `/v1/devices`: who is paired, for the keeper alone.

use crate::Hub;
use crate::admin::revoke_in;
use crate::error::HubError;
use crate::keep::connect_to;
use crate::problem::{Code, Problem};
use crate::token::Admin;
use axum::Json;
use axum::extract::{Path, State};
use axum::http::StatusCode;
use rusqlite::Connection;
use serde::Serialize;
use serde_json::{Value, json};
use std::sync::Arc;

/// A device that was paired.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct Paired {
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
/// `NoHub`, `Database`.
pub fn devices(dir: &std::path::Path) -> Result<Vec<Paired>, HubError> {
    let conn = connect_to(dir)?;
    all(&conn).map_err(HubError::database(dir))
}

fn all(conn: &Connection) -> rusqlite::Result<Vec<Paired>> {
    let sql = "SELECT d.device, d.name, c.name, d.author, d.paired, d.revoked, d.duplicate
               FROM devices d JOIN companies c ON c.id = d.company
               ORDER BY c.name, d.paired, d.device";
    let mut query = conn.prepare(sql)?;
    let rows = query.query_map([], |row| {
        Ok(Paired {
            device_id: row.get(0)?,
            name: row.get(1)?,
            company: row.get(2)?,
            author: row.get(3)?,
            paired: row.get(4)?,
            revoked: row.get(5)?,
            duplicate: row.get(6)?,
        })
    })?;
    rows.collect()
}

pub(crate) async fn list(_: Admin, State(hub): State<Arc<Hub>>) -> Result<Json<Value>, Problem> {
    let devices = hub.read(|keep| keep.read(|conn| Ok(all(conn)?))).await?;
    Ok(Json(json!({ "devices": devices })))
}

pub(crate) async fn revoke(
    _: Admin,
    State(hub): State<Arc<Hub>>,
    Path(device): Path<String>,
) -> Result<StatusCode, Problem> {
    let named = device.clone();
    let changed = hub
        .keep
        .writer
        .write(move |conn| Ok(revoke_in(conn, &named)?))
        .await?;
    if changed == 0 {
        return Err(Problem::new(
            Code::NotFound,
            "no such device is paired here: `GET /v1/devices` lists them",
        ));
    }
    hub.log.tell("revoked", json!({ "device": device }));
    Ok(StatusCode::NO_CONTENT)
}
