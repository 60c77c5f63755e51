use serde::{Deserialize, Serialize};

/// A length, built and read by a named unit.
#[derive(Clone, Copy, Debug, PartialEq, PartialOrd, Serialize, Deserialize)]
#[serde(transparent)]
pub struct Length {
    feet: f64,
}

/// Metres in one international foot, exact by definition.
const METRES_IN_FOOT: f64 = 0.3048;

impl Length {
    /// No length at all.
    pub const ZERO: Length = Length { feet: 0.0 };

    /// From feet.
    #[must_use]
    pub const fn feet(feet: f64) -> Length {
        Length { feet }
    }

    /// From inches.
    #[must_use]
    pub fn inches(inches: f64) -> Length {
        Length {
            feet: inches / 12.0,
        }
    }

    /// From metres.
    #[must_use]
    pub fn metres(metres: f64) -> Length {
        Length {
            feet: metres / METRES_IN_FOOT,
        }
    }

    /// In feet.
    #[must_use]
    pub const fn in_feet(self) -> f64 {
        self.feet
    }

    /// In inches.
    #[must_use]
    pub fn in_inches(self) -> f64 {
        self.feet * 12.0
    }

    /// In metres.
    #[must_use]
    pub fn in_metres(self) -> f64 {
        self.feet * METRES_IN_FOOT
    }
}
