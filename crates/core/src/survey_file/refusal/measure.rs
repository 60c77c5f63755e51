//! Numbers, lengths and angles.

use crate::units::TapeRefusal;

/// A number, length or angle out of its range.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
pub enum MeasureFault {
    /// Tape text that is no reading.
    #[error(transparent)]
    Tape(#[from] TapeRefusal),
    /// A length that nobody measured at a house.
    #[error("{} ft is no length of a house: write more than 0 and at most 10,000 ft", short(*feet))]
    Length {
        /// As written.
        feet: f64,
    },
    /// A length below zero or too long, where none is a length too.
    #[error("{} ft is out of range: write 0 to 10,000 ft", short(*feet))]
    LengthOrNone {
        /// As written.
        feet: f64,
    },
    /// Inches that nobody measured at a house.
    #[error("{} in is out of range: write {least} to 120,000 in", short(*inches))]
    Inches {
        /// As written.
        inches: f64,
        /// Least, in words.
        least: &'static str,
    },
    /// A standard deviation of nothing.
    #[error(
        "a sigma of {} says that nothing was uncertain: write more than 0, or leave it out",
        short(*sigma)
    )]
    Sigma {
        /// As written.
        sigma: f64,
    },
    /// A place too far off.
    #[error("{} ft lies too far off: count from a corner of the house", short(*feet))]
    Place {
        /// As written.
        feet: f64,
    },
    /// A number that counts something.
    #[error("{} counts nothing: write a whole number from {least} to {most}", short(*number))]
    Count {
        /// As written.
        number: f64,
        /// Least.
        least: u32,
        /// Most.
        most: u32,
    },
    /// A number that must be above another.
    #[error("{} is out of range: write a number from {least} to {most}", short(*number))]
    Range {
        /// As written.
        number: f64,
        /// Least.
        least: f64,
        /// Most.
        most: f64,
    },
}

/// A number as it stands in a sentence: never hundreds of digits.
pub(super) fn short(number: f64) -> String {
    if number.abs() < 1e12 && (number.abs() > 1e-6 || number == 0.0) {
        number.to_string()
    } else {
        format!("{number:e}")
    }
}
