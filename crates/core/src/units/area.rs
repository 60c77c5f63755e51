use serde::{Deserialize, Serialize};

/// An area, built and read by a named unit.
#[derive(Clone, Copy, Debug, PartialEq, PartialOrd, Serialize, Deserialize)]
#[serde(transparent)]
pub struct Area {
    square_feet: f64,
}

/// Square feet in one roofing square (US Army EN5156, para 3-15).
const SQUARE_FEET_IN_SQUARE: f64 = 100.0;

impl Area {
    /// From square feet.
    #[must_use]
    pub const fn square_feet(square_feet: f64) -> Area {
        Area { square_feet }
    }

    /// In square feet.
    #[must_use]
    pub const fn in_square_feet(self) -> f64 {
        self.square_feet
    }

    /// In roofing squares of 100 sq ft.
    #[must_use]
    pub fn in_squares(self) -> f64 {
        self.square_feet / SQUARE_FEET_IN_SQUARE
    }
}
