use super::DifferenceMessage;
use crate::capital;
use crate::label::paper::PaperLabel;
use crate::{En, Format};

pub(super) fn text(message: &DifferenceMessage, f: &En) -> String {
    match message {
        DifferenceMessage::PitchOfFace { face } => format!("Pitch of {}", f.face(*face)),
        DifferenceMessage::PitchOverLeg { leg } => format!("Pitch over {}", f.leg(*leg)),
        DifferenceMessage::AreaOfFace { face } => format!("Area of {}", f.face(*face)),
        DifferenceMessage::RoofArea => "Roof area".to_owned(),
        DifferenceMessage::EdgesTotal { kind } => format!("{}, total", capital(f.edge_kind(*kind))),
        DifferenceMessage::Ordered { item } => format!("Order: {}", f.order_item(item)),
        DifferenceMessage::SeenOverLeg { leg } => format!("Seen over {}", f.leg(*leg)),
        DifferenceMessage::ReadingInState { reading, state } => format!(
            "{}, {}",
            f.reading(reading),
            PaperLabel::state(*state, f.language())
        ),
        DifferenceMessage::OnFaceOfLeg { leg } => format!("On the face over {}", f.leg(*leg)),
        DifferenceMessage::Sheets { sheets } => format!("{}, agreed", f.count(*sheets)),
        DifferenceMessage::SheetsNotAgreed { sheets } => {
            format!("{}, nobody agreed yet", f.count(*sheets))
        }
    }
}
