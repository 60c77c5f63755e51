//! A connection as durability needs it: each setting is made, read back and compared.

use crate::error::{At, StoreError};
use rusqlite::Connection;
use rusqlite::types::Value;

/// Name of the one SQLite file.
pub(crate) const FILE: &str = "book.sqlite";

/// `EAVE` in four letters: what `file` and SQLite show of the header.
pub(crate) const APPLICATION_ID: i64 = 0x4541_5645;

/// What a connection is for.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Keeps {
    /// Entries: on the disk itself before a commit returns, so that a power cut loses nothing.
    Entries,
    /// Half-typed readings: with the system before a commit returns, so that a kill loses nothing.
    /// A flush for each key would make keys lag and wear the flash.
    Drafts,
}

/// Opens the book's file and sets the connection up.
pub(crate) fn connect(at: &At, keeps: Keeps) -> Result<Connection, StoreError> {
    let conn = Connection::open(at.0.join(FILE)).map_err(|why| at.sqlite(why))?;
    let synchronous = match keeps {
        Keeps::Entries => 2,
        Keeps::Drafts => 1,
    };
    // busy_timeout first: the other connection may be at work. WAL before the rest needs it.
    set(at, &conn, "busy_timeout", &Value::Integer(5000))?;
    set(at, &conn, "journal_mode", &Value::Text("wal".into()))?;
    set(at, &conn, "synchronous", &Value::Integer(synchronous))?;
    set(at, &conn, "fullfsync", &Value::Integer(1))?;
    set(at, &conn, "checkpoint_fullfsync", &Value::Integer(1))?;
    set(at, &conn, "foreign_keys", &Value::Integer(1))?;
    set(at, &conn, "wal_autocheckpoint", &Value::Integer(1000))?;
    set(at, &conn, "trusted_schema", &Value::Integer(0))?;
    Ok(conn)
}

fn set(
    at: &At,
    conn: &Connection,
    setting: &'static str,
    wanted: &Value,
) -> Result<(), StoreError> {
    // A pragma that is not understood is passed over without a word, hence the reading back.
    conn.pragma_update(None, setting, wanted)
        .map_err(|why| at.sqlite(why))?;
    expect(at, conn, setting, wanted)
}

/// That a setting reads as it must.
pub(crate) fn expect(
    at: &At,
    conn: &Connection,
    setting: &'static str,
    wanted: &Value,
) -> Result<(), StoreError> {
    let found: Value = conn
        .pragma_query_value(None, setting, |row| row.get(0))
        .map_err(|why| at.sqlite(why))?;
    if found == *wanted {
        return Ok(());
    }
    let words = |value: &Value| match value {
        Value::Null => "unset".to_owned(),
        Value::Integer(number) => number.to_string(),
        Value::Real(number) => number.to_string(),
        Value::Text(text) => text.clone(),
        Value::Blob(bytes) => format!("{} bytes", bytes.len()),
    };
    Err(StoreError::Unfit {
        dir: at.dir(),
        setting,
        wanted: words(wanted),
        found: words(&found),
    })
}
