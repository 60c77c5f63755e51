use crate::{En, Es, Format};
use serde::{Deserialize, Serialize};

/// A language of screens, papers and read-back.
#[cfg_attr(feature = "typescript", derive(ts_rs::TS))]
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Language {
    /// American English.
    #[default]
    English,
    /// Spanish as roofers in the United States speak it.
    Spanish,
}

impl Language {
    /// Both, English first.
    pub const ALL: [Language; 2] = [Language::English, Language::Spanish];

    /// The tag of BCP 47: `en`, `es`.
    #[must_use]
    pub const fn tag(self) -> &'static str {
        match self {
            Language::English => "en",
            Language::Spanish => "es",
        }
    }

    /// The language with this tag.
    #[must_use]
    pub fn from_tag(tag: &str) -> Option<Language> {
        Language::ALL
            .into_iter()
            .find(|language| language.tag() == tag)
    }

    /// How figures, names and dates are written in this language.
    #[must_use]
    pub fn format(self) -> &'static dyn Format {
        match self {
            Language::English => &En,
            Language::Spanish => &Es,
        }
    }
}
