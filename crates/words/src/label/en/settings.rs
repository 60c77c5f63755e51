use crate::label::settings::SettingsLabel;

pub(in crate::label) const fn text(label: SettingsLabel) -> &'static str {
    match label {
        SettingsLabel::Title => "Settings",
        SettingsLabel::ColdHands => "Cold hands",
        SettingsLabel::MirrorHand => "Mirror hand",
        SettingsLabel::Sound => "Sound",
        SettingsLabel::SingleLetterKeys => "Single-letter keys",
        SettingsLabel::On => "on",
        SettingsLabel::Off => "off",
        SettingsLabel::MyTapeReads => "My tape reads…",
        SettingsLabel::TapeFeetInches => "feet, inches",
        SettingsLabel::TapeFeetTenths => "feet, tenths",
        SettingsLabel::TapeMetres => "metres",
        SettingsLabel::FinestFraction => "Finest fraction",
        SettingsLabel::FractionEighths => "eighths",
        SettingsLabel::FractionQuarters => "quarters",
        SettingsLabel::HouseOnMy => "I walk with the house on my…",
        SettingsLabel::SideRight => "right",
        SettingsLabel::SideLeft => "left",
        SettingsLabel::Screen => "Screen",
        SettingsLabel::ThemeSun => "day",
        SettingsLabel::ThemeNight => "night",
        SettingsLabel::Language => "Language",
        SettingsLabel::LanguageEnglish => "English",
        SettingsLabel::LanguageSpanish => "Español",
    }
}
