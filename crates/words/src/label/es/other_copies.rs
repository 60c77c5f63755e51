use crate::label::other_copies::OtherCopiesLabel;

pub(in crate::label) const fn text(label: OtherCopiesLabel) -> &'static str {
    match label {
        OtherCopiesLabel::Title => "Copias en otros aparatos",
        OtherCopiesLabel::Alone => "Lo anotado está solo en este aparato.",
        OtherCopiesLabel::HubLink => "Enlace de una central, o su dirección, código y llave",
        OtherCopiesLabel::Join => "Unirse",
        OtherCopiesLabel::Joining => "Uniéndose…",
        OtherCopiesLabel::PhotoOfCode => "Tomar una foto del código",
        OtherCopiesLabel::ReadingCode => "Leyendo el código…",
        OtherCopiesLabel::CodeRead => "El enlace está en el campo. Revíselo y toque Unirse.",
        OtherCopiesLabel::Shares => {
            "Los teléfonos de la red de esta máquina pueden mandar aquí sus copias, sin internet."
        }
        OtherCopiesLabel::LetJoin => "Dejar que se una otro aparato",
        OtherCopiesLabel::HowToJoin => {
            "Una vez, antes de 10 minutos: en el otro aparato, en Ajustes, dé este enlace o escriba la línea de abajo."
        }
        OtherCopiesLabel::QrCode => "El enlace como código QR",
    }
}
