//! Entries: append, which is durable before it returns, and read, which proves each body.

use crate::Store;
use crate::drafts::{self, DraftAfter};
use crate::error::StoreError;
use crate::folded::Rows;
use eavebook_core::book::entry::Entry;
use rusqlite::types::Type;
use rusqlite::{Connection, OptionalExtension, Row, params};
use std::str::FromStr;
use uuid::Uuid;

/// What became of an entry.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum AppendStatus {
    /// It is in the book now.
    New,
    /// It was there already, byte for byte.
    Known,
    /// Its id is taken by another content: this one is kept beside the book and will be shown.
    IdConflict,
}

/// Entries as read.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Entries {
    /// Whole ones, by id, then those that wait in quarantine because their id is taken.
    pub whole: Vec<Entry>,
    /// Rows that no longer are what was booked, each with what is wrong: to be shown, left alone.
    pub damaged: Vec<String>,
}

pub(crate) const COLUMNS: &str = "id, book, device, incarnation, dseq, author, hlc, kind, kind_version, \
                       local_time, supersedes, refs, sha256, body, other";

impl Store {
    /// Books entries, and in the same transaction does with a draft what is to become of it.
    /// When this returns they are on the disk. All or none; said twice, they are booked once.
    ///
    /// # Errors
    /// `Full`, `Denied`, `Disk`: nothing was changed, the draft neither.
    pub fn append(
        &mut self,
        entries: &[Entry],
        draft: DraftAfter<'_>,
    ) -> Result<Vec<AppendStatus>, StoreError> {
        let add = || {
            let change = self.entries.unchecked_transaction()?;
            let statuses = entries
                .iter()
                .map(|entry| add(&change, entry))
                .collect::<rusqlite::Result<Vec<_>>>()?;
            drafts::put(&change, draft)?;
            if let Some(device) = &self.device {
                change
                    .prepare_cached("UPDATE devices SET dseq = ?1, hlc = ?2 WHERE this = 1")?
                    .execute((device.dseq, device.hlc.to_string()))?;
            }
            change.commit()?;
            Ok(statuses)
        };
        add().map_err(|why| self.sqlite(why))
    }

    /// All entries of one job.
    ///
    /// # Errors
    /// `Damaged`, `Disk`.
    pub fn entries(&self, book: Uuid) -> Result<Entries, StoreError> {
        let all = read_past(&self.entries, book, Rows::default());
        all.map_err(|why| self.sqlite(why))
    }

    /// Jobs that have an entry, the one begun first first.
    ///
    /// # Errors
    /// `Damaged`, `Disk`.
    pub fn books(&self) -> Result<Vec<Uuid>, StoreError> {
        let read = || {
            let sql = "SELECT book FROM entries GROUP BY book ORDER BY min(id)";
            let mut query = self.entries.prepare_cached(sql)?;
            let books = query.query_map([], |row| parsed(row, 0))?;
            books.collect::<rusqlite::Result<Vec<_>>>()
        };
        read().map_err(|why| self.sqlite(why))
    }
}

/// Entries of one job in rows past those that were read.
pub(crate) fn read_past(conn: &Connection, job: Uuid, read: Rows) -> rusqlite::Result<Entries> {
    let mut found = Entries::default();
    let sql = format!("SELECT {COLUMNS} FROM entries WHERE book = ?1 AND rowid > ?2 ORDER BY id");
    let mut query = conn.prepare_cached(&sql)?;
    let mut rows = query.query((job.to_string(), read.last))?;
    while let Some(row) = rows.next()? {
        match entry_of(row) {
            Ok(entry) => found.keep(entry),
            Err(why) => {
                let id: String = row.get(0)?;
                found
                    .damaged
                    .push(format!("entry {id} cannot be read: {why}"));
            }
        }
    }
    let sql = "SELECT q.entry FROM quarantine q JOIN entries e ON e.id = q.id
               WHERE e.book = ?1 AND q.rowid > ?2 ORDER BY q.entry";
    let mut query = conn.prepare_cached(sql)?;
    let asks = (job.to_string(), read.last_quarantined);
    for text in query.query_map(asks, |row| row.get::<_, String>(0))? {
        match Entry::from_json(&text?) {
            Ok(entry) => found.whole.push(entry),
            Err(why) => found.damaged.push(why.to_string()),
        }
    }
    Ok(found)
}

impl Entries {
    fn keep(&mut self, entry: Entry) {
        match entry.check() {
            Ok(()) => self.whole.push(entry),
            Err(why) => self.damaged.push(why.to_string()),
        }
    }
}

pub(crate) fn add(conn: &Connection, entry: &Entry) -> rusqlite::Result<AppendStatus> {
    let sql = format!(
        "INSERT INTO entries ({COLUMNS})
         VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7, ?8, ?9, ?10, ?11, ?12, ?13, ?14, ?15)
         ON CONFLICT (id) DO NOTHING"
    );
    let added = conn.prepare_cached(&sql)?.execute(params![
        entry.id.to_string(),
        entry.book.to_string(),
        entry.device.to_string(),
        entry.incarnation.to_string(),
        entry.dseq,
        entry.author,
        entry.hlc.to_string(),
        entry.kind,
        entry.kind_version,
        entry.local_time,
        json(&entry.supersedes)?,
        json(&entry.refs)?,
        entry.sha256,
        entry.body,
        entry.other_json(),
    ])?;
    if added == 1 {
        return Ok(AppendStatus::New);
    }
    let sql = format!("SELECT {COLUMNS} FROM entries WHERE id = ?1");
    let kept = conn
        .prepare_cached(&sql)?
        .query_row([entry.id.to_string()], |row| Ok(entry_of(row).ok()))
        .optional()?
        .flatten();
    if kept.as_ref() == Some(entry) {
        return Ok(AppendStatus::Known);
    }
    conn.prepare_cached("INSERT OR IGNORE INTO quarantine (entry, id) VALUES (?1, ?2)")?
        .execute((entry.to_json(), entry.id.to_string()))?;
    Ok(AppendStatus::IdConflict)
}

pub(crate) fn entry_of(row: &Row<'_>) -> rusqlite::Result<Entry> {
    Ok(Entry {
        id: parsed(row, 0)?,
        book: parsed(row, 1)?,
        device: parsed(row, 2)?,
        incarnation: parsed(row, 3)?,
        dseq: row.get(4)?,
        author: row.get(5)?,
        hlc: parsed(row, 6)?,
        kind: row.get(7)?,
        kind_version: row.get(8)?,
        local_time: row.get(9)?,
        supersedes: list(row, 10)?,
        refs: list(row, 11)?,
        sha256: row.get(12)?,
        body: row.get(13)?,
        other: Entry::other_from_json(&row.get::<_, String>(14)?).map_err(|why| wrong(14, why))?,
    })
}

/// A column that holds a value as its text.
pub(crate) fn parsed<T>(row: &Row<'_>, column: usize) -> rusqlite::Result<T>
where
    T: FromStr,
    T::Err: std::error::Error + Send + Sync + 'static,
{
    row.get::<_, String>(column)?
        .parse()
        .map_err(|why| wrong(column, why))
}

fn list<T: serde::de::DeserializeOwned>(row: &Row<'_>, column: usize) -> rusqlite::Result<Vec<T>> {
    serde_json::from_str(&row.get::<_, String>(column)?).map_err(|why| wrong(column, why))
}

fn json<T: serde::Serialize>(value: &T) -> rusqlite::Result<String> {
    serde_json::to_string(value).map_err(|why| rusqlite::Error::ToSqlConversionFailure(why.into()))
}

fn wrong(column: usize, why: impl std::error::Error + Send + Sync + 'static) -> rusqlite::Error {
    rusqlite::Error::FromSqlConversionFailure(column, Type::Text, Box::new(why))
}
