//! Corners given as known.

use super::measure::short;

/// Corners given as known that are no outline.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
pub enum OutlineFault {
    /// One or two corners.
    #[error("an outline of {corners} corners encloses nothing: give at least 3")]
    TooFewCorners {
        /// How many.
        corners: usize,
    },
    /// Two corners in a row in one place.
    #[error(
        "corners {first} and {second} lie in one place, nearer than 0.01 ft: keep one of the two"
    )]
    CornersEqual {
        /// One corner.
        first: usize,
        /// The next.
        second: usize,
    },
    /// A leg of more than 10,000 ft.
    #[error("leg {leg} is {} ft long: a leg is at most 10,000 ft", short(*feet))]
    LegTooLong {
        /// The leg.
        leg: usize,
        /// Its length.
        feet: f64,
    },
    /// All corners in one line.
    #[error("all corners lie in one line and enclose no area: give the corners on the other side")]
    WithoutArea,
    /// Two legs that cross or touch.
    #[error("legs {first} and {second} cross or touch: give the corners in order around the roof")]
    CrossesItself {
        /// One leg.
        first: usize,
        /// The other.
        second: usize,
    },
}
