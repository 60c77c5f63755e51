//! What a hub keeps in its folder: `hub.sqlite`, the key for TLS, photos as files.
//!
//! One thread writes; readers see snapshots of the write-ahead log. A second process (the commands
//! about codes, devices, backups) may write too: a writer waits for the other.

use crate::error::HubError;
use crate::problem::Problem;
use crate::writer::Writer;
use eavebook_core::book::digest::SetDigest;
use rusqlite::types::Value;
use rusqlite::{Connection, OptionalExtension};
use std::fs::{File, OpenOptions, TryLockError};
use std::path::{Path, PathBuf};
use std::sync::{Mutex, PoisonError};
use uuid::Uuid;

pub(crate) const FILE: &str = "hub.sqlite";
const LOCK: &str = "hub.lock";

/// `EHUB` in four letters.
const APPLICATION_ID: i64 = 0x4548_5542;

/// Step n leads from version n to version n + 1; an empty file is version 0.
const STEPS: &[&str] = &[include_str!("schema.sql")];

/// The one writer's connection, its settings made and read back.
///
/// # Errors
/// `Unfit`, `Newer`, `Damaged`, `Database`.
pub(crate) fn connect(dir: &Path) -> Result<Connection, HubError> {
    let amiss = HubError::database(dir);
    let mut conn = Connection::open(dir.join(FILE)).map_err(&amiss)?;
    settle(dir, &conn)?;
    migrate(dir, &mut conn)?;
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
    let amiss = HubError::database(dir);
    let change = conn
        .transaction_with_behavior(rusqlite::TransactionBehavior::Immediate)
        .map_err(&amiss)?;
    let found: i64 = change
        .pragma_query_value(None, "user_version", |row| row.get(0))
        .map_err(&amiss)?;
    let known = STEPS.len() as i64;
    if found > known {
        return Err(HubError::Newer {
            dir: dir.display().to_string(),
            found,
            known,
        });
    }
    for sql in STEPS.iter().skip(usize::try_from(found).unwrap_or(0)) {
        change.execute_batch(sql).map_err(&amiss)?;
    }
    if found < known {
        change
            .pragma_update(None, "application_id", APPLICATION_ID)
            .and_then(|()| change.pragma_update(None, "user_version", known))
            .map_err(&amiss)?;
    }
    change
        .execute(
            "INSERT OR IGNORE INTO hub (one, hub_id, epoch) VALUES (1, ?1, ?2)",
            (Uuid::new_v4().to_string(), Uuid::new_v4().to_string()),
        )
        .map_err(&amiss)?;
    change.commit().map_err(&amiss)
}

/// What a running hub holds open.
#[derive(Debug)]
pub(crate) struct Keep {
    pub(crate) dir: PathBuf,
    pub(crate) hub_id: String,
    pub(crate) epoch: String,
    pub(crate) writer: Writer,
    readers: Mutex<Vec<Connection>>,
    _lock: File,
}

/// Readers that stay open between requests.
const READERS: usize = 8;

impl Keep {
    /// Opens the hub in a folder, or begins one there.
    ///
    /// # Errors
    /// `InUse`, `Damaged`, and those of [`connect`].
    pub(crate) fn open(dir: &Path) -> Result<Keep, HubError> {
        std::fs::create_dir_all(dir).map_err(HubError::file(dir))?;
        let lock = take_lock(dir)?;
        let conn = connect(dir)?;
        sync_dir(dir).map_err(HubError::file(dir))?;
        sound(dir, &conn)?;
        let (hub_id, epoch) = conn
            .query_row("SELECT hub_id, epoch FROM hub", [], |row| {
                Ok((row.get(0)?, row.get(1)?))
            })
            .map_err(HubError::database(dir))?;
        Ok(Keep {
            dir: dir.to_path_buf(),
            hub_id,
            epoch,
            writer: Writer::begin(conn)?,
            readers: Mutex::default(),
            _lock: lock,
        })
    }

    /// Reads on a snapshot. Waits for the disk: not for a thread that listens.
    pub(crate) fn read<T>(
        &self,
        work: impl FnOnce(&Connection) -> Result<T, Problem>,
    ) -> Result<T, Problem> {
        let kept = self.pool().pop();
        let conn = match kept {
            Some(conn) => conn,
            None => self.reader()?,
        };
        let told = work(&conn);
        let mut pool = self.pool();
        if pool.len() < READERS {
            pool.push(conn);
        }
        told
    }

    /// Ends all writing and folds the log into the database.
    pub(crate) fn close(&self) {
        self.pool().clear();
        self.writer.end();
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

/// One hub at a time: a lock of the operating system, which goes with its holder.
fn take_lock(dir: &Path) -> Result<File, HubError> {
    let path = dir.join(LOCK);
    let file = OpenOptions::new()
        .write(true)
        .create(true)
        .truncate(false)
        .open(&path)
        .map_err(HubError::file(&path))?;
    match file.try_lock() {
        Ok(()) => Ok(file),
        Err(TryLockError::WouldBlock) => Err(HubError::InUse {
            dir: dir.display().to_string(),
        }),
        Err(TryLockError::Error(why)) => Err(HubError::file(&path)(why)),
    }
}

/// That the database holds together.
pub(crate) fn sound(dir: &Path, conn: &Connection) -> Result<(), HubError> {
    let told: String = conn
        .query_row("PRAGMA quick_check(1)", [], |row| row.get(0))
        .map_err(HubError::database(dir))?;
    if told == "ok" {
        Ok(())
    } else {
        Err(HubError::Damaged {
            dir: dir.display().to_string(),
            what: told,
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

/// The company of a name, made where it is new.
pub(crate) fn company(conn: &Connection, name: &str) -> rusqlite::Result<i64> {
    conn.execute(
        "INSERT OR IGNORE INTO companies (name, sum) VALUES (?1, ?2)",
        (name, SetDigest::default().hex()),
    )?;
    conn.query_row("SELECT id FROM companies WHERE name = ?1", [name], |row| {
        row.get(0)
    })
}

/// Where a company stands: its last number and the digest of its entries.
pub(crate) fn head(conn: &Connection, company: i64) -> Result<(u64, SetDigest), Problem> {
    let found = conn
        .prepare_cached("SELECT seq, count, sum FROM companies WHERE id = ?1")?
        .query_row([company], |row| {
            Ok((row.get(0)?, row.get(1)?, row.get::<_, String>(2)?))
        })
        .optional()?;
    let (seq, count, sum) = found
        .ok_or_else(|| Problem::new(crate::problem::Code::NotFound, "this company is gone"))?;
    let digest = SetDigest::from_hex(count, &sum).ok_or_else(|| {
        let why = "the digest kept of this company is no digest: restore the hub from a backup";
        Problem::new(crate::problem::Code::Unavailable, why)
    })?;
    Ok((seq, digest))
}
