//! The field book in SQLite, photos as files beside it.
//!
//! A folder holds `book.sqlite` with its log, `photos/` with a file per photo named by its
//! SHA-256, `packets/` with a file per packet made, `carried/` while a file is carried in or out by
//! hand, and `book.lock`. What is acknowledged is on the disk: an entry when
//! [`Book::append`] returns, a photo when [`Book::put_photo`] returns, a half-typed reading (which
//! outlives a kill, not a power cut) when [`Book::keep_draft`] returns. Nothing derived is stored:
//! every figure is folded from the entries, which an open book holds in memory once they are read.

mod arrivals;
mod backup;
mod bring;
mod carried;
mod connect;
mod device;
mod drafts;
mod entries;
mod error;
mod folded;
mod lock;
mod look;
mod migrate;
mod packets;
mod pairing;
mod photos;
mod shared;

pub use arrivals::Comes;
pub use backup::{BackedUp, BackupError, backup, restore, verify};
pub use bring::{Brought, Carried};
pub use carried::{CameSoFar, CarriedFiles};
pub use device::{Device, Turn};
pub use drafts::DraftAfter;
pub use entries::{Appended, Entries};
pub use error::StoreError;
pub use folded::Folded;
pub use packets::Packets;
pub use pairing::Pairing;
pub use photos::{Photo, Photos};
pub use shared::{Copies, MetHub, Shared};

use connect::{FILE, Keeps, connect};
use error::At;
use rusqlite::Connection;
use std::fs::File;
use std::path::{Path, PathBuf};

/// An open field book: all jobs of one device. One program has it at a time.
#[derive(Debug)]
pub struct Book {
    at: At,
    /// Before `_lock` in this list, so that the connections close first.
    entries: Connection,
    drafts: Connection,
    device: Option<Device>,
    /// What a person must know of the exchange with a hub; not kept.
    of_hub: Option<String>,
    /// The hub lies on the same disk: what it has is no other copy.
    hub_is_here: bool,
    read: folded::ReadBefore,
    _lock: File,
}

impl Book {
    /// Opens the field book in a folder, or begins one there; the folder is made.
    ///
    /// # Errors
    /// `InUse`, `Newer`, `NotABook`, `Damaged`, `Unfit`, `Full`, `Denied`, `Disk`: the book was
    /// not changed.
    pub fn open(dir: &Path) -> Result<Book, StoreError> {
        Book::open_with(dir, migrate::STEPS)
    }

    fn open_with(dir: &Path, steps: &[&str]) -> Result<Book, StoreError> {
        let at = At(dir.to_path_buf());
        std::fs::create_dir_all(dir).map_err(|why| at.io(dir, why))?;
        let lock = lock::take(&at)?;
        look::look(&at, steps)?;
        let mut entries = connect(&at, Keeps::Entries)?;
        migrate::migrate(&at, &mut entries, steps)?;
        let drafts = connect(&at, Keeps::Drafts)?;
        photos::make_folder(&at)?;
        sync_dir(dir).map_err(|why| at.io(dir, why))?;
        let device = device::this(&at, &entries)?;
        Ok(Book {
            at,
            entries,
            drafts,
            device,
            of_hub: None,
            hub_is_here: false,
            read: folded::ReadBefore::default(),
            _lock: lock,
        })
    }

    /// The folder.
    pub fn dir(&self) -> &Path {
        &self.at.0
    }

    /// The SQLite file, for who wants to read it with other tools.
    pub fn file(&self) -> PathBuf {
        self.at.0.join(FILE)
    }

    fn sqlite(&self, why: rusqlite::Error) -> StoreError {
        self.at.sqlite(why)
    }
}

/// Makes names in a folder durable: a file that was made or renamed is lost at a power cut until
/// its folder is on the disk too.
pub(crate) fn sync_dir(dir: &Path) -> std::io::Result<()> {
    // Other systems keep names themselves and do not open folders as files.
    if cfg!(unix) {
        File::open(dir)?.sync_all()
    } else {
        Ok(())
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use uuid::Uuid;

    #[test]
    fn every_setting_that_durability_needs_reads_as_it_must() {
        let dir = tempfile::tempdir().unwrap();
        let book = Book::open(dir.path()).unwrap();
        let read = |conn: &Connection, setting| -> rusqlite::types::Value {
            conn.pragma_query_value(None, setting, |row| row.get(0))
                .unwrap()
        };
        for (conn, synchronous) in [(&book.entries, 2), (&book.drafts, 1)] {
            assert_eq!(read(conn, "journal_mode"), "wal".to_owned().into());
            for (setting, wanted) in [
                ("synchronous", synchronous),
                ("fullfsync", 1),
                ("checkpoint_fullfsync", 1),
                ("foreign_keys", 1),
                ("busy_timeout", 5000),
                ("wal_autocheckpoint", 1000),
                ("trusted_schema", 0),
                ("application_id", 0x4541_5645),
                ("user_version", 2),
            ] {
                assert_eq!(read(conn, setting), i64::into(wanted), "{setting}");
            }
        }
    }

    #[test]
    fn a_setting_that_does_not_stick_is_refused_by_name() {
        let dir = tempfile::tempdir().unwrap();
        let book = Book::open(dir.path()).unwrap();
        let said = connect::expect(&book.at, &book.entries, "synchronous", &1.into()).unwrap_err();
        assert_eq!(
            said.to_string(),
            format!(
                "the disk that holds {} cannot keep a field book (synchronous stays 2, not 1): \
                 name a folder on a disk of this machine",
                dir.path().display()
            )
        );
    }

    #[test]
    fn a_full_disk_is_said_in_a_sentence_changes_nothing_and_ends_when_space_is_freed() {
        let dir = tempfile::tempdir().unwrap();
        let mut book = Book::open(dir.path()).unwrap();
        let job = Uuid::nil();
        book.keep_draft(job, "pad", "42").unwrap();
        let large = "7".repeat(1 << 20);
        let pages: i64 = book
            .entries
            .pragma_query_value(None, "page_count", |r| r.get(0))
            .unwrap();
        for conn in [&book.entries, &book.drafts] {
            conn.pragma_update_and_check(None, "max_page_count", pages, |_| Ok(()))
                .unwrap();
        }
        let becomes = DraftAfter::Becomes {
            book: job,
            name: "pad",
            text: &large,
        };
        let said = book.append(&[], becomes).unwrap_err();
        assert_eq!(
            said.to_string(),
            format!(
                "the disk that holds {} is full and nothing of this was kept: free some space, \
                 then do it again",
                dir.path().display()
            )
        );
        assert_eq!(
            book.keep_draft(job, "pad", &large).unwrap_err().code(),
            "disk_full"
        );
        assert_eq!(book.draft(job, "pad").unwrap().as_deref(), Some("42"));
        for conn in [&book.entries, &book.drafts] {
            conn.pragma_update_and_check(None, "max_page_count", 1 << 20, |_| Ok(()))
                .unwrap();
        }
        book.append(&[], becomes).unwrap();
        assert_eq!(book.draft(job, "pad").unwrap(), Some(large));
    }
}
