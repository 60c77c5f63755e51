use crate::format::ReadingText;
use crate::samples::BACK_2;
use crate::{Count, FaceName, Noun};
use eavebook_core::check::State;
use eavebook_core::roof::EdgeKind;
use eavebook_core::takeoff::OrderItem;

messages! {
    /// Things that differ from the version before, and what each version has.
    DifferenceMessage, "difference";
    /// The pitch of a face.
    PitchOfFace {
        /// The face.
        face: FaceName,
    } = {
        face: BACK_2,
    };
    /// The pitch over a leg whose face has no name yet.
    PitchOverLeg {
        /// From 1.
        leg: u32,
    } = { leg: 3 };
    /// The area of a face.
    AreaOfFace {
        /// The face.
        face: FaceName,
    } = {
        face: BACK_2,
    };
    /// The area of the roof.
    RoofArea;
    /// The length of all edges of a kind.
    EdgesTotal {
        /// The kind.
        kind: EdgeKind,
    } = { kind: EdgeKind::Ridge };
    /// A line of the order list.
    Ordered {
        /// The line.
        item: OrderItem,
    } = { item: OrderItem::RidgeVent };
    /// What somebody saw of the roof over a leg.
    SeenOverLeg {
        /// From 1.
        leg: u32,
    } = { leg: 3 };
    /// A reading and how well it is known.
    ReadingInState {
        /// Its value.
        reading: ReadingText,
        /// How well it is known.
        state: State,
    } = { reading: ReadingText::from("9'"), state: State::ReadOnce },
        { reading: ReadingText::from("10'"), state: State::Suspect };
    /// The face on which a penetration is.
    OnFaceOfLeg {
        /// The leg of that face, from 1.
        leg: u32,
    } = { leg: 3 };
    /// Deck sheets of a change that was agreed.
    Sheets {
        /// How many.
        sheets: Count,
    } = { sheets: Count::new(1, Noun::DeckSheet) },
        { sheets: Count::new(2, Noun::DeckSheet) };
    /// Deck sheets of a change that nobody agreed to.
    SheetsNotAgreed {
        /// How many.
        sheets: Count,
    } = { sheets: Count::new(1, Noun::DeckSheet) },
        { sheets: Count::new(2, Noun::DeckSheet) };
}
