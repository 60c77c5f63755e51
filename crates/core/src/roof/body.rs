use crate::survey::Point;
use crate::units::Pitch;

/// One roof body as the kernel takes it: corners settled, every leg decided.
#[derive(Clone, Debug, PartialEq)]
pub struct BodyShape {
    /// Its name, for refusals.
    pub id: String,
    /// Corners in plan, feet, either order; leg i runs from corner i to corner i + 1.
    pub corners: Vec<Point>,
    /// Nominal direction of each leg in degrees, where the outline was read and not known: the
    /// roof is then raised over the squared outline, and strips of it too thin to build go to the
    /// slope beside them.
    pub nominal_directions: Option<Vec<f64>>,
    /// What rises at each leg.
    pub legs: Vec<LegRise>,
    /// Height of the eaves, feet.
    pub eave_height: f64,
}

/// What rises at one leg.
#[derive(Clone, Debug, PartialEq)]
pub struct LegRise {
    /// Slopes or end.
    pub rise: Rise,
    /// Overhang past the wall, feet.
    pub overhang: f64,
}

/// How the roof rises from a leg.
#[derive(Clone, Debug, PartialEq)]
pub enum Rise {
    /// Slopes from the eave up: (pitch, height it rises; none for the last).
    Slopes(Vec<(Pitch, Option<f64>)>),
    /// A vertical end.
    Gable,
    /// A wall that rises past the roof.
    Wall,
}

impl Rise {
    /// One slope from eave to ridge.
    #[must_use]
    pub fn slope(pitch: Pitch) -> Rise {
        Rise::Slopes(vec![(pitch, None)])
    }

    /// Whether it is one slope from eave to ridge.
    #[must_use]
    pub fn is_one_slope(&self) -> bool {
        matches!(self, Rise::Slopes(bands) if bands.len() == 1)
    }
}
