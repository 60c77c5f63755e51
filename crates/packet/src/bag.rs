//! The bag (BagIt 1.0, RFC 8493) and the zip around it.
//!
//! The bag makes a packet provable without this program: `sha256sum -c manifest-sha256.txt` in the
//! unpacked folder. The zip is written so that the same files make the same bytes: paths in the
//! order of their bytes, one date, one mode, no folder entries.

use crate::contents::{Bytes, PacketFile};
use crate::job::Photos;
use eavebook_core::book::entry::sha256_hex;
use std::collections::BTreeMap;
use std::fmt::Write as _;
use std::io::{self, Seek, Write};
use uuid::Uuid;
use zip::write::SimpleFileOptions;
use zip::{CompressionMethod, DateTime, ZipWriter};

/// The first file of a bag.
pub const BAGIT: &str = "BagIt-Version: 1.0\nTag-File-Character-Encoding: UTF-8\n";
/// The names of the tag files.
pub const BAGIT_TXT: &str = "bagit.txt";
pub const BAG_INFO_TXT: &str = "bag-info.txt";
pub const MANIFEST_TXT: &str = "manifest-sha256.txt";
pub const TAG_MANIFEST_TXT: &str = "tagmanifest-sha256.txt";

/// A bag ready to be written.
pub struct Bag {
    /// Its folder.
    pub slug: String,
    /// Path from that folder to content.
    files: BTreeMap<String, Bytes>,
    /// SHA-256 of its manifest: the id of the packet.
    pub id: String,
}

impl Bag {
    /// Packs files under a folder.
    pub fn new(slug: &str, job: Uuid, payload: Vec<PacketFile>) -> Bag {
        let mut files: BTreeMap<String, Bytes> = payload
            .into_iter()
            .map(|file| (file.row.path, file.bytes))
            .collect();
        let manifest = manifest(files.iter().map(|(path, bytes)| (path, bytes.sha256())));
        let octets: u64 = files.values().map(Bytes::len).sum();
        let info = format!(
            "External-Identifier: {job}\nPayload-Oxum: {octets}.{}\n",
            files.len()
        );
        let id = sha256_hex(manifest.as_bytes());
        let tags = [
            (BAG_INFO_TXT, info),
            (BAGIT_TXT, BAGIT.to_owned()),
            (MANIFEST_TXT, manifest),
        ];
        let tag_manifest = self::manifest(
            tags.iter()
                .map(|(path, text)| (*path, sha256_hex(text.as_bytes()))),
        );
        let texts = tags.into_iter().chain([(TAG_MANIFEST_TXT, tag_manifest)]);
        files.extend(texts.map(|(path, text)| (path.to_owned(), Bytes::Made(text.into_bytes()))));
        Bag {
            slug: slug.to_owned(),
            files,
            id,
        }
    }

    /// Bytes of all files, before any is made smaller.
    pub fn octets(&self) -> u64 {
        self.files.values().map(Bytes::len).sum()
    }

    /// Writes the zip.
    ///
    /// # Errors
    /// What the disk says, and a photo that is no longer what it was.
    pub fn write(&self, photos: &dyn Photos, to: impl Write + Seek) -> io::Result<()> {
        let mut zip = ZipWriter::new(to);
        for (path, bytes) in &self.files {
            let options = SimpleFileOptions::default()
                .last_modified_time(DateTime::default())
                .unix_permissions(0o644);
            let options = if is_pressed_already(path) {
                options.compression_method(CompressionMethod::Stored)
            } else {
                options
                    .compression_method(CompressionMethod::Deflated)
                    .compression_level(Some(6))
            };
            zip.start_file(format!("{}/{path}", self.slug), options)?;
            match bytes {
                Bytes::Made(bytes) => zip.write_all(bytes)?,
                Bytes::Original { sha256, .. } => {
                    let photo = photos.bytes(sha256)?;
                    if sha256_hex(&photo) != *sha256 {
                        return Err(io::Error::other("a photo changed while it was packed"));
                    }
                    zip.write_all(&photo)?;
                }
            }
        }
        zip.finish()?.flush()
    }
}

/// One line a file: its hash, two spaces, its path.
fn manifest<P: AsRef<str>>(files: impl Iterator<Item = (P, String)>) -> String {
    files.fold(String::new(), |mut text, (path, sha256)| {
        let _ = writeln!(text, "{sha256}  {}", path.as_ref());
        text
    })
}

/// What deflate would not make smaller is stored as it is.
fn is_pressed_already(path: &str) -> bool {
    let end = path.rsplit_once('.').map(|(_, end)| end);
    matches!(end, Some("pdf" | "jpg" | "png" | "webp" | "heic" | "glb"))
}

/// The longest slug.
const LONGEST_SLUG: usize = 40;

/// An address as a folder name: ASCII letters and digits, `-` between, at most 40 signs.
pub fn slug(address: &str) -> String {
    let mut slug = String::new();
    for sign in address.chars() {
        if slug.len() == LONGEST_SLUG {
            break;
        }
        if sign.is_ascii_alphanumeric() {
            slug.push(sign.to_ascii_lowercase());
        } else if !slug.is_empty() && !slug.ends_with('-') {
            slug.push('-');
        }
    }
    let slug = slug.trim_end_matches('-');
    if slug.is_empty() { "job" } else { slug }.to_owned()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn an_address_of_any_length_and_signs_makes_a_plain_folder_name() {
        assert_eq!(
            slug("The pretend house, 14 Invented Lane"),
            "the-pretend-house-14-invented-lane"
        );
        assert_eq!(slug("../..\\Ätna-Straße 3"), "tna-stra-e-3");
        assert_eq!(slug("屋"), "job");
        assert_eq!(slug(""), "job");
        assert_eq!(slug(&"long ".repeat(30)).len(), 39);
    }
}
