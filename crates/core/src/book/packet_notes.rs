//! Bodies of the entries about job packets: made, and sent. They record nothing about the house,
//! so that making or sending a packet does not change what a packet contains.

use super::edition::Edition;
use serde::{Deserialize, Serialize};
use uuid::Uuid;

/// Body of `packet_frozen`: a packet was made of the job as it was then.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct PacketFrozen {
    /// The packet's id, 64 hex digits.
    pub packet: String,
    /// Its reader.
    pub edition: Edition,
    /// Its version, counted from 1 per job and edition.
    pub version: u32,
    /// The id of the version before; `None` for the first.
    pub before: Option<String>,
    /// Local time with offset, RFC 3339: the only time printed on the papers.
    pub moment: String,
    /// The reader's name; `None` if no name was entered.
    #[serde(default)]
    pub reader: Option<String>,
    /// The entries from which it was made.
    pub entries: FrozenEntries,
    /// Name and version of the program that made it; another may typeset the papers differently.
    pub made_with: String,
}

/// The set of entries from which a packet was made.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct FrozenEntries {
    /// Number of entries.
    pub count: u64,
    /// Their digest, 64 hex digits.
    pub digest: String,
    /// The last entry of each incarnation of each device: finds the set again after more entries
    /// were recorded on any device.
    pub up_to: Vec<LastOf>,
}

/// The last entry of one incarnation of a device's store in a set.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct LastOf {
    /// The device.
    pub device: Uuid,
    /// The incarnation of its store.
    pub incarnation: Uuid,
    /// The entry's count in that incarnation.
    pub dseq: u64,
}

/// Body of `packet_sent`: a packet is to go to a person, or how far it has gone.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct PacketSent {
    /// The entry that started this sending; `None` if this entry starts it.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub of: Option<Uuid>,
    /// The packet's id, 64 hex digits.
    pub packet: String,
    /// The recipient as entered.
    pub to: String,
    /// How far it has gone.
    pub stage: SendStage,
}

/// How far a packet has gone. No device can know that a person read it.
#[cfg_attr(feature = "typescript", derive(ts_rs::TS))]
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum SendStage {
    /// It is to go and waits on this device.
    Waiting,
    /// The share sheet of the operating system took it.
    Shared,
    /// A person reports that it was handed over: by mail, by cable, on a stick.
    HandedOn,
    /// It is not to go after all.
    NotSent,
}
