//! What can go wrong on a disk, in one sentence that names the thing and the remedy.

use rusqlite::ErrorCode;
use std::io;
use std::path::{Path, PathBuf};

/// Why the book could not be opened, read or written. Nothing was changed.
#[derive(Debug, thiserror::Error)]
pub enum StoreError {
    /// Another program has this book.
    #[error(
        "the field book in {dir} is open in another program{holder}: close that one, or name \
         another folder"
    )]
    InUse {
        /// The folder.
        dir: String,
        /// Its process, where it told: ` (process 1234)`.
        holder: String,
    },
    /// Written by a newer version.
    #[error(
        "the field book in {dir} was written by a newer eavebook (book version {found}, this one \
         reads up to {known}): update this program; the book was not changed"
    )]
    Newer {
        /// The folder.
        dir: String,
        /// Version of the book.
        found: i64,
        /// Newest version that this program knows.
        known: i64,
    },
    /// Some other file of that name.
    #[error("{file} is no field book: move it away, or name another folder")]
    NotABook {
        /// The file.
        file: String,
    },
    /// The platform does not do what durability needs.
    #[error(
        "the disk that holds {dir} cannot keep a field book ({setting} stays {found}, not \
         {wanted}): name a folder on a disk of this machine"
    )]
    Unfit {
        /// The folder.
        dir: String,
        /// Which setting.
        setting: &'static str,
        /// What it must be.
        wanted: String,
        /// What it is.
        found: String,
    },
    /// No space left.
    #[error(
        "the disk that holds {dir} is full and nothing of this was kept: free some space, then do \
         it again"
    )]
    Full {
        /// The folder.
        dir: String,
    },
    /// Not allowed to write there.
    #[error(
        "{dir} cannot be written and nothing of this was kept: allow writing there, or name \
         another folder"
    )]
    Denied {
        /// The folder or file.
        dir: String,
    },
    /// The file does not hold together.
    #[error(
        "the field book in {dir} is damaged ({what}): leave the folder as it is, copy it whole, \
         and go on from a backup or in another folder"
    )]
    Damaged {
        /// The folder.
        dir: String,
        /// What was found.
        what: String,
    },
    /// The disk failed in another way.
    #[error(
        "the disk that holds {dir} failed ({what}) and nothing of this was kept: do it again, and \
         copy the folder to another disk if it fails once more"
    )]
    Disk {
        /// The folder.
        dir: String,
        /// What the system said.
        what: String,
    },
    /// A photo that is not there.
    #[error("photo {sha256} is not in the folder photos of {dir}: fetch it from another copy")]
    NoPhoto {
        /// The folder.
        dir: String,
        /// Its hash.
        sha256: String,
    },
    /// The pairing does not read.
    #[error("{file} does not read as a pairing ({what}): delete it, then pair this book again")]
    Pairing {
        /// The file.
        file: String,
        /// What was found.
        what: String,
    },
    /// Booking before the device has a name.
    #[error("this device has no identity in the field book in {dir} yet: give it one, then book")]
    NoDevice {
        /// The folder.
        dir: String,
    },
}

impl StoreError {
    /// Names the sentence, so that another language finds its own.
    pub fn code(&self) -> &'static str {
        match self {
            StoreError::InUse { .. } => "book_in_use",
            StoreError::Newer { .. } => "book_newer",
            StoreError::NotABook { .. } => "not_a_book",
            StoreError::Unfit { .. } => "disk_unfit",
            StoreError::Full { .. } => "disk_full",
            StoreError::Denied { .. } => "disk_denied",
            StoreError::Damaged { .. } => "book_damaged",
            StoreError::Disk { .. } => "disk_failed",
            StoreError::NoPhoto { .. } => "no_photo",
            StoreError::Pairing { .. } => "pairing_damaged",
            StoreError::NoDevice { .. } => "no_device",
        }
    }
}

/// The place of a failure: turns what SQLite or the system says into a sentence about this book.
#[derive(Clone, Debug)]
pub(crate) struct StoreFolder(pub(crate) PathBuf);

impl StoreFolder {
    pub(crate) fn dir(&self) -> String {
        self.0.display().to_string()
    }

    pub(crate) fn sqlite(&self, why: rusqlite::Error) -> StoreError {
        let dir = self.dir();
        // What SQLite says when the shared index of the log finds no room.
        let no_room = Some(rusqlite::ffi::SQLITE_IOERR_SHMSIZE);
        if why.sqlite_error().map(|why| why.extended_code) == no_room {
            return StoreError::Full { dir };
        }
        match why.sqlite_error_code() {
            Some(ErrorCode::DiskFull) => StoreError::Full { dir },
            Some(ErrorCode::ReadOnly | ErrorCode::CannotOpen | ErrorCode::PermissionDenied) => {
                StoreError::Denied { dir }
            }
            Some(ErrorCode::DatabaseCorrupt | ErrorCode::NotADatabase) => StoreError::Damaged {
                dir,
                what: why.to_string(),
            },
            Some(ErrorCode::DatabaseBusy | ErrorCode::DatabaseLocked) => StoreError::InUse {
                dir,
                holder: String::new(),
            },
            Some(_) | None => StoreError::Disk {
                dir,
                what: why.to_string(),
            },
        }
    }

    pub(crate) fn io(&self, path: &Path, why: io::Error) -> StoreError {
        use io::ErrorKind::*;
        if [StorageFull, QuotaExceeded, FileTooLarge].contains(&why.kind()) {
            StoreError::Full { dir: self.dir() }
        } else if [
            PermissionDenied,
            ReadOnlyFilesystem,
            NotADirectory,
            AlreadyExists,
        ]
        .contains(&why.kind())
        {
            StoreError::Denied {
                dir: path.display().to_string(),
            }
        } else {
            StoreError::Disk {
                dir: self.dir(),
                what: why.to_string(),
            }
        }
    }
}
