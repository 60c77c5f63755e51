//! What the Leave-site check answers.

use crate::parts::reply::NextAct;
use crate::sentence::Sentence;
use serde::{Deserialize, Serialize};
use ts_rs::TS;

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

/// Something open.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, TS)]
pub struct OpenView {
    /// `leg 3`, `face 2`, `closure`.
    pub thing: String,
    /// "Leg 3 is read once and nothing checks it."
    pub words: Sentence,
    /// What leads there.
    pub next: NextAct,
}
