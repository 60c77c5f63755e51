//! What the places Arrive and Leave-site check are told.

use super::{NextAct, Sentence};
use eavebook_core::book::kinds::VisitNote;
use serde::{Deserialize, Serialize};
use ts_rs::TS;

/// Arrive.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, TS)]
pub struct ArriveView {
    /// "The front, looking 212°, 2:41 pm"; none until somebody stood before it.
    pub front: Option<String>,
    /// Who is here: "the owner, may say yes, 2:41 pm".
    pub here: Vec<String>,
    /// What is asked of the people here; what needs a ladder is left out while one stays below.
    pub permissions: Vec<TickView>,
    /// Nobody is home: from the ground only.
    pub ground_only: TickView,
    /// What to beware of.
    pub hazards: Vec<TickView>,
    /// The driveway was looked at before any work.
    pub driveway: TickView,
    /// "Kim, until 3:30 pm".
    pub check_in: Option<String>,
    /// What was promised, the newest last.
    pub promises: Vec<String>,
}

/// Something that is so or not.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, TS)]
pub struct TickView {
    /// "Walk round".
    pub name: String,
    /// It is so.
    pub on: bool,
    /// Who said so and when: "the owner, 2:41 pm".
    pub about: Option<String>,
    /// What is booked when it becomes so.
    pub tick: VisitNote,
    /// What is booked when it is so no more.
    pub clear: VisitNote,
}

/// The Leave-site check.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, TS)]
pub struct CheckView {
    /// "6 open, 3 unproved".
    pub counts: Sentence,
    /// What is open, by the cost of coming back for it and by what it does to the price; then what
    /// is most worth reading again, at most three.
    pub open: Vec<CheckItem>,
    /// The card from which somebody went to mend something and has not come back.
    pub at: Option<String>,
    /// "Check complete": the visit is over and nothing was booked since.
    pub complete: Option<Sentence>,
}

/// One card of the check.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, TS)]
pub struct CheckItem {
    /// `sides`, `closure`, `leg 3`.
    pub thing: String,
    /// "Closure".
    pub title: String,
    /// The evidence in words: the gap, what was seen and not seen.
    pub words: Sentence,
    /// The evidence in photos, by their names in the photo folder.
    pub photos: Vec<String>,
    /// What leads to where it is mended.
    pub next: NextAct,
}
