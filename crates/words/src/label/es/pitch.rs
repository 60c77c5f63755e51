use crate::label::pitch::PitchLabel;

pub(in crate::label) const fn text(label: PitchLabel) -> &'static str {
    match label {
        PitchLabel::Title => "Pendiente",
        PitchLabel::Waiting => "Sin medir desde que se abrió.",
        PitchLabel::LayPhone => {
            "Ponga el teléfono sobre el techo, la parte de arriba hacia la cumbrera."
        }
        PitchLabel::TurnPhone => "Dé vuelta al teléfono, punta por punta, en el mismo lugar.",
        PitchLabel::Capture => "Tomar",
        PitchLabel::FlipAndRepeat => "Dar vuelta y repetir",
        PitchLabel::EnterIt => "Anotarla a mano",
        PitchLabel::FirstOneWay => "Tómela primero de un lado, luego dé vuelta.",
        PitchLabel::WaitsForFlip => "Dé vuelta al teléfono: sigue esa medida.",
        PitchLabel::Denied => "Esta página no puede leer la inclinación. Mida con nivel y cinta.",
        PitchLabel::NoTilt => "Este aparato no da su inclinación. Mida con nivel y cinta.",
        PitchLabel::PlumbPhoto => "Foto a plomo",
        PitchLabel::PlumbHow => {
            "Desde el suelo, de cara al gablete: teléfono derecho, a la vista las dos esquinas del alero, la punta y el suelo debajo. Luego márquelos."
        }
        PitchLabel::MarkPhoto => "Marcar la foto",
        PitchLabel::MarkHow => {
            "Escoja un punto y tóquelo en la foto, o mueva su marca con las flechas. Izquierda y derecha como usted lo ve."
        }
        PitchLabel::SpotLeftEave => "Esquina izquierda del alero",
        PitchLabel::SpotTop => "Punta del gablete",
        PitchLabel::SpotRightEave => "Esquina derecha del alero",
        PitchLabel::SpotLeftGround => "Suelo bajo la izquierda",
        PitchLabel::SpotRightGround => "Suelo bajo la derecha",
        PitchLabel::Marked => "marcado",
        PitchLabel::NotMarked => "sin marcar",
        PitchLabel::Nearer => "Más cerca",
        PitchLabel::MoveLeft => "Marca a la izquierda",
        PitchLabel::MoveUp => "Marca arriba",
        PitchLabel::MoveDown => "Marca abajo",
        PitchLabel::MoveRight => "Marca a la derecha",
        PitchLabel::NotGot => "No se pudo",
        PitchLabel::RecordedNotGot => "Anotado: no se pudo. La carpeta lo nombra como no sabido.",
        PitchLabel::RiseByNumber => "Subida en 12, por número",
        PitchLabel::ByNumber => "Por número",
        PitchLabel::AndAHalf => "y medio",
        PitchLabel::LevelAndTape => "Nivel y cinta",
        PitchLabel::LevelInches => "Nivel, pulgadas",
        PitchLabel::RiseInches => "Subida en la punta, pulgadas",
        PitchLabel::OneInchLess => "Una pulgada menos",
        PitchLabel::OneInchMore => "Una pulgada más",
        PitchLabel::SameIsNoReading => "Una pendiente tomada como igual no es una medida.",
        PitchLabel::StayDown => {
            "Desde la escalera solo donde está firme. Un gablete se mide desde el suelo."
        }
        PitchLabel::TapARise => "Todavía no hay qué anotar. Toque primero una subida.",
    }
}
