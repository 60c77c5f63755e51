//! Packets: whole files in a folder beside the book, each under its name only once it is on the
//! disk. The folder can be asked without the book, so that a long run never holds a booking up.

use crate::error::{StoreError, StoreFolder};
use crate::{Store, sync_dir};
use std::collections::BTreeSet;
use std::fs::File;
use std::io::Read;
use std::path::{Path, PathBuf};

const FOLDER: &str = "packets";
/// The end of the name of a file that is still being written.
const PART: &str = ".part";

/// The folder of the packets.
#[derive(Clone, Debug)]
pub struct Packets {
    root: StoreFolder,
    folder: PathBuf,
}

impl Store {
    /// Where packets are kept.
    pub fn packets(&self) -> Packets {
        Packets {
            folder: self.root.0.join(FOLDER),
            root: self.root.clone(),
        }
    }
}

impl Packets {
    /// The folder, made where it was not.
    ///
    /// # Errors
    /// `Full`, `Denied`, `Disk`.
    pub fn folder(&self) -> Result<&Path, StoreError> {
        let made = std::fs::create_dir_all(&self.folder).and_then(|()| sync_dir(&self.root.0));
        made.map_err(|why| self.root.io(&self.folder, why))?;
        Ok(&self.folder)
    }

    /// The file of the packet whose name ends on these signs of its id; none where it is not on
    /// this device.
    pub fn find(&self, id_begins: &str) -> Option<PathBuf> {
        let end = format!("-{id_begins}.zip");
        let files = std::fs::read_dir(&self.folder).ok()?.flatten();
        let mut found = files
            .map(|file| file.path())
            .filter(|path| name_of(path).is_some_and(|name| name.ends_with(&end)));
        found.next()
    }

    /// Whether nothing was ever made.
    pub fn is_empty(&self) -> bool {
        std::fs::read_dir(&self.folder).map_or(true, |mut files| files.next().is_none())
    }

    /// Throws away what was only begun, and every whole packet but those of whose id the first
    /// signs are given. Only who has the book may ask: nobody else is at work there then.
    ///
    /// # Errors
    /// `Denied`, `Disk`.
    pub fn keep_only(&self, id_begins: &BTreeSet<String>) -> Result<(), StoreError> {
        let sweep = || {
            for file in std::fs::read_dir(&self.folder)? {
                let path = file?.path();
                let name = name_of(&path).unwrap_or_default();
                let id = name
                    .strip_suffix(".zip")
                    .and_then(|stem| stem.rsplit_once('-'));
                let nameless = id.is_some_and(|(_, id)| !id_begins.contains(id));
                if nameless || name.ends_with(PART) {
                    std::fs::remove_file(path)?;
                }
            }
            Ok(())
        };
        sweep().map_err(|why| self.root.io(&self.folder, why))
    }

    /// Puts a copy of a packet into another folder, whole or not at all, and tells where.
    ///
    /// # Errors
    /// `Full`, `Denied`, `Disk`, each of the other folder.
    pub fn copy_out(&self, packet: &Path, to: &Path) -> Result<PathBuf, StoreError> {
        let mut from = File::open(packet).map_err(|why| self.root.io(packet, why))?;
        put(name_of(packet).unwrap_or_default(), &mut from, to)
    }

    /// Puts bytes into another folder under a name, whole or not at all, and tells where.
    ///
    /// # Errors
    /// `Full`, `Denied`, `Disk`, each of the other folder.
    pub fn put_out(&self, name: &str, mut bytes: &[u8], to: &Path) -> Result<PathBuf, StoreError> {
        put(name, &mut bytes, to)
    }
}

fn put(name: &str, from: &mut dyn Read, to: &Path) -> Result<PathBuf, StoreError> {
    let (part, whole) = (to.join(format!("{name}{PART}")), to.join(name));
    let mut put = || {
        std::fs::create_dir_all(to)?;
        let mut file = File::create(&part)?;
        std::io::copy(from, &mut file)?;
        file.sync_all()?;
        std::fs::rename(&part, &whole)?;
        sync_dir(to)
    };
    put().map_err(|why| {
        // The first failure is the one to tell.
        let _ = std::fs::remove_file(&part);
        StoreFolder(to.to_path_buf()).io(to, why)
    })?;
    Ok(whole)
}

fn name_of(path: &Path) -> Option<&str> {
    path.file_name().and_then(|name| name.to_str())
}
