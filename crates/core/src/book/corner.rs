//! Body of the entry for a corner at which the walker turned.

use serde::{Deserialize, Serialize};

/// Body of `corner`: the walker turned at the far corner of a leg.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Corner {
    /// The leg that ends at this corner, from 1.
    pub after_leg: u32,
    /// Which way the outline turns.
    pub turn: Turn,
    /// The side of the walker on which the building is.
    pub building_on: Side,
}

/// Which way the outline turns at a corner.
#[cfg_attr(feature = "typescript", derive(ts_rs::TS))]
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
#[serde(tag = "turn", rename_all = "snake_case")]
pub enum Turn {
    /// Around an outside corner: 90 degrees toward the building.
    Outside,
    /// Into an inside corner: 90 degrees away from the building.
    Inside,
    /// By another angle.
    Angled {
        /// Degrees, positive toward the building.
        degrees: f64,
    },
    /// No turn: a step in the eave or a change of pitch.
    Straight,
}

/// A side of a walker.
#[cfg_attr(feature = "typescript", derive(ts_rs::TS))]
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Side {
    /// The right hand: the walk goes clockwise seen from above.
    #[default]
    Right,
    /// The left hand: the walk goes counter-clockwise.
    Left,
}
