use super::DifferenceMessage;
use crate::capital;
use crate::label::paper::PaperLabel;
use crate::{Es, Format};

pub(super) fn text(message: &DifferenceMessage, f: &Es) -> String {
    match message {
        DifferenceMessage::PitchOfFace { face } => format!("Pendiente de {}", f.face(*face)),
        DifferenceMessage::PitchOverLeg { leg } => format!("Pendiente sobre el {}", f.leg(*leg)),
        DifferenceMessage::AreaOfFace { face } => format!("Área de {}", f.face(*face)),
        DifferenceMessage::RoofArea => "Área del techo".to_owned(),
        DifferenceMessage::EdgesTotal { kind } => format!("{}, total", capital(f.edge_kind(*kind))),
        DifferenceMessage::Ordered { item } => format!("Pedido: {}", f.order_item(item)),
        DifferenceMessage::SeenOverLeg { leg } => format!("Visto sobre el {}", f.leg(*leg)),
        DifferenceMessage::ReadingInState { reading, state } => format!(
            "{}, {}",
            f.reading(reading),
            PaperLabel::state(*state, f.language())
        ),
        DifferenceMessage::OnFaceOfLeg { leg } => format!("En el agua sobre el {}", f.leg(*leg)),
        DifferenceMessage::Sheets { sheets } => format!(
            "{}, {}",
            f.count(*sheets),
            f.agreeing("aceptad", sheets.noun, sheets.n)
        ),
        DifferenceMessage::SheetsNotAgreed { sheets } => {
            format!("{}, nadie ha aceptado todavía", f.count(*sheets))
        }
    }
}
