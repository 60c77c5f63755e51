//! Proving a packet that came from outside: first its list of files, then every byte.

use crate::bag::{BAG_INFO_TXT, BAGIT, BAGIT_TXT, MANIFEST_TXT, TAG_MANIFEST_TXT};
use crate::contents::{FORMAT, FileRow};
use eavebook_core::book::entry::sha256_hex;
use serde::Deserialize;
use sha2::{Digest, Sha256};
use std::collections::{BTreeMap, BTreeSet};
use std::fs::File;
use std::io::{self, BufReader, Read, Seek};
use std::path::Path;
use uuid::Uuid;
use zip::ZipArchive;
use zip::result::ZipError;

/// A packet larger than this unpacked is not opened.
pub const LARGEST: u64 = 2_000_000_000;
/// A tag file or a list larger than this is none.
const LARGEST_LIST: u64 = 32_000_000;
/// More files than this are no packet.
const MOST_FILES: usize = 20_000;

/// A packet that is what it says.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Proved {
    /// Its id: SHA-256 of its manifest.
    pub id: String,
    /// The job.
    pub job: Uuid,
    /// Which packet of that job for that reader.
    pub version: u32,
    /// For whom, in the word of the packet: a later program may make editions unknown here.
    pub edition: String,
    /// When it was frozen.
    pub frozen_at: String,
    /// Its files, as it lists them.
    pub files: Vec<FileRow>,
    /// Their bytes together.
    pub bytes: u64,
}

/// Why a file is no packet, or no whole one.
#[derive(Debug, thiserror::Error)]
pub enum VerifyError {
    /// It cannot be read.
    #[error("the packet cannot be read ({0}): copy it again")]
    Unreadable(#[from] io::Error),
    /// It is no zip, or a cut one.
    #[error("this is no packet, or one cut short ({0}): get it again whole")]
    NoZip(ZipError),
    /// A path that leads out of its folder, or could.
    #[error("the packet holds the path \"{0}\", which leads out of its folder: do not open it")]
    Path(String),
    /// A link.
    #[error("the packet holds a link, \"{0}\": do not open it")]
    Link(String),
    /// Too large.
    #[error("the packet is over 2 GB unpacked: do not open it")]
    TooLarge,
    /// Too many files.
    #[error("the packet holds more than {MOST_FILES} files: do not open it")]
    TooMany,
    /// A path twice.
    #[error("the packet holds \"{0}\" twice: get it again from whoever made it")]
    Twice(String),
    /// A part that every packet has.
    #[error("the packet lacks {0}: get it again whole")]
    Lacks(String),
    /// Bytes that are not those that were packed.
    #[error("{0} is not as it was packed: get the packet again")]
    Altered(String),
    /// A file that the list does not name.
    #[error(
        "{0} is in the packet and not in its list: somebody put it there; get the packet again"
    )]
    Unlisted(String),
    /// A list that does not read.
    #[error("{file} does not read ({why}): get the packet again")]
    List {
        /// Which.
        file: &'static str,
        /// Why.
        why: String,
    },
    /// A format of another program or a later version.
    #[error("the packet has the format \"{0}\": open it with a newer eavebook")]
    Format(String),
    /// Whole, but made for a reader who is not to have the entries.
    #[error("the packet is for \"{0}\" and holds no entries: bring the firm's packet of that job")]
    NoBook(String),
}

impl From<ZipError> for VerifyError {
    fn from(why: ZipError) -> VerifyError {
        VerifyError::NoZip(why)
    }
}

/// What `packet.json` must say, whatever else it says.
#[derive(Deserialize)]
struct List {
    format: String,
    job: Uuid,
    version: u32,
    edition: String,
    frozen_at: String,
    files: Vec<serde_json::Value>,
}

/// Proves a packet: nothing in it leads out of its folder, all that was packed is there and as it
/// was, and nothing else is.
///
/// # Errors
/// The first thing that is wrong, in a sentence.
pub fn check(path: &Path) -> Result<Proved, VerifyError> {
    check_reader(BufReader::new(File::open(path)?))
}

/// [`check`] of a packet that is read from anywhere.
///
/// # Errors
/// As [`check`].
pub fn check_reader(packet: impl Read + Seek) -> Result<Proved, VerifyError> {
    let mut zip = ZipArchive::new(packet)?;
    let places = listed(&mut zip)?;
    let mut left = LARGEST;
    let mut tags: BTreeMap<String, Vec<u8>> = BTreeMap::new();
    let mut hashes: BTreeMap<String, String> = BTreeMap::new();
    let mut bytes = 0;
    for (path, place) in &places {
        let file = zip.by_index(*place)?;
        let is_payload = path.starts_with("data/");
        if is_payload && path != LIST_PATH {
            let (hash, size) = hash_of(file, left)?;
            left -= size;
            bytes += size;
            hashes.insert(path.clone(), hash);
        } else {
            let mut content = Vec::new();
            file.take(LARGEST_LIST + 1).read_to_end(&mut content)?;
            let size = content.len() as u64;
            if size > LARGEST_LIST || size > left {
                return Err(VerifyError::TooLarge);
            }
            left -= size;
            if is_payload {
                bytes += size;
            }
            hashes.insert(path.clone(), sha256_hex(&content));
            tags.insert(path.clone(), content);
        }
    }
    let text = |name: &'static str| -> Result<&str, VerifyError> {
        let content = tags
            .get(name)
            .ok_or_else(|| VerifyError::Lacks(name.to_owned()))?;
        std::str::from_utf8(content).map_err(|why| VerifyError::List {
            file: name,
            why: why.to_string(),
        })
    };
    if text(BAGIT_TXT)? != BAGIT {
        return Err(VerifyError::Altered(BAGIT_TXT.to_owned()));
    }
    let manifest = text(MANIFEST_TXT)?;
    let tag_manifest = text(TAG_MANIFEST_TXT)?;
    let tag_hashes = manifest_of(TAG_MANIFEST_TXT, tag_manifest)?;
    for name in [BAGIT_TXT, BAG_INFO_TXT, MANIFEST_TXT] {
        if !tag_hashes.contains_key(name) {
            return Err(VerifyError::Lacks(format!("{name} in {TAG_MANIFEST_TXT}")));
        }
    }
    let packed = manifest_of(MANIFEST_TXT, manifest)?;
    for (path, sha256) in packed.iter().chain(&tag_hashes) {
        match hashes.get(path) {
            None => return Err(VerifyError::Lacks(path.clone())),
            Some(found) if found != sha256 => return Err(VerifyError::Altered(path.clone())),
            Some(_) => {}
        }
    }
    let strange = places.keys().find(|path| {
        !packed.contains_key(*path) && !tag_hashes.contains_key(*path) && *path != TAG_MANIFEST_TXT
    });
    if let Some(path) = strange {
        return Err(VerifyError::Unlisted(path.clone()));
    }
    oxum(text(BAG_INFO_TXT)?, bytes, packed.len())?;
    let list = packet_list(text(LIST_PATH)?, &packed)?;
    Ok(Proved {
        id: sha256_hex(manifest.as_bytes()),
        bytes,
        ..list
    })
}

/// Where the list of a packet lies.
pub(crate) const LIST_PATH: &str = "data/packet.json";

/// Paths within the one folder of the packet, to their places in the zip. Judged by the zip's own
/// directory, before a byte of any file is unpacked.
fn listed<R: Read + Seek>(zip: &mut ZipArchive<R>) -> Result<BTreeMap<String, usize>, VerifyError> {
    if zip.len() > MOST_FILES {
        return Err(VerifyError::TooMany);
    }
    let mut places = BTreeMap::new();
    let mut folder: Option<String> = None;
    let mut declared: u64 = 0;
    for place in 0..zip.len() {
        let file = zip.by_index_raw(place)?;
        let name = file.name()?.into_owned();
        if file.is_symlink() {
            return Err(VerifyError::Link(quoted(&name)));
        }
        let within = within(&name).ok_or_else(|| VerifyError::Path(quoted(&name)))?;
        let (top, path) = within;
        if folder.get_or_insert_with(|| top.to_owned()) != top {
            return Err(VerifyError::Path(quoted(&name)));
        }
        declared = declared.saturating_add(file.size());
        if declared > LARGEST {
            return Err(VerifyError::TooLarge);
        }
        if places.insert(path.to_owned(), place).is_some() {
            return Err(VerifyError::Twice(quoted(&name)));
        }
    }
    Ok(places)
}

/// The folder and the path within it; none for a path that no packet has.
fn within(name: &str) -> Option<(&str, &str)> {
    let (top, path) = name.split_once('/')?;
    let plain = |part: &str| {
        !part.is_empty()
            && part != "."
            && part != ".."
            && !part.contains(['\\', ':', '\0'])
            && !part.chars().any(char::is_control)
    };
    (plain(top) && path.split('/').all(plain)).then_some((top, path))
}

/// A name in a sentence: short, and without signs that move a cursor.
fn quoted(name: &str) -> String {
    let name: String = name.chars().take(80).collect();
    name.escape_debug().collect()
}

fn hash_of(mut file: impl Read, left: u64) -> Result<(String, u64), VerifyError> {
    let mut hash = Sha256::new();
    let mut size: u64 = 0;
    let mut page = vec![0; 1 << 16];
    loop {
        let read = file.read(&mut page)?;
        if read == 0 {
            break;
        }
        size += read as u64;
        if size > left {
            return Err(VerifyError::TooLarge);
        }
        hash.update(&page[..read]);
    }
    use std::fmt::Write;
    let hex = hash
        .finalize()
        .iter()
        .fold(String::with_capacity(64), |mut hex, byte| {
            let _ = write!(hex, "{byte:02x}");
            hex
        });
    Ok((hex, size))
}

fn manifest_of(file: &'static str, text: &str) -> Result<BTreeMap<String, String>, VerifyError> {
    let mut packed = BTreeMap::new();
    for line in text.lines() {
        let row = line.split_once("  ").filter(|(hash, path)| {
            hash.len() == 64 && hash.bytes().all(|b| b.is_ascii_hexdigit()) && !path.is_empty()
        });
        let Some((hash, path)) = row else {
            let why = format!("\"{}\" is no hash and path", quoted(line));
            return Err(VerifyError::List { file, why });
        };
        if packed
            .insert(path.to_owned(), hash.to_lowercase())
            .is_some()
        {
            return Err(VerifyError::Twice(quoted(path)));
        }
    }
    Ok(packed)
}

fn oxum(info: &str, bytes: u64, files: usize) -> Result<(), VerifyError> {
    let said = info
        .lines()
        .find_map(|line| line.strip_prefix("Payload-Oxum: "));
    match said {
        Some(said) if said == format!("{bytes}.{files}") => Ok(()),
        Some(_) => Err(VerifyError::Altered(BAG_INFO_TXT.to_owned())),
        None => Err(VerifyError::Lacks(format!(
            "Payload-Oxum in {BAG_INFO_TXT}"
        ))),
    }
}

/// What `packet.json` says, once it is seen to list every file of the bag once and no other.
fn packet_list(text: &str, packed: &BTreeMap<String, String>) -> Result<Proved, VerifyError> {
    let file = "packet.json";
    let bad = |why: String| VerifyError::List { file, why };
    let list: List = serde_json::from_str(text).map_err(|why| bad(why.to_string()))?;
    if list.format != FORMAT {
        return Err(VerifyError::Format(quoted(&list.format)));
    }
    let mut named = BTreeSet::new();
    let mut files = Vec::new();
    for row in list.files {
        let path = row.get("path").and_then(|path| path.as_str());
        let path = path.ok_or_else(|| bad("a file without a path".to_owned()))?;
        if !packed.contains_key(path) {
            return Err(VerifyError::Lacks(quoted(path)));
        }
        if !named.insert(path.to_owned()) {
            return Err(VerifyError::Twice(quoted(path)));
        }
        // A role of a later version is kept in the file and left out here.
        files.extend(serde_json::from_value::<FileRow>(row).ok());
    }
    if let Some(path) = packed.keys().find(|path| !named.contains(*path)) {
        return Err(VerifyError::Unlisted(path.clone()));
    }
    Ok(Proved {
        id: String::new(),
        job: list.job,
        version: list.version,
        edition: list.edition,
        frozen_at: list.frozen_at,
        files,
        bytes: 0,
    })
}
