//! Files of a packet, to be looked at or saved.

use crate::refusal::Refusal;
use crate::sentence::{Sentence, sentence};
use eavebook_store::Packets;
use std::path::Path;
use std::path::PathBuf;

/// A packet, or one file in it.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct PacketFile {
    /// Its own name, without a folder.
    pub name: String,
    /// `application/pdf`.
    pub media: String,
    /// All of it.
    pub bytes: Vec<u8>,
}

/// The longest file that is unpacked to be looked at, bytes.
const LONGEST: u64 = 256 << 20;

/// A whole packet, or the file at a path in its bag that its list names.
#[must_use]
pub fn read(packets: &Packets, id: &str, path: Option<&str>) -> Option<PacketFile> {
    let whole = there(packets, id)?;
    let Some(path) = path else {
        return Some(PacketFile {
            name: whole.file_name()?.to_string_lossy().into_owned(),
            media: "application/zip".to_owned(),
            bytes: std::fs::read(&whole).ok()?,
        });
    };
    let look = eavebook_packet::summarize(&whole).ok()?;
    let row = look.files.into_iter().find(|row| row.path == path)?;
    Some(PacketFile {
        name: path.rsplit('/').next()?.to_owned(),
        media: row.media_type,
        bytes: eavebook_packet::file_in(&whole, path, LONGEST).ok()?,
    })
}

/// Saves a whole packet or one file of it in a folder, whole or not at all, and says where it lies
/// or why it does not.
#[must_use]
pub fn save(packets: &Packets, id: &str, path: Option<&str>, folder: &Path) -> Sentence {
    let Some(file) = read(packets, id, path) else {
        return sentence(
            "no_packet",
            "This packet is not on this device, or has no such paper. Make it again.",
        );
    };
    match packets.put_out(&file.name, &file.bytes, folder) {
        Ok(there) => sentence("packet_saved", format!("Saved as {}.", there.display())),
        Err(why) => Refusal::from(why).said(),
    }
}

/// The file of a packet, where it is on this device and its list is the one that was booked.
#[must_use]
pub fn there(packets: &Packets, id: &str) -> Option<PathBuf> {
    let path = packets.find(id.get(..NAMED_BY)?)?;
    let look = eavebook_packet::summarize(&path).ok()?;
    (look.id == id).then_some(path)
}

/// So many signs of its id stand in the name of a packet's file.
pub const NAMED_BY: usize = 12;
