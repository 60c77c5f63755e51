//! The plan, laid out behind the boundary.

use serde::{Deserialize, Serialize};
use std::collections::BTreeMap;
use ts_rs::TS;
use uuid::Uuid;

/// The plan as a leaf of the screen shows it; the lists beside it hold the same.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, TS)]
pub struct PlanDrawn {
    /// Which job.
    pub job: Uuid,
    /// The text of an SVG element with its title and what it shows in words; none while the line is
    /// open.
    pub svg: Option<String>,
    /// Its height, px of the page.
    pub height: f64,
    /// What a thing of the list of edges is called on it: `leg 2` is `r2a 16' 9", r2b 16' 9"`.
    pub edges: BTreeMap<String, String>,
    /// How many edges and faces had no room for their names.
    pub left_off: u32,
}
