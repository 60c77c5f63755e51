//! Packets: whole files in a folder beside the book, each under its name only once it is on the
//! disk. The folder can be asked without the book, so that a long run never holds a booking up.

use crate::error::{At, StoreError};
use crate::{Book, sync_dir};
use std::fs::File;
use std::io::ErrorKind;
use std::path::{Path, PathBuf};
use std::time::SystemTime;

const FOLDER: &str = "packets";
/// The end of the name of a file that is still being written.
const PART: &str = ".part";

/// The folder of the packets.
#[derive(Clone, Debug)]
pub struct Packets {
    at: At,
    folder: PathBuf,
}

impl Book {
    /// Where packets are kept.
    pub fn packets(&self) -> Packets {
        Packets {
            folder: self.at.0.join(FOLDER),
            at: self.at.clone(),
        }
    }
}

impl Packets {
    /// The folder, made where it was not.
    ///
    /// # Errors
    /// `Full`, `Denied`, `Disk`.
    pub fn folder(&self) -> Result<&Path, StoreError> {
        let made = std::fs::create_dir_all(&self.folder).and_then(|()| sync_dir(&self.at.0));
        made.map_err(|why| self.at.io(&self.folder, why))?;
        Ok(&self.folder)
    }

    /// The file of the packet whose name ends on these signs of its id; none where it is not on
    /// this device.
    pub fn find(&self, id_begins: &str) -> Option<PathBuf> {
        let end = format!("-{id_begins}.zip");
        let there = std::fs::read_dir(&self.folder).ok()?.flatten();
        let mut found = there
            .map(|file| file.path())
            .filter(|path| name_of(path).is_some_and(|name| name.ends_with(&end)));
        found.next()
    }

    /// Puts a copy of a packet into another folder, whole or not at all, and tells where.
    ///
    /// # Errors
    /// `Full`, `Denied`, `Disk`, each of the other folder.
    pub fn copy_out(&self, packet: &Path, to: &Path) -> Result<PathBuf, StoreError> {
        let at = At(to.to_path_buf());
        let name = name_of(packet).unwrap_or_default();
        let (part, whole) = (to.join(format!("{name}{PART}")), to.join(name));
        let copy = || {
            std::fs::create_dir_all(to)?;
            let (mut from, mut copy) = (File::open(packet)?, File::create(&part)?);
            std::io::copy(&mut from, &mut copy)?;
            copy.sync_all()?;
            std::fs::rename(&part, &whole)?;
            sync_dir(to)
        };
        copy().map_err(|why| {
            // The first failure is the one to tell.
            let _ = std::fs::remove_file(&part);
            at.io(to, why)
        })?;
        Ok(whole)
    }

    /// Throws away what was only begun before a moment, and tells how many. A whole packet is never
    /// touched.
    ///
    /// # Errors
    /// `Denied`, `Disk`.
    pub fn sweep(&self, before: SystemTime) -> Result<usize, StoreError> {
        let sweep = || {
            let there = match std::fs::read_dir(&self.folder) {
                Err(why) if why.kind() == ErrorKind::NotFound => return Ok(0),
                there => there?,
            };
            let mut swept = 0;
            for file in there {
                let file = file?;
                let begun = file.file_name().to_string_lossy().ends_with(PART);
                if begun && file.metadata()?.modified()? < before {
                    std::fs::remove_file(file.path())?;
                    swept += 1;
                }
            }
            Ok(swept)
        };
        sweep().map_err(|why| self.at.io(&self.folder, why))
    }
}

fn name_of(path: &Path) -> Option<&str> {
    path.file_name().and_then(|name| name.to_str())
}
