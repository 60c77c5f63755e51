//! A whole field book in one file: backup, proof, restore.
//!
//! The file is a line `eavebook-book-backup/1`, then for each member a line of JSON
//! `{"name","size"}` and its bytes, then a line `sha256 H`, where H is the SHA-256 of all before that
//! line. Members: `book.sqlite`, as a copy that holds together, then `photos/SHA256` and
//! `packets/NAME`. The pairing with a hub is not in it: a backup lets nobody in.

use crate::connect::FILE;
use crate::error::StoreFolder;
use crate::{Store, StoreError, photos, sync_dir};
use rusqlite::backup::NO_PROGRESS;
use rusqlite::{Connection, OpenFlags};
use serde::{Deserialize, Serialize};
use sha2::{Digest, Sha256};
use std::fs::{File, OpenOptions};
use std::io::{self, BufRead, BufReader, BufWriter, Read, Seek, Write};
use std::path::{Path, PathBuf};
use uuid::Uuid;

const FIRST_LINE: &[u8] = b"eavebook-book-backup/1\n";
/// `sha256 `, 64 digits, the end of the line.
const LAST_LINE: u64 = 72;
/// Longest line of a member.
const LINE: u64 = 1024;

/// What a backup holds.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct BackupCounts {
    /// Entries of all jobs.
    pub entries: u64,
    /// Photos.
    pub photos: u64,
    /// Packets.
    pub packets: u64,
    /// Photos that the book knows and that are not on its disk, so not in the backup either.
    pub lacking: u64,
}

/// Why there is no backup, or none that can be restored.
#[derive(Debug, thiserror::Error)]
pub enum BackupError {
    /// There is no book.
    #[error("there is no field book in {0}: name the folder that holds book.sqlite")]
    NoBook(String),
    /// Something lies where the backup would.
    #[error("{0} is there already: name a new file, so that no backup is written over")]
    Exists(String),
    /// The backup is not whole.
    #[error("{file} is no whole backup ({what}): nothing was restored; take another copy of it")]
    Damaged {
        /// The file.
        file: String,
        /// What was found.
        what: String,
    },
    /// The folder is in use.
    #[error("{0} is not empty: name a new folder, so that no book is written over")]
    NotEmpty(String),
    /// The book.
    #[error(transparent)]
    Store(#[from] StoreError),
}

#[derive(Deserialize, Serialize)]
struct Member {
    name: String,
    size: u64,
}

/// Copies the book of a folder into one new file; it may be open in another program meanwhile.
/// Every photo is proved on the way.
///
/// # Errors
/// `NoBook`, `There`, `Damaged` for a photo that is not what it was, `Store`: there is no file then.
pub fn backup(dir: &Path, file: &Path) -> Result<BackupCounts, BackupError> {
    if file.exists() {
        return Err(BackupError::Exists(file.display().to_string()));
    }
    if !dir.join(FILE).is_file() {
        return Err(BackupError::NoBook(dir.display().to_string()));
    }
    let sibling = |more: &str| {
        let mut name = file.as_os_str().to_owned();
        name.push(more);
        PathBuf::from(name)
    };
    let (snapshot, arriving) = (sibling(".snapshot"), sibling(".arriving"));
    let made = write(dir, &snapshot, &arriving).and_then(|held| {
        let root = StoreFolder(file.to_path_buf());
        // A link, not a rename: it does not write over a file that came meanwhile.
        std::fs::hard_link(&arriving, file)
            .and_then(|()| sync_dir(parent(file)))
            .map_err(|why| root.io(file, why))?;
        Ok(held)
    });
    // Only names made here; what is not there need not go.
    let _ = std::fs::remove_file(&snapshot);
    let _ = std::fs::remove_file(&arriving);
    made
}

fn write(dir: &Path, snapshot: &Path, arriving: &Path) -> Result<BackupCounts, BackupError> {
    let root = StoreFolder(dir.to_path_buf());
    let flags = OpenFlags::SQLITE_OPEN_READ_WRITE | OpenFlags::SQLITE_OPEN_NO_MUTEX;
    let copy = || {
        let conn = Connection::open_with_flags(dir.join(FILE), flags)?;
        conn.backup("main", snapshot, NO_PROGRESS)?;
        let still = Connection::open(snapshot)?;
        let entries = still.query_row("SELECT count(*) FROM entries", [], |row| row.get(0))?;
        let mut query = still.prepare("SELECT sha256 FROM photos ORDER BY sha256")?;
        let photos = query.query_map([], |row| row.get(0))?;
        Ok((entries, photos.collect::<rusqlite::Result<Vec<String>>>()?))
    };
    let (entries, names) = copy().map_err(|why| root.sqlite(why))?;
    let packets = packets(dir).map_err(|why| root.io(dir, why))?;
    let io_error = |why| StoreFolder(arriving.to_path_buf()).io(arriving, why);
    let mut out = BackupWriter {
        to: BufWriter::new(File::create(arriving).map_err(io_error)?),
        hash: Sha256::new(),
    };
    out.write(FIRST_LINE).map_err(io_error)?;
    out.member(FILE, snapshot).map_err(io_error)?;
    let mut lacking = 0;
    for name in &names {
        let path = dir.join(photos::FOLDER).join(name);
        if !path.exists() {
            lacking += 1;
            continue;
        }
        let read = out.member(&format!("photos/{name}"), &path);
        let found = read.map_err(|why| StoreError::Disk {
            dir: path.display().to_string(),
            what: why.to_string(),
        })?;
        if found != *name {
            return Err(BackupError::Damaged {
                file: path.display().to_string(),
                what: "this photo is not what was kept".to_owned(),
            });
        }
    }
    for path in &packets {
        let name = path.file_name().unwrap_or_default().to_string_lossy();
        out.member(&format!("packets/{name}"), path)
            .map_err(io_error)?;
    }
    out.end().map_err(io_error)?;
    Ok(BackupCounts {
        entries,
        photos: names.len() as u64 - lacking,
        packets: packets.len() as u64,
        lacking,
    })
}

fn packets(dir: &Path) -> io::Result<Vec<PathBuf>> {
    let folder = dir.join("packets");
    if !folder.is_dir() {
        return Ok(Vec::new());
    }
    let mut packets = Vec::new();
    for file in std::fs::read_dir(folder)? {
        let path = file?.path();
        if path.extension().is_some_and(|end| end == "zip") {
            packets.push(path);
        }
    }
    packets.sort();
    Ok(packets)
}

struct BackupWriter {
    to: BufWriter<File>,
    hash: Sha256,
}

impl BackupWriter {
    fn write(&mut self, bytes: &[u8]) -> io::Result<()> {
        self.hash.update(bytes);
        self.to.write_all(bytes)
    }

    /// Writes a file; gives its SHA-256.
    fn member(&mut self, name: &str, path: &Path) -> io::Result<String> {
        let mut from = File::open(path)?;
        let size = from.metadata()?.len();
        let name = name.to_owned();
        let line = serde_json::to_string(&Member { name, size })?;
        self.write(line.as_bytes())?;
        self.write(b"\n")?;
        let (mut hash, mut left) = (Sha256::new(), size);
        let mut buffer = vec![0; 64 * 1024];
        while left > 0 {
            let most = buffer
                .len()
                .min(usize::try_from(left).unwrap_or(usize::MAX));
            let read = from.read(&mut buffer[..most])?;
            if read == 0 {
                return Err(io::Error::other("it became shorter while it was read"));
            }
            hash.update(&buffer[..read]);
            self.write(&buffer[..read])?;
            left -= read as u64;
        }
        Ok(hex(hash))
    }

    fn end(mut self) -> io::Result<()> {
        let last = format!("sha256 {}\n", hex(self.hash));
        self.to.write_all(last.as_bytes())?;
        let file = self
            .to
            .into_inner()
            .map_err(io::IntoInnerError::into_error)?;
        file.sync_all()
    }
}

fn hex(hash: Sha256) -> String {
    use std::fmt::Write;
    hash.finalize()
        .iter()
        .fold(String::with_capacity(64), |mut hex, byte| {
            let _ = write!(hex, "{byte:02x}");
            hex
        })
}

fn parent(path: &Path) -> &Path {
    let folder = path
        .parent()
        .filter(|parent| !parent.as_os_str().is_empty());
    folder.unwrap_or(Path::new("."))
}

/// Proves a backup: every byte is as it was written, and its book opens with every entry whole.
///
/// # Errors
/// `Damaged` with what was found, `Store`.
pub fn verify(file: &Path) -> Result<BackupCounts, BackupError> {
    let sibling = arriving(file, ".proof");
    let proved = prove(file).and_then(|()| build(file, &sibling));
    // Made here a moment ago, out of the backup.
    let _ = std::fs::remove_dir_all(&sibling);
    proved
}

/// Brings a book back into a new or empty folder, proved whole first. It begins another life of the
/// device's store, and is paired with no hub.
///
/// # Errors
/// `Damaged`, `NotEmpty`, `Store`: nothing was restored.
pub fn restore(file: &Path, dir: &Path) -> Result<BackupCounts, BackupError> {
    let root = StoreFolder(dir.to_path_buf());
    let io_error = |why| BackupError::Store(root.io(dir, why));
    let empty = match std::fs::read_dir(dir) {
        Err(why) if why.kind() == io::ErrorKind::NotFound => true,
        files => files.map_err(io_error)?.next().is_none(),
    };
    if !empty {
        return Err(BackupError::NotEmpty(dir.display().to_string()));
    }
    prove(file)?;
    // Built beside and renamed: a restore that is cut off leaves no half of a book.
    let sibling = arriving(dir, ".arriving");
    let restored = build(file, &sibling).and_then(|held| {
        if dir.exists() {
            std::fs::remove_dir(dir).map_err(io_error)?;
        }
        std::fs::rename(&sibling, dir)
            .and_then(|()| sync_dir(parent(dir)))
            .map_err(io_error)?;
        Ok(held)
    });
    if restored.is_err() {
        let _ = std::fs::remove_dir_all(&sibling);
    }
    restored
}

fn arriving(path: &Path, more: &str) -> PathBuf {
    let mut name = path.as_os_str().to_owned();
    name.push(format!(".{}{more}", std::process::id()));
    PathBuf::from(name)
}

fn damaged(file: &Path, what: impl ToString) -> BackupError {
    BackupError::Damaged {
        file: file.display().to_string(),
        what: what.to_string(),
    }
}

/// That the last line fits all before it.
pub(crate) fn prove(file: &Path) -> Result<(), BackupError> {
    let read = || -> io::Result<Option<bool>> {
        let mut from = File::open(file)?;
        let Some(length) = from.metadata()?.len().checked_sub(LAST_LINE) else {
            return Ok(None);
        };
        let mut hash = Sha256::new();
        let mut first = vec![0; FIRST_LINE.len()];
        if from.read_exact(&mut first).is_err() || first != FIRST_LINE {
            return Ok(None);
        }
        from.rewind()?;
        let mut left = (&mut from).take(length);
        let mut buffer = vec![0; 64 * 1024];
        loop {
            let read = left.read(&mut buffer)?;
            if read == 0 {
                break;
            }
            hash.update(&buffer[..read]);
        }
        let mut last = String::new();
        let readable = from.read_to_string(&mut last).is_ok();
        Ok(Some(readable && last == format!("sha256 {}\n", hex(hash))))
    };
    match read().map_err(|why| damaged(file, why))? {
        None => Err(damaged(file, "it does not begin as a backup does")),
        Some(false) => Err(damaged(file, "its bytes are not those that were written")),
        Some(true) => Ok(()),
    }
}

pub(crate) fn build(file: &Path, dir: &Path) -> Result<BackupCounts, BackupError> {
    unpack(file, dir)?;
    let mut book = Store::open(dir).map_err(|why| damaged(file, why))?;
    let mut held = BackupCounts::default();
    for job in book.books()? {
        let entries = book.entries(job)?;
        if let Some(what) = entries.damaged.first() {
            return Err(damaged(file, what));
        }
    }
    let count = |sql: &str| book.entries.query_row(sql, [], |row| row.get(0));
    held.entries = count("SELECT count(*) FROM entries").map_err(|why| book.sqlite(why))?;
    held.packets = packets(dir).map_err(|why| book.root.io(dir, why))?.len() as u64;
    let names: Vec<String> = {
        let read = || {
            let mut query = book.entries.prepare("SELECT sha256 FROM photos")?;
            let names = query.query_map([], |row| row.get(0))?;
            names.collect::<rusqlite::Result<Vec<String>>>()
        };
        read().map_err(|why| book.sqlite(why))?
    };
    for name in names {
        match book.photo(&name) {
            Ok(_) => held.photos += 1,
            Err(_) => held.lacking += 1,
        }
    }
    book.entries
        .execute("UPDATE hubs SET this = 0", [])
        .map_err(|why| book.sqlite(why))?;
    if book.device().is_some() {
        book.begin_life(Uuid::new_v4())?;
    }
    Ok(held)
}

fn unpack(file: &Path, dir: &Path) -> Result<(), BackupError> {
    let root = StoreFolder(dir.to_path_buf());
    let io_error = |why| BackupError::Store(root.io(dir, why));
    for folder in ["photos", "packets"] {
        std::fs::create_dir_all(dir.join(folder)).map_err(io_error)?;
    }
    let open = File::open(file).map_err(|why| damaged(file, why))?;
    let length = open
        .metadata()
        .map_err(io_error)?
        .len()
        .saturating_sub(LAST_LINE);
    let mut from = BufReader::new(open.take(length));
    let mut line = Vec::new();
    from.read_until(b'\n', &mut line).map_err(io_error)?;
    loop {
        line.clear();
        (&mut from)
            .take(LINE)
            .read_until(b'\n', &mut line)
            .map_err(io_error)?;
        if line.is_empty() {
            break;
        }
        let member: Member =
            serde_json::from_slice(&line).map_err(|_| damaged(file, "a member has no name"))?;
        let path = place(&member.name)
            .ok_or_else(|| damaged(file, format!("{} has no place in a book", member.name)))?;
        let path = dir.join(path);
        let mut to = OpenOptions::new()
            .write(true)
            .create_new(true)
            .open(&path)
            .map_err(io_error)?;
        let written = io::copy(&mut (&mut from).take(member.size), &mut to).map_err(io_error)?;
        to.sync_all().map_err(io_error)?;
        if written != member.size {
            return Err(damaged(file, format!("{} is cut off", member.name)));
        }
    }
    for folder in [dir.to_path_buf(), dir.join("photos"), dir.join("packets")] {
        sync_dir(&folder).map_err(io_error)?;
    }
    Ok(())
}

/// Where a member goes; `None` for a name that no backup has.
fn place(name: &str) -> Option<PathBuf> {
    if name == FILE {
        return Some(PathBuf::from(name));
    }
    let (folder, file) = name.split_once('/')?;
    let plain = |sign: char| sign.is_ascii_alphanumeric() || "-_.".contains(sign);
    let fits = !file.is_empty() && !file.starts_with('.') && file.chars().all(plain);
    (fits && ["photos", "packets"].contains(&folder)).then(|| PathBuf::from(folder).join(file))
}
