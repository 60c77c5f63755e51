//! Rows in one file, `hub.sqlite` in the hub's folder.
//!
//! One thread writes; readers see snapshots of the write-ahead log. A second process (the commands
//! about codes, devices, backups) may write too: a writer waits for the other.

mod answers;
mod writer;

use crate::error::HubError;
use crate::problem::Problem;
use crate::rows::wakes::Wakes;
use rusqlite::Connection;
use rusqlite::types::Value;
use std::fs::File;
use std::path::{Path, PathBuf};
use std::sync::{Mutex, PoisonError};
use uuid::Uuid;
use writer::{Shutdown, Writer};

pub(crate) const FILE: &str = "hub.sqlite";

/// `EHUB` in four letters.
const APPLICATION_ID: i64 = 0x4548_5542;

/// Step n leads from version n to version n + 1; an empty file is version 0.
const STEPS: &[&str] = &[include_str!("schema.sql")];

/// The one writer's connection, its settings made and read back.
///
/// # Errors
/// `Unfit`, `Newer`, `Damaged`, `Database`.
pub(crate) fn connect(dir: &Path) -> Result<Connection, HubError> {
    let hub_error = HubError::database(dir);
    let mut conn = Connection::open(dir.join(FILE)).map_err(&hub_error)?;
    settle(dir, &conn)?;
    migrate(dir, &mut conn)?;
    Ok(conn)
}

/// A new file with the tables, for rows that come from another store.
///
/// # Errors
/// As those of a failing disk.
pub(crate) fn fresh(file: &Path) -> Result<Connection, Problem> {
    let conn = Connection::open(file)?;
    for sql in STEPS {
        conn.execute_batch(sql)?;
    }
    conn.pragma_update(None, "application_id", APPLICATION_ID)?;
    conn.pragma_update(None, "user_version", STEPS.len() as i64)?;
    conn.execute(
        "INSERT INTO hub (one, hub_id, epoch) VALUES (1, '', '')",
        [],
    )?;
    Ok(conn)
}

/// The connection of a command, to a hub that must be there.
///
/// # Errors
/// `NoHub` and those of [`connect`].
pub(crate) fn connect_to(dir: &Path) -> Result<Connection, HubError> {
    if dir.join(FILE).is_file() {
        connect(dir)
    } else {
        Err(HubError::NoHub {
            dir: dir.display().to_string(),
        })
    }
}

fn settle(dir: &Path, conn: &Connection) -> Result<(), HubError> {
    let settings: [(&'static str, Value); 8] = [
        // First: another process may be at work.
        ("busy_timeout", Value::Integer(5000)),
        ("journal_mode", Value::Text("wal".to_owned())),
        ("synchronous", Value::Integer(2)),
        ("fullfsync", Value::Integer(1)),
        ("checkpoint_fullfsync", Value::Integer(1)),
        ("foreign_keys", Value::Integer(1)),
        ("wal_autocheckpoint", Value::Integer(1000)),
        ("trusted_schema", Value::Integer(0)),
    ];
    for (setting, wanted) in settings {
        // A pragma that is not understood is passed over without a word, hence the reading back.
        conn.pragma_update(None, setting, &wanted)
            .map_err(HubError::database(dir))?;
        let found: Value = conn
            .pragma_query_value(None, setting, |row| row.get(0))
            .map_err(HubError::database(dir))?;
        if found != wanted {
            return Err(HubError::Unfit {
                dir: dir.display().to_string(),
                setting,
                wanted: format!("{wanted:?}"),
                found: format!("{found:?}"),
            });
        }
    }
    Ok(())
}

fn migrate(dir: &Path, conn: &mut Connection) -> Result<(), HubError> {
    let hub_error = HubError::database(dir);
    let change = conn
        .transaction_with_behavior(rusqlite::TransactionBehavior::Immediate)
        .map_err(&hub_error)?;
    let found: i64 = change
        .pragma_query_value(None, "user_version", |row| row.get(0))
        .map_err(&hub_error)?;
    let known = STEPS.len() as i64;
    if found > known {
        return Err(HubError::Newer {
            dir: dir.display().to_string(),
            found,
            known,
        });
    }
    for sql in STEPS.iter().skip(usize::try_from(found).unwrap_or(0)) {
        change.execute_batch(sql).map_err(&hub_error)?;
    }
    if found < known {
        change
            .pragma_update(None, "application_id", APPLICATION_ID)
            .and_then(|()| change.pragma_update(None, "user_version", known))
            .map_err(&hub_error)?;
    }
    change
        .execute(
            "INSERT OR IGNORE INTO hub (one, hub_id, epoch) VALUES (1, ?1, ?2)",
            (Uuid::new_v4().to_string(), Uuid::new_v4().to_string()),
        )
        .map_err(&hub_error)?;
    change.commit().map_err(&hub_error)
}

/// The file, held open.
#[derive(Debug)]
pub(crate) struct Sqlite {
    dir: PathBuf,
    writer: Writer,
    readers: Mutex<Vec<Connection>>,
    wakes: Wakes,
}

/// Readers that stay open between requests. One that is opened for a request alone costs more than
/// what it reads: the file is opened, its tables read, each question parsed anew.
const READERS: usize = 32;

impl Sqlite {
    /// Opens the file of a hub that is to serve, or begins one.
    ///
    /// # Errors
    /// `Damaged`, and those of [`connect`].
    pub(crate) fn begin(dir: &Path) -> Result<Sqlite, HubError> {
        let conn = connect(dir)?;
        sync_dir(dir).map_err(HubError::file(dir))?;
        sound(dir, &conn)?;
        Sqlite::over(dir, conn, Shutdown::Folds)
    }

    /// Opens the file of a hub that is there, and may be serving meanwhile.
    ///
    /// # Errors
    /// `NoHub` and those of [`connect`].
    pub(crate) fn open_beside(dir: &Path) -> Result<Sqlite, HubError> {
        Sqlite::over(dir, connect_to(dir)?, Shutdown::Leaves)
    }

    fn over(dir: &Path, conn: Connection, shutdown: Shutdown) -> Result<Sqlite, HubError> {
        Ok(Sqlite {
            dir: dir.to_path_buf(),
            writer: Writer::begin(conn, shutdown)?,
            readers: Mutex::default(),
            wakes: Wakes::default(),
        })
    }

    /// Reads on a snapshot.
    fn read<T>(&self, work: impl FnOnce(&Connection) -> Result<T, Problem>) -> Result<T, Problem> {
        let kept = self.pool().pop();
        let conn = match kept {
            Some(conn) => conn,
            None => self.reader()?,
        };
        let result = work(&conn);
        let mut pool = self.pool();
        if pool.len() < READERS {
            pool.push(conn);
        }
        result
    }

    fn pool(&self) -> std::sync::MutexGuard<'_, Vec<Connection>> {
        self.readers.lock().unwrap_or_else(PoisonError::into_inner)
    }

    fn reader(&self) -> Result<Connection, Problem> {
        let conn = Connection::open(self.dir.join(FILE))?;
        conn.pragma_update(None, "busy_timeout", 5000)?;
        conn.pragma_update(None, "query_only", 1)?;
        conn.pragma_update(None, "trusted_schema", 0)?;
        Ok(conn)
    }
}

/// That the database holds together.
pub(crate) fn sound(dir: &Path, conn: &Connection) -> Result<(), HubError> {
    let quick_check: String = conn
        .query_row("PRAGMA quick_check(1)", [], |row| row.get(0))
        .map_err(HubError::database(dir))?;
    if quick_check == "ok" {
        Ok(())
    } else {
        Err(HubError::Damaged {
            dir: dir.display().to_string(),
            what: quick_check,
        })
    }
}

/// Makes names in a folder durable.
pub(crate) fn sync_dir(dir: &Path) -> std::io::Result<()> {
    // Other systems keep names themselves and do not open folders as files.
    if cfg!(unix) {
        File::open(dir)?.sync_all()
    } else {
        Ok(())
    }
}
