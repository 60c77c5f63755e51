//! Why a key of the keypad changed nothing.

use super::keypad_slots::SlotUnit;

/// Why a key changed nothing. Whatever was typed stays as it was.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum KeyRefusal {
    /// A digit above 9, or a fraction above 7/8.
    NotADigit {
        /// The number received.
        digit: u8,
    },
    /// A digit after a slot's 0.
    DigitAfterZero {
        /// Unit of the slot.
        unit: SlotUnit,
    },
    /// The number is longer than a tape.
    LongerThanTape {
        /// The number with the refused digit.
        typed: u32,
        /// Unit of the slot.
        unit: SlotUnit,
    },
    /// Twelve inches or more.
    OverFoot {
        /// The inches with the refused digit.
        inches: u32,
    },
    /// The slot holds no more digits.
    SlotFull {
        /// Unit of the slot.
        unit: SlotUnit,
    },
    /// The key to the next slot, before a number in this one.
    NoNumberBefore {
        /// Unit of the slot.
        unit: SlotUnit,
    },
    /// The key to the next slot, after that slot was reached.
    UnitAlreadySet {
        /// Unit of the key.
        unit: SlotUnit,
    },
    /// A digit after the fraction.
    DigitAfterFraction,
    /// A fraction before the feet.
    FractionBeforeFeet,
    /// An odd eighth on a keypad of quarters.
    NotAQuarter {
        /// Eighths of an inch.
        eighths: u8,
    },
    /// An inches or fraction key on a tape that has none.
    TapeWithoutInches,
    /// Nothing to take back or to record.
    NothingTyped,
    /// A number without its unit.
    NoUnit {
        /// The number in the slot.
        typed: u32,
        /// Unit of the key to press.
        unit: SlotUnit,
    },
    /// The length is 0.
    Zero,
    /// The key records the reading and types nothing: see [`super::keypad::Keypad::reading`].
    NotATypingKey,
}
