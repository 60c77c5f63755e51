//! The keys of the keypad.

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
    /// A fraction of an inch.
    Eighths {
        /// 0 to 7.
        eighths: u8,
    },
    /// Takes the last key back.
    TakeBackOne,
    /// Records the reading.
    BookIt,
}

/// The answer to the question about a fast double press.
#[cfg_attr(feature = "typescript", derive(ts_rs::TS))]
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Meant {
    /// Two digits.
    Two,
    /// One digit.
    One,
}

/// The finest fraction that is read.
#[cfg_attr(feature = "typescript", derive(ts_rs::TS))]
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum FractionStep {
    /// Eighths of an inch.
    #[default]
    Eighths,
    /// Quarters of an inch.
    Quarters,
}
