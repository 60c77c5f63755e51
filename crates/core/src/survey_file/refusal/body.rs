//! Bodies as a whole.

use super::measure::short;

/// A body that cannot be one, or not beside the others.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
pub enum BodyFault {
    /// An empty list.
    #[error("the survey has no body: give at least one, with its outline")]
    NoBodies,
    /// More corners than one survey takes.
    #[error("the bodies have more than {most} corners together: make two surveys of it")]
    TooManyCorners {
        /// Most corners.
        most: usize,
    },
    /// An id that another body has.
    #[error("the id \"{id}\" is used by an earlier body: give each its own")]
    IdReused {
        /// The id.
        id: String,
    },
    /// Neither corners nor turns.
    #[error("the outline has no corners: give corners, or turns_deg with readings")]
    NoShape,
    /// Corners and what belongs to turns.
    #[error("it gives corners and {key}: known corners need no {key}, keep one of the two")]
    CornersAnd {
        /// The other key.
        key: &'static str,
    },
    /// Turns that do not go round once.
    #[error("the turns sum to {} degrees: once around is 360, or -360 clockwise", short(*sum))]
    TurnsSum {
        /// Their sum.
        sum: f64,
    },
    /// Fewer turns than an outline has.
    #[error("{turns} turns enclose nothing: give one a leg, at least 3")]
    TooFewTurns {
        /// How many.
        turns: usize,
    },
    /// Not one edge a leg.
    #[error("{edges} edges stand for {legs} legs: give one a leg, or none at all")]
    EdgesCount {
        /// How many edges.
        edges: usize,
        /// How many legs.
        legs: usize,
    },
    /// Placed twice.
    #[error("the body is placed by from and by {key}: keep one of the two")]
    PlacedTwice {
        /// The other key.
        key: &'static str,
    },
    /// Placed from a body that does not exist.
    #[error("no body has the id \"{body}\": write the id of another body of this survey")]
    NoSuchBody {
        /// The id.
        body: String,
    },
    /// Placed from a corner that does not exist.
    #[error("body \"{body}\" has corners 0 to {last}: write one of them")]
    NoSuchCorner {
        /// The other body.
        body: String,
        /// Its last corner.
        last: usize,
    },
    /// Placed from itself by way of others or not.
    #[error("the body is placed from itself: one body of the circle needs a start")]
    PlacedInCircle,
}
