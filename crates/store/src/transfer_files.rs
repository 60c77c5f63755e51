//! Files on their way in or out by hand, in a folder beside the book. They can be asked for without
//! the book, so that a long copy never holds a booking up. The folder is emptied when the book is
//! next opened: what lies there is a copy of what lies elsewhere.

use crate::Store;
use crate::error::{StoreError, StoreFolder};
use std::fs::OpenOptions;
use std::io::{Seek, SeekFrom, Write};
use std::path::PathBuf;
use uuid::Uuid;

const FOLDER: &str = "carried";

/// The folder of the files that are carried by hand.
#[derive(Clone, Debug)]
pub struct TransferFiles(StoreFolder);

/// How far a file is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum FileProgress {
    /// More is to come.
    InPart,
    /// As long as it is to be; what it is worth is still to be proved.
    All,
    /// What comes before this piece is not here.
    Gap,
}

impl Store {
    /// Where files lie that are carried by hand.
    pub fn transfer_files(&self) -> TransferFiles {
        TransferFiles(self.root.clone())
    }
}

impl TransferFiles {
    /// The place for a file of this id, in the folder, which is made where it was not.
    ///
    /// # Errors
    /// `Full`, `Denied`, `Disk`.
    pub fn place(&self, id: Uuid) -> Result<PathBuf, StoreError> {
        let folder = self.0.0.join(FOLDER);
        std::fs::create_dir_all(&folder).map_err(|why| self.0.io(&folder, why))?;
        Ok(folder.join(id.to_string()))
    }

    /// Lays a piece of a file where it belongs, `offset` bytes from its first; `whole`: bytes of all of
    /// it. A piece that comes twice is laid twice.
    ///
    /// # Errors
    /// `Full`, `Denied`, `Disk`: the file is gone then.
    pub fn write_piece(
        &self,
        id: Uuid,
        piece: &[u8],
        offset: u64,
        whole: u64,
    ) -> Result<FileProgress, StoreError> {
        let path = self.place(id)?;
        let lay = || {
            let mut file = OpenOptions::new()
                .create(true)
                .truncate(false)
                .write(true)
                .open(&path)?;
            if file.metadata()?.len() < offset {
                return Ok(FileProgress::Gap);
            }
            file.seek(SeekFrom::Start(offset))?;
            file.write_all(piece)?;
            let came = file.metadata()?.len();
            Ok(if came < whole {
                FileProgress::InPart
            } else {
                FileProgress::All
            })
        };
        let came = lay();
        if !matches!(came, Ok(FileProgress::InPart | FileProgress::All)) {
            self.forget(id);
        }
        came.map_err(|why| self.0.io(&path, why))
    }

    /// Throws a file away; one that stays all the same goes when the book is next opened.
    pub fn forget(&self, id: Uuid) {
        let _ = std::fs::remove_file(self.0.0.join(FOLDER).join(id.to_string()));
    }

    /// Throws away what was on its way. Only who has just opened the book may ask: nobody else is at
    /// work there then.
    ///
    /// # Errors
    /// `Denied`, `Disk`.
    pub fn empty(&self) -> Result<(), StoreError> {
        let folder = self.0.0.join(FOLDER);
        match std::fs::remove_dir_all(&folder) {
            Err(why) if why.kind() != std::io::ErrorKind::NotFound => Err(self.0.io(&folder, why)),
            Ok(()) | Err(_) => Ok(()),
        }
    }
}

/// A folder that goes away with this value.
#[derive(Debug)]
pub(crate) struct TemporaryFolder(pub(crate) PathBuf);

impl Drop for TemporaryFolder {
    fn drop(&mut self) {
        // What stays all the same goes when the book is next opened.
        let _ = std::fs::remove_dir_all(&self.0);
    }
}
