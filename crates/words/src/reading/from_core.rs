use super::ReadingMessage;
use eavebook_core::book::keypad::KeyRefusal;

impl From<KeyRefusal> for ReadingMessage {
    fn from(refusal: KeyRefusal) -> ReadingMessage {
        match refusal {
            KeyRefusal::NotADigit { digit } => ReadingMessage::NotADigit { digit },
            KeyRefusal::DigitAfterZero { unit } => ReadingMessage::DigitAfterZero { unit },
            KeyRefusal::LongerThanTape { typed, unit } => ReadingMessage::LongerThanTape {
                typed,
                // One digit too many is the likeliest slip.
                likely: typed / 10,
                unit,
            },
            KeyRefusal::OverFoot { inches } => ReadingMessage::OverFoot { inches },
            KeyRefusal::SlotFull { unit } => ReadingMessage::SlotFull { unit },
            KeyRefusal::NoNumberBefore { unit } => ReadingMessage::NoNumberBefore { unit },
            KeyRefusal::UnitAlreadySet { unit } => ReadingMessage::UnitAlreadySet { unit },
            KeyRefusal::DigitAfterFraction => ReadingMessage::DigitAfterFraction,
            KeyRefusal::FractionBeforeFeet => ReadingMessage::FractionBeforeFeet,
            KeyRefusal::NotAQuarter { eighths } => ReadingMessage::NotAQuarter { eighths },
            KeyRefusal::TapeWithoutInches => ReadingMessage::TapeWithoutInches,
            KeyRefusal::NothingTyped => ReadingMessage::NothingTyped,
            KeyRefusal::NoUnit { typed, unit } => ReadingMessage::NoUnit { typed, unit },
            KeyRefusal::Zero => ReadingMessage::Zero,
            KeyRefusal::NotATypingKey => ReadingMessage::NotATypingKey,
        }
    }
}
