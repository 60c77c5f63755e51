//! Taped values.

/// A reading that spans nothing of its outline.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
pub enum ReadingFault {
    /// Nothing said of what the tape spanned.
    #[error("it does not say what the tape spanned: give leg, tie, overall or wall_of_leg")]
    NoSpan,
    /// Two things spanned.
    #[error("it gives both {first} and {second}: one reading spans one thing")]
    TwoSpans {
        /// One key.
        first: &'static str,
        /// The other.
        second: &'static str,
    },
    /// A key that goes with another.
    #[error("{key} goes with {with}: give that too, or take {key} out")]
    KeyAlone {
        /// The key given.
        key: &'static str,
        /// The one that lacks.
        with: &'static str,
    },
    /// A key that must stand beside another.
    #[error("{key} needs {lacking} beside it: add {example}")]
    KeyLacks {
        /// The key given.
        key: &'static str,
        /// The one that lacks.
        lacking: &'static str,
        /// What to write.
        example: &'static str,
    },
    /// A leg that the outline does not have.
    #[error("leg {leg} is not in this outline of {legs} legs: they are counted from 0")]
    NoSuchLeg {
        /// The leg.
        leg: usize,
        /// How many there are.
        legs: usize,
    },
    /// A corner that the outline does not have.
    #[error("corner {corner} is not in this outline of {corners} corners: they are counted from 0")]
    NoSuchCorner {
        /// The corner.
        corner: usize,
        /// How many there are.
        corners: usize,
    },
    /// From a corner to itself.
    #[error("it runs from corner {corner} to itself: name two corners")]
    SameCorner {
        /// The corner.
        corner: usize,
    },
    /// An id that another reading has.
    #[error("the id \"{id}\" is used by an earlier reading: give each its own")]
    IdReused {
        /// The id.
        id: String,
    },
}
