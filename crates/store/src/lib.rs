//! The field book in SQLite, photos as files beside it.
//!
//! A folder holds `book.sqlite` with its log, `photos/` with a file per photo named by its
//! SHA-256, `packets/` with a file per packet made, `carried/` while a file is carried in or out by
//! hand, and `book.lock`. What is acknowledged is on the disk: an entry when
//! [`Store::append`] returns, a photo when [`Store::put_photo`] returns, a half-typed reading (which
//! outlives a kill, not a power cut) when [`Store::keep_draft`] returns. Nothing derived is stored:
//! every figure is folded from the entries, which an open book holds in memory once they are read.

mod arrivals;
mod backup;
mod connect;
mod device;
mod drafts;
mod entries;
mod error;
mod folded;
mod import;
mod lock;
mod migrate;
mod packets;
mod pairing;
mod photos;
mod preflight;
mod shared;
mod transfer_files;

pub use arrivals::PhotoProgress;
pub use backup::{BackupCounts, BackupError, backup, restore, verify};
pub use device::{Device, Turn};
pub use drafts::DraftAfter;
pub use entries::{AppendStatus, Entries};
pub use error::StoreError;
pub use folded::FoldedJob;
pub use import::{ImportReport, ImportSource};
pub use packets::Packets;
pub use pairing::Pairing;
pub use photos::{Photo, Photos};
pub use shared::{Copies, EntryDigest, KnownHub};
pub use transfer_files::{FileProgress, TransferFiles};

use connect::{ConnectionRole, FILE, connect};
use error::StoreFolder;
use rusqlite::Connection;
use std::fs::File;
use std::path::{Path, PathBuf};

/// An open field book: all jobs of one device. One program has it at a time.
#[derive(Debug)]
pub struct Store {
    root: StoreFolder,
    /// Before `_lock` in this list, so that the connections close first.
    entries: Connection,
    drafts: Connection,
    device: Option<Device>,
    /// What a person must know of the exchange with a hub; not kept.
    hub_message: Option<String>,
    /// The hub lies on the same disk: what it has is no other copy.
    hub_is_here: bool,
    read: folded::JobCache,
    _lock: File,
}

impl Store {
    /// Opens the field book in a folder, or begins one there; the folder is made.
    ///
    /// # Errors
    /// `InUse`, `Newer`, `NotABook`, `Damaged`, `Unfit`, `Full`, `Denied`, `Disk`: the book was
    /// not changed.
    pub fn open(dir: &Path) -> Result<Store, StoreError> {
        Store::open_with(dir, migrate::STEPS)
    }

    fn open_with(dir: &Path, steps: &[&str]) -> Result<Store, StoreError> {
        let root = StoreFolder(dir.to_path_buf());
        std::fs::create_dir_all(dir).map_err(|why| root.io(dir, why))?;
        let lock = lock::take(&root)?;
        preflight::preflight(&root, steps)?;
        let mut entries = connect(&root, ConnectionRole::Entries)?;
        migrate::migrate(&root, &mut entries, steps)?;
        let drafts = connect(&root, ConnectionRole::Drafts)?;
        photos::make_folder(&root)?;
        sync_dir(dir).map_err(|why| root.io(dir, why))?;
        let device = device::this_device(&root, &entries)?;
        Ok(Store {
            root,
            entries,
            drafts,
            device,
            hub_message: None,
            hub_is_here: false,
            read: folded::JobCache::default(),
            _lock: lock,
        })
    }

    /// The folder.
    pub fn dir(&self) -> &Path {
        &self.root.0
    }

    /// The SQLite file, for who wants to read it with other tools.
    pub fn file(&self) -> PathBuf {
        self.root.0.join(FILE)
    }

    fn sqlite(&self, why: rusqlite::Error) -> StoreError {
        self.root.sqlite(why)
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
        let book = Store::open(dir.path()).unwrap();
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
        let book = Store::open(dir.path()).unwrap();
        let error =
            connect::expect(&book.root, &book.entries, "synchronous", &1.into()).unwrap_err();
        assert_eq!(
            error.to_string(),
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
        let mut book = Store::open(dir.path()).unwrap();
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
        let error = book.append(&[], becomes).unwrap_err();
        assert_eq!(
            error.to_string(),
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
