//! The keypad on which a length is typed.

use serde::{Deserialize, Serialize};

/// A key of the keypad.
#[cfg_attr(feature = "typescript", derive(ts_rs::TS))]
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(tag = "key", rename_all = "snake_case")]
pub enum Key {
    /// A digit.
    Digit {
        /// 0 to 9.
        digit: u8,
    },
    /// To the next slot: `ft` or `m`.
    Whole,
    /// To the inches slot.
    Inches,
    /// A fraction of an inch, eighths 0 (`even`) to 7.
    Eighths {
        /// 0 to 7.
        eighths: u8,
    },
    /// Take the last key back.
    TakeBackOne,
    /// Book it.
    BookIt,
}

/// What a fast double press meant.
#[cfg_attr(feature = "typescript", derive(ts_rs::TS))]
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Meant {
    /// Two digits.
    Two,
    /// One digit.
    One,
}

/// A slot of the keypad.
#[cfg_attr(feature = "typescript", derive(ts_rs::TS))]
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Slot {
    /// Whole feet.
    Ft,
    /// Inches.
    In,
    /// Fraction of an inch.
    Fraction,
    /// Tenths of a foot.
    Tenths,
    /// Whole metres.
    M,
    /// Centimetres.
    Cm,
}
