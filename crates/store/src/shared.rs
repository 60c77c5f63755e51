//! What is shared with a hub: which entries and photos it has acknowledged, which wait, what came
//! from it. An acknowledgement holds for one epoch of one hub: a hub that was restored has another,
//! and everything waits again.

use crate::entries::{COLUMNS, add, entry_of, parsed};
use crate::error::StoreError;
use crate::{AppendStatus, Photo, Store};
use eavebook_core::book::clock::Met;
use eavebook_core::book::entry::Entry;
use rusqlite::{OptionalExtension, params};
use uuid::Uuid;

/// The hub that this book shares with.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct KnownHub {
    /// Which.
    pub id: String,
    /// Which life of its store.
    pub epoch: String,
    /// Where its feed goes on; empty for the beginning.
    pub cursor: String,
}

/// One entry as a digest counts it.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct EntryDigest {
    /// The job.
    pub book: Uuid,
    /// The entry.
    pub id: Uuid,
    /// SHA-256 of its body.
    pub sha256: String,
}

/// Where copies of one job are.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Copies {
    /// On this device alone: no hub was met.
    HereOnly,
    /// A hub is known.
    WithHub {
        /// Entries and photos that it has not acknowledged yet.
        waiting: u64,
        /// Entries and photos that it would not take.
        turned_back: u64,
        /// Photos named here of which the bytes have not come.
        to_come: u64,
    },
}

/// Entries that the hub in force has neither acknowledged nor turned back.
const WAITING: &str = "FROM entries e, hubs h
    WHERE h.this = 1
      AND NOT EXISTS (SELECT 1 FROM outbox o
                      WHERE o.entry = e.id AND o.hub = h.id AND o.epoch = h.epoch)
      AND NOT EXISTS (SELECT 1 FROM turned_back t WHERE t.what = e.id AND t.hub = h.id)";

/// Photos on this disk of which the same holds.
const PHOTOS_WAITING: &str = "FROM photos p, hubs h
    WHERE h.this = 1
      AND NOT EXISTS (SELECT 1 FROM photos_out o
                      WHERE o.sha256 = p.sha256 AND o.hub = h.id AND o.epoch = h.epoch)
      AND NOT EXISTS (SELECT 1 FROM turned_back t WHERE t.what = p.sha256 AND t.hub = h.id)";

impl Store {
    /// The hub that was met.
    ///
    /// # Errors
    /// `Damaged`, `Disk`.
    pub fn known_hub(&self) -> Result<Option<KnownHub>, StoreError> {
        let read = || {
            self.entries
                .prepare_cached("SELECT id, epoch, cursor FROM hubs WHERE this = 1")?
                .query_row([], |row| {
                    Ok(KnownHub {
                        id: row.get(0)?,
                        epoch: row.get(1)?,
                        cursor: row.get(2)?,
                    })
                })
                .optional()
        };
        read().map_err(|why| self.sqlite(why))
    }

    /// Begins anew with a hub at an epoch: its feed from the start, and nothing is proven there.
    ///
    /// # Errors
    /// `Full`, `Denied`, `Disk`: nothing was changed.
    pub fn meet(&mut self, hub: &str, epoch: &str) -> Result<(), StoreError> {
        let meet = || {
            let change = self.entries.unchecked_transaction()?;
            change.execute("UPDATE hubs SET this = 0 WHERE id <> ?1", [hub])?;
            change.execute(
                "INSERT INTO hubs (id, epoch, cursor, this) VALUES (?1, ?2, '', 1)
                 ON CONFLICT (id) DO UPDATE SET epoch = ?2, cursor = '', this = 1",
                [hub, epoch],
            )?;
            for table in ["outbox", "photos_out", "turned_back"] {
                change.execute(&format!("DELETE FROM {table} WHERE hub = ?1"), [hub])?;
            }
            change.commit()
        };
        meet().map_err(|why| self.sqlite(why))
    }

    /// Entries to offer, the oldest first: at most so many and so many bytes, at least one. One that
    /// names a photo of this disk follows after that photo.
    ///
    /// # Errors
    /// `Damaged`, `Disk`.
    pub fn waiting(&self, most: usize, bytes: usize) -> Result<Vec<Entry>, StoreError> {
        let read = || {
            let sql = format!(
                "SELECT {COLUMNS} FROM entries WHERE id IN (SELECT e.id {WAITING}) ORDER BY id"
            );
            let photo = format!("SELECT 1 {PHOTOS_WAITING} AND p.sha256 = ?1");
            let mut photo = self.entries.prepare_cached(&photo)?;
            let mut query = self.entries.prepare_cached(&sql)?;
            let mut rows = query.query([])?;
            let (mut waiting, mut size) = (Vec::new(), 0);
            while waiting.len() < most
                && let Some(row) = rows.next()?
            {
                // A row that is no longer what was booked is shown where the job is read.
                let Ok(entry) = entry_of(row) else { continue };
                let mut after_a_photo = false;
                for named in entry.refs.iter().filter(|named| named.len() == 64) {
                    after_a_photo |= photo.exists([named])?;
                }
                if entry.check().is_err() || after_a_photo {
                    continue;
                }
                size += entry.to_json().len() + 1;
                if size > bytes && !waiting.is_empty() {
                    break;
                }
                waiting.push(entry);
            }
            Ok(waiting)
        };
        read().map_err(|why| self.sqlite(why))
    }

    /// Photos to send, at most so many.
    ///
    /// # Errors
    /// `Damaged`, `Disk`.
    pub fn photos_waiting(&self, most: usize) -> Result<Vec<Photo>, StoreError> {
        let read = || {
            let sql = format!("SELECT p.sha256, p.size {PHOTOS_WAITING} ORDER BY p.rowid LIMIT ?1");
            let mut query = self.entries.prepare_cached(&sql)?;
            let rows = query.query_map([most as u64], |row| {
                Ok(Photo {
                    sha256: row.get(0)?,
                    size: row.get(1)?,
                })
            })?;
            rows.collect::<rusqlite::Result<Vec<_>>>()
        };
        read().map_err(|why| self.sqlite(why))
    }

    /// The hub has these on its disk.
    ///
    /// # Errors
    /// `Full`, `Denied`, `Disk`: they still wait.
    pub fn acknowledge(&mut self, entries: &[Uuid]) -> Result<(), StoreError> {
        let keep = || {
            let change = self.entries.unchecked_transaction()?;
            for id in entries {
                acknowledge(&change, *id)?;
            }
            change.commit()
        };
        keep().map_err(|why| self.sqlite(why))
    }

    /// The hub has this photo on its disk.
    ///
    /// # Errors
    /// `Full`, `Denied`, `Disk`: it still waits.
    pub fn acknowledge_photo(&mut self, sha256: &str) -> Result<(), StoreError> {
        let sql = "INSERT OR REPLACE INTO photos_out (sha256, hub, epoch)
                   SELECT ?1, id, epoch FROM hubs WHERE this = 1";
        self.entries
            .execute(sql, [sha256])
            .map(|_| ())
            .map_err(|why| self.sqlite(why))
    }

    /// The hub would not take an entry or a photo, and why. It stays in this book.
    ///
    /// # Errors
    /// `Full`, `Denied`, `Disk`: it still waits.
    pub fn turn_back(&mut self, what: &str, reason: &str) -> Result<(), StoreError> {
        let sql = "INSERT OR REPLACE INTO turned_back (what, hub, reason)
                   SELECT ?1, id, ?2 FROM hubs WHERE this = 1";
        self.entries
            .execute(sql, [what, reason])
            .map(|_| ())
            .map_err(|why| self.sqlite(why))
    }

    /// What the hub turned back, and why.
    ///
    /// # Errors
    /// `Damaged`, `Disk`.
    pub fn turned_back(&self) -> Result<Vec<(String, String)>, StoreError> {
        let read = || {
            let sql = "SELECT t.what, t.reason FROM turned_back t JOIN hubs h ON h.id = t.hub
                       WHERE h.this = 1 ORDER BY t.what";
            let mut query = self.entries.prepare_cached(sql)?;
            let rows = query.query_map([], |row| Ok((row.get(0)?, row.get(1)?)))?;
            rows.collect::<rusqlite::Result<Vec<_>>>()
        };
        read().map_err(|why| self.sqlite(why))
    }

    /// The hub turned out to lack these: they wait again.
    ///
    /// # Errors
    /// `Full`, `Denied`, `Disk`: nothing was changed.
    pub fn offer_again(&mut self, entries: &[Uuid]) -> Result<(), StoreError> {
        let keep = || {
            let change = self.entries.unchecked_transaction()?;
            for id in entries {
                change
                    .prepare_cached("DELETE FROM outbox WHERE entry = ?1")?
                    .execute([id.to_string()])?;
            }
            change.commit()
        };
        keep().map_err(|why| self.sqlite(why))
    }

    /// Takes what came in one page of a hub's feed, and in the same transaction moves the cursor,
    /// where one is given. Each text is an entry as it came. The clock of this device follows, but
    /// for stamps far ahead of the wall clock (milliseconds since 1970).
    ///
    /// # Errors
    /// `Full`, `Denied`, `Disk`: nothing was changed.
    pub fn receive(
        &mut self,
        texts: &[String],
        cursor: Option<&str>,
        wall_ms: u64,
    ) -> Result<Vec<AppendStatus>, StoreError> {
        let mut device = self.device.clone();
        let mut take = || {
            let change = self.entries.unchecked_transaction()?;
            let mut statuses = Vec::new();
            for text in texts {
                match Entry::from_json(text) {
                    Ok(entry) => {
                        let added = add(&change, &entry)?;
                        if added != AppendStatus::IdConflict {
                            acknowledge(&change, entry.id)?;
                        }
                        if let Some(device) = &mut device
                            && let Met::Followed(hlc) = device.hlc.meet(entry.hlc, wall_ms)
                        {
                            device.hlc = hlc;
                        }
                        statuses.push(added);
                    }
                    Err(why) => {
                        change
                            .prepare_cached(
                                "INSERT OR IGNORE INTO unreadable (text, reason) VALUES (?1, ?2)",
                            )?
                            .execute([text, &why.to_string()])?;
                    }
                }
            }
            if let Some(cursor) = cursor {
                change.execute("UPDATE hubs SET cursor = ?1 WHERE this = 1", [cursor])?;
            }
            if let Some(device) = &device {
                change.execute(
                    "UPDATE devices SET hlc = ?1 WHERE this = 1",
                    [device.hlc.to_string()],
                )?;
            }
            change.commit()?;
            Ok(statuses)
        };
        let statuses = take().map_err(|why| self.sqlite(why))?;
        self.device = device;
        Ok(statuses)
    }

    /// Photos that entries name and that are not on this disk, by their SHA-256.
    ///
    /// # Errors
    /// `Damaged`, `Disk`.
    pub fn photos_wanted(&self) -> Result<Vec<String>, StoreError> {
        let read = || {
            let sql = "SELECT DISTINCT j.value FROM entries e, json_each(e.refs) j
                       WHERE length(j.value) = 64
                         AND NOT EXISTS (SELECT 1 FROM photos p WHERE p.sha256 = j.value)";
            let mut query = self.entries.prepare_cached(sql)?;
            let rows = query.query_map([], |row| row.get(0))?;
            rows.collect::<rusqlite::Result<Vec<_>>>()
        };
        read().map_err(|why| self.sqlite(why))
    }

    /// Every entry as a digest counts it.
    ///
    /// # Errors
    /// `Damaged`, `Disk`.
    pub fn held(&self) -> Result<Vec<EntryDigest>, StoreError> {
        let read = || {
            let mut query = self
                .entries
                .prepare_cached("SELECT book, id, sha256 FROM entries ORDER BY id")?;
            let rows = query.query_map([], |row| {
                Ok(EntryDigest {
                    book: parsed(row, 0)?,
                    id: parsed(row, 1)?,
                    sha256: row.get(2)?,
                })
            })?;
            rows.collect::<rusqlite::Result<Vec<_>>>()
        };
        read().map_err(|why| self.sqlite(why))
    }

    /// Begins another life of this device's store: the one before was restored from a copy, or
    /// copied, and its counts may be spent.
    ///
    /// # Errors
    /// `NoDevice`, `Full`, `Denied`, `Disk`: nothing was changed.
    pub fn begin_life(&mut self, incarnation: Uuid) -> Result<(), StoreError> {
        let mut device = self.named()?.clone();
        device.incarnation = incarnation;
        device.dseq = 0;
        self.set_device(device)
    }

    /// What a person must know of the exchange with the hub, since the book was opened.
    #[must_use]
    pub fn hub_message(&self) -> Option<&str> {
        self.hub_message.as_deref()
    }

    /// Says what a person must know of the exchange with the hub, or that there is nothing.
    pub fn set_hub_message(&mut self, words: Option<String>) {
        self.hub_message = words;
    }

    /// Says that the hub lies on the same disk, so that what it has is no other copy.
    pub fn hub_is_here(&mut self) {
        self.hub_is_here = true;
    }

    /// Entries of a job that other devices booked.
    ///
    /// # Errors
    /// `Damaged`, `Disk`.
    pub fn entries_of_others(&self, job: Uuid) -> Result<u64, StoreError> {
        let own = self.device().map(|device| device.id.to_string());
        let count = || {
            let sql = "SELECT count(*) FROM entries WHERE book = ?1 AND device <> ?2";
            let mut query = self.entries.prepare_cached(sql)?;
            query.query_row((job.to_string(), own.unwrap_or_default()), |row| row.get(0))
        };
        count().map_err(|why| self.sqlite(why))
    }

    /// Where copies of a job are.
    ///
    /// # Errors
    /// `Damaged`, `Disk`.
    pub fn copies(&self, job: Uuid) -> Result<Copies, StoreError> {
        if self.hub_is_here || self.known_hub()?.is_none() {
            return Ok(Copies::HereOnly);
        }
        let named = "EXISTS (SELECT 1 FROM entries e, json_each(e.refs) j
                             WHERE e.book = ?1 AND j.value = p.sha256)";
        let turned_back = "SELECT count(*) FROM turned_back t, hubs h
            WHERE h.this = 1 AND t.hub = h.id
              AND t.what IN (SELECT id FROM entries WHERE book = ?1
                             UNION SELECT j.value FROM entries e, json_each(e.refs) j
                                   WHERE e.book = ?1)";
        let to_come = "SELECT count(DISTINCT j.value) FROM entries e, json_each(e.refs) j
            WHERE e.book = ?1 AND length(j.value) = 64
              AND NOT EXISTS (SELECT 1 FROM photos p WHERE p.sha256 = j.value)";
        let count = |sql: &str| -> Result<u64, StoreError> {
            let count = || {
                let mut query = self.entries.prepare_cached(sql)?;
                query.query_row(params![job.to_string()], |row| row.get(0))
            };
            count().map_err(|why| self.sqlite(why))
        };
        let entries = count(&format!("SELECT count(*) {WAITING} AND e.book = ?1"))?;
        let photos = count(&format!("SELECT count(*) {PHOTOS_WAITING} AND {named}"))?;
        Ok(Copies::WithHub {
            waiting: entries + photos,
            turned_back: count(turned_back)?,
            to_come: count(to_come)?,
        })
    }
}

fn acknowledge(conn: &rusqlite::Connection, entry: Uuid) -> rusqlite::Result<()> {
    conn.prepare_cached(
        "INSERT OR REPLACE INTO outbox (entry, hub, epoch)
         SELECT ?1, id, epoch FROM hubs WHERE this = 1",
    )?
    .execute([entry.to_string()])
    .map(|_| ())
}
