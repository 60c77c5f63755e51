//! Sides of a house as a camera looks at them, and what is known of a photo of one.

use crate::book::house_side::HouseSide;
use crate::units::Angle;

impl HouseSide {
    /// All four, by where a camera looks that is square to them, clockwise from the front.
    pub const CLOCKWISE: [HouseSide; 4] = [
        HouseSide::Front,
        HouseSide::Left,
        HouseSide::Back,
        HouseSide::Right,
    ];

    pub(super) fn index(self) -> usize {
        match self {
            HouseSide::Front => 0,
            HouseSide::Left => 1,
            HouseSide::Back => 2,
            HouseSide::Right => 3,
        }
    }

    /// Where a camera looks that is square to this side, clockwise from where it looks at the
    /// front: who stands at the right side looks back the other way.
    #[must_use]
    pub fn square_on(self) -> Angle {
        Angle::degrees(90.0 * self.index() as f64)
    }
}

/// What a person said of a photo.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Confirmed {
    /// Nothing yet.
    Not,
    /// It shows this side.
    Side(HouseSide),
}

/// One photo, in the order in which they were taken.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Shot {
    /// Where the camera looked, clockwise from where it looked at the front; none where nobody
    /// knows.
    pub heading: Option<Angle>,
    /// What one standard deviation of the heading has on top of the usual, for example where a
    /// magnetic front and a true heading are compared and the declination is not known.
    pub heading_doubt: Angle,
    /// Seconds since the photo before; none: not known, or the first.
    pub since_last: Option<f64>,
    /// What a person said.
    pub confirmed: Confirmed,
}
