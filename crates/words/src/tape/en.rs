use super::TapeMessage;
use crate::{En, Format};

pub(super) fn text(message: &TapeMessage, f: &En) -> String {
    match message {
        TapeMessage::Empty => {
            "No length is written. Write one with its unit, such as 38' 4 1/2\", 38.4 ft or 11.7 m."
                .to_owned()
        }
        TapeMessage::TooLong { text } => format!(
            "{} is too long for one reading. Write one length with its unit.",
            f.quoted(text)
        ),
        TapeMessage::UnknownCharacter { text, character } => format!(
            "{} has the character {character}. Write a length such as 38' 4 1/2\", 38.4 ft or 11.7 m.",
            f.quoted(text)
        ),
        TapeMessage::UnknownWord { text, word } => format!(
            "{} has the word {}, which is not a unit of a tape. Write ft, in, m, cm or mm.",
            f.quoted(text),
            f.quoted(word)
        ),
        TapeMessage::NoNumber { text } => format!(
            "{} has a unit or a dash without a number. Write the number with it, such as 38 ft.",
            f.quoted(text)
        ),
        TapeMessage::NoUnit { text } => format!(
            "{} has a number without a unit. Write ft, in, m, cm or mm after it.",
            f.quoted(text)
        ),
        TapeMessage::Negative { text } => format!(
            "{} is below zero. Write a length above zero.",
            f.quoted(text)
        ),
        TapeMessage::InchesOverEleven { text, inches } => format!(
            "{} has {inches} inches after the feet. Write inches from 0 to 11 and count 12 as a foot.",
            f.quoted(text)
        ),
        TapeMessage::CentimetersOver99 { text, centimeters } => format!(
            "{} has {centimeters} centimeters after the meters. Write whole ones from 0 to 99.",
            f.quoted(text)
        ),
        TapeMessage::FractionNotUnderOne {
            text,
            numerator,
            denominator,
        } => format!(
            "{} has the fraction {numerator}/{denominator}. Write one below 1, such as 1/2 or 5/8.",
            f.quoted(text)
        ),
        TapeMessage::FractionOfOtherUnit { text } => format!(
            "{} has a fraction of another unit than inches. Write that unit with a decimal.",
            f.quoted(text)
        ),
        TapeMessage::DecimalFeetWithInches { text } => format!(
            "{} has feet with a decimal and inches too. Write 38.5 ft or 38' 6\", not both.",
            f.quoted(text)
        ),
        TapeMessage::DecimalWithFraction { text } => format!(
            "{} has a decimal and a fraction in one number. Write only one of them.",
            f.quoted(text)
        ),
        TapeMessage::InchesBeforeFeet { text } => format!(
            "{} has inches before feet. Write feet first, such as 38' 4\".",
            f.quoted(text)
        ),
        TapeMessage::NotOneLength { text } => format!(
            "{} is not one length. Write feet and inches, or feet, or meters.",
            f.quoted(text)
        ),
        TapeMessage::PointWithoutDigit { text } => format!(
            "{} has a point without a digit on both sides. Write 0.5 or 38.4.",
            f.quoted(text)
        ),
        TapeMessage::Comma { text } => format!(
            "{} has a comma. Write decimals with a point, and thousands without a sign.",
            f.quoted(text)
        ),
        TapeMessage::Zero { text } => {
            format!("{} has no length. Write a reading above 0.", f.quoted(text))
        }
        TapeMessage::OverLongest { text, longest } => format!(
            "{} is longer than {}. Check the digits and the unit.",
            f.quoted(text),
            f.length(*longest)
        ),
        TapeMessage::TooManyDigits { text } => format!(
            "{} has more digits than a tape shows. Write only the ones that you read.",
            f.quoted(text)
        ),
    }
}
