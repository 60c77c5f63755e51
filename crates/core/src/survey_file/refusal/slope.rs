//! Readings of a pitch.

use super::measure::short;
use crate::pitch::NoTilt;

/// A reading of a slope that is none.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
pub enum SlopeFault {
    /// An angle that is no slope.
    #[error(
        "{} degrees is no slope of a roof: write more than 0 and at most 76, a reversed reading too",
        short(*degrees)
    )]
    DegreesRange {
        /// As written.
        degrees: f64,
    },
    /// A rise that is no slope.
    #[error(
        "{} in 12 is no slope of a roof: write more than 0 and at most 48 in 12",
        short(*pitch)
    )]
    PitchRange {
        /// Rise in 12.
        pitch: f64,
    },
    /// An empty list of readings.
    #[error("it holds no reading: give at least one {{\"degrees\": 26.5}}, or leave it out")]
    NoReading,
    /// More than one thing read.
    #[error("it gives both {first} and {second}: make two readings of it")]
    TwoWays {
        /// The key given first.
        first: &'static str,
        /// The other.
        second: &'static str,
    },
    /// A key that says more of another kind of reading.
    #[error("{key} goes with {with} only: take it out")]
    OnlyWith {
        /// The key.
        key: &'static str,
        /// What it goes with.
        with: &'static str,
    },
    /// A place on a face that nobody knows.
    #[error(
        "the place \"{place}\" is unknown: write near the eave, above the second course or near \
         the ridge"
    )]
    UnknownPlace {
        /// As written.
        place: String,
    },
    /// What a phone felt is no reading.
    #[error(transparent)]
    Tilt(#[from] NoTilt),
}
