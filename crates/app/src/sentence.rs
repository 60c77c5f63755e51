//! A sentence for a person, as a reply carries it.

use serde::{Deserialize, Serialize};
use ts_rs::TS;

/// A sentence of one breath, with a code by which another language finds its own.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, TS)]
pub struct Sentence {
    /// Names the sentence: `inches_over_eleven`.
    pub code: String,
    /// The sentence in English.
    pub en: String,
}

/// A sentence with its code.
#[must_use]
pub fn sentence(code: &str, en: impl Into<String>) -> Sentence {
    Sentence {
        code: code.to_owned(),
        en: en.into(),
    }
}
