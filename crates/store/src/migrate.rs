//! From an older book to this version's: forward only, a whole copy first.

use crate::connect::{APPLICATION_ID, expect};
use crate::error::{StoreError, StoreFolder};
use crate::preflight::number;
use rusqlite::Connection;
use rusqlite::backup::NO_PROGRESS;
use rusqlite::types::Value;
use std::fs::File;
use std::io::ErrorKind;

/// Step n leads from version n to version n + 1; an empty file is version 0.
pub(crate) const STEPS: &[&str] = &[include_str!("schema.sql"), include_str!("schema_2.sql")];

/// Brings the book to the version of the last step and checks that it is there.
pub(crate) fn migrate(
    root: &StoreFolder,
    conn: &mut Connection,
    steps: &[&str],
) -> Result<(), StoreError> {
    let found = number(root, conn, "user_version")?;
    let done = usize::try_from(found).unwrap_or(0);
    if done > 0 && done < steps.len() {
        copy_first(root, conn, done)?;
    }
    for (step, sql) in steps.iter().enumerate().skip(done) {
        let change = conn.transaction().map_err(|why| root.sqlite(why))?;
        change
            .execute_batch(sql)
            .and_then(|()| change.pragma_update(None, "application_id", APPLICATION_ID))
            .and_then(|()| change.pragma_update(None, "user_version", step as i64 + 1))
            .and_then(|()| change.commit())
            .map_err(|why| root.sqlite(why))?;
    }
    expect(
        root,
        conn,
        "application_id",
        &Value::Integer(APPLICATION_ID),
    )?;
    expect(
        root,
        conn,
        "user_version",
        &Value::Integer(steps.len() as i64),
    )
}

/// A whole copy of the book as it was, on disk before the first change.
fn copy_first(root: &StoreFolder, conn: &Connection, version: usize) -> Result<(), StoreError> {
    let copy = root
        .0
        .join(format!("book.before-version-{}.sqlite", version + 1));
    let unfinished = copy.with_extension("unfinished");
    match std::fs::remove_file(&unfinished) {
        Err(why) if why.kind() != ErrorKind::NotFound => return Err(root.io(&unfinished, why)),
        Ok(()) | Err(_) => {}
    }
    conn.backup("main", &unfinished, NO_PROGRESS)
        .map_err(|why| root.sqlite(why))?;
    File::open(&unfinished)
        .and_then(|file| file.sync_all())
        .and_then(|()| std::fs::rename(&unfinished, &copy))
        .and_then(|()| crate::sync_dir(&root.0))
        .map_err(|why| root.io(&copy, why))
}

#[cfg(test)]
mod tests {
    use crate::{DraftAfter, Store, StoreError, migrate::STEPS};
    use rusqlite::Connection;

    const NEXT: &[&str] = &[
        STEPS[0],
        STEPS[1],
        "ALTER TABLE devices ADD COLUMN note TEXT",
    ];
    const BROKEN: &[&str] = &[
        STEPS[0],
        STEPS[1],
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
        let mut book = Store::open(dir.path()).unwrap();
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
        let book = Store::open_with(dir.path(), NEXT).unwrap();
        assert_eq!(book.draft(job, "pad").unwrap().as_deref(), Some("42"));
        drop(book);
        assert_eq!(version(&file), 3);
        let copy = dir.path().join("book.before-version-3.sqlite");
        assert_eq!(version(&copy), 2);
        let kept: String = Connection::open(copy)
            .unwrap()
            .query_row("SELECT body FROM drafts", [], |row| row.get(0))
            .unwrap();
        assert_eq!(kept, "42");
        let error = Store::open(dir.path()).unwrap_err();
        assert!(
            matches!(
                error,
                StoreError::Newer {
                    found: 3,
                    known: 2,
                    ..
                }
            ),
            "{error}"
        );
    }

    #[test]
    fn a_step_that_fails_leaves_the_book_at_its_version() {
        let dir = tempfile::tempdir().unwrap();
        let file = Store::open(dir.path()).unwrap().file();
        assert!(matches!(
            Store::open_with(dir.path(), BROKEN),
            Err(StoreError::Disk { .. })
        ));
        assert_eq!(version(&file), 2);
        Store::open(dir.path()).unwrap();
    }
}
