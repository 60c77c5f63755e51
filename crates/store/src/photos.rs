//! Photos: files named by their SHA-256, on the disk before anything refers to them.

use crate::error::{StoreError, StoreFolder};
use crate::{AppendStatus, Store, sync_dir};
use sha2::{Digest, Sha256};
use std::fs::{File, OpenOptions};
use std::io::{ErrorKind, Read, Write};
use std::path::{Path, PathBuf};
use std::time::SystemTime;

pub(crate) const FOLDER: &str = "photos";
pub(crate) const ARRIVING: &str = "arriving-";

/// A photo on the disk.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Photo {
    /// SHA-256 of its bytes, 64 hex digits: its name.
    pub sha256: String,
    /// Bytes.
    pub size: u64,
}

/// The folder of the photos, to be read while others book.
#[derive(Clone, Debug)]
pub struct Photos(StoreFolder);

impl Photos {
    /// Opens a photo to read.
    ///
    /// # Errors
    /// `NoPhoto` for a hash that is not there or is none.
    pub fn open(&self, sha256: &str) -> Result<File, StoreError> {
        self.named(sha256)?;
        File::open(self.0.0.join(FOLDER).join(sha256)).map_err(|_| self.none(sha256))
    }

    /// Bytes that are left for photos on the disk where they lie.
    ///
    /// # Errors
    /// Where the system does not say.
    pub fn free(&self) -> std::io::Result<u64> {
        fs4::available_space(&self.0.0)
    }

    /// That this can be the name of a photo.
    pub(crate) fn named(&self, sha256: &str) -> Result<(), StoreError> {
        let digit = |sign| matches!(sign, b'0'..=b'9' | b'a'..=b'f');
        if sha256.len() == 64 && sha256.bytes().all(digit) {
            Ok(())
        } else {
            Err(self.none(sha256))
        }
    }

    fn none(&self, sha256: &str) -> StoreError {
        StoreError::NoPhoto {
            dir: self.0.dir(),
            sha256: sha256
                .chars()
                .take(64)
                .filter(char::is_ascii_hexdigit)
                .collect(),
        }
    }
}

impl Store {
    /// Keeps a photo as it comes. When this returns its bytes and its name are on the disk, so an
    /// entry may refer to it. The same photo twice is one file.
    ///
    /// # Errors
    /// `Full`, `Denied`, `Disk`: nothing was kept.
    pub fn put_photo(&mut self, bytes: &mut dyn Read) -> Result<Photo, StoreError> {
        self.lay_photo(bytes).map(|(photo, _)| photo)
    }

    /// Keeps a photo as it comes; tells also whether its file was here.
    pub(crate) fn lay_photo(
        &mut self,
        bytes: &mut dyn Read,
    ) -> Result<(Photo, AppendStatus), StoreError> {
        let folder = self.root.0.join(FOLDER);
        let mut status = AppendStatus::New;
        let (mut file, arriving) = arriving(&self.root, &folder)?;
        let kept = write_and_hash(bytes, &mut file)
            .and_then(|photo| file.sync_all().map(|()| photo))
            .and_then(|photo| {
                let whole = folder.join(&photo.sha256);
                if whole.exists() {
                    status = AppendStatus::Known;
                }
                std::fs::rename(&arriving, whole)?;
                sync_dir(&folder)?;
                Ok(photo)
            });
        let photo = kept.map_err(|why| {
            // Gone or not, a leftover is swept later: the first failure is the one to tell.
            let _ = std::fs::remove_file(&arriving);
            self.root.io(&folder, why)
        })?;
        self.photo_is_kept(&photo)?;
        Ok((photo, status))
    }

    /// The row of a photo whose file is on the disk.
    pub(crate) fn photo_is_kept(&self, photo: &Photo) -> Result<(), StoreError> {
        self.entries
            .execute(
                "INSERT INTO photos (sha256, size, state) VALUES (?1, ?2, 'kept')
                 ON CONFLICT (sha256) DO NOTHING",
                (&photo.sha256, photo.size),
            )
            .map_err(|why| self.sqlite(why))?;
        Ok(())
    }

    /// Opens a photo to read.
    ///
    /// # Errors
    /// `NoPhoto` for a hash that is not there or is none.
    pub fn photo(&self, sha256: &str) -> Result<File, StoreError> {
        self.photos().open(sha256)
    }

    /// The photos, to be read without the book.
    pub fn photos(&self) -> Photos {
        Photos(self.root.clone())
    }

    /// Throws away what arrived only in part before a moment, and tells how many. A photo that
    /// was kept is never touched.
    ///
    /// # Errors
    /// `Denied`, `Disk`.
    pub fn sweep(&mut self, before: SystemTime) -> Result<usize, StoreError> {
        let folder = self.root.0.join(FOLDER);
        let sweep = || {
            let mut swept = 0;
            for file in std::fs::read_dir(&folder)? {
                let file = file?;
                let orphan = file.file_name().to_string_lossy().starts_with(ARRIVING);
                if orphan && file.metadata()?.modified()? < before {
                    std::fs::remove_file(file.path())?;
                    swept += 1;
                }
            }
            Ok(swept)
        };
        sweep().map_err(|why| self.root.io(&folder, why))
    }
}

/// Makes the folder of the photos.
pub(crate) fn make_folder(root: &StoreFolder) -> Result<(), StoreError> {
    let folder = root.0.join(FOLDER);
    std::fs::create_dir_all(&folder).map_err(|why| root.io(&folder, why))
}

/// A new file in the same folder, so that the rename stays on one disk.
fn arriving(root: &StoreFolder, folder: &Path) -> Result<(File, PathBuf), StoreError> {
    let mut number = 0_u32;
    loop {
        let path = folder.join(format!("{ARRIVING}{number}"));
        match OpenOptions::new().write(true).create_new(true).open(&path) {
            Ok(file) => return Ok((file, path)),
            Err(why) if why.kind() == ErrorKind::AlreadyExists && number < u32::MAX => number += 1,
            Err(why) => return Err(root.io(&path, why)),
        }
    }
}

pub(crate) fn write_and_hash(from: &mut dyn Read, to: &mut dyn Write) -> std::io::Result<Photo> {
    let mut hash = Sha256::new();
    let mut size = 0;
    let mut buffer = vec![0; 64 * 1024];
    loop {
        let read = match from.read(&mut buffer) {
            Ok(0) => break,
            Ok(read) => read,
            Err(why) if why.kind() == ErrorKind::Interrupted => continue,
            Err(why) => return Err(why),
        };
        hash.update(&buffer[..read]);
        to.write_all(&buffer[..read])?;
        size += read as u64;
    }
    let sha256 = hash
        .finalize()
        .iter()
        .map(|byte| format!("{byte:02x}"))
        .collect();
    Ok(Photo { sha256, size })
}
