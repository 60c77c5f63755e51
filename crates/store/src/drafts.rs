//! Half-typed readings: no entries, of this device only, kept at each key.

use crate::Store;
use crate::error::StoreError;
use rusqlite::{Connection, OptionalExtension};
use uuid::Uuid;

/// What becomes of a draft in the transaction that books.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum DraftAfter<'a> {
    /// No draft has to do with it.
    AsItIs,
    /// It goes away.
    Gone {
        /// The job.
        book: Uuid,
        /// The draft's name in it.
        name: &'a str,
    },
    /// Another text takes its place.
    Becomes {
        /// The job.
        book: Uuid,
        /// The draft's name in it.
        name: &'a str,
        /// The new text.
        text: &'a str,
    },
}

impl Store {
    /// Keeps a draft of a job under a name, in place of the one before. When this returns it
    /// outlives a kill of the program.
    ///
    /// # Errors
    /// `Full`, `Denied`, `Disk`: the draft is as it was.
    pub fn keep_draft(&mut self, book: Uuid, name: &str, text: &str) -> Result<(), StoreError> {
        put(&self.drafts, DraftAfter::Becomes { book, name, text }).map_err(|why| self.sqlite(why))
    }

    /// Throws a draft away.
    ///
    /// # Errors
    /// `Full`, `Denied`, `Disk`: the draft is as it was.
    pub fn drop_draft(&mut self, book: Uuid, name: &str) -> Result<(), StoreError> {
        put(&self.drafts, DraftAfter::Gone { book, name }).map_err(|why| self.sqlite(why))
    }

    /// A draft as it was last kept.
    ///
    /// # Errors
    /// `Damaged`, `Disk`.
    pub fn draft(&self, book: Uuid, name: &str) -> Result<Option<String>, StoreError> {
        let sql = "SELECT body FROM drafts WHERE book = ?1 AND name = ?2";
        let read = || {
            let mut query = self.drafts.prepare_cached(sql)?;
            query
                .query_row((book.to_string(), name), |row| row.get(0))
                .optional()
        };
        read().map_err(|why| self.sqlite(why))
    }
}

/// Carries out what becomes of a draft, on whichever connection is at work.
pub(crate) fn put(conn: &Connection, draft: DraftAfter<'_>) -> rusqlite::Result<()> {
    match draft {
        DraftAfter::AsItIs => Ok(()),
        DraftAfter::Gone { book, name } => conn
            .prepare_cached("DELETE FROM drafts WHERE book = ?1 AND name = ?2")?
            .execute((book.to_string(), name))
            .map(|_| ()),
        DraftAfter::Becomes { book, name, text } => conn
            .prepare_cached(
                "INSERT INTO drafts (book, name, body) VALUES (?1, ?2, ?3)
                 ON CONFLICT (book, name) DO UPDATE SET body = ?3",
            )?
            .execute((book.to_string(), name, text))
            .map(|_| ()),
    }
}
