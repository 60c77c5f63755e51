//! Photos that come from elsewhere in pieces: on the disk piece by piece, so that what was cut off
//! goes on, and a photo of the book only once the whole is proved.

use crate::photos::{ARRIVING, FOLDER, write_and_hash};
use crate::{Store, StoreError, sync_dir};
use std::fs::{File, OpenOptions};
use std::io::{Write, sink};
use std::path::PathBuf;

/// How far a photo is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum PhotoProgress {
    /// More is to come.
    InPart,
    /// It is whole and kept.
    Kept,
    /// What came is not the photo of this name, and is thrown away.
    OtherBytes,
}

impl Store {
    fn arriving(&self, sha256: &str) -> PathBuf {
        let name = format!("{ARRIVING}{sha256}");
        self.root.0.join(FOLDER).join(name)
    }

    /// Bytes of a photo that lie here, from its first on, where it is not whole yet.
    pub fn photo_bytes_here(&self, sha256: &str) -> u64 {
        std::fs::metadata(self.arriving(sha256)).map_or(0, |file| file.len())
    }

    /// Lays a piece of a photo behind those that came before it; `whole`: bytes of all of it. The
    /// last piece proves it against its name (SHA-256, 64 hex digits).
    ///
    /// # Errors
    /// `NoPhoto` for what is no such name; `Full`, `Denied`, `Disk`: what came before is still here.
    pub fn add_photo_piece(
        &mut self,
        sha256: &str,
        piece: &[u8],
        whole: u64,
    ) -> Result<PhotoProgress, StoreError> {
        self.photos().named(sha256)?;
        let path = self.arriving(sha256);
        let lay = || {
            let mut file = OpenOptions::new().create(true).append(true).open(&path)?;
            file.write_all(piece)?;
            let size = file.metadata()?.len();
            if size == whole {
                file.sync_all()?;
            }
            Ok(size)
        };
        let size: u64 = lay().map_err(|why| self.root.io(&path, why))?;
        if size < whole {
            return Ok(PhotoProgress::InPart);
        }
        let proved = File::open(&path)
            .and_then(|mut file| write_and_hash(&mut file, &mut sink()))
            .map_err(|why| self.root.io(&path, why))?;
        if size > whole || proved.sha256 != sha256 {
            std::fs::remove_file(&path).map_err(|why| self.root.io(&path, why))?;
            return Ok(PhotoProgress::OtherBytes);
        }
        let folder = self.root.0.join(FOLDER);
        std::fs::rename(&path, folder.join(sha256))
            .and_then(|()| sync_dir(&folder))
            .map_err(|why| self.root.io(&path, why))?;
        self.photo_is_kept(&proved)?;
        Ok(PhotoProgress::Kept)
    }
}
