use crate::survey::{Band, Point};
use crate::units::{Angle, Length, Pitch};

/// One roof body as the kernel takes it: corners settled, every leg decided.
#[derive(Clone, Debug, PartialEq)]
pub struct BodyShape {
    /// Its name, for refusals.
    pub id: String,
    /// Corners in plan, clockwise or counter-clockwise; leg i runs from corner i to corner i + 1.
    pub corners: Vec<Point>,
    /// Nominal direction of each leg; `None` means that the corners are exact. With directions the
    /// roof is raised over the squared outline, and slivers go to the neighboring slope.
    pub nominal_directions: Option<Vec<Angle>>,
    /// What rises at each leg.
    pub legs: Vec<LegRise>,
    /// Height of the eaves.
    pub eave_height: Length,
}

/// What rises at one leg.
#[derive(Clone, Debug, PartialEq)]
pub struct LegRise {
    /// Slopes or end.
    pub rise: Rise,
    /// Overhang past the wall.
    pub overhang: Length,
}

/// How the roof rises from a leg.
#[derive(Clone, Debug, PartialEq)]
pub enum Rise {
    /// Slopes from the eave up.
    Slopes(Vec<Band>),
    /// A vertical end.
    Gable,
    /// A wall that rises past the roof.
    Wall,
}

impl Rise {
    /// One slope from eave to ridge.
    #[must_use]
    pub fn slope(pitch: Pitch) -> Rise {
        Rise::Slopes(vec![Band { pitch, rise: None }])
    }

    /// Whether it is one slope from eave to ridge.
    #[must_use]
    pub fn is_one_slope(&self) -> bool {
        matches!(self, Rise::Slopes(bands) if bands.len() == 1)
    }
}
