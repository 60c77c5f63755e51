use crate::label::thing::ThingLabel;

pub(in crate::label) const fn text(label: ThingLabel) -> &'static str {
    match label {
        ThingLabel::ReadAgain => "Medir otra vez",
        ThingLabel::CannotReach => "No se alcanza",
        ThingLabel::Strike => "Tachar",
        ThingLabel::Story => "Historial",
        ThingLabel::NoStory => "Todavía no hay nada anotado.",
        ThingLabel::NothingToStrike => "Aquí no hay nada que tachar.",
        ThingLabel::WorkedOut => "Esto se calcula con otras medidas. Mida esas otra vez.",
        ThingLabel::PhotoOf => "Foto de",
    }
}
