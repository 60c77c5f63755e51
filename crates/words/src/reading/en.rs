use super::ReadingMessage;
use crate::{En, Format};
use eavebook_core::book::keypad::SlotUnit;
use eavebook_core::units::Length;

pub(super) fn text(message: &ReadingMessage, f: &En) -> String {
    match message {
        ReadingMessage::NotADigit { digit } => format!("{digit} is not a digit. Press 0 to 9."),
        ReadingMessage::DigitAfterZero { unit } => {
            format!(
                "This slot has 0 {}. Take it back, or go on to the next unit.",
                f.slot_unit(*unit)
            )
        }
        ReadingMessage::LongerThanTape {
            typed,
            likely,
            unit,
        } => {
            let unit = f.slot_unit(*unit);
            format!("{typed} {unit} is longer than a tape. Did you read {likely} {unit}?")
        }
        ReadingMessage::OverFoot { inches } => format!(
            "{inches} in is over a foot. Did you read {}?",
            f.length(Length::inches(f64::from(*inches)))
        ),
        ReadingMessage::SlotFull { unit } => {
            format!(
                "The slot for {} is full. Book it, or take one back.",
                long(*unit)
            )
        }
        ReadingMessage::NoNumberBefore { unit } => {
            format!("How many {}? Press 0 for none.", long(*unit))
        }
        ReadingMessage::UnitAlreadySet { unit } => {
            format!(
                "The {} are typed. Go on with the rest of the length.",
                long(*unit)
            )
        }
        ReadingMessage::DigitAfterFraction => {
            "The fraction is typed. Book it, or take the fraction back.".to_owned()
        }
        ReadingMessage::FractionBeforeFeet => {
            "The fraction is of an inch. Press ft first.".to_owned()
        }
        ReadingMessage::NotAQuarter { eighths } => format!(
            "{eighths}/8 is not a quarter. To read eighths, change the fractions in Settings."
        ),
        ReadingMessage::TapeWithoutInches => {
            "This tape has no inches. To read inches, change My tape reads in Settings.".to_owned()
        }
        ReadingMessage::NothingTyped => {
            "Nothing is typed yet. Type what the tape reads.".to_owned()
        }
        ReadingMessage::NoUnit { typed, unit } => {
            format!("{typed} what? Press {}.", f.slot_unit(*unit))
        }
        ReadingMessage::Zero => {
            "0 is not a length. Take it back and type what the tape reads.".to_owned()
        }
        ReadingMessage::NotATypingKey => {
            "This key types nothing. Press Book it to record.".to_owned()
        }
        ReadingMessage::DoublePress { digit } => format!("Two {digit}s?"),
        ReadingMessage::Differ { thing, readings } => {
            let values: Vec<String> = readings.iter().map(|reading| f.reading(reading)).collect();
            let again = if values.len() == 2 {
                "a third time"
            } else {
                "once more"
            };
            format!(
                "The readings of {} differ: {}. Read it {again} from the tape.",
                f.thing(thing),
                f.and(&values)
            )
        }
    }
}

/// A unit in a sentence, plural.
const fn long(unit: SlotUnit) -> &'static str {
    match unit {
        SlotUnit::Feet => "feet",
        SlotUnit::Inches => "inches",
        SlotUnit::Tenths => "tenths",
        SlotUnit::Meters => "meters",
        SlotUnit::Centimeters => "centimeters",
    }
}
