//! How a tape is marked.

use serde::{Deserialize, Serialize};

/// How a tape is marked.
#[cfg_attr(feature = "typescript", derive(ts_rs::TS))]
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum TapeMarks {
    /// Feet, inches, eighths.
    #[default]
    FeetInches,
    /// Feet and tenths.
    FeetTenths,
    /// Meters and centimeters.
    #[serde(rename = "metres")]
    Meters,
}
