//! What a packet lacks, and the one sentence about it.

use serde::{Deserialize, Serialize};

/// Something that should be in a packet and is not.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Lack {
    /// A paper by its role, a photo by its name: `photo 7`.
    pub what: String,
    /// Why, in a sentence.
    pub why: String,
    /// What to do about it, in a sentence.
    pub remedy: String,
}

impl Lack {
    pub(crate) fn new(
        what: impl Into<String>,
        why: impl Into<String>,
        remedy: impl Into<String>,
    ) -> Lack {
        Lack {
            what: what.into(),
            why: why.into(),
            remedy: remedy.into(),
        }
    }
}
