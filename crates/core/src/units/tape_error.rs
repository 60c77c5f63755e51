//! Why a text is not a reading.

use super::quotable;
use rust_decimal::Decimal;
use std::fmt;

/// A text that is not a reading, and why.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct TapeRefusal {
    /// The text as written, cut after 100 characters.
    pub text: String,
    /// The first error in it.
    pub error: TapeError,
}

/// Why a text is not a reading. The texts serve the refusals of a survey file.
#[derive(Clone, Debug, PartialEq, Eq, thiserror::Error)]
pub enum TapeError {
    /// Only blanks.
    #[error("holds no length: write one with its unit, such as 38' 4 1/2\", 38.4 ft or 11.7 m")]
    Empty,
    /// More characters than any reading has.
    #[error("is too long to be one reading: write one length with its unit")]
    TooLong,
    /// A character that no length contains.
    #[error("holds the sign {character:?}: write a length such as 38' 4 1/2\", 38.4 ft or 11.7 m")]
    UnknownCharacter {
        /// The character.
        character: char,
    },
    /// A word that is not a unit of a tape.
    #[error("says {word}, which is no unit of a tape: write ft, in, m, cm or mm")]
    UnknownWord {
        /// The word.
        word: String,
    },
    /// A unit without a number before it, or a dash without a number after it.
    #[error("has a unit or a dash without its number: write the number beside it, such as 38 ft")]
    NoNumber,
    /// A number without a unit.
    #[error("has a number without a unit: write ft, in, m, cm or mm after it")]
    NoUnit,
    /// A minus sign.
    #[error("is below zero: a tape reads from 0 up")]
    Negative,
    /// Twelve inches or more after feet.
    #[error("says {inches} inches: inches run from 0 to 11, carry twelve into feet")]
    InchesOverEleven {
        /// The inches as written.
        inches: Decimal,
    },
    /// A hundred centimeters or more after meters, or a decimal of one.
    #[error("says {centimeters} centimetres beside metres: write whole ones from 0 to 99")]
    CentimetersOver99 {
        /// The centimeters as written.
        centimeters: Decimal,
    },
    /// A fraction of 1 or more, or over 0.
    #[error("says {numerator}/{denominator}: a fraction is less than 1, such as 1/2 or 5/8")]
    FractionNotUnderOne {
        /// Above the line.
        numerator: u32,
        /// Below the line.
        denominator: u32,
    },
    /// A fraction of a unit other than inches.
    #[error("has a fraction of a unit that has none: only inches go by halves and eighths")]
    FractionOfOtherUnit,
    /// Feet with a decimal, and inches.
    #[error("has feet with a decimal beside inches: write 38.5 ft or 38' 6\", not both")]
    DecimalFeetWithInches,
    /// A decimal and a fraction in one number.
    #[error("has a decimal beside a fraction: write one of the two")]
    DecimalWithFraction,
    /// Inches before feet.
    #[error("has inches before feet: write feet first, such as 38' 4\"")]
    InchesBeforeFeet,
    /// The same unit twice, units of two tapes, or three parts.
    #[error("is no one length: write feet and inches, or feet, or metres")]
    NotOneLength,
    /// A point without a digit on both sides.
    #[error("has a point without a digit on either side of it: write 0.5 or 38.4")]
    PointWithoutDigit,
    /// A comma.
    #[error("has a comma: write decimals with a point and thousands without a sign")]
    Comma,
    /// The length is 0.
    #[error("is no length at all: a reading is more than 0")]
    Zero,
    /// Longer than [`super::Length::LONGEST`].
    #[error("is more than 10,000 ft: look again at the digits and the unit")]
    OverLongest,
    /// More digits than are kept exactly.
    #[error("has more digits than can be read off a tape: write the ones that were read")]
    TooManyDigits,
}

impl TapeRefusal {
    /// The most characters kept of a text.
    const LONGEST: usize = 100;

    pub(super) fn new(text: &str, error: TapeError) -> TapeRefusal {
        TapeRefusal {
            text: text.chars().take(TapeRefusal::LONGEST).collect(),
            error,
        }
    }
}

impl fmt::Display for TapeRefusal {
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(out, "\"{}\" {}", quotable(&self.text), self.error)
    }
}

impl std::error::Error for TapeRefusal {}
