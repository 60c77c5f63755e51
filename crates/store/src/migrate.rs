//! From an older book to this version's: forward only, a whole copy first.
//!
//! A newer book is refused before anything touches it, also its write-ahead log.

use crate::connect::{APPLICATION_ID, FILE, expect};
use crate::error::{At, StoreError};
use rusqlite::backup::NO_PROGRESS;
use rusqlite::types::Value;
use rusqlite::{Connection, OpenFlags};
use std::fs::File;
use std::io::{ErrorKind, Read};

/// Step n leads from version n to version n + 1; an empty file is version 0.
pub(crate) const STEPS: &[&str] = &[include_str!("schema.sql")];

/// Looks at the file without changing it: whether this program may open it.
pub(crate) fn look(at: &At, steps: &[&str]) -> Result<(), StoreError> {
    let path = at.0.join(FILE);
    let Some(header) = header(at)? else {
        return Ok(());
    };
    if !header.starts_with(b"SQLite format 3\0") {
        return Err(StoreError::NotABook {
            file: path.display().to_string(),
        });
    }
    let be = |from: usize| {
        header.get(from..from + 4).map_or(0, |four| {
            four.iter()
                .fold(0, |number, byte| number << 8 | i64::from(*byte))
        })
    };
    // Offsets 60 and 68 of the SQLite file format: user version, application id.
    let (version, application) = (be(60), be(68));
    judge(at, version, application, steps)?;
    // After a kill the log may be ahead of the file. A reader does not fold it in.
    let log = at.0.join(format!("{FILE}-wal"));
    let killed = std::fs::metadata(&log).is_ok_and(|log| log.len() > 0);
    if killed || version == 0 {
        let flags = OpenFlags::SQLITE_OPEN_READ_ONLY | OpenFlags::SQLITE_OPEN_NO_MUTEX;
        let conn = Connection::open_with_flags(&path, flags).map_err(|why| at.sqlite(why))?;
        let version = number(at, &conn, "user_version")?;
        judge(at, version, number(at, &conn, "application_id")?, steps)?;
        let tables: i64 = conn
            .query_row("SELECT count(*) FROM sqlite_schema", [], |row| row.get(0))
            .map_err(|why| at.sqlite(why))?;
        if version == 0 && tables > 0 {
            return Err(not_a_book(at));
        }
    }
    Ok(())
}

fn not_a_book(at: &At) -> StoreError {
    StoreError::NotABook {
        file: at.0.join(FILE).display().to_string(),
    }
}

/// The first 100 bytes; none for a file that is absent or empty.
fn header(at: &At) -> Result<Option<Vec<u8>>, StoreError> {
    let path = at.0.join(FILE);
    match File::open(&path) {
        Ok(file) => {
            let mut bytes = Vec::new();
            file.take(100)
                .read_to_end(&mut bytes)
                .map_err(|why| at.io(&path, why))?;
            Ok((!bytes.is_empty()).then_some(bytes))
        }
        Err(why) if why.kind() == ErrorKind::NotFound => Ok(None),
        Err(why) => Err(at.io(&path, why)),
    }
}

fn judge(at: &At, version: i64, application: i64, steps: &[&str]) -> Result<(), StoreError> {
    let known = steps.len() as i64;
    if application == APPLICATION_ID && version > known {
        return Err(StoreError::Newer {
            dir: at.dir(),
            found: version,
            known,
        });
    }
    // A file that a kill left before its first transaction has neither number yet.
    if application != APPLICATION_ID && (application, version) != (0, 0) {
        return Err(StoreError::NotABook {
            file: at.0.join(FILE).display().to_string(),
        });
    }
    Ok(())
}

fn number(at: &At, conn: &Connection, setting: &str) -> Result<i64, StoreError> {
    conn.pragma_query_value(None, setting, |row| row.get(0))
        .map_err(|why| at.sqlite(why))
}

/// Brings the book to the version of the last step and checks that it is there.
pub(crate) fn migrate(at: &At, conn: &mut Connection, steps: &[&str]) -> Result<(), StoreError> {
    let found = number(at, conn, "user_version")?;
    let done = usize::try_from(found).unwrap_or(0);
    if done > 0 && done < steps.len() {
        copy_first(at, conn, done)?;
    }
    for (step, sql) in steps.iter().enumerate().skip(done) {
        let change = conn.transaction().map_err(|why| at.sqlite(why))?;
        change
            .execute_batch(sql)
            .and_then(|()| change.pragma_update(None, "application_id", APPLICATION_ID))
            .and_then(|()| change.pragma_update(None, "user_version", step as i64 + 1))
            .and_then(|()| change.commit())
            .map_err(|why| at.sqlite(why))?;
    }
    expect(at, conn, "application_id", &Value::Integer(APPLICATION_ID))?;
    expect(
        at,
        conn,
        "user_version",
        &Value::Integer(steps.len() as i64),
    )
}

/// A whole copy of the book as it was, on disk before the first change.
fn copy_first(at: &At, conn: &Connection, version: usize) -> Result<(), StoreError> {
    let copy =
        at.0.join(format!("book.before-version-{}.sqlite", version + 1));
    let unfinished = copy.with_extension("unfinished");
    match std::fs::remove_file(&unfinished) {
        Err(why) if why.kind() != ErrorKind::NotFound => return Err(at.io(&unfinished, why)),
        Ok(()) | Err(_) => {}
    }
    conn.backup("main", &unfinished, NO_PROGRESS)
        .map_err(|why| at.sqlite(why))?;
    File::open(&unfinished)
        .and_then(|file| file.sync_all())
        .and_then(|()| std::fs::rename(&unfinished, &copy))
        .and_then(|()| crate::sync_dir(&at.0))
        .map_err(|why| at.io(&copy, why))
}

#[cfg(test)]
mod tests {
    use crate::{Book, DraftAfter, StoreError, migrate::STEPS};
    use rusqlite::Connection;

    const NEXT: &[&str] = &[STEPS[0], "ALTER TABLE devices ADD COLUMN note TEXT"];
    const BROKEN: &[&str] = &[
        STEPS[0],
        "ALTER TABLE devices ADD COLUMN note TEXT; nonsense",
    ];

    fn version(file: &std::path::Path) -> i64 {
        let conn = Connection::open(file).unwrap();
        conn.pragma_query_value(None, "user_version", |row| row.get(0))
            .unwrap()
    }

    #[test]
    fn an_older_book_is_copied_whole_then_brought_forward_and_never_back() {
        let dir = tempfile::tempdir().unwrap();
        let mut book = Book::open(dir.path()).unwrap();
        let (job, file) = (uuid::Uuid::nil(), book.file());
        book.append(
            &[],
            DraftAfter::Becomes {
                book: job,
                name: "pad",
                text: "42",
            },
        )
        .unwrap();
        drop(book);
        let book = Book::open_with(dir.path(), NEXT).unwrap();
        assert_eq!(book.draft(job, "pad").unwrap().as_deref(), Some("42"));
        drop(book);
        assert_eq!(version(&file), 2);
        let copy = dir.path().join("book.before-version-2.sqlite");
        assert_eq!(version(&copy), 1);
        let kept: String = Connection::open(copy)
            .unwrap()
            .query_row("SELECT body FROM drafts", [], |row| row.get(0))
            .unwrap();
        assert_eq!(kept, "42");
        let said = Book::open(dir.path()).unwrap_err();
        assert!(
            matches!(
                said,
                StoreError::Newer {
                    found: 2,
                    known: 1,
                    ..
                }
            ),
            "{said}"
        );
    }

    #[test]
    fn a_step_that_fails_leaves_the_book_at_its_version() {
        let dir = tempfile::tempdir().unwrap();
        let file = Book::open(dir.path()).unwrap().file();
        assert!(matches!(
            Book::open_with(dir.path(), BROKEN),
            Err(StoreError::Disk { .. })
        ));
        assert_eq!(version(&file), 1);
        Book::open(dir.path()).unwrap();
    }
}
