//! The house as a solid from a fixed place: the faces of the roof and the walls under its rim, in
//! parallel projection, what lies farther painted first.
//!
//! The walls stand straight under the eaves and rakes, down to a lower roof or the ground: overhangs
//! are not drawn.
//! Nothing here is measured by eye; every figure stands on the plan and in its list.

use super::view_order::{Sheet, normal, painted};
use super::{Edge, EdgeKind, Face, Roof};
use crate::survey::{Place, Point};
use crate::units::{Length, Point3};

/// Where the house is looked at from. The front is the side of least y, as on the plan.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Viewpoint {
    /// Square on from the street, a little above the eaves.
    Front,
    /// Square on from the side that is right from the street.
    Right,
    /// Square on from behind.
    Back,
    /// Square on from the side that is left from the street.
    Left,
    /// From the street, a little to its left, above.
    FrontLeft,
    /// From the street, a little to its right, above.
    FrontRight,
    /// From behind, on the side that is right from the street.
    BackRight,
    /// From behind, on the side that is left from the street.
    BackLeft,
    /// Straight down.
    Above,
}

impl Viewpoint {
    /// Every viewpoint there is: square on, then over each corner, then from above.
    pub const ALL: [Viewpoint; 9] = [
        Viewpoint::Front,
        Viewpoint::Right,
        Viewpoint::Back,
        Viewpoint::Left,
        Viewpoint::FrontLeft,
        Viewpoint::FrontRight,
        Viewpoint::BackRight,
        Viewpoint::BackLeft,
        Viewpoint::Above,
    ];

    /// In words: `from the front left`.
    #[must_use]
    pub fn words(self) -> &'static str {
        match self {
            Viewpoint::Front => "from the front",
            Viewpoint::Right => "from the right",
            Viewpoint::Back => "from the back",
            Viewpoint::Left => "from the left",
            Viewpoint::FrontLeft => "from the front left",
            Viewpoint::FrontRight => "from the front right",
            Viewpoint::BackRight => "from the back right",
            Viewpoint::BackLeft => "from the back left",
            Viewpoint::Above => "from above",
        }
    }

    /// The picture's axes in space, each one unit long: across it, up it, and toward the viewer.
    #[must_use]
    pub fn axes(self) -> [[f64; 3]; 3] {
        let (turn, height) = self.angles();
        let (east, north) = turn.to_radians().sin_cos();
        let (rise, reach) = height.to_radians().sin_cos();
        [
            [-north, east, 0.0],
            [-east * rise, -north * rise, reach],
            [east * reach, north * reach, rise],
        ]
    }

    /// Toward the viewer in plan, clockwise from the back; and above the horizon. Degrees.
    fn angles(self) -> (f64, f64) {
        match self {
            Viewpoint::Front => (180.0, 24.0),
            Viewpoint::Right => (90.0, 24.0),
            Viewpoint::Back => (0.0, 24.0),
            Viewpoint::Left => (270.0, 24.0),
            Viewpoint::FrontLeft => (207.0, 38.0),
            Viewpoint::FrontRight => (153.0, 38.0),
            Viewpoint::BackRight => (27.0, 38.0),
            Viewpoint::BackLeft => (333.0, 38.0),
            Viewpoint::Above => (180.0, 90.0),
        }
    }
}

/// What a piece of the solid is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Part {
    /// A face of the roof, by its place among the roof's faces.
    Face(usize),
    /// A wall under an edge, by its place among the roof's edges.
    Wall(usize),
}

/// One piece of the solid as it is seen.
#[derive(Clone, Debug, PartialEq)]
pub struct Piece {
    /// What it is.
    pub part: Part,
    /// Its rings across and up the picture: the outer one first, then holes.
    pub rings: Vec<Vec<Point>>,
    /// Sides of the outer ring, by the place of their first corner, along which the same wall goes
    /// on: nobody sees a line there.
    pub seams: Vec<usize>,
    /// How much light falls on it, 0 to 1: from over the viewer's left shoulder.
    pub light: f64,
}

/// The solid as it is seen from one place.
#[derive(Clone, Debug, PartialEq)]
pub struct SolidView {
    /// From where.
    pub from: Viewpoint,
    /// Pieces that face the viewer, the farthest first: painted in this order, each hides what it
    /// stands before.
    pub pieces: Vec<Piece>,
}

/// How a place in space falls on the picture.
#[derive(Clone, Copy)]
pub(super) struct Camera {
    right: [f64; 3],
    up: [f64; 3],
    /// Toward the viewer.
    pub toward: [f64; 3],
}

impl Camera {
    fn at(from: Viewpoint) -> Camera {
        let [right, up, toward] = from.axes();
        Camera { right, up, toward }
    }

    /// Across and up the picture, and how near the viewer; feet.
    pub fn see(&self, place: [f64; 3]) -> [f64; 3] {
        [
            dot(self.right, place),
            dot(self.up, place),
            dot(self.toward, place),
        ]
    }
}

/// The ground that a roof is drawn over, and whether anybody read how high its eaves are: where
/// nobody did, they stand at 0, and walls are drawn [`WALLS`] high.
#[must_use]
pub fn ground_under(roof: &Roof) -> (Length, Walls) {
    let heights = roof.faces.iter().flat_map(|face| &face.polygon);
    let lowest = heights
        .map(|at| at.height().in_feet())
        .fold(f64::INFINITY, f64::min);
    if lowest.is_finite() && lowest <= 0.0 {
        (Length::feet(lowest) - WALLS, Walls::Supposed)
    } else {
        (Length::ZERO, Walls::Read)
    }
}

/// Height of the walls of one story, drawn while the eave height is unread.
pub const WALLS: Length = Length::feet(9.0);

/// How the height of the walls in a view came about.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Walls {
    /// Somebody read the height of the eaves.
    Read,
    /// Nobody did.
    Supposed,
}

/// The solid under a roof as it is seen from one place. `ground` is the height of the ground.
#[must_use]
pub fn solid_view(roof: &Roof, ground: Length, from: Viewpoint) -> SolidView {
    let camera = Camera::at(from);
    let light = unit([
        camera.toward[0] - camera.right[0] * 0.9,
        camera.toward[1] - camera.right[1] * 0.9,
        camera.toward[2] + 0.5,
    ]);
    let faces = roof.faces.iter().enumerate().map(|(place, face)| {
        (
            (Part::Face(place), Vec::new()),
            face.rings().map(|ring| feet(ring)).collect::<Vec<_>>(),
        )
    });
    let rims = roof
        .edges
        .iter()
        .enumerate()
        .filter(|(_, edge)| matches!(edge.kind, EdgeKind::Eave | EdgeKind::Rake));
    let walls: Vec<(Part, Wall)> = rims
        .flat_map(|(place, edge)| {
            let walls = walls_under(roof, edge, ground.in_feet()).into_iter();
            walls.map(move |wall| (Part::Wall(place), wall))
        })
        .collect();
    let walls = walls.iter().map(|(part, wall)| {
        let others = walls.iter().map(|(_, other)| other);
        ((*part, seams(wall, others)), vec![wall.to_vec()])
    });
    let sheets: Vec<Sheet<(Part, Vec<usize>)>> = faces
        .chain(walls)
        .filter_map(|(part, rings)| Sheet::seen(part, &rings, &camera, light))
        .collect();
    let pieces = painted(sheets).into_iter().map(|sheet| Piece {
        part: sheet.part.0,
        seams: sheet.part.1,
        rings: sheet.rings.iter().map(|ring| points(ring)).collect(),
        light: sheet.light,
    });
    SolidView {
        from,
        pieces: pieces.collect(),
    }
}

/// A wall by its foot from left to right as it is seen from outside, then its top back again.
type Wall = [[f64; 3]; 4];

/// The upright sides of a wall along which another goes on in the same plane.
fn seams<'a>(wall: &Wall, others: impl Iterator<Item = &'a Wall> + Clone) -> Vec<usize> {
    let way = |wall: &Wall| {
        let (dx, dy) = (wall[1][0] - wall[0][0], wall[1][1] - wall[0][1]);
        let length = dx.hypot(dy);
        [dx / length, dy / length]
    };
    let [dx, dy] = way(wall);
    let goes_on = |ours: usize, theirs: usize| {
        others.clone().any(|other| {
            let [ex, ey] = way(other);
            let apart = (wall[ours][0] - other[theirs][0]).hypot(wall[ours][1] - other[theirs][1]);
            apart < 2.0 * ASIDE && (dx * ey - dy * ex).abs() < ASIDE && dx * ex + dy * ey > 0.0
        })
    };
    // Side 1 stands at the right end, side 3 at the left.
    let ends = [(1, goes_on(1, 0)), (3, goes_on(0, 1))];
    let ends = ends.into_iter().filter(|(_, goes_on)| *goes_on);
    ends.map(|(side, _)| side).collect()
}

/// How far beside an edge it is asked what lies there, feet.
const ASIDE: f64 = 1e-3;

/// The walls under an edge, down to the roof of another body that lies at their outside, or to the
/// ground. Seen from outside their rings run counter-clockwise.
fn walls_under(roof: &Roof, edge: &Edge, ground: f64) -> Vec<Wall> {
    let Some(face) = edge.faces.first().map(|face| &roof.faces[*face]) else {
        return Vec::new();
    };
    let (from, to) = (edge.from.in_feet(), edge.to.in_feet());
    let (dx, dy) = (to[0] - from[0], to[1] - from[1]);
    let length = dx.hypot(dy);
    if length < ASIDE {
        return Vec::new();
    }
    let aside = [-dy / length * ASIDE, dx / length * ASIDE];
    let at = |share: f64| [0, 1, 2].map(|k| from[k] + (to[k] - from[k]) * share);
    let beside = |share: f64, side: f64| Point {
        x: at(share)[0] + aside[0] * side,
        y: at(share)[1] + aside[1] * side,
    };
    let held = |side: f64| face.carries(Place::Plan(beside(0.5, side)));
    let out = match (held(1.0), held(-1.0)) {
        (true, false) => -1.0,
        (false, true) => 1.0,
        (true, true) | (false, false) => return Vec::new(),
    };
    let mut cuts = vec![0.0, 1.0];
    for other in &roof.faces {
        for ring in other.rings() {
            for (a, b) in ring.iter().zip(ring.iter().cycle().skip(1)) {
                cuts.extend(crossed(
                    [beside(0.0, out), beside(1.0, out)],
                    [a.in_feet(), b.in_feet()],
                ));
            }
        }
    }
    cuts.sort_by(f64::total_cmp);
    let stretches = cuts
        .windows(2)
        .filter(|cut| cut[1] - cut[0] > ASIDE / length);
    let wall = |cut: &[f64]| {
        let middle = beside(f64::midpoint(cut[0], cut[1]), out);
        let top = at(f64::midpoint(cut[0], cut[1]))[2];
        let below = roof.faces.iter().filter(|other| {
            other.carries(Place::Plan(middle)) && height_of(other, middle) < top - ASIDE
        });
        let highest = below.max_by(|a, b| height_of(a, middle).total_cmp(&height_of(b, middle)));
        let foot = |share: f64| {
            let [x, y, top] = at(share);
            let foot = highest.map_or(ground, |face| height_of(face, Point { x, y }));
            [x, y, foot.max(ground).min(top)]
        };
        let [a, b] = if out < 0.0 {
            [cut[0], cut[1]]
        } else {
            [cut[1], cut[0]]
        };
        [foot(a), foot(b), at(b), at(a)]
    };
    stretches.map(wall).collect()
}

/// Where on the first segment, as a share of it, the second one crosses it in plan.
fn crossed([a, b]: [Point; 2], [c, d]: [[f64; 3]; 2]) -> Option<f64> {
    let (rx, ry) = (b.x - a.x, b.y - a.y);
    let (sx, sy) = (d[0] - c[0], d[1] - c[1]);
    let turn = rx * sy - ry * sx;
    let (qx, qy) = (c[0] - a.x, c[1] - a.y);
    let (t, u) = ((qx * sy - qy * sx) / turn, (qx * ry - qy * rx) / turn);
    let within = 0.0..=1.0;
    (within.contains(&t) && within.contains(&u)).then_some(t)
}

/// Height of a face's plane over a place, feet.
fn height_of(face: &Face, at: Point) -> f64 {
    let ring = feet(&face.polygon);
    let (normal, first) = (normal(&ring), ring[0]);
    first[2] - (normal[0] * (at.x - first[0]) + normal[1] * (at.y - first[1])) / normal[2]
}

fn feet(ring: &[Point3]) -> Vec<[f64; 3]> {
    ring.iter().map(|corner| corner.in_feet()).collect()
}

fn points(ring: &[[f64; 2]]) -> Vec<Point> {
    ring.iter().map(|&[x, y]| Point { x, y }).collect()
}

pub(super) fn dot(a: [f64; 3], b: [f64; 3]) -> f64 {
    a[0] * b[0] + a[1] * b[1] + a[2] * b[2]
}

pub(super) fn unit(a: [f64; 3]) -> [f64; 3] {
    let length = dot(a, a).sqrt();
    a.map(|part| part / length)
}
