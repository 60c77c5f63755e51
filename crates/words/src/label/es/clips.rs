use crate::label::clips::ClipsLabel;

pub(in crate::label) const fn text(label: ClipsLabel) -> &'static str {
    match label {
        ClipsLabel::Title => "Grabado, falta escribirlo",
        ClipsLabel::RecordIt => "Grabarlo",
        ClipsLabel::Stop => "Parar",
        ClipsLabel::Listening => "Grabando. Toque Parar para guardarlo.",
        ClipsLabel::Kept => "La grabación está guardada. Escríbala cuando esté en el suelo.",
        ClipsLabel::NoMicrophone => {
            "Esta página no puede usar el micrófono, o no hay. Tome una foto de la cinta, o escríbalo."
        }
        ClipsLabel::NotKept => "No se guardó nada. Grábelo otra vez.",
        ClipsLabel::TypeIt => "Escribirlo",
        ClipsLabel::Typed => "Ya escrito",
        ClipsLabel::Recording => "Grabación",
    }
}
