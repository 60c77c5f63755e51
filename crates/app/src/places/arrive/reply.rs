//! What Arrive answers.

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
