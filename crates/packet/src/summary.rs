//! A look into a packet made here: what it says of itself, and one file of it. [`check`] proves one
//! from outside; this only opens it.
//!
//! [`check`]: crate::check()

use crate::bag::MANIFEST_TXT;
use crate::check::{LIST_PATH, VerifyError};
use crate::contents::FileRow;
use crate::lack::Lack;
use eavebook_core::book::entry::sha256_hex;
use serde::Deserialize;
use std::fs::File;
use std::io::{BufReader, Read};
use std::path::Path;
use zip::ZipArchive;

/// What a packet says of itself.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct PacketSummary {
    /// Its id: SHA-256 of its manifest.
    pub id: String,
    /// Its files, as it lists them; those of a sort that this version does not know are left out.
    pub files: Vec<FileRow>,
    /// What it lacks.
    pub lacks: Vec<Lack>,
    /// What is not known of the house.
    pub not_known: Vec<String>,
}

#[derive(Deserialize)]
struct List {
    files: Vec<serde_json::Value>,
    lacks: Vec<Lack>,
    not_known: Vec<String>,
}

/// A list or a manifest larger than this is none.
const LARGEST: u64 = 32_000_000;

/// Opens a packet and reads its list.
///
/// # Errors
/// `Unreadable`, `NoZip`, `Lacks`, `TooLarge`, `List`.
pub fn summarize(packet: &Path) -> Result<PacketSummary, VerifyError> {
    let mut zip = ZipArchive::new(BufReader::new(File::open(packet)?))?;
    let id = sha256_hex(&unpack(&mut zip, MANIFEST_TXT, LARGEST)?);
    let list = unpack(&mut zip, LIST_PATH, LARGEST)?;
    let list: List = serde_json::from_slice(&list).map_err(|why| VerifyError::List {
        file: "packet.json",
        why: why.to_string(),
    })?;
    let rows = list.files.into_iter();
    Ok(PacketSummary {
        id,
        files: rows
            .filter_map(|row| serde_json::from_value(row).ok())
            .collect(),
        lacks: list.lacks,
        not_known: list.not_known,
    })
}

/// One file of a packet, by its path in the bag: `data/papers/crew.es.pdf`. Past so many bytes it is
/// not unpacked.
///
/// # Errors
/// `Unreadable`, `NoZip`, `Lacks`, `TooLarge`.
pub fn file_in(packet: &Path, path: &str, largest: u64) -> Result<Vec<u8>, VerifyError> {
    let mut zip = ZipArchive::new(BufReader::new(File::open(packet)?))?;
    unpack(&mut zip, path, largest)
}

fn unpack(
    zip: &mut ZipArchive<BufReader<File>>,
    path: &str,
    largest: u64,
) -> Result<Vec<u8>, VerifyError> {
    let place = zip
        .file_names()
        .position(|name| {
            name.is_ok_and(|name| {
                name.split_once('/')
                    .is_some_and(|(_, in_bag)| in_bag == path)
            })
        })
        .ok_or_else(|| VerifyError::Lacks(path.chars().take(80).collect()))?;
    let mut bytes = Vec::new();
    let read = zip
        .by_index(place)?
        .take(largest + 1)
        .read_to_end(&mut bytes)?;
    if read as u64 > largest {
        return Err(VerifyError::TooLarge);
    }
    Ok(bytes)
}
