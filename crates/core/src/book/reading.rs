//! Bodies of readings, and of the entry that a length cannot be read.

use super::tape_marks::TapeMarks;
use super::thing::Thing;
use serde::{Deserialize, Serialize};

/// Body of `reading`: one value as measured.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Reading {
    /// What was measured.
    #[serde(flatten)]
    pub thing: Thing,
    /// The tape text as read back: `42 ft 7 1/2 in`.
    pub text: String,
    /// How the tape is marked.
    pub tape: TapeMarks,
    /// How the value was obtained.
    pub how: HowRead,
    /// What the tape followed.
    pub followed: Followed,
    /// The reader saw no earlier value of the same thing.
    #[serde(default)]
    pub blind: bool,
}

/// How a value was obtained.
#[cfg_attr(feature = "typescript", derive(ts_rs::TS))]
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum HowRead {
    /// With a tape.
    #[default]
    Taped,
    /// By paces.
    Paced,
    /// Scaled off a photo, later.
    OffPhoto,
    /// Reported by another person: hearsay.
    Told,
}

/// What the tape followed.
#[cfg_attr(feature = "typescript", derive(ts_rs::TS))]
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Followed {
    /// The edge of the eave.
    #[default]
    EaveEdge,
    /// The outer face of the gutter.
    GutterFace,
    /// The wall below.
    Wall,
}

/// Body of `cannot_get`: a length that cannot be read; it is computed from the others.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct CannotGet {
    /// What cannot be read.
    #[serde(flatten)]
    pub thing: Thing,
    /// Why; `None` if no reason was given.
    pub reason: Option<String>,
}
