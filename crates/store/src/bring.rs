//! A backup carried by hand: its entries and photos join those that are here, as if they had come
//! over a network. It is the way between two machines that share none.

use crate::backup::{self, BackupError, arriving};
use crate::{Appended, Book, DraftAfter, StoreError};
use eavebook_core::book::clock::Met;
use eavebook_core::book::entry::Entry;
use std::path::Path;
use uuid::Uuid;

/// What a file carried by hand brought.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Brought {
    /// Entries that were not here.
    pub entries: u64,
    /// Entries that were here, byte for byte.
    pub known: u64,
    /// Entries whose id is taken by another content: both are kept, and shown.
    pub conflicts: u64,
    /// Photos in the file, here now.
    pub photos: u64,
}

impl Book {
    /// Takes in what a backup of another book holds: the union of both sets. Said twice, it changes
    /// nothing more. Nothing of it counts as sent to a hub. `wall_ms`: milliseconds since 1970, for
    /// this device's clock, which follows but for stamps far ahead; `life`: a fresh id, for a new life
    /// of this store where the file holds later counts of it.
    ///
    /// # Errors
    /// `Damaged` for a file that is no whole backup: nothing was changed. `Store`: what came before
    /// it is kept, and the rest comes with the next try.
    pub fn bring(&mut self, file: &Path, wall_ms: u64, life: Uuid) -> Result<Brought, BackupError> {
        backup::prove(file)?;
        let beside = arriving(&self.at.0.join("carried"), ".arriving");
        let brought = backup::build(file, &beside)
            .and_then(|_| Ok(self.join(&Book::open(&beside)?, wall_ms, life)?));
        // Made here a moment ago, out of the backup.
        let _ = std::fs::remove_dir_all(&beside);
        brought
    }

    fn join(&mut self, other: &Book, wall_ms: u64, life: Uuid) -> Result<Brought, StoreError> {
        let mut brought = Brought::default();
        // Photos first: what an entry names is on the disk before it.
        for sha256 in other.photos_kept()? {
            if let Ok(mut file) = other.photo(&sha256) {
                self.put_photo(&mut file)?;
                brought.photos += 1;
            }
        }
        for job in other.books()? {
            let of_job = self.bring_entries(&other.entries(job)?.whole, wall_ms, life)?;
            brought.entries += of_job.entries;
            brought.known += of_job.known;
            brought.conflicts += of_job.conflicts;
        }
        Ok(brought)
    }

    /// Takes in entries that were carried by hand; the photos that they name are to be here by then.
    /// The rest as [`Book::bring`].
    ///
    /// # Errors
    /// `Full`, `Denied`, `Disk`: none of them came in.
    pub fn bring_entries(
        &mut self,
        entries: &[Entry],
        wall_ms: u64,
        life: Uuid,
    ) -> Result<Brought, StoreError> {
        let mut later = false;
        if let Some(device) = &mut self.device {
            for entry in entries {
                if let Met::Followed(hlc) = device.hlc.meet(entry.hlc, wall_ms) {
                    device.hlc = hlc;
                }
                later |= (entry.device, entry.incarnation) == (device.id, device.incarnation)
                    && entry.dseq > device.dseq;
            }
        }
        let mut brought = Brought::default();
        for became in self.append(entries, DraftAfter::AsItIs)? {
            match became {
                Appended::New => brought.entries += 1,
                Appended::Known => brought.known += 1,
                Appended::IdConflict => brought.conflicts += 1,
            }
        }
        if later {
            self.begin_life(life)?;
        }
        Ok(brought)
    }

    fn photos_kept(&self) -> Result<Vec<String>, StoreError> {
        let read = || {
            let sql = "SELECT sha256 FROM photos ORDER BY sha256";
            let mut query = self.entries.prepare_cached(sql)?;
            let names = query.query_map([], |row| row.get(0))?;
            names.collect::<rusqlite::Result<Vec<String>>>()
        };
        read().map_err(|why| self.sqlite(why))
    }
}
