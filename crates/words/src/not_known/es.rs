use super::NotKnownMessage;
use crate::{Es, Format};

pub(super) fn text(message: &NotKnownMessage, f: &Es) -> String {
    match message {
        NotKnownMessage::OutlineOpen => {
            "Dónde cierra el contorno: faltan lados por recorrer".to_owned()
        }
        NotKnownMessage::LegLength { leg } => format!("Largo del {}", f.leg(*leg)),
        NotKnownMessage::LegNotRead { leg } => format!(
            "Largo del {} con cinta: está calculado de los otros lados",
            f.leg(*leg)
        ),
        NotKnownMessage::Suspect { thing } => format!(
            "Si se midió bien {}: las otras medidas no cuadran con esa",
            f.thing(thing)
        ),
        NotKnownMessage::AnyPitch => "Pendiente de todas las aguas".to_owned(),
        NotKnownMessage::Pitch { face } => format!("Pendiente de {}", f.face(*face)),
        NotKnownMessage::PitchTakenOver { face, from } => format!(
            "Pendiente de {}: se tomó la de {} y no se midió",
            f.face(*face),
            f.face(*from)
        ),
        NotKnownMessage::Deck => {
            "De qué es la base (decking): nadie miró debajo del material".to_owned()
        }
        NotKnownMessage::Layers => "Cuántas capas hay en el techo".to_owned(),
        NotKnownMessage::Penetrations => "Qué sobresale del techo: no se anotó nada".to_owned(),
        NotKnownMessage::SizeOf { thing } => format!("Medida de {}", f.thing(thing)),
        NotKnownMessage::Overhangs => "Cuánto vuela el alero pasando la pared".to_owned(),
    }
}
