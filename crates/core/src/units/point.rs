use super::Length;
use serde::Serialize;

/// A position in space, built and read by a named unit: two axes in plan, then the height.
#[derive(Clone, Copy, Debug, Default, PartialEq, Serialize)]
#[serde(transparent)]
pub struct Point3 {
    feet: [f64; 3],
}

impl Point3 {
    /// From feet: x, y, height.
    #[must_use]
    pub const fn feet(feet: [f64; 3]) -> Point3 {
        Point3 { feet }
    }

    /// In feet: x, y, height.
    #[must_use]
    pub const fn in_feet(self) -> [f64; 3] {
        self.feet
    }

    /// Its height.
    #[must_use]
    pub const fn height(self) -> Length {
        Length::feet(self.feet[2])
    }
}
