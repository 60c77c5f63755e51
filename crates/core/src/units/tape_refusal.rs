use super::quotable;
use std::fmt;

/// Why a text is no reading. One sentence that names the text and the remedy.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct TapeRefusal {
    text: String,
    fault: TapeFault,
}

impl TapeRefusal {
    pub(super) fn new(text: &str, fault: TapeFault) -> TapeRefusal {
        TapeRefusal {
            text: quotable(text),
            fault,
        }
    }

    /// What is wrong with the text.
    #[must_use]
    pub const fn fault(&self) -> &TapeFault {
        &self.fault
    }
}

impl fmt::Display for TapeRefusal {
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(out, "\"{}\" {}", self.text, self.fault)
    }
}

impl std::error::Error for TapeRefusal {}

/// What is wrong with a text that should be a reading.
#[derive(Clone, Debug, PartialEq, Eq, thiserror::Error)]
pub enum TapeFault {
    /// Nothing but blanks.
    #[error("holds no length: write one with its unit, such as 38' 4 1/2\", 38.4 ft or 11.7 m")]
    Empty,
    /// More signs than any reading has.
    #[error("is too long to be one reading: write one length with its unit")]
    TooManySigns,
    /// A sign that stands in no length.
    #[error("holds the sign {sign:?}: write a length such as 38' 4 1/2\", 38.4 ft or 11.7 m")]
    UnknownSign {
        /// The sign.
        sign: char,
    },
    /// A word that is no unit of a tape.
    #[error("says {word}, which is no unit of a tape: write ft, in, m, cm or mm")]
    UnknownWord {
        /// The word.
        word: String,
    },
    /// A unit with no number before it, or a dash with none after it.
    #[error("has a unit or a dash without its number: write the number beside it, such as 38 ft")]
    NoNumber,
    /// A number with no unit.
    #[error("has a number without a unit: write ft, in, m, cm or mm after it")]
    NoUnit,
    /// A minus sign.
    #[error("is below zero: a tape reads from 0 up")]
    BelowZero,
    /// Twelve inches or more beside feet.
    #[error("says {inches} inches: inches run from 0 to 11, carry twelve into feet")]
    InchesOverEleven {
        /// The inches as written.
        inches: String,
    },
    /// A hundred centimetres or more beside metres, or a part of one.
    #[error("says {centimeters} centimetres beside metres: write whole ones from 0 to 99")]
    CentimetersOver99 {
        /// The centimetres as written.
        centimeters: String,
    },
    /// A fraction of one or more, or over nothing.
    #[error("says {numerator}/{denominator}: a fraction is less than 1, such as 1/2 or 5/8")]
    FractionNotUnderOne {
        /// Above the line.
        numerator: u32,
        /// Below the line.
        denominator: u32,
    },
    /// A fraction of something else than inches.
    #[error("has a fraction of a unit that has none: only inches go by halves and eighths")]
    FractionOfNoInch,
    /// Feet with a decimal and inches too.
    #[error("has feet with a decimal beside inches: write 38.5 ft or 38' 6\", not both")]
    DecimalFeetBesideInches,
    /// A decimal and a fraction too.
    #[error("has a decimal beside a fraction: write one of the two")]
    DecimalBesideFraction,
    /// Inches first.
    #[error("has inches before feet: write feet first, such as 38' 4\"")]
    InchesFirst,
    /// The same unit twice, units of two tapes, or three parts.
    #[error("is no one length: write feet and inches, or feet, or metres")]
    NoOneLength,
    /// A point with no digit before or after it.
    #[error("has a point without a digit on either side of it: write 0.5 or 38.4")]
    NakedPoint,
    /// A comma.
    #[error("has a comma: write decimals with a point and thousands without a sign")]
    Comma,
    /// Zero.
    #[error("is no length at all: a reading is more than 0")]
    Nothing,
    /// More than [`super::Length::LONGEST`].
    #[error("is more than 10,000 ft: look again at the digits and the unit")]
    OverLongest,
    /// More digits than can be kept exactly.
    #[error("has more digits than can be read off a tape: write the ones that were read")]
    TooManyDigits,
}

impl TapeFault {
    /// A name for the fault, by which another language finds its own sentence.
    #[must_use]
    pub const fn code(&self) -> &'static str {
        match self {
            TapeFault::Empty => "tape_empty",
            TapeFault::TooManySigns => "tape_too_many_signs",
            TapeFault::UnknownSign { .. } => "tape_unknown_sign",
            TapeFault::UnknownWord { .. } => "tape_unknown_word",
            TapeFault::NoNumber => "tape_no_number",
            TapeFault::NoUnit => "tape_no_unit",
            TapeFault::BelowZero => "tape_below_zero",
            TapeFault::InchesOverEleven { .. } => "tape_inches_over_eleven",
            TapeFault::CentimetersOver99 { .. } => "tape_centimetres_over_99",
            TapeFault::FractionNotUnderOne { .. } => "tape_fraction_not_under_one",
            TapeFault::FractionOfNoInch => "tape_fraction_of_no_inch",
            TapeFault::DecimalFeetBesideInches => "tape_decimal_feet_beside_inches",
            TapeFault::DecimalBesideFraction => "tape_decimal_beside_fraction",
            TapeFault::InchesFirst => "tape_inches_first",
            TapeFault::NoOneLength => "tape_no_one_length",
            TapeFault::NakedPoint => "tape_naked_point",
            TapeFault::Comma => "tape_comma",
            TapeFault::Nothing => "tape_nothing",
            TapeFault::OverLongest => "tape_over_longest",
            TapeFault::TooManyDigits => "tape_too_many_digits",
        }
    }
}
