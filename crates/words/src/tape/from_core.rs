use super::TapeMessage;
use crate::Quoted;
use eavebook_core::units::{Length, TapeError, TapeRefusal};

impl From<&TapeRefusal> for TapeMessage {
    fn from(refusal: &TapeRefusal) -> TapeMessage {
        let text = Quoted(refusal.text.clone());
        match &refusal.error {
            TapeError::Empty => TapeMessage::Empty,
            TapeError::TooLong => TapeMessage::TooLong { text },
            TapeError::UnknownCharacter { character } => TapeMessage::UnknownCharacter {
                text,
                character: *character,
            },
            TapeError::UnknownWord { word } => TapeMessage::UnknownWord {
                text,
                word: Quoted(word.clone()),
            },
            TapeError::NoNumber => TapeMessage::NoNumber { text },
            TapeError::NoUnit => TapeMessage::NoUnit { text },
            TapeError::Negative => TapeMessage::Negative { text },
            TapeError::InchesOverEleven { inches } => TapeMessage::InchesOverEleven {
                text,
                inches: *inches,
            },
            TapeError::CentimetersOver99 { centimeters } => TapeMessage::CentimetersOver99 {
                text,
                centimeters: *centimeters,
            },
            TapeError::FractionNotUnderOne {
                numerator,
                denominator,
            } => TapeMessage::FractionNotUnderOne {
                text,
                numerator: *numerator,
                denominator: *denominator,
            },
            TapeError::FractionOfOtherUnit => TapeMessage::FractionOfOtherUnit { text },
            TapeError::DecimalFeetWithInches => TapeMessage::DecimalFeetWithInches { text },
            TapeError::DecimalWithFraction => TapeMessage::DecimalWithFraction { text },
            TapeError::InchesBeforeFeet => TapeMessage::InchesBeforeFeet { text },
            TapeError::NotOneLength => TapeMessage::NotOneLength { text },
            TapeError::PointWithoutDigit => TapeMessage::PointWithoutDigit { text },
            TapeError::Comma => TapeMessage::Comma { text },
            TapeError::Zero => TapeMessage::Zero { text },
            TapeError::OverLongest => TapeMessage::OverLongest {
                text,
                longest: Length::LONGEST,
            },
            TapeError::TooManyDigits => TapeMessage::TooManyDigits { text },
        }
    }
}
