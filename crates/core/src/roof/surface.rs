use crate::survey::{Place, Point};
use crate::units::{Area, Length, Pitch, Point3};

/// The roof over all bodies.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Roof {
    /// Faces by body, leg, band, then least place along the leg.
    pub faces: Vec<Face>,
    /// Edges, each once: pieces of one kind in one line between the same two planes are one.
    pub edges: Vec<Edge>,
    /// What should be looked at.
    pub cautions: Vec<RoofCaution>,
}

impl Roof {
    /// Area on the slope of all faces.
    #[must_use]
    pub fn area(&self) -> Area {
        self.faces.iter().map(|face| face.area).sum()
    }

    /// Area in plan of all faces.
    #[must_use]
    pub fn plan_area(&self) -> Area {
        self.faces.iter().map(|face| face.plan_area).sum()
    }

    /// The same roof turned half round in plan: a walk with the building on its right has the front
    /// at its back.
    #[must_use]
    pub fn turned_half(&self) -> Roof {
        let turned = |at: Point3| {
            let [x, y, height] = at.in_feet();
            Point3::feet([-x, -y, height])
        };
        let ring = |ring: &Vec<Point3>| ring.iter().copied().map(turned).collect();
        let faces = self.faces.iter().map(|face| Face {
            polygon: ring(&face.polygon),
            holes: face.holes.iter().map(ring).collect(),
            ..face.clone()
        });
        let edges = self.edges.iter().map(|edge| Edge {
            from: turned(edge.from),
            to: turned(edge.to),
            ..edge.clone()
        });
        Roof {
            faces: faces.collect(),
            edges: edges.collect(),
            cautions: Vec::new(),
        }
    }

    /// Length of all edges of one kind.
    #[must_use]
    pub fn length_of(&self, kind: EdgeKind) -> Length {
        self.edges
            .iter()
            .filter(|edge| edge.kind == kind)
            .map(|edge| edge.length)
            .sum()
    }
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
    /// Area in plan.
    pub plan_area: Area,
    /// Area on the slope.
    pub area: Area,
    /// Outer ring, counter-clockwise in plan.
    pub polygon: Vec<Point3>,
    /// Holes, clockwise in plan.
    pub holes: Vec<Vec<Point3>>,
}

impl Face {
    /// Its outer ring, then its holes.
    pub fn rings(&self) -> impl Iterator<Item = &Vec<Point3>> + Clone {
        std::iter::once(&self.polygon).chain(&self.holes)
    }

    /// Whether a penetration stands on it: its place in plan lies within the outer ring and no hole,
    /// or it was booked over the leg of this face.
    #[must_use]
    pub fn carries(&self, place: Place) -> bool {
        match place {
            Place::Plan(at) => {
                within(&self.polygon, at) && !self.holes.iter().any(|hole| within(hole, at))
            }
            Place::FaceOf { body, leg } => self.body == body && self.leg == leg,
        }
    }
}

/// Even-odd rule (Shimrat, Algorithm 112, 1962).
fn within(ring: &[Point3], at: Point) -> bool {
    let mut inside = false;
    for (a, b) in ring.iter().zip(ring.iter().cycle().skip(1)) {
        let (a, b) = (a.in_feet(), b.in_feet());
        if (a[1] > at.y) != (b[1] > at.y) {
            let x = a[0] + (at.y - a[1]) / (b[1] - a[1]) * (b[0] - a[0]);
            if at.x < x {
                inside = !inside;
            }
        }
    }
    inside
}

/// One edge of the roof.
#[derive(Clone, Debug, PartialEq)]
pub struct Edge {
    /// What it is.
    pub kind: EdgeKind,
    /// Length in space.
    pub length: Length,
    /// Its lower end.
    pub from: Point3,
    /// Its upper end.
    pub to: Point3,
    /// The faces along it: one at a free edge, two where planes meet; more only where legs in one
    /// line carry one plane together.
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

impl EdgeKind {
    /// Every kind there is.
    pub const ALL: [EdgeKind; 8] = [
        EdgeKind::Eave,
        EdgeKind::Rake,
        EdgeKind::Ridge,
        EdgeKind::Hip,
        EdgeKind::Valley,
        EdgeKind::SideWall,
        EdgeKind::HeadWall,
        EdgeKind::PitchBreak,
    ];

    /// Its name in files: `side_wall`.
    #[must_use]
    pub fn key(self) -> &'static str {
        match self {
            EdgeKind::Eave => "eave",
            EdgeKind::Rake => "rake",
            EdgeKind::Ridge => "ridge",
            EdgeKind::Hip => "hip",
            EdgeKind::Valley => "valley",
            EdgeKind::SideWall => "side_wall",
            EdgeKind::HeadWall => "head_wall",
            EdgeKind::PitchBreak => "pitch_break",
        }
    }

    /// The letter of its name on a plan: `r` of `r2`.
    #[must_use]
    pub fn letter(self) -> char {
        match self {
            EdgeKind::Eave => 'e',
            EdgeKind::Rake => 'k',
            EdgeKind::Ridge => 'r',
            EdgeKind::Hip => 'h',
            EdgeKind::Valley => 'v',
            EdgeKind::SideWall => 's',
            EdgeKind::HeadWall => 'w',
            EdgeKind::PitchBreak => 'b',
        }
    }

    /// The trade's word for it: `Side wall`.
    #[must_use]
    pub fn title(self) -> &'static str {
        match self {
            EdgeKind::Eave => "Eave",
            EdgeKind::Rake => "Rake",
            EdgeKind::Ridge => "Ridge",
            EdgeKind::Hip => "Hip",
            EdgeKind::Valley => "Valley",
            EdgeKind::SideWall => "Side wall",
            EdgeKind::HeadWall => "Head wall",
            EdgeKind::PitchBreak => "Pitch break",
        }
    }
}

/// What should be looked at on a roof.
#[derive(Clone, Debug, PartialEq)]
pub enum RoofCaution {
    /// A gable stands at an inside corner: the slope beside it dies against its plane.
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
    /// A strip of a slope that is too thin to build was given to the slope beside it.
    Sliver {
        /// Name of the body.
        body: String,
        /// The leg from which the strip rose.
        leg: usize,
        /// The leg whose slope took it.
        taken_by: usize,
        /// Its width in plan.
        width: Length,
        /// Its length in plan.
        length: Length,
    },
    /// Water stands in a valley that does not fall.
    LevelValley {
        /// One end.
        from: Point3,
        /// The other end.
        to: Point3,
    },
}
