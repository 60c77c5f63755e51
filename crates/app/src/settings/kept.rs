//! Settings of this device, kept in the book as JSON.

use crate::settings::reply::SettingsView;
use crate::settings::request::{Language, Setting, Theme};
use eavebook_core::book::keypad::FractionStep;
use eavebook_core::book::kinds::{Side, TapeMarks};
use serde::{Deserialize, Serialize};
use serde_json::{Map, Value};

/// Settings of one device. A missing one takes its default, see [`Settings::read`].
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(default)]
pub struct Settings {
    cold_hands: bool,
    mirror_hand: bool,
    sound: bool,
    single_letter_keys: bool,
    tape: Option<TapeMarks>,
    fractions: FractionStep,
    building_on: Side,
    language: Language,
    #[serde(rename = "leaf")]
    theme: Theme,
}

impl Default for Settings {
    fn default() -> Settings {
        Settings {
            cold_hands: false,
            mirror_hand: false,
            sound: true,
            single_letter_keys: true,
            tape: None,
            fractions: FractionStep::Eighths,
            building_on: Side::Right,
            language: Language::English,
            theme: Theme::Sun,
        }
    }
}

impl Settings {
    /// Reads stored settings. A value that this version does not know resets that setting alone to
    /// its default; text that is not a JSON object resets all of them.
    #[must_use]
    pub fn read(text: &str) -> Settings {
        let mut stored: Map<String, Value> = serde_json::from_str(text).unwrap_or_default();
        stored.retain(|key, value| {
            let alone = Map::from_iter([(key.clone(), value.clone())]);
            serde_json::from_value::<Settings>(Value::Object(alone)).is_ok()
        });
        serde_json::from_value(Value::Object(stored)).unwrap_or_default()
    }

    /// Returns the language of screens and speech.
    #[must_use]
    pub fn language(&self) -> Language {
        self.language
    }

    /// As they are kept.
    #[must_use]
    pub fn text(&self) -> String {
        // Flags and names: shapes that cannot fail to be written.
        serde_json::to_string(self).unwrap_or_default()
    }

    /// The same with one of them changed.
    #[must_use]
    pub fn with(mut self, setting: Setting) -> Settings {
        match setting {
            Setting::ColdHands(to) => self.cold_hands = to,
            Setting::MirrorHand(to) => self.mirror_hand = to,
            Setting::Sound(to) => self.sound = to,
            Setting::SingleLetterKeys(to) => self.single_letter_keys = to,
            Setting::Tape(to) => self.tape = Some(to),
            Setting::Fractions(to) => self.fractions = to,
            Setting::BuildingOn(to) => self.building_on = to,
            Setting::Language(to) => self.language = to,
            Setting::Theme(to) => self.theme = to,
        }
        self
    }

    /// How the tape is marked: feet and inches until somebody chose.
    #[must_use]
    pub fn tape(&self) -> TapeMarks {
        self.tape.unwrap_or_default()
    }

    /// Finest fraction that is read.
    #[must_use]
    pub fn fractions(&self) -> FractionStep {
        self.fractions
    }

    /// On which side of the walker the building stands.
    #[must_use]
    pub fn building_on(&self) -> Side {
        self.building_on
    }

    /// As a screen is told.
    #[must_use]
    pub fn view(&self) -> SettingsView {
        SettingsView {
            cold_hands: self.cold_hands,
            mirror_hand: self.mirror_hand,
            sound: self.sound,
            single_letter_keys: self.single_letter_keys,
            tape: self.tape(),
            tape_chosen: self.tape.is_some(),
            fractions: self.fractions,
            building_on: self.building_on,
            language: self.language,
            theme: self.theme,
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn stored_settings_come_back_and_missing_ones_take_their_default() {
        let chosen = Settings::default().with(Setting::Tape(TapeMarks::Meters));
        assert_eq!(Settings::read(&chosen.text()), chosen);
        assert_eq!(Settings::read("{}"), Settings::default());
        let later = Settings::read(r#"{"sound": false, "later": 1}"#);
        assert!(!later.view().sound);
        assert_eq!(Settings::read("not JSON"), Settings::default());
    }

    #[test]
    fn an_unknown_value_resets_that_setting_alone() {
        let chosen = Settings::default()
            .with(Setting::Sound(false))
            .with(Setting::Language(Language::Spanish))
            .with(Setting::Theme(Theme::Night));
        for (known, unknown, expected) in [
            (
                r#""language":"spanish""#,
                r#""language":"french""#,
                chosen.with(Setting::Language(Language::English)),
            ),
            (
                r#""leaf":"night""#,
                r#""leaf":"dusk""#,
                chosen.with(Setting::Theme(Theme::Sun)),
            ),
            (
                r#""sound":false"#,
                r#""sound":"soft""#,
                chosen.with(Setting::Sound(true)),
            ),
        ] {
            let text = chosen.text().replace(known, unknown);
            assert_ne!(text, chosen.text(), "{known} is stored");
            assert_eq!(Settings::read(&text), expected, "{unknown}");
        }
    }
}
