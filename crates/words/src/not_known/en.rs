use super::NotKnownMessage;
use crate::{En, Format};

pub(super) fn text(message: &NotKnownMessage, f: &En) -> String {
    match message {
        NotKnownMessage::OutlineOpen => {
            "Where the outline closes: not every leg is walked".to_owned()
        }
        NotKnownMessage::LegLength { leg } => format!("Length of {}", f.leg(*leg)),
        NotKnownMessage::LegNotRead { leg } => format!(
            "Length of {} by tape: it is worked out from the other legs",
            f.leg(*leg)
        ),
        NotKnownMessage::Suspect { thing } => format!(
            "Whether {} was read right: the other readings disagree",
            f.thing(thing)
        ),
        NotKnownMessage::AnyPitch => "Pitch of every face".to_owned(),
        NotKnownMessage::Pitch { face } => format!("Pitch of {}", f.face(*face)),
        NotKnownMessage::PitchTakenOver { face, from } => format!(
            "Pitch of {}: it is taken from {} and was not read",
            f.face(*face),
            f.face(*from)
        ),
        NotKnownMessage::Deck => {
            "What the deck is made of: nobody looked under the covering".to_owned()
        }
        NotKnownMessage::Layers => "How many layers are on the roof".to_owned(),
        NotKnownMessage::Penetrations => "Roof penetrations: nothing is recorded".to_owned(),
        NotKnownMessage::SizeOf { thing } => format!("Size of {}", f.thing(thing)),
        NotKnownMessage::Overhangs => "How far the eaves reach past the walls".to_owned(),
    }
}
