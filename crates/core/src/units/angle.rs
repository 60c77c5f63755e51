use serde::{Deserialize, Serialize};

/// An angle, built and read by a named unit; left (counter-clockwise) positive.
#[derive(Clone, Copy, Debug, PartialEq, PartialOrd, Serialize, Deserialize)]
#[serde(transparent)]
pub struct Angle {
    degrees: f64,
}

impl Angle {
    /// From degrees.
    #[must_use]
    pub const fn degrees(degrees: f64) -> Angle {
        Angle { degrees }
    }

    /// From radians.
    #[must_use]
    pub fn radians(radians: f64) -> Angle {
        Angle {
            degrees: radians.to_degrees(),
        }
    }

    /// In degrees.
    #[must_use]
    pub const fn in_degrees(self) -> f64 {
        self.degrees
    }

    /// In radians.
    #[must_use]
    pub fn in_radians(self) -> f64 {
        self.degrees.to_radians()
    }
}

/// The slope of a face: its rise in 12 of run.
#[derive(Clone, Copy, Debug, PartialEq, PartialOrd, Serialize, Deserialize)]
#[serde(transparent)]
pub struct Pitch {
    rise_in_12: f64,
}

impl Pitch {
    /// From a rise in 12 of run.
    #[must_use]
    pub const fn rise_in_12(rise: f64) -> Pitch {
        Pitch { rise_in_12: rise }
    }

    /// From the angle above level.
    #[must_use]
    pub fn from_angle(angle: Angle) -> Pitch {
        Pitch {
            rise_in_12: 12.0 * angle.in_radians().tan(),
        }
    }

    /// How far a small spread of the rise in 12 about this pitch turns its angle.
    #[must_use]
    pub fn spread_in_angle(self, in_12: f64) -> Angle {
        Angle::radians(in_12 / 12.0 / (1.0 + (self.rise_in_12 / 12.0).powi(2)))
    }

    /// The rise in 12 of run.
    #[must_use]
    pub const fn in_12(self) -> f64 {
        self.rise_in_12
    }

    /// The angle above level.
    #[must_use]
    pub fn angle(self) -> Angle {
        Angle::radians((self.rise_in_12 / 12.0).atan())
    }

    /// Roof area over plan area: `sqrt(1 + (rise / 12)^2)`.
    #[must_use]
    pub fn slope_factor(self) -> f64 {
        (1.0 + (self.rise_in_12 / 12.0).powi(2)).sqrt()
    }

    /// Length of a hip or valley over the common run, two equal pitches at a right corner:
    /// `sqrt(2 + (rise / 12)^2)`.
    #[must_use]
    pub fn hip_factor(self) -> f64 {
        (2.0 + (self.rise_in_12 / 12.0).powi(2)).sqrt()
    }
}
