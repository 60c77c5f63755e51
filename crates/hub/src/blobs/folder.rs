//! Photos as files: `blobs/COMPANY/ab/SHA256` once they are whole, `staging/COMPANY/SHA256/N` while
//! their parts come. A file is on the disk before its row in the database; the row is the truth.

use super::{Blobs, JoinResult, missing, older};
use crate::rows::Photo;
use crate::rows::sqlite::sync_dir;
use sha2::{Digest, Sha256};
use std::collections::BTreeSet;
use std::fs::{File, OpenOptions};
use std::io::{self, ErrorKind, Read, Seek, SeekFrom, Write};
use std::path::{Path, PathBuf};
use std::time::SystemTime;
use uuid::Uuid;

/// The folders of photos.
#[derive(Clone, Debug)]
pub(crate) struct Folder {
    dir: PathBuf,
}

impl Folder {
    pub(crate) fn new(dir: &Path) -> Folder {
        Folder {
            dir: dir.to_path_buf(),
        }
    }

    /// Where a photo lies.
    pub(crate) fn file(&self, company: i64, sha256: &str) -> PathBuf {
        self.folder(company, sha256).join(sha256)
    }

    fn folder(&self, company: i64, sha256: &str) -> PathBuf {
        let blobs = self.dir.join("blobs").join(company.to_string());
        blobs.join(sha256.get(..2).unwrap_or(sha256))
    }

    fn staged(&self, company: i64, sha256: &str) -> PathBuf {
        let staging = self.dir.join("staging").join(company.to_string());
        staging.join(sha256)
    }
}

impl Blobs for Folder {
    /// Whether its file is there with its size: one whose file is gone is to be sent again.
    fn is_kept(&self, photo: &Photo) -> bool {
        std::fs::metadata(self.file(photo.company, &photo.sha256))
            .is_ok_and(|file| file.len() == photo.size)
    }

    /// When this returns, file and name are on the disk.
    fn put(&self, company: i64, sha256: &str, bytes: &[u8]) -> io::Result<()> {
        let folder = self.folder(company, sha256);
        make(&self.dir, &folder)?;
        write_whole(&folder, sha256, bytes)
    }

    fn put_part(&self, company: i64, sha256: &str, part: u64, bytes: &[u8]) -> io::Result<bool> {
        let folder = self.staged(company, sha256);
        make(&self.dir, &folder)?;
        let name = part.to_string();
        let first = !folder.join(&name).exists();
        write_whole(&folder, &name, bytes)?;
        Ok(first)
    }

    fn parts(&self, company: i64, sha256: &str) -> io::Result<BTreeSet<u64>> {
        let files = match std::fs::read_dir(self.staged(company, sha256)) {
            Err(why) if why.kind() == ErrorKind::NotFound => return Ok(BTreeSet::new()),
            files => files?,
        };
        let mut parts = BTreeSet::new();
        for file in files {
            if let Ok(part) = file?.file_name().to_string_lossy().parse() {
                parts.insert(part);
            }
        }
        Ok(parts)
    }

    fn join(&self, photo: &Photo) -> io::Result<JoinResult> {
        let Photo {
            company,
            ref sha256,
            size,
        } = *photo;
        let missing = missing(size, &self.parts(company, sha256)?);
        if !missing.is_empty() {
            return Ok(JoinResult::Missing(missing));
        }
        let parts = size.div_ceil(crate::limits::PART_BYTES as u64);
        let (folder, staged) = (self.folder(company, sha256), self.staged(company, sha256));
        make(&self.dir, &folder)?;
        let arriving = folder.join(format!("arriving-{}", Uuid::new_v4()));
        let mut file = create(&arriving)?;
        let result = (|| {
            let (mut hash, mut length) = (Sha256::new(), 0);
            for part in 0..parts {
                let mut from = File::open(staged.join(part.to_string()))?;
                length += copy(&mut from, &mut file, &mut hash)?;
            }
            if length != size || crate::hex(&hash.finalize()) != *sha256 {
                return Ok(JoinResult::OtherBytes);
            }
            file.sync_all()?;
            std::fs::rename(&arriving, folder.join(sha256))?;
            sync_dir(&folder)?;
            Ok(JoinResult::Whole)
        })();
        if !matches!(result, Ok(JoinResult::Whole)) {
            // What stays is swept later.
            let _ = std::fs::remove_file(&arriving);
        }
        result
    }

    fn clear(&self, company: i64, sha256: &str) {
        // What stays is swept later.
        let _ = std::fs::remove_dir_all(self.staged(company, sha256));
    }

    fn read(&self, photo: &Photo, from: u64, to: u64) -> io::Result<Box<dyn Read + Send>> {
        let mut file = File::open(self.file(photo.company, &photo.sha256))?;
        file.seek(SeekFrom::Start(from))?;
        Ok(Box::new(file.take(to.saturating_sub(from))))
    }

    fn sweep(&self, now: SystemTime) -> io::Result<()> {
        for photo in folders(&self.dir.join("staging"), 2)? {
            if newest(&photo)?.is_some_and(|newest| older(newest, now)) {
                std::fs::remove_dir_all(&photo)?;
            }
        }
        for folder in folders(&self.dir.join("blobs"), 2)? {
            for file in std::fs::read_dir(folder)? {
                let file = file?;
                let arriving = file.file_name().to_string_lossy().starts_with("arriving-");
                if arriving && older(file.metadata()?.modified()?, now) {
                    std::fs::remove_file(file.path())?;
                }
            }
        }
        Ok(())
    }
}

/// The folders `depth` levels below one.
fn folders(top: &Path, depth: usize) -> io::Result<Vec<PathBuf>> {
    let mut level = vec![top.to_path_buf()];
    for _ in 0..depth {
        let mut next = Vec::new();
        for folder in level {
            let files = match std::fs::read_dir(&folder) {
                Err(why) if why.kind() == ErrorKind::NotFound => continue,
                files => files?,
            };
            for file in files {
                let path = file?.path();
                if path.is_dir() {
                    next.push(path);
                }
            }
        }
        level = next;
    }
    Ok(level)
}

/// When something in a folder changed last.
fn newest(folder: &Path) -> io::Result<Option<SystemTime>> {
    let mut newest = None;
    for file in std::fs::read_dir(folder)? {
        newest = newest.max(Some(file?.metadata()?.modified()?));
    }
    Ok(match newest {
        None => Some(std::fs::metadata(folder)?.modified()?),
        some => some,
    })
}

/// Makes a folder and the names of it and those above durable, up to `top`.
pub(crate) fn make(top: &Path, folder: &Path) -> io::Result<()> {
    if folder.is_dir() {
        return Ok(());
    }
    std::fs::create_dir_all(folder)?;
    let mut up = folder.parent();
    while let Some(dir) = up {
        sync_dir(dir)?;
        up = if dir == top { None } else { dir.parent() };
    }
    Ok(())
}

fn create(path: &Path) -> io::Result<File> {
    OpenOptions::new().write(true).create_new(true).open(path)
}

/// A file that is whole or not there: written beside, then renamed.
fn write_whole(folder: &Path, name: &str, bytes: &[u8]) -> io::Result<()> {
    let arriving = folder.join(format!("arriving-{}", Uuid::new_v4()));
    let written = create(&arriving)
        .and_then(|mut file| {
            file.write_all(bytes)?;
            file.sync_all()
        })
        .and_then(|()| std::fs::rename(&arriving, folder.join(name)))
        .and_then(|()| sync_dir(folder));
    if written.is_err() {
        // The first failure is the one to tell; what stays is swept later.
        let _ = std::fs::remove_file(&arriving);
    }
    written
}

/// Copies to the end and takes the hash on the way.
pub(crate) fn copy(
    from: &mut impl Read,
    to: &mut impl Write,
    hash: &mut Sha256,
) -> io::Result<u64> {
    let mut buffer = vec![0; 256 << 10];
    let mut length = 0;
    loop {
        let read = match from.read(&mut buffer) {
            Ok(0) => return Ok(length),
            Ok(read) => read,
            Err(why) if why.kind() == ErrorKind::Interrupted => continue,
            Err(why) => return Err(why),
        };
        hash.update(&buffer[..read]);
        to.write_all(&buffer[..read])?;
        length += read as u64;
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::blobs::STAGED_FOR;
    use std::fs::FileTimes;

    #[test]
    fn parts_left_for_a_week_are_swept_and_whole_photos_are_not() {
        let dir = tempfile::tempdir().unwrap();
        let blobs = Folder::new(dir.path());
        let (left, coming, whole) = ("a".repeat(64), "b".repeat(64), "c".repeat(64));
        for sha256 in [&left, &coming] {
            blobs.put_part(1, sha256, 0, b"part").unwrap();
        }
        blobs.put(1, &whole, b"photo").unwrap();
        let now = SystemTime::now();
        let long_ago = FileTimes::new().set_modified(now - STAGED_FOR * 2);
        for file in [blobs.staged(1, &left).join("0"), blobs.file(1, &whole)] {
            OpenOptions::new()
                .write(true)
                .open(file)
                .unwrap()
                .set_times(long_ago)
                .unwrap();
        }
        blobs.sweep(now).unwrap();
        assert!(blobs.parts(1, &left).unwrap().is_empty());
        assert_eq!(blobs.parts(1, &coming).unwrap(), BTreeSet::from([0]));
        let photo = Photo {
            company: 1,
            sha256: whole,
            size: 5,
        };
        assert!(blobs.is_kept(&photo));
    }
}
