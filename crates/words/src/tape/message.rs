use crate::Quoted;
use eavebook_core::units::Length;
use rust_decimal::Decimal;

messages! {
    /// Why a text is not a reading of a tape.
    TapeMessage, "tape";
    /// Only blanks.
    Empty;
    /// More characters than any reading has.
    TooLong {
        /// The text as written.
        text: Quoted,
    } = { text: "38 ft 4 in and then the long way around the back".into() };
    /// A character that no length contains.
    UnknownCharacter {
        /// The text as written.
        text: Quoted,
        /// The character.
        character: char,
    } = { text: "38' #4".into(), character: '#' };
    /// A word that is not a unit of a tape.
    UnknownWord {
        /// The text as written.
        text: Quoted,
        /// The word.
        word: Quoted,
    } = { text: "38 yd".into(), word: "yd".into() };
    /// A unit or a dash without its number.
    NoNumber {
        /// The text as written.
        text: Quoted,
    } = { text: "38' -".into() };
    /// A number without a unit.
    NoUnit {
        /// The text as written.
        text: Quoted,
    } = { text: "38".into() };
    /// A minus sign.
    Negative {
        /// The text as written.
        text: Quoted,
    } = { text: "-38'".into() };
    /// Twelve inches or more after feet.
    InchesOverEleven {
        /// The text as written.
        text: Quoted,
        /// The inches as written.
        inches: Decimal,
    } = { text: "38' 14\"".into(), inches: Decimal::from(14) };
    /// A hundred centimeters or more after meters, or a decimal of one.
    CentimetersOver99 {
        /// The text as written.
        text: Quoted,
        /// The centimeters as written.
        centimeters: Decimal,
    } = { text: "11 m 100 cm".into(), centimeters: Decimal::from(100) };
    /// A fraction of 1 or more, or over 0.
    FractionNotUnderOne {
        /// The text as written.
        text: Quoted,
        /// Above the line.
        numerator: u32,
        /// Below the line.
        denominator: u32,
    } = { text: "38' 4 9/8\"".into(), numerator: 9, denominator: 8 };
    /// A fraction of a unit other than inches.
    FractionOfOtherUnit {
        /// The text as written.
        text: Quoted,
    } = { text: "38 1/2 ft".into() };
    /// Feet with a decimal, and inches.
    DecimalFeetWithInches {
        /// The text as written.
        text: Quoted,
    } = { text: "38.5' 4\"".into() };
    /// A decimal and a fraction in one number.
    DecimalWithFraction {
        /// The text as written.
        text: Quoted,
    } = { text: "4.5 1/2\"".into() };
    /// Inches before feet.
    InchesBeforeFeet {
        /// The text as written.
        text: Quoted,
    } = { text: "4\" 38'".into() };
    /// The same unit twice, units of two tapes, or three parts.
    NotOneLength {
        /// The text as written.
        text: Quoted,
    } = { text: "38 ft 4 m".into() };
    /// A point without a digit on both sides.
    PointWithoutDigit {
        /// The text as written.
        text: Quoted,
    } = { text: ".5 ft".into() };
    /// A comma.
    Comma {
        /// The text as written.
        text: Quoted,
    } = { text: "1,200 ft".into() };
    /// The length is 0.
    Zero {
        /// The text as written.
        text: Quoted,
    } = { text: "0'".into() };
    /// Longer than the longest reading.
    OverLongest {
        /// The text as written.
        text: Quoted,
        /// The longest reading.
        longest: Length,
    } = { text: "10001 ft".into(), longest: Length::LONGEST };
    /// More digits than are kept exactly.
    TooManyDigits {
        /// The text as written.
        text: Quoted,
    } = { text: "38.1111111111111111111111111111111 ft".into() };
}
