//! A file under its name whole, or not at all.

use crate::bag::Bag;
use crate::job::Photos;
use std::fs::{self, File};
use std::io::{self, BufWriter};
use std::path::{Path, PathBuf};

/// Why no packet was made.
#[derive(Debug, thiserror::Error)]
pub enum NotMade {
    /// The disk is full.
    #[error(
        "No room for the packet: {} needed in {}. Nothing was sent; the book is as it was. Free some space, then make it again.",
        megabytes(*needed),
        dir.display()
    )]
    NoRoom {
        /// Bytes, at most.
        needed: u64,
        /// Where.
        dir: PathBuf,
    },
    /// The folder cannot be written.
    #[error("The packet could not be written in {}: {cause}. Nothing was sent; the book is as it was. Choose another folder.", dir.display())]
    Disk {
        /// Where.
        dir: PathBuf,
        /// What the system said.
        cause: io::Error,
    },
}

fn megabytes(bytes: u64) -> String {
    format!("{} MB", bytes.div_ceil(1_000_000))
}

/// Puts a bag on the disk under a name: written beside it, told to the disk, then named.
/// The bytes of the file.
pub fn write_whole(bag: &Bag, photos: &dyn Photos, dir: &Path, name: &str) -> Result<u64, NotMade> {
    let part = dir.join(format!("{name}.part"));
    let made = fs::create_dir_all(dir).and_then(|()| write_part(bag, photos, &part));
    let named = made.and_then(|bytes| {
        fs::rename(&part, dir.join(name))?;
        // On some systems a folder cannot be opened to be synced; there the name follows by itself.
        #[cfg(unix)]
        File::open(dir)?.sync_all()?;
        Ok(bytes)
    });
    named.map_err(|cause| {
        // Gone or not, the first failure is the one to tell.
        let _ = fs::remove_file(&part);
        let dir = dir.to_owned();
        let full = [io::ErrorKind::StorageFull, io::ErrorKind::QuotaExceeded];
        if full.contains(&cause.kind()) {
            let needed = bag.octets();
            NotMade::NoRoom { needed, dir }
        } else {
            NotMade::Disk { dir, cause }
        }
    })
}

fn write_part(bag: &Bag, photos: &dyn Photos, part: &Path) -> io::Result<u64> {
    let mut file = File::create(part)?;
    bag.write(photos, BufWriter::new(&mut file))?;
    file.sync_all()?;
    Ok(file.metadata()?.len())
}
