//! `eavebook hub backup` and `restore`: a whole hub in one file.
//!
//! The file is a line `eavebook-hub-backup/1`, then for each member a line of JSON
//! `{"name","size","sha256"}` and its bytes, then a line `{"end":true,"members":N,"sha256":H}`, where
//! H is the SHA-256 of all before that line. Members: `hub.sqlite`, `tls.key`, and a photo each as
//! `blobs/COMPANY/SHA256`. It holds the key and hashes of tokens: keep it as one keeps a key.

use crate::blobs::Blobs;
use crate::blobs::folder::{Folder, copy, make};
use crate::error::HubError;
use crate::place::{self, HubHandle};
use crate::rows::Photo;
use crate::rows::sqlite::{self, FILE, connect_to, sync_dir};
use crate::{config, hex, is_sha256, tls};
use rusqlite::Connection;
use serde::{Deserialize, Serialize};
use sha2::{Digest, Sha256};
use std::fs::{File, OpenOptions};
use std::io::{self, BufRead, BufReader, BufWriter, Read, Write};
use std::path::{Path, PathBuf};
use uuid::Uuid;

const FIRST_LINE: &str = "eavebook-hub-backup/1\n";
/// Longest line of a member.
const LINE: u64 = 1024;

#[derive(Deserialize, Serialize)]
#[serde(untagged)]
enum Line {
    Member {
        name: String,
        size: u64,
        sha256: String,
    },
    End {
        end: bool,
        members: u64,
        sha256: String,
    },
}

/// What a backup holds.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct BackupCounts {
    /// Entries of all companies.
    pub entries: u64,
    /// Photos.
    pub photos: u64,
}

/// What was restored.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct RestoreReport {
    /// What came back.
    pub held: BackupCounts,
    /// The epoch that was drawn.
    pub epoch: String,
}

/// Copies a hub into one new file; the hub may run meanwhile. Every photo is proved on the way.
///
/// # Errors
/// `NoHub`, `BackupThere`, `PhotoDamaged`, `Database`, `File`: there is no file then.
pub fn backup(dir: &Path, file: &Path) -> Result<BackupCounts, HubError> {
    let handle = HubHandle::open(dir)?;
    let exists = || HubError::BackupThere {
        file: file.display().to_string(),
    };
    if file.exists() {
        return Err(exists());
    }
    let name = |more: &str| {
        let mut name = file.as_os_str().to_owned();
        name.push(format!(".{}.{more}", std::process::id()));
        PathBuf::from(name)
    };
    let (snapshot, arriving) = (name("snapshot"), name("arriving"));
    let copied = copy_whole(dir, &handle, &snapshot, &arriving).and_then(|copied| {
        // A link, not a rename: it does not write over a file that came meanwhile.
        std::fs::hard_link(&arriving, file).map_err(|why| {
            if why.kind() == io::ErrorKind::AlreadyExists {
                exists()
            } else {
                HubError::file(file)(why)
            }
        })?;
        let folder = file
            .parent()
            .filter(|folder| !folder.as_os_str().is_empty());
        sync_dir(folder.unwrap_or(Path::new("."))).map_err(HubError::file(file))?;
        Ok(copied)
    });
    // Only names made here; what is not there need not go.
    let _ = std::fs::remove_file(&snapshot);
    let _ = std::fs::remove_file(&arriving);
    copied
}

fn copy_whole(
    dir: &Path,
    handle: &HubHandle,
    snapshot: &Path,
    arriving: &Path,
) -> Result<BackupCounts, HubError> {
    handle.run(|rows| rows.copy_to(snapshot))?;
    let still = Connection::open(snapshot).map_err(HubError::database(dir))?;
    let photos = photos(&still).map_err(HubError::database(dir))?;
    let copied = count(&still, photos.len()).map_err(HubError::database(dir))?;
    drop(still);
    let at_file = |why| HubError::file(arriving)(why);
    let mut options = OpenOptions::new();
    options.write(true).create_new(true);
    #[cfg(unix)]
    {
        use std::os::unix::fs::OpenOptionsExt;
        options.mode(0o600);
    }
    let mut out = BackupWriter {
        to: BufWriter::new(options.open(arriving).map_err(at_file)?),
        hash: Sha256::new(),
        members: 0,
    };
    out.write(FIRST_LINE.as_bytes()).map_err(at_file)?;
    for (name, path) in [
        (FILE, snapshot.to_path_buf()),
        (tls::KEY, dir.join(tls::KEY)),
    ] {
        let (size, sha256) = measure(&path).map_err(HubError::file(&path))?;
        let mut from = File::open(&path).map_err(HubError::file(&path))?;
        let whole = out
            .member(name, size, &sha256, &mut from)
            .map_err(at_file)?;
        if !whole {
            return Err(HubError::System(format!(
                "{name} changed while it was copied"
            )));
        }
    }
    for photo in photos {
        let damaged = |what: String| HubError::PhotoDamaged {
            dir: dir.display().to_string(),
            sha256: photo.sha256.clone(),
            what,
        };
        let mut from = handle
            .blobs()
            .read(&photo, 0, photo.size + 1)
            .map_err(|why| damaged(why.to_string()))?;
        let name = format!("blobs/{}/{}", photo.company, photo.sha256);
        let whole = out
            .member(&name, photo.size, &photo.sha256, &mut from)
            .map_err(at_file)?;
        if !whole {
            return Err(damaged("its bytes are others".to_owned()));
        }
    }
    out.end().map_err(at_file)?;
    Ok(copied)
}

/// Every photo.
fn photos(conn: &Connection) -> rusqlite::Result<Vec<Photo>> {
    let sql = "SELECT company, sha256, size FROM blobs ORDER BY company, sha256";
    let mut query = conn.prepare(sql)?;
    let rows = query.query_map([], |row| {
        Ok(Photo {
            company: row.get(0)?,
            sha256: row.get(1)?,
            size: row.get(2)?,
        })
    })?;
    rows.collect()
}

fn count(conn: &Connection, photos: usize) -> rusqlite::Result<BackupCounts> {
    let entries = conn.query_row("SELECT count(*) FROM entries", [], |row| row.get(0))?;
    Ok(BackupCounts {
        entries,
        photos: photos as u64,
    })
}

fn measure(path: &Path) -> io::Result<(u64, String)> {
    let mut hash = Sha256::new();
    let size = copy(&mut File::open(path)?, &mut io::sink(), &mut hash)?;
    Ok((size, hex(&hash.finalize())))
}

/// A backup that is being written.
struct BackupWriter {
    to: BufWriter<File>,
    hash: Sha256,
    members: u64,
}

impl BackupWriter {
    fn write(&mut self, bytes: &[u8]) -> io::Result<()> {
        self.hash.update(bytes);
        self.to.write_all(bytes)
    }

    /// Copies a member. `false` where its bytes are not those that were told.
    fn member(
        &mut self,
        name: &str,
        size: u64,
        sha256: &str,
        from: &mut dyn Read,
    ) -> io::Result<bool> {
        let line = serde_json::to_string(&Line::Member {
            name: name.to_owned(),
            size,
            sha256: sha256.to_owned(),
        })?;
        self.write(line.as_bytes())?;
        self.write(b"\n")?;
        let mut member = Member {
            from: from.take(size + 1),
            hash: Sha256::new(),
        };
        let length = copy(&mut member, &mut self.to, &mut self.hash)?;
        self.members += 1;
        Ok(length == size && hex(&member.hash.finalize()) == sha256)
    }

    fn end(mut self) -> io::Result<()> {
        let line = serde_json::to_string(&Line::End {
            end: true,
            members: self.members,
            sha256: hex(&self.hash.finalize()),
        })?;
        self.to.write_all(line.as_bytes())?;
        self.to.write_all(b"\n")?;
        self.to
            .into_inner()
            .map_err(io::IntoInnerError::into_error)?
            .sync_all()
    }
}

/// Brings a hub back into a new folder, or where the `hub.toml` in it says, which may be another
/// pair of stores than the backup was made of. Tokens, key and entries are those of the backup; the epoch
/// is new, so that every device offers again what it has. Codes that were open are not brought back:
/// one that was spent since must stay so.
///
/// # Errors
/// `BackupDamaged` and `File`, `NotEmpty`: nothing was restored.
pub fn restore(file: &Path, dir: &Path) -> Result<RestoreReport, HubError> {
    // All of it is proved before the first byte is written.
    prove(file)?;
    let empty = match std::fs::read_dir(dir) {
        Err(why) if why.kind() == io::ErrorKind::NotFound => true,
        files => files
            .map_err(HubError::file(dir))?
            .flatten()
            .all(|file| file.file_name() == config::FILE),
    };
    if !empty {
        return Err(HubError::NotEmpty {
            dir: dir.display().to_string(),
        });
    }
    // Built beside and renamed: a restore that is cut off leaves no half of a hub.
    let mut sibling = dir.as_os_str().to_owned();
    sibling.push(format!(".{}.arriving", std::process::id()));
    let sibling = PathBuf::from(sibling);
    let restored = build(file, &sibling).and_then(|(restored, photos)| {
        let named = dir.join(config::FILE);
        if named.exists() {
            std::fs::copy(&named, sibling.join(config::FILE)).map_err(HubError::file(&named))?;
            place::spread(&sibling, &photos)?;
            std::fs::remove_file(&named).map_err(HubError::file(&named))?;
        }
        if dir.exists() {
            std::fs::remove_dir(dir).map_err(HubError::file(dir))?;
        }
        std::fs::rename(&sibling, dir).map_err(HubError::file(dir))?;
        let folder = dir.parent().filter(|folder| !folder.as_os_str().is_empty());
        sync_dir(folder.unwrap_or(Path::new("."))).map_err(HubError::file(dir))?;
        Ok(restored)
    });
    if restored.is_err() {
        // Made here a moment ago; what stays says by its name that it is no hub.
        let _ = std::fs::remove_dir_all(&sibling);
    }
    restored
}

fn damaged(file: &Path, what: impl Into<String>) -> HubError {
    HubError::BackupDamaged {
        file: file.display().to_string(),
        what: what.into(),
    }
}

fn prove(file: &Path) -> Result<(), HubError> {
    each(file, |_, from, size| {
        let read = io::copy(from, &mut io::sink())?;
        Ok(read == size)
    })
}

/// Walks over the members of a backup. `take` reads one to its end and says whether it was whole.
fn each(
    file: &Path,
    mut take: impl FnMut(&str, &mut dyn Read, u64) -> io::Result<bool>,
) -> Result<(), HubError> {
    let hub_error = |why| HubError::file(file)(why);
    let mut from = HashingReader {
        from: BufReader::new(File::open(file).map_err(hub_error)?),
        hash: Sha256::new(),
    };
    if from.line().map_err(hub_error)? != FIRST_LINE {
        return Err(damaged(file, "its first line is not that of a backup"));
    }
    let mut members = 0;
    loop {
        let before = from.hash.clone();
        let line = from.line().map_err(hub_error)?;
        let line: Line = serde_json::from_str(&line)
            .map_err(|_| damaged(file, format!("it breaks off after member {members}")))?;
        match line {
            Line::Member { name, size, sha256 } => {
                let mut member = Member {
                    from: (&mut from).take(size),
                    hash: Sha256::new(),
                };
                let whole = take(&name, &mut member, size).map_err(hub_error)?;
                if !whole || hex(&member.hash.finalize()) != sha256 {
                    return Err(damaged(file, format!("{name} is not as it was copied")));
                }
                members += 1;
            }
            Line::End {
                members: stated,
                sha256,
                ..
            } => {
                let more = from.from.fill_buf().map_err(hub_error)?;
                if !more.is_empty() || stated != members || hex(&before.finalize()) != sha256 {
                    return Err(damaged(file, "its end does not fit what stands before"));
                }
                return Ok(());
            }
        }
    }
}

struct HashingReader {
    from: BufReader<File>,
    hash: Sha256,
}

impl HashingReader {
    fn line(&mut self) -> io::Result<String> {
        let mut line = Vec::new();
        (&mut self.from).take(LINE).read_until(b'\n', &mut line)?;
        self.hash.update(&line);
        if !line.ends_with(b"\n") {
            // Cut off: no line of a backup is empty.
            line.clear();
        }
        Ok(String::from_utf8_lossy(&line).into_owned())
    }
}

impl Read for HashingReader {
    fn read(&mut self, buffer: &mut [u8]) -> io::Result<usize> {
        let read = self.from.read(buffer)?;
        self.hash.update(&buffer[..read]);
        Ok(read)
    }
}

struct Member<R> {
    from: R,
    hash: Sha256,
}

impl<R: Read> Read for Member<R> {
    fn read(&mut self, buffer: &mut [u8]) -> io::Result<usize> {
        let read = self.from.read(buffer)?;
        self.hash.update(&buffer[..read]);
        Ok(read)
    }
}

fn build(file: &Path, dir: &Path) -> Result<(RestoreReport, Vec<Photo>), HubError> {
    std::fs::create_dir_all(dir).map_err(HubError::file(dir))?;
    each(file, |name, from, size| {
        let path = match lies_at(name) {
            Some(place) => dir.join(place),
            None => return Ok(false),
        };
        if let Some(folder) = path.parent() {
            make(dir, folder)?;
        }
        if name == tls::KEY {
            let mut secret = Vec::new();
            from.read_to_end(&mut secret)?;
            tls::write_secret(&path, &secret).map_err(io::Error::other)?;
            return Ok(secret.len() as u64 == size);
        }
        let mut to = OpenOptions::new()
            .write(true)
            .create_new(true)
            .open(&path)?;
        let written = io::copy(from, &mut to)?;
        to.sync_all()?;
        sync_dir(path.parent().unwrap_or(dir))?;
        Ok(written == size)
    })?;
    let conn = connect_to(dir).map_err(|why| damaged(file, why.to_string()))?;
    sqlite::sound(dir, &conn).map_err(|why| damaged(file, why.to_string()))?;
    let hub_error = HubError::database(dir);
    let (photos, blobs) = (photos(&conn).map_err(&hub_error)?, Folder::new(dir));
    for photo in &photos {
        if !blobs.is_kept(photo) {
            return Err(damaged(
                file,
                format!("photo {} is not in it", photo.sha256),
            ));
        }
    }
    tls::pin(dir).map_err(|why| damaged(file, why.to_string()))?;
    let epoch = Uuid::new_v4().to_string();
    let change = conn.unchecked_transaction().map_err(&hub_error)?;
    change
        .execute("UPDATE hub SET epoch = ?1, url = NULL", [&epoch])
        .and_then(|_| change.execute("DELETE FROM codes", []))
        .map_err(&hub_error)?;
    change.commit().map_err(&hub_error)?;
    let held = count(&conn, photos.len()).map_err(&hub_error)?;
    conn.query_row("PRAGMA wal_checkpoint(TRUNCATE)", [], |_| Ok(()))
        .map_err(&hub_error)?;
    Ok((RestoreReport { held, epoch }, photos))
}

/// Where a member goes; `None` for a name that no backup has.
fn lies_at(name: &str) -> Option<PathBuf> {
    if name == FILE || name == tls::KEY {
        return Some(PathBuf::from(name));
    }
    let (company, sha256) = name.strip_prefix("blobs/")?.split_once('/')?;
    let company: i64 = company.parse().ok()?;
    is_sha256(sha256).then(|| Folder::new(Path::new("")).file(company, sha256))
}
