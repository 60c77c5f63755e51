use crate::FaceName;
use crate::samples::{BACK_2, FRONT_GABLE};
use eavebook_core::book::kinds::{ItemKind, Thing};

messages! {
    /// What is not known of a house.
    NotKnownMessage, "not_known";
    /// The outline has not come back to its start.
    OutlineOpen;
    /// A leg without a length.
    LegLength {
        /// From 1.
        leg: u32,
    } = { leg: 3 };
    /// A leg worked out from the others.
    LegNotRead {
        /// From 1.
        leg: u32,
    } = { leg: 3 };
    /// A reading that the others contradict.
    Suspect {
        /// What was read.
        thing: Thing,
    } = { thing: Thing::Leg { leg: 2 } };
    /// No pitch is known.
    AnyPitch;
    /// The pitch of a face.
    Pitch {
        /// The face.
        face: FaceName,
    } = {
        face: BACK_2,
    };
    /// A pitch taken over from another face.
    PitchTakenOver {
        /// The face.
        face: FaceName,
        /// The face that was read.
        from: FaceName,
    } = {
        face: FRONT_GABLE,
        from: BACK_2,
    };
    /// What the covering is nailed to.
    Deck;
    /// How many layers are on the roof.
    Layers;
    /// Nobody recorded a penetration.
    Penetrations;
    /// The size of a penetration.
    SizeOf {
        /// The penetration or its size.
        thing: Thing,
    } = { thing: Thing::Item { item: ItemKind::Pipe, number: 1 } };
    /// How far the eaves reach past the walls.
    Overhangs;
}
