//! Bodies of the entries that are about other entries: answers, strikes, undo and redo.

use serde::{Deserialize, Serialize};
use uuid::Uuid;

/// Body of `read_back_right`: the read-back of a reading was confirmed.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct About {
    /// The entry that was read back.
    pub entry: Uuid,
}

/// Body of `settled_at_desk`: a person reviewed entries at the desk and kept them as recorded.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct SettledAtDesk {
    /// The entries kept: readings, pitches, observations.
    pub entries: Vec<Uuid>,
}

/// Body of `strike`: takes the superseded entries out of force and keeps them readable.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Strike {
    /// Why; `None` if no reason was given.
    pub reason: Option<String>,
}

/// Body of `undo`: takes back the superseded entry.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Undo {}

/// Body of `redo`: takes back the superseded undo, so that its entry is in force again.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Redo {}
