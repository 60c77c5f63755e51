//! Bodies of the entries for what rises at a leg: slope, gable or wall, and the pitch of a slope.

use serde::{Deserialize, Serialize};
use uuid::Uuid;

/// Body of `leg_end`: what rises at a leg.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct LegEnd {
    /// The leg, from 1.
    pub leg: u32,
    /// What rises at it.
    pub end: EndKind,
}

/// What rises at a leg.
#[cfg_attr(feature = "typescript", derive(ts_rs::TS))]
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum EndKind {
    /// A slope.
    Sloped,
    /// A gable end.
    Gable,
    /// A wall that rises past the roof.
    Wall,
}

/// Body of `pitch`: one measurement of a face's pitch.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct PitchBooked {
    /// The leg from which the face rises, from 1.
    pub leg: u32,
    /// How it was measured, with the values. A separate object, since [`PitchRead::SameAs`] has a
    /// field `leg` too.
    pub read: PitchRead,
}

/// How a pitch was measured, with the values.
#[cfg_attr(feature = "typescript", derive(ts_rs::TS))]
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(tag = "by", rename_all = "snake_case")]
pub enum PitchRead {
    /// A number known from elsewhere.
    Number {
        /// Rise in 12.
        in_12: f64,
    },
    /// A level held out along the run and a tape from its end down to the roof.
    LevelAndTape {
        /// Run along the level, inches.
        run_in: f64,
        /// Rise read on the tape, inches.
        rise_in: f64,
    },
    /// A phone laid on the slope.
    Phone {
        /// Angle above level, degrees, positive.
        degrees: f64,
        /// The phone was turned end for end.
        reversed: bool,
    },
    /// Computed from marks on a photo of the gable end, taken from the ground. The marks are kept
    /// with the result, so that it can be computed again.
    Sighted {
        /// Angle above level, degrees, positive.
        degrees: f64,
        /// One standard deviation, degrees.
        sigma: f64,
        /// Entry of the photo.
        photo: Uuid,
        /// The marked points.
        marks: Vec<GableMark>,
    },
    /// Assumed equal to the pitch of another face, not measured.
    SameAs {
        /// The leg of that face.
        leg: u32,
    },
    /// The person tried and could not measure it.
    NotGot,
}

/// One point marked on a photo of a gable end.
#[cfg_attr(feature = "typescript", derive(ts_rs::TS))]
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub struct GableMark {
    /// Which point.
    pub of: GableSpot,
    /// Its place, as fractions of the picture's width from the left and height from the top.
    pub at: [f64; 2],
}

/// A point that can be marked on a photo of a gable end; left and right as seen in the photo.
#[cfg_attr(feature = "typescript", derive(ts_rs::TS))]
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum GableSpot {
    /// The lower end of the left rake.
    LeftEave,
    /// The point where both rakes meet.
    Top,
    /// The lower end of the right rake.
    RightEave,
    /// The ground straight under the left eave corner.
    LeftGround,
    /// The ground straight under the right eave corner.
    RightGround,
}
