//! What rises at a leg.

use super::measure::short;

/// What rises at a leg, said in a way that no roof has.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
pub enum EdgeFault {
    /// Nothing of a slope or an end.
    #[error("nothing is said of what rises here: give pitch, pitch_readings, bands or end")]
    Empty,
    /// More than one thing said.
    #[error("it gives both {first} and {second}: keep one of the two")]
    TwoThings {
        /// The key given first.
        first: &'static str,
        /// The other.
        second: &'static str,
    },
    /// A pitch that is no slope.
    #[error(
        "a pitch of {} in 12 is no slope of a roof: write more than 0 and at most 48, or \
         {{\"end\": \"gable\"}} where nothing slopes",
        short(*pitch)
    )]
    PitchRange {
        /// Rise in 12, as written.
        pitch: f64,
    },
    /// A word for an end that does not exist.
    #[error("the end \"{end}\" is unknown: write gable or wall")]
    UnknownEnd {
        /// As written.
        end: String,
    },
    /// No band, or too many.
    #[error("it has {bands} bands: give 1 to 4, from the eave up")]
    BandCount {
        /// How many.
        bands: usize,
    },
    /// A band below another that does not say where it ends.
    #[error("a band with another above it has no rise: give the height in feet that it rises")]
    BandWithoutRise,
    /// A last band that ends.
    #[error("the last band has a rise: take it out, it runs up to the ridge")]
    LastBandWithRise,
}
