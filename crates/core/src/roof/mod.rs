//! Outlines and pitches to faces, edges and areas.

use crate::survey::{Point, WallSegment};
use crate::units::Pitch;

/// One roof body as the kernel takes it: corners settled, every leg decided.
#[derive(Clone, Debug, PartialEq)]
pub struct BodyShape {
    /// Its name, for refusals.
    pub id: String,
    /// Corners in plan, feet, either order; leg i runs from corner i to corner i + 1.
    pub corners: Vec<Point>,
    /// Nominal direction of each leg in degrees, where the outline was read and not known: the
    /// roof is then raised over the squared outline.
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

/// The roof over all bodies.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Roof {
    /// Faces by body, leg, band, then least place along the leg.
    pub faces: Vec<Face>,
    /// Edges, each once.
    pub edges: Vec<Edge>,
    /// What should be looked at.
    pub cautions: Vec<RoofCaution>,
}

/// One plane of roof.
#[derive(Clone, Debug, PartialEq)]
pub struct Face {
    /// Index of its body.
    pub body: usize,
    /// The leg from which it rises.
    pub leg: usize,
    /// Which slope of that leg, from the eave up; none where the leg has one slope.
    pub band: Option<usize>,
    /// Its slope.
    pub pitch: Pitch,
    /// Area in plan, sq ft.
    pub plan_area: f64,
    /// Area on the slope, sq ft.
    pub area: f64,
    /// Outer ring, counter-clockwise in plan, feet: x, y, height.
    pub polygon: Vec<[f64; 3]>,
    /// Holes, clockwise in plan.
    pub holes: Vec<Vec<[f64; 3]>>,
}

/// One edge of the roof.
#[derive(Clone, Debug, PartialEq)]
pub struct Edge {
    /// What it is.
    pub kind: EdgeKind,
    /// Length in space, feet.
    pub length: f64,
    /// One end: x, y, height.
    pub from: [f64; 3],
    /// The other end.
    pub to: [f64; 3],
    /// The one or two faces that meet there.
    pub faces: Vec<usize>,
}

/// What an edge of a face is.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum EdgeKind {
    /// Level edge of its own pitched leg.
    Eave,
    /// Free edge at a gable.
    Rake,
    /// Level edge between two faces that fall away from it.
    Ridge,
    /// Sloped edge between two faces that fall away from it.
    Hip,
    /// Edge between two faces that fall toward it.
    Valley,
    /// Sloped edge against a wall.
    SideWall,
    /// Level edge against a wall.
    HeadWall,
    /// Edge between two slopes of one leg.
    PitchBreak,
}

/// What should be looked at on a roof.
#[derive(Clone, Debug, PartialEq)]
pub enum RoofCaution {
    /// A gable stands at an inside corner.
    GableAtInsideCorner {
        /// Name of the body.
        body: String,
        /// The leg.
        leg: usize,
    },
    /// A wall segment lies along no end leg and changes nothing.
    IdleWall {
        /// Index of the segment.
        wall: usize,
    },
}

/// Raises the roof over `bodies`. See the crate's outline of the method in `wavefront`.
///
/// # Errors
/// Names the body and leg that admit no roof.
pub fn raise(_bodies: &[BodyShape], _walls: &[WallSegment]) -> Result<Roof, RoofRefusal> {
    Err(RoofRefusal::NeverCloses {
        body: String::new(),
    })
}

/// Why no roof can be raised.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
pub enum RoofRefusal {
    /// All legs are ends.
    #[error(
        "every leg of {body} is an end, so the roof never closes: give at least one leg a pitch"
    )]
    NeverCloses {
        /// Name of the body.
        body: String,
    },
}
