//! What was seen and read at a house, before anything is computed: the one input of the kernels.
//! The survey file and the field book both come down to it.

use crate::units::{Angle, Length, Pitch};

/// A place in plan, feet.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Point {
    /// Feet along the first axis.
    pub x: f64,
    /// Feet along the second axis, left of the first.
    pub y: f64,
}

/// All of one job that a roof can be computed from.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Survey {
    /// Roof bodies in the order in which they were entered.
    pub bodies: Vec<Body>,
    /// Walls that rise past a lower roof.
    pub walls: Vec<WallSegment>,
    /// What stands out of the roof, in the order in which it was entered.
    pub penetrations: Vec<Penetration>,
    /// What the covering is nailed to, where somebody looked.
    pub deck: Option<Deck>,
    /// What lies on the roof now, where somebody said.
    pub covering: Option<Covering>,
    /// Figures from somebody else: compared, never used as readings.
    pub hearsay: Vec<Hearsay>,
    /// What was seen of the roof: compared with the computed one, never used for it.
    pub seen: Vec<RoofObservation>,
}

/// Something seen of the roof from where one stood. Bodies and legs count from 0.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum RoofObservation {
    /// What stands over a leg.
    End {
        /// The body.
        body: usize,
        /// The leg.
        leg: usize,
        /// What was seen there.
        end: ObservedEnd,
    },
    /// The highest ridge of a body over its eaves, sighted or taped.
    Ridge {
        /// The body.
        body: usize,
        /// How high.
        over_eaves: Length,
        /// One standard deviation of it.
        sigma: Length,
    },
    /// How many faces rise from a leg.
    Faces {
        /// The body.
        body: usize,
        /// The leg.
        leg: usize,
        /// How many were counted.
        count: usize,
    },
}

/// What was seen over a leg.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum ObservedEnd {
    /// A vertical end.
    Gable,
    /// A slope.
    Slope,
}

/// One roof over one outline at one eave height.
#[derive(Clone, Debug, PartialEq)]
pub struct Body {
    /// Its name in the survey.
    pub id: String,
    /// Height of the eaves above ground.
    pub eave_height: Length,
    /// The shape of the outline as seen, before any reading is used.
    pub outline: Sketch,
    /// Taped values, in the order in which they were entered.
    pub readings: Vec<Reading>,
    /// What rises at each leg, one a leg; empty when nothing was said.
    pub edges: Vec<LegEdge>,
    /// Where corner 0 lies, when it was found from another body; else the sketch says it.
    pub placed_from: Option<PlacedFrom>,
}

/// A body found from a corner of another.
#[derive(Clone, Debug, PartialEq)]
pub struct PlacedFrom {
    /// Name of the other body.
    pub body: String,
    /// Its corner.
    pub corner: usize,
    /// From that corner to corner 0 of this body, feet along the axes of the plan.
    pub offset: Point,
    /// One standard deviation of the offset along each axis.
    pub sigma: Length,
}

/// The shape of an outline as seen.
#[derive(Clone, Debug, PartialEq)]
pub enum Sketch {
    /// Corners known from elsewhere: no uncertainty, no readings needed.
    Known(Vec<Point>),
    /// Turns seen at the corners; lengths come from readings.
    Turned {
        /// Where corner 0 lies.
        start: Point,
        /// Direction of leg 0 from the first axis.
        heading: Angle,
        /// Nominal turn at corners 1..n, the last one at corner 0 again; left positive, sum +-360.
        turns: Vec<Angle>,
        /// One standard deviation of a turn about its nominal value.
        turn_sigma: Angle,
    },
}

/// One taped value.
#[derive(Clone, Debug, PartialEq)]
pub struct Reading {
    /// Unique in the survey.
    pub id: String,
    /// What the tape spanned.
    pub span: Span,
    /// The value.
    pub value: Length,
    /// The text as read off the tape, when there was one.
    pub text: Option<String>,
    /// One standard deviation; none: `hypot(0.18, 0.0005 L)` ft.
    pub sigma: Option<Length>,
}

/// What the tape spanned. Leg i runs from corner i to corner i + 1.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Span {
    /// A whole leg.
    Leg(usize),
    /// A check length between two corners.
    Tie(usize, usize),
    /// The absolute projection of corner `from` to corner `to` on the direction of a leg.
    Overall {
        /// First corner.
        from: usize,
        /// Second corner.
        to: usize,
        /// The leg whose direction counts.
        along_leg: usize,
    },
    /// The wall under a leg: the leg is the wall and both overhangs.
    WallOfLeg {
        /// The leg.
        leg: usize,
        /// Overhang at its start and at its end.
        overhangs: [Length; 2],
    },
}

/// What rises at one leg.
#[derive(Clone, Debug, PartialEq)]
pub struct LegEdge {
    /// Slope or end.
    pub rise: Rise,
    /// Overhang past the wall, when asked.
    pub overhang: Option<Length>,
}

/// How the roof rises from a leg.
#[derive(Clone, Debug, PartialEq)]
pub enum Rise {
    /// Nobody said.
    Unknown,
    /// One slope, given as a number: exact.
    Pitch(Pitch),
    /// One slope, read one or more times.
    PitchReadings(Vec<PitchReading>),
    /// The same slope as that of another leg, taken over and not read: one unknown for both.
    SameAs(usize),
    /// Several slopes from the eave up.
    Bands(Vec<Band>),
    /// A vertical end over the leg; the neighbours run up to it.
    Gable,
    /// A wall that rises past the roof.
    Wall,
}

/// One slope of a leg with pitch breaks.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Band {
    /// Slope of the band.
    pub pitch: Pitch,
    /// Height it rises; none for the last.
    pub rise: Option<Length>,
}

/// One reading of a slope. A reversed one was taken with the phone turned end for end: it reads
/// the slope less the phone's zero error, a forward one the slope plus it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct PitchReading {
    /// Angle above level, positive.
    pub angle: Angle,
    /// With what, and which way round it lay.
    pub way: Way,
    /// Where on the face, where somebody said.
    pub place: Option<SlopePlace>,
    /// One standard deviation, where it was stated; none: the usual one of its way.
    pub sigma: Option<Angle>,
}

impl PitchReading {
    /// A reading of which nobody said where on the face it was taken, nor how good it is.
    #[must_use]
    pub const fn new(angle: Angle, way: Way) -> PitchReading {
        PitchReading {
            angle,
            way,
            place: None,
            sigma: None,
        }
    }

    /// The same reading, taken at a place.
    #[must_use]
    pub const fn at(self, place: SlopePlace) -> PitchReading {
        PitchReading {
            place: Some(place),
            ..self
        }
    }
}

/// With what a slope was read.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Way {
    /// A phone, as held.
    Forward,
    /// A phone, turned end for end.
    Reversed,
    /// A level along the run and a tape down from its end: no phone, so no zero error of one.
    LevelAndTape,
    /// Worked out from marks on a photo taken from the ground.
    Sighted,
    /// A number from elsewhere, a plan or a person, beside readings on the roof.
    Number,
}

/// Where on a face a slope was read.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum SlopePlace {
    /// At or under the second course, where a roof may kick out flatter.
    NearEave,
    /// Above the second course.
    AboveSecondCourse,
    /// Near the ridge.
    NearRidge,
}

/// A wall that rises past a lower roof.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct WallSegment {
    /// One end in plan.
    pub from: Point,
    /// The other end in plan.
    pub to: Point,
    /// Height of its top above ground.
    pub top: Length,
}

/// Something that stands out of a roof.
#[derive(Clone, Debug, PartialEq)]
pub struct Penetration {
    /// What it is, with its size.
    pub kind: PenetrationKind,
    /// Where it stands.
    pub at: Place,
}

/// Where a penetration stands.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Place {
    /// At a place in plan.
    Plan(Point),
    /// On the face of a leg; where on it, nobody measured.
    FaceOf {
        /// Index of the body.
        body: usize,
        /// The leg from which the face rises.
        leg: usize,
    },
}

/// What stands out of a roof, with the size that its flashing needs.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum PenetrationKind {
    /// A vent pipe.
    Pipe {
        /// Outside diameter.
        size: Length,
    },
    /// The mast of a service or an aerial.
    Mast {
        /// Outside diameter.
        size: Length,
    },
    /// A metal flue.
    Flue {
        /// Outside diameter.
        size: Length,
    },
    /// A chimney.
    Chimney {
        /// Across the slope.
        width: Length,
        /// Up the slope.
        depth: Length,
    },
    /// A skylight.
    Skylight {
        /// Across the slope.
        width: Length,
        /// Up the slope.
        depth: Length,
    },
    /// A box vent.
    BoxVent,
    /// A fan.
    Fan,
    /// A dish.
    Dish,
    /// Solar panels.
    Solar,
    /// Anything else.
    Other,
}

impl PenetrationKind {
    /// What it is, in a word or two.
    #[must_use]
    pub fn name(self) -> &'static str {
        match self {
            PenetrationKind::Pipe { .. } => "pipe",
            PenetrationKind::Mast { .. } => "mast",
            PenetrationKind::Flue { .. } => "flue",
            PenetrationKind::Chimney { .. } => "chimney",
            PenetrationKind::Skylight { .. } => "skylight",
            PenetrationKind::BoxVent => "box vent",
            PenetrationKind::Fan => "fan",
            PenetrationKind::Dish => "dish",
            PenetrationKind::Solar => "solar panel",
            PenetrationKind::Other => "thing",
        }
    }

    /// Whether it is a chimney so wide that it holds water back: over 30 in (International
    /// Residential Code R1003.20).
    #[must_use]
    pub fn holds_water_back(self) -> bool {
        const WIDEST_IN: f64 = 30.0;
        if let PenetrationKind::Chimney { width, .. } = self {
            width.in_inches() > WIDEST_IN + 1e-9
        } else {
            false
        }
    }
}

/// What a covering is nailed to.
#[derive(Clone, Debug, PartialEq)]
pub struct Deck {
    /// In words: `plank`, `sheet`; where somebody saw it.
    pub kind: Option<String>,
    /// Width of a plank.
    pub plank_width: Option<Length>,
    /// Gap between planks.
    pub gap: Option<Length>,
}

/// What lies on the roof now.
#[derive(Clone, Debug, PartialEq)]
pub struct Covering {
    /// In words: `strip shingle`, `wood shake`; where somebody saw it.
    pub kind: Option<String>,
    /// How many layers, where somebody looked.
    pub layers: Option<u32>,
}

/// A figure from somebody else.
#[derive(Clone, Debug, PartialEq)]
pub struct Hearsay {
    /// Who said so.
    pub source: String,
    /// Living area, sq ft.
    pub living_area: Option<f64>,
    /// Storeys counted.
    pub floors: Option<f64>,
    /// Garage, sq ft.
    pub garage: Option<f64>,
    /// Roof area, sq ft.
    pub roof_area: Option<f64>,
}
