use crate::samples::{BACK_2, FRONT_GABLE, local_time};
use crate::{Count, FaceName, Noun, Quoted};
use chrono::{DateTime, FixedOffset};

messages! {
    /// What was found once the old roof was off, and who agreed.
    ChangePaperMessage, "change_paper";
    /// How many changes are in force.
    Opening {
        /// How many.
        changes: Count,
    } = { changes: Count::new(1, Noun::Change) },
        { changes: Count::new(2, Noun::Change) };
    /// Deck sheets to replace under a face.
    SheetsUnderFace {
        /// How many.
        sheets: Count,
        /// The face.
        face: FaceName,
    } = {
        sheets: Count::new(1, Noun::DeckSheet),
        face: FRONT_GABLE,
    },
        {
            sheets: Count::new(2, Noun::DeckSheet),
            face: BACK_2,
        };
    /// Deck sheets to replace over a leg whose face has no name yet.
    SheetsOverLeg {
        /// How many.
        sheets: Count,
        /// From 1.
        leg: u32,
    } = { sheets: Count::new(1, Noun::DeckSheet), leg: 3 },
        { sheets: Count::new(2, Noun::DeckSheet), leg: 3 };
    /// Who agreed, and when.
    AgreedBy {
        /// As recorded.
        name: Quoted,
        /// `None` if its time is not readable.
        at: Option<DateTime<FixedOffset>>,
    } = {
        name: "Ana".into(),
        at: local_time(),
    };
    /// Somebody agreed; nobody recorded who.
    Agreed {
        /// `None` if its time is not readable.
        at: Option<DateTime<FixedOffset>>,
    } = { at: local_time() };
    /// A change without consent is in no total.
    WaitingForYes;
    /// Which price of a sheet holds.
    PriceOfThen;
    /// A sheet whose rate was blank.
    SheetNotPriced;
}
