//! Entries to one field book: the same for the same set, in any order.

use super::kinds::{Corner, EndKind, Followed, HowRead, PhotoTaken, PitchRead, TapeMarks, Thing};
use uuid::Uuid;

/// One job as its entries tell it.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct FieldBook {
    /// Street address as said.
    pub address: String,
    /// The pretend house.
    pub pretend: bool,
    /// Every reading, struck ones too, in display order.
    pub readings: Vec<BookedReading>,
    /// Corners in force, by the leg that ends there.
    pub corners: Vec<(Uuid, Corner)>,
    /// What cannot be read, with the reason.
    pub cannot_get: Vec<(Uuid, Thing, Option<String>)>,
    /// What rises at each leg, where somebody said: (entry, leg from 1, end).
    pub leg_ends: Vec<(Uuid, u32, EndKind)>,
    /// Every slope read, struck ones too: in display order.
    pub pitches: Vec<BookedPitch>,
    /// Photos kept.
    pub photos: Vec<(Uuid, PhotoTaken)>,
    /// Ids of entries of a kind that this version does not know.
    pub unknown: Vec<Uuid>,
    /// Ids of entries whose supersedes list names itself or runs in a circle; ignored there.
    pub circular: Vec<Uuid>,
}

/// A reading with what became of it.
#[derive(Clone, Debug, PartialEq)]
pub struct BookedReading {
    /// Its entry.
    pub entry: Uuid,
    /// What was read.
    pub thing: Thing,
    /// The tape text.
    pub text: String,
    /// How the tape is marked.
    pub tape: TapeMarks,
    /// How it was read.
    pub how: HowRead,
    /// What the tape followed.
    pub followed: Followed,
    /// Read without sight of an earlier value.
    pub blind: bool,
    /// The read-back was answered `Right`.
    pub read_back: bool,
    /// Local time with offset, RFC 3339.
    pub local_time: String,
    /// Who.
    pub author: String,
    /// Which device.
    pub device: Uuid,
    /// The strike in force that takes it out of use.
    pub struck: Option<Struck>,
}

/// A slope read, with what became of it.
#[derive(Clone, Debug, PartialEq)]
pub struct BookedPitch {
    /// Its entry.
    pub entry: Uuid,
    /// The leg from which the face rises, from 1.
    pub leg: u32,
    /// How it was read, with what was read.
    pub read: PitchRead,
    /// Local time with offset, RFC 3339.
    pub local_time: String,
    /// Who.
    pub author: String,
    /// The strike in force that takes it out of use.
    pub struck: Option<Struck>,
}

/// A strike in force.
#[derive(Clone, Debug, PartialEq)]
pub struct Struck {
    /// Its entry.
    pub by: Uuid,
    /// Why, where a reason was given.
    pub reason: Option<String>,
    /// Local time with offset, RFC 3339.
    pub local_time: String,
}
