//! What the keeper does at the hub: codes for new devices, devices turned out.

use crate::code::Code;
use crate::error::HubError;
use crate::keep::{company, connect_to};
use crate::pairing::{LIVES, is_name};
use crate::{now, tls};
use rusqlite::params;
use std::path::Path;

/// A fresh code in its two forms; one use spends both.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Codes {
    /// Ten signs to type.
    pub typed: String,
    /// `URL#pin=HEX&code=...`, for a picture that a camera reads.
    pub link: String,
}

/// Draws a code for a device of a company, which is made where its name is new. `author`: who will
/// book on the device, its own name where none is given. The hub may run meanwhile.
///
/// # Errors
/// `NoHub`, `NoAddress`, `Name`, `Key`, `Database`.
pub fn code(dir: &Path, name: &str, author: Option<&str>) -> Result<Codes, HubError> {
    for text in [Some(name), author].into_iter().flatten() {
        if !is_name(text.trim()) {
            return Err(HubError::Name(text.to_owned()));
        }
    }
    let mut conn = connect_to(dir)?;
    let amiss = HubError::database(dir);
    let url: Option<String> = conn
        .query_row("SELECT url FROM hub", [], |row| row.get(0))
        .map_err(&amiss)?;
    let url = url.ok_or_else(|| HubError::NoAddress {
        dir: dir.display().to_string(),
    })?;
    let pin = tls::pin(dir)?;
    let change = conn
        .transaction_with_behavior(rusqlite::TransactionBehavior::Immediate)
        .map_err(&amiss)?;
    let now = chrono::Utc::now().timestamp();
    change
        .execute("DELETE FROM codes WHERE ends <= ?1", [now])
        .map_err(&amiss)?;
    let company = company(&change, name.trim()).map_err(&amiss)?;
    loop {
        let (typed, link) = Code::draw()?;
        // A name that is taken is drawn again.
        let added = change
            .execute(
                "INSERT OR IGNORE INTO codes (name, company, author, typed_sha256, link_sha256, ends)
                 VALUES (?1, ?2, ?3, ?4, ?5, ?6)",
                params![
                    typed.name(),
                    company,
                    author.map(str::trim),
                    &typed.sha256()[..],
                    &link.sha256()[..],
                    now + LIVES,
                ],
            )
            .map_err(&amiss)?;
        if added == 1 {
            change.commit().map_err(&amiss)?;
            return Ok(Codes {
                typed: typed.text().to_owned(),
                link: format!("{url}#pin={pin}&code={}", link.text()),
            });
        }
    }
}

/// Turns a device out: its next call is refused, what it sent stays. Tells in how many companies.
///
/// # Errors
/// `NoHub`, `NoDevice`, `Database`.
pub fn revoke(dir: &Path, device: &str) -> Result<usize, HubError> {
    let conn = connect_to(dir)?;
    let changed = revoke_in(&conn, device).map_err(HubError::database(dir))?;
    if changed == 0 {
        Err(HubError::NoDevice(device.to_owned()))
    } else {
        Ok(changed)
    }
}

pub(crate) fn revoke_in(conn: &rusqlite::Connection, device: &str) -> rusqlite::Result<usize> {
    conn.execute(
        "UPDATE devices SET revoked = coalesce(revoked, ?2) WHERE device = ?1",
        (device.trim().to_ascii_lowercase(), now()),
    )
}
