use crate::ReadingText;
use eavebook_core::book::keypad::SlotUnit;
use eavebook_core::book::kinds::Thing;

messages! {
    /// Why a key of the keypad changed nothing, and what the keypad asks.
    ReadingMessage, "reading";
    /// A digit above 9, or a fraction above 7/8.
    NotADigit {
        /// The number received.
        digit: u8,
    } = { digit: 12 };
    /// A digit after a slot's 0.
    DigitAfterZero {
        /// Unit of the slot.
        unit: SlotUnit,
    } = { unit: SlotUnit::Feet }, { unit: SlotUnit::Centimeters };
    /// The number is longer than a tape.
    LongerThanTape {
        /// The number with the refused digit.
        typed: u32,
        /// The number without its last digit.
        likely: u32,
        /// Unit of the slot.
        unit: SlotUnit,
    } = { typed: 400, likely: 40, unit: SlotUnit::Feet };
    /// Twelve inches or more.
    OverFoot {
        /// The inches with the refused digit.
        inches: u32,
    } = { inches: 14 };
    /// The slot holds no more digits.
    SlotFull {
        /// Unit of the slot.
        unit: SlotUnit,
    } = { unit: SlotUnit::Tenths };
    /// The key to the next slot, before a number in this one.
    NoNumberBefore {
        /// Unit of the slot.
        unit: SlotUnit,
    } = { unit: SlotUnit::Feet }, { unit: SlotUnit::Inches };
    /// The key to the next slot, after that slot was reached.
    UnitAlreadySet {
        /// Unit of the key.
        unit: SlotUnit,
    } = { unit: SlotUnit::Feet };
    /// A digit after the fraction.
    DigitAfterFraction;
    /// A fraction before the feet.
    FractionBeforeFeet;
    /// An odd eighth on a keypad of quarters.
    NotAQuarter {
        /// Eighths of an inch.
        eighths: u8,
    } = { eighths: 3 };
    /// An inches or fraction key on a tape that has none.
    TapeWithoutInches;
    /// Nothing to take back or to record.
    NothingTyped;
    /// A number without its unit.
    NoUnit {
        /// The number in the slot.
        typed: u32,
        /// Unit of the key to press.
        unit: SlotUnit,
    } = { typed: 27, unit: SlotUnit::Feet }, { typed: 12, unit: SlotUnit::Meters };
    /// The length is 0.
    Zero;
    /// The key records the reading and types nothing.
    NotATypingKey;
    /// A press so fast that it may have been a bounce.
    DoublePress {
        /// The digit.
        digit: u8,
    } = { digit: 2 };
    /// No two readings of a thing agree.
    Differ {
        /// The thing.
        thing: Thing,
        /// Its readings, oldest first; two or more.
        readings: Vec<ReadingText>,
    } = { thing: Thing::Leg { leg: 4 }, readings: vec!["42 ft 7 in".into(), "24 ft 7 in".into()] },
        { thing: Thing::Leg { leg: 4 }, readings: vec![
            "42 ft 7 in".into(), "24 ft 7 in".into(), "47 ft 2 in".into()
        ] };
}
