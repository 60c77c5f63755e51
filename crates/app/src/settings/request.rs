//! What is asked about settings of this device.

use eavebook_core::book::keypad::FractionStep;
use eavebook_core::book::kinds::{Side, TapeMarks};
pub use eavebook_words::Language;
use serde::{Deserialize, Serialize};
use ts_rs::TS;

/// A request about settings.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, TS)]
#[serde(tag = "ask", rename_all = "snake_case")]
pub enum SettingsRequest {
    /// Change a setting of this device. Reply: `Settings`.
    Set {
        /// Which, with its value.
        setting: Setting,
    },
}

/// A setting of this device.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, TS)]
#[serde(tag = "set", content = "to", rename_all = "snake_case")]
pub enum Setting {
    /// Larger keys.
    ColdHands(bool),
    /// Controls for the left thumb.
    MirrorHand(bool),
    /// Speech and sounds.
    Sound(bool),
    /// Single-letter keys on a keyboard.
    SingleLetterKeys(bool),
    /// How the tape is marked.
    Tape(TapeMarks),
    /// Fractions to the eighth, or only to the quarter.
    Fractions(FractionStep),
    /// On which side of the walker the building stands.
    BuildingOn(Side),
    /// The language of the page.
    Language(Language),
    /// Dark on light for the sun, or light on dark for the night.
    #[serde(rename = "leaf")]
    Theme(Theme),
}

/// Light or dark ground of every screen.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize, TS)]
#[serde(rename_all = "snake_case")]
pub enum Theme {
    /// Dark on light: what can be read in the sun.
    #[default]
    Sun,
    /// Light on dark: what does not blind at night.
    Night,
}
