//! What each crease is, decided from the planes beside it, and creases in one line joined.

use super::plan::{End, Vec2};
use super::planes::{Plane, PlaneKey};
use super::sweep::{Vec3, point};
use super::{Edge, EdgeKind};
use crate::units::Length;

/// An edge that rises less than this per run counts as level.
const LEVEL: f64 = 0.02;
/// Two planes folded by less than this are one surface, degrees.
pub(super) const ONE_SURFACE: f64 = 1.5;
/// Ends nearer than this are one, feet.
const SAME_END: f64 = 1e-5;
/// Shorter edges are not listed, feet.
const SHORTEST: f64 = 1e-6;

/// A leg: which body, which place in its plan.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) struct LegAt {
    pub body: usize,
    pub leg: usize,
}

/// A face beside a piece of edge: its place among all faces, where it rises from, its plane.
#[derive(Clone, Copy, Debug)]
pub(super) struct FaceAt {
    pub face: usize,
    pub at: LegAt,
    pub key: PlaneKey,
    pub plane: Plane,
}

/// Why a face ends where no other face goes on.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Stop {
    /// Its own eave, in the open air.
    Eave,
    /// The vertical plane over an end leg.
    End(End),
    /// Something higher stands there.
    Higher,
}

/// The line of a leg along which a face ends, or a level line where it rises past an eave.
#[derive(Clone, Copy, Debug)]
pub(super) struct LineAt {
    pub key: PlaneKey,
    pub stop: Stop,
    /// The leg and the unit normal into its body; none for a line of level height on the face.
    pub leg: Option<(LegAt, Vec2)>,
}

/// What lies on one side of a piece of edge.
#[derive(Clone, Copy, Debug)]
pub(super) enum Neighbor {
    Face(FaceAt),
    Line(LineAt),
}

/// A straight piece of edge and what lies beside it.
#[derive(Clone, Copy, Debug)]
pub(super) struct Piece {
    pub from: Vec3,
    pub to: Vec3,
    pub left: Neighbor,
    pub right: Neighbor,
    /// See [`super::sweep::Crease::seam`].
    pub seam: Option<Vec3>,
}

/// A piece whose kind is known.
#[derive(Clone, Debug)]
pub(super) struct Known {
    pub kind: EdgeKind,
    pub from: Vec3,
    pub to: Vec3,
    /// The planes it lies between, in order: pieces are joined only between the same two.
    pub between: [PlaneKey; 2],
    pub faces: Vec<usize>,
}

impl Neighbor {
    fn key(&self) -> PlaneKey {
        match self {
            Neighbor::Face(face) => face.key,
            Neighbor::Line(line) => line.key,
        }
    }
}

impl Piece {
    /// What it is; none where the two sides are one surface or no face is there.
    pub fn known(&self) -> Option<Known> {
        if (self.to - self.from).norm() <= 0.0 {
            return None;
        }
        let (kind, faces) = match (&self.left, &self.right) {
            (Neighbor::Face(left), Neighbor::Face(right)) => (
                self.between_faces(left, right)?,
                vec![left.face, right.face],
            ),
            (Neighbor::Face(face), Neighbor::Line(line)) => {
                (self.at_line(self.leftward(), line), vec![face.face])
            }
            (Neighbor::Line(line), Neighbor::Face(face)) => {
                (self.at_line(-self.leftward(), line), vec![face.face])
            }
            (Neighbor::Line(_), Neighbor::Line(_)) => return None,
        };
        let mut between = [self.left.key(), self.right.key()];
        between.sort_unstable();
        Some(Known {
            kind,
            from: self.from,
            to: self.to,
            between,
            faces,
        })
    }

    fn is_level(&self) -> bool {
        let way = self.way();
        is_level(way.z.abs(), way.xy().norm())
    }

    /// The way it is judged by.
    fn way(&self) -> Vec3 {
        self.seam.unwrap_or(self.to - self.from)
    }

    /// Normal to its way in plan, to the left.
    pub fn leftward(&self) -> Vec2 {
        let way = self.way();
        Vec2::new(-way.y, way.x)
    }

    fn between_faces(&self, left: &FaceAt, right: &FaceAt) -> Option<EdgeKind> {
        if left.plane.fold(&right.plane) < ONE_SURFACE {
            return None;
        }
        if left.key.same_leg(&right.key) {
            return Some(EdgeKind::PitchBreak);
        }
        // Going left, the left plane falls below the right one: the surface is the lower of both.
        let apart = left.plane.gradient - right.plane.gradient;
        let falls_away = apart.dot(&self.leftward()) < 0.0;
        Some(match (falls_away, self.is_level()) {
            (true, true) => EdgeKind::Ridge,
            (true, false) => EdgeKind::Hip,
            (false, _) => EdgeKind::Valley,
        })
    }

    /// A face that ends: at its own eave, free over its own gable, or against what is higher,
    /// which is also the plane of a gable where the face lies behind it.
    fn at_line(&self, toward_face: Vec2, line: &LineAt) -> EdgeKind {
        let behind = line
            .leg
            .is_some_and(|(_, inward)| inward.dot(&toward_face) < 0.0);
        match (line.stop, behind, self.is_level()) {
            (Stop::Eave, _, _) => EdgeKind::Eave,
            (Stop::End(End::Gable), false, _) => EdgeKind::Rake,
            (Stop::End(_) | Stop::Higher, _, true) => EdgeKind::HeadWall,
            (Stop::End(_) | Stop::Higher, _, false) => EdgeKind::SideWall,
        }
    }
}

/// Whether an edge that rises so much over such a run counts as level.
pub(super) fn is_level(rise: f64, run: f64) -> bool {
    rise < LEVEL * run
}

/// Joins pieces of one kind that follow each other in one line between the same two planes.
pub(super) fn join(mut known: Vec<Known>) -> Vec<Edge> {
    known.sort_by_key(|piece| (piece.kind, piece.between));
    let mut edges = Vec::new();
    for group in known.chunk_by(|a, b| (a.kind, a.between) == (b.kind, b.between)) {
        let mut open = group.to_vec();
        while let Some(mut piece) = open.pop() {
            while let Some(place) = open.iter().position(|other| follow(&piece, other)) {
                let other = open.swap_remove(place);
                piece = joined(&piece, &other);
            }
            if (piece.to - piece.from).norm() > SHORTEST {
                edges.push(edge(piece));
            }
        }
    }
    let start = |edge: &Edge| {
        let [x, y, _] = edge.from.in_feet();
        (x, y)
    };
    edges.sort_by(|a, b| {
        (a.kind, &a.faces)
            .cmp(&(b.kind, &b.faces))
            .then_with(|| start(a).0.total_cmp(&start(b).0))
            .then_with(|| start(a).1.total_cmp(&start(b).1))
    });
    edges
}

/// Whether two pieces between the same planes share an end. Two planes meet in one line, so that
/// is enough.
fn follow(one: &Known, other: &Known) -> bool {
    [one.from, one.to].iter().any(|a| {
        [other.from, other.to]
            .iter()
            .any(|b| (a - b).norm() < SAME_END)
    })
}

/// The piece over both: between the two ends farthest apart.
fn joined(one: &Known, other: &Known) -> Known {
    let ends = [one.from, one.to, other.from, other.to];
    let mut far = (one.from, one.to);
    for a in ends {
        for b in ends {
            if (b - a).norm() > (far.1 - far.0).norm() {
                far = (a, b);
            }
        }
    }
    let mut faces = [one.faces.clone(), other.faces.clone()].concat();
    faces.sort_unstable();
    faces.dedup();
    Known {
        from: far.0,
        to: far.1,
        faces,
        ..one.clone()
    }
}

/// Lower end first; a level one as it runs along its first axis.
fn edge(piece: Known) -> Edge {
    let [mut from, mut to] = [piece.from, piece.to];
    let backward = (from.z - to.z).abs() < SAME_END && (from.x, from.y) > (to.x, to.y);
    if from.z > to.z + SAME_END || backward {
        (from, to) = (to, from);
    }
    Edge {
        kind: piece.kind,
        length: Length::feet((to - from).norm()),
        from: point(from),
        to: point(to),
        faces: piece.faces,
    }
}
