//! A connection as durability needs it: each setting is made, read back and compared.

use crate::error::{StoreError, StoreFolder};
use rusqlite::Connection;
use rusqlite::types::Value;

/// Name of the one SQLite file.
pub(crate) const FILE: &str = "book.sqlite";

/// `EAVE` in four letters: what `file` and SQLite show of the header.
pub(crate) const APPLICATION_ID: i64 = 0x4541_5645;

/// What a connection is for.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum ConnectionRole {
    /// Entries: on the disk itself before a commit returns, so that a power cut loses nothing.
    Entries,
    /// Half-typed readings: with the system before a commit returns, so that a kill loses nothing.
    /// A flush for each key would make keys lag and wear the flash.
    Drafts,
}

/// Opens the book's file and sets the connection up.
pub(crate) fn connect(root: &StoreFolder, keeps: ConnectionRole) -> Result<Connection, StoreError> {
    let conn = Connection::open(root.0.join(FILE)).map_err(|why| root.sqlite(why))?;
    let synchronous = match keeps {
        ConnectionRole::Entries => 2,
        ConnectionRole::Drafts => 1,
    };
    // busy_timeout first: the other connection may be at work. WAL before the rest needs it.
    set(root, &conn, "busy_timeout", &Value::Integer(5000))?;
    set(root, &conn, "journal_mode", &Value::Text("wal".into()))?;
    set(root, &conn, "synchronous", &Value::Integer(synchronous))?;
    set(root, &conn, "fullfsync", &Value::Integer(1))?;
    set(root, &conn, "checkpoint_fullfsync", &Value::Integer(1))?;
    set(root, &conn, "foreign_keys", &Value::Integer(1))?;
    set(root, &conn, "wal_autocheckpoint", &Value::Integer(1000))?;
    set(root, &conn, "trusted_schema", &Value::Integer(0))?;
    Ok(conn)
}

fn set(
    root: &StoreFolder,
    conn: &Connection,
    setting: &'static str,
    wanted: &Value,
) -> Result<(), StoreError> {
    // A pragma that is not understood is passed over without a word, hence the reading back.
    conn.pragma_update(None, setting, wanted)
        .map_err(|why| root.sqlite(why))?;
    expect(root, conn, setting, wanted)
}

/// That a setting reads as it must.
pub(crate) fn expect(
    root: &StoreFolder,
    conn: &Connection,
    setting: &'static str,
    wanted: &Value,
) -> Result<(), StoreError> {
    let found: Value = conn
        .pragma_query_value(None, setting, |row| row.get(0))
        .map_err(|why| root.sqlite(why))?;
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
        dir: root.dir(),
        setting,
        wanted: words(wanted),
        found: words(&found),
    })
}
