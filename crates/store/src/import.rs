//! A file carried by hand: its entries and photos join those that are here, as if they had come
//! over a network. It is the way between two machines that share none.

use crate::backup::{self, BackupError};
use crate::transfer_files::TemporaryFolder;
use crate::{AppendStatus, DraftAfter, Store, StoreError};
use eavebook_core::book::clock::Met;
use eavebook_core::book::entry::Entry;
use std::collections::BTreeSet;
use std::fs::File;
use std::io::Read;
use std::path::Path;
use uuid::Uuid;

/// What a file carried by hand brought.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct ImportReport {
    /// Entries that were not here.
    pub entries: u64,
    /// Entries that were here, byte for byte.
    pub known: u64,
    /// Entries whose id is taken by another content: both are kept, and shown.
    pub conflicts: u64,
    /// Photos that were not here.
    pub photos: u64,
    /// Photos that were here.
    pub known_photos: u64,
    /// The jobs that the entries of the file are of.
    pub jobs: BTreeSet<Uuid>,
}

/// A backup of a field book, proved whole and unpacked, to be brought into another. What was
/// unpacked goes away with it.
#[derive(Debug)]
pub struct ImportSource {
    /// Before `_beside` in this list, so that it closes first.
    book: Store,
    _folder: TemporaryFolder,
}

impl ImportSource {
    /// Proves a backup and unpacks it into a new folder. No other book is needed for it.
    ///
    /// # Errors
    /// `Damaged` for a file that is no whole backup, `Store` of that folder.
    pub fn prove(file: &Path, folder: &Path) -> Result<ImportSource, BackupError> {
        backup::prove(file)?;
        let emptied = TemporaryFolder(folder.to_path_buf());
        backup::build(file, folder)?;
        Ok(ImportSource {
            book: Store::open(folder)?,
            _folder: emptied,
        })
    }

    /// Its photos, each to be read. Those that the book itself lacked are not among them.
    ///
    /// # Errors
    /// `Damaged`, `Disk`.
    pub fn photos(&self) -> Result<impl Iterator<Item = File>, StoreError> {
        let read = || {
            let sql = "SELECT sha256 FROM photos ORDER BY sha256";
            let mut query = self.book.entries.prepare_cached(sql)?;
            let names = query.query_map([], |row| row.get(0))?;
            names.collect::<rusqlite::Result<Vec<String>>>()
        };
        let names = read().map_err(|why| self.book.sqlite(why))?;
        let photos = self.book.photos();
        Ok(names
            .into_iter()
            .filter_map(move |name| photos.open(&name).ok()))
    }

    /// Its entries, job by job.
    ///
    /// # Errors
    /// `Damaged`, `Disk`.
    pub fn jobs(&self) -> Result<impl Iterator<Item = Result<Vec<Entry>, StoreError>>, StoreError> {
        let jobs = self.book.books()?;
        Ok(jobs
            .into_iter()
            .map(|job| Ok(self.book.entries(job)?.whole)))
    }
}

impl Store {
    /// Takes in a photo that was carried by hand, before the entries that name it.
    ///
    /// # Errors
    /// `Full`, `Denied`, `Disk`: it was not kept.
    pub fn import_photo(
        &mut self,
        bytes: &mut dyn Read,
        report: &mut ImportReport,
    ) -> Result<(), StoreError> {
        match self.lay_photo(bytes)?.1 {
            AppendStatus::New => report.photos += 1,
            AppendStatus::Known | AppendStatus::IdConflict => report.known_photos += 1,
        }
        Ok(())
    }

    /// Takes in entries that were carried by hand: the union of both sets. Said twice, it changes
    /// nothing more. Nothing of it counts as sent to a hub. The photos that they name are to be here
    /// by then. `wall_ms`: milliseconds since 1970, for this device's clock, which follows but for
    /// stamps far ahead; `life`: a fresh id, for a new life of this store where there are later counts
    /// of it among them.
    ///
    /// # Errors
    /// `Full`, `Denied`, `Disk`: none of them came in.
    pub fn import_entries(
        &mut self,
        entries: &[Entry],
        report: &mut ImportReport,
        wall_ms: u64,
        life: Uuid,
    ) -> Result<(), StoreError> {
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
        for status in self.append(entries, DraftAfter::AsItIs)? {
            match status {
                AppendStatus::New => report.entries += 1,
                AppendStatus::Known => report.known += 1,
                AppendStatus::IdConflict => report.conflicts += 1,
            }
        }
        report.jobs.extend(entries.iter().map(|entry| entry.book));
        if later {
            self.begin_life(life)?;
        }
        Ok(())
    }
}
