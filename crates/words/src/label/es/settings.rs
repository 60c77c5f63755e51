use crate::label::settings::SettingsLabel;

pub(in crate::label) const fn text(label: SettingsLabel) -> &'static str {
    match label {
        SettingsLabel::Title => "Ajustes",
        SettingsLabel::ColdHands => "Manos frías",
        SettingsLabel::MirrorHand => "Mano izquierda",
        SettingsLabel::Sound => "Sonido",
        SettingsLabel::SingleLetterKeys => "Teclas de una letra",
        SettingsLabel::On => "sí",
        SettingsLabel::Off => "no",
        SettingsLabel::MyTapeReads => "Mi cinta marca…",
        SettingsLabel::TapeFeetInches => "pies, pulgadas",
        SettingsLabel::TapeFeetTenths => "pies, décimos",
        SettingsLabel::TapeMetres => "metros",
        SettingsLabel::FinestFraction => "Fracción más chica",
        SettingsLabel::FractionEighths => "octavos",
        SettingsLabel::FractionQuarters => "cuartos",
        SettingsLabel::HouseOnMy => "Camino con la casa a mi…",
        SettingsLabel::SideRight => "derecha",
        SettingsLabel::SideLeft => "izquierda",
        SettingsLabel::Screen => "Pantalla",
        SettingsLabel::ThemeSun => "día",
        SettingsLabel::ThemeNight => "noche",
        SettingsLabel::Language => "Idioma",
        SettingsLabel::LanguageEnglish => "English",
        SettingsLabel::LanguageSpanish => "Español",
    }
}
