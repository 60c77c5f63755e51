//! A look at the file before anything touches it, also its write-ahead log.

use crate::connect::{APPLICATION_ID, FILE};
use crate::error::{StoreError, StoreFolder};
use rusqlite::{Connection, ErrorCode, OpenFlags};
use std::fs::File;
use std::io::{ErrorKind, Read};
use std::path::Path;

/// Whether this program may open the file: it is a field book, of no newer version, and whole as
/// far as a quick look after a kill can tell.
pub(crate) fn preflight(root: &StoreFolder, steps: &[&str]) -> Result<(), StoreError> {
    let path = root.0.join(FILE);
    let Some(header) = header(root)? else {
        return Ok(());
    };
    if !header.starts_with(b"SQLite format 3\0") {
        return Err(StoreError::NotABook {
            file: path.display().to_string(),
        });
    }
    let four_bytes = |from: usize| {
        header.get(from..from + 4).map_or(0, |four| {
            four.iter()
                .fold(0, |number, byte| number << 8 | i64::from(*byte))
        })
    };
    // Offsets 60 and 68 of the SQLite file format: user version, application id.
    let (version, application) = (four_bytes(60), four_bytes(68));
    judge(root, version, application, steps)?;
    // After a kill the log is ahead of the file, and whether both hold together is worth a look.
    // A reader folds nothing in: a broken book is left for who can mend it.
    let log = root.0.join(format!("{FILE}-wal"));
    let killed = std::fs::metadata(&log).is_ok_and(|log| log.len() > 0);
    if !killed && version != 0 {
        return Ok(());
    }
    let report = FileReport::read(&path, OpenFlags::SQLITE_OPEN_READ_ONLY)
        .or_else(|why| match why.sqlite_error_code() {
            // A program killed as it began the book leaves a journal that a reader may not roll
            // back, or a log that a reader may not make: SQLite itself has to mend that first.
            Some(ErrorCode::ReadOnly | ErrorCode::CannotOpen) => {
                FileReport::read(&path, OpenFlags::SQLITE_OPEN_READ_WRITE)
            }
            _ => Err(why),
        })
        .map_err(|why| root.sqlite(why))?;
    judge(root, report.version, report.application, steps)?;
    if report.version == 0 && report.tables > 0 {
        return Err(not_a_book(root));
    }
    if report.quick_check != "ok" {
        return Err(StoreError::Damaged {
            dir: root.dir(),
            what: report.quick_check,
        });
    }
    Ok(())
}

/// What SQLite says of a file, its log included.
struct FileReport {
    version: i64,
    application: i64,
    tables: i64,
    quick_check: String,
}

impl FileReport {
    fn read(path: &Path, access: OpenFlags) -> rusqlite::Result<FileReport> {
        let conn = Connection::open_with_flags(path, access | OpenFlags::SQLITE_OPEN_NO_MUTEX)?;
        let number = |name| conn.pragma_query_value(None, name, |row| row.get(0));
        Ok(FileReport {
            version: number("user_version")?,
            application: number("application_id")?,
            tables: conn.query_row("SELECT count(*) FROM sqlite_schema", [], |row| row.get(0))?,
            quick_check: conn.pragma_query_value(None, "quick_check", |row| row.get(0))?,
        })
    }
}

fn not_a_book(root: &StoreFolder) -> StoreError {
    StoreError::NotABook {
        file: root.0.join(FILE).display().to_string(),
    }
}

/// The first 100 bytes; none for a file that is absent or empty.
fn header(root: &StoreFolder) -> Result<Option<Vec<u8>>, StoreError> {
    let path = root.0.join(FILE);
    match File::open(&path) {
        Ok(file) => {
            let mut bytes = Vec::new();
            file.take(100)
                .read_to_end(&mut bytes)
                .map_err(|why| root.io(&path, why))?;
            Ok((!bytes.is_empty()).then_some(bytes))
        }
        Err(why) if why.kind() == ErrorKind::NotFound => Ok(None),
        Err(why) => Err(root.io(&path, why)),
    }
}

fn judge(
    root: &StoreFolder,
    version: i64,
    application: i64,
    steps: &[&str],
) -> Result<(), StoreError> {
    let known = steps.len() as i64;
    if application == APPLICATION_ID && version > known {
        return Err(StoreError::Newer {
            dir: root.dir(),
            found: version,
            known,
        });
    }
    // A file that a kill left before its first transaction has neither number yet.
    if application != APPLICATION_ID && (application, version) != (0, 0) {
        return Err(StoreError::NotABook {
            file: root.0.join(FILE).display().to_string(),
        });
    }
    Ok(())
}

/// A setting that is a number.
pub(crate) fn number(
    root: &StoreFolder,
    conn: &Connection,
    setting: &str,
) -> Result<i64, StoreError> {
    conn.pragma_query_value(None, setting, |row| row.get(0))
        .map_err(|why| root.sqlite(why))
}
