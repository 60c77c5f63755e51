//! Settings of this device, as a screen shows them.

use crate::settings::request::{Language, Theme};
use eavebook_core::book::keypad::FractionStep;
use eavebook_core::book::kinds::{Side, TapeMarks};
use serde::{Deserialize, Serialize};
use ts_rs::TS;

/// Settings of this device.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, TS)]
pub struct SettingsView {
    /// Larger keys.
    pub cold_hands: bool,
    /// Controls for the left thumb.
    pub mirror_hand: bool,
    /// Speech and sounds.
    pub sound: bool,
    /// Single-letter keys on a keyboard.
    pub single_letter_keys: bool,
    /// How the tape is marked.
    pub tape: TapeMarks,
    /// The person chose the tape; until then it is feet and inches.
    pub tape_chosen: bool,
    /// Finest fraction that is read.
    pub fractions: FractionStep,
    /// On which side of the walker the building stands.
    pub building_on: Side,
    /// The language of the page.
    pub language: Language,
    /// Its ground.
    #[serde(rename = "leaf")]
    pub theme: Theme,
}
