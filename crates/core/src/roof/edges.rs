//! What each crease is, decided from the planes beside it, and creases in one line joined.

use super::plan::{End, Vec2};
use super::planes::{Plane, PlaneKey};
use super::sweep::Vec3;
use super::{Edge, EdgeKind};

/// An edge that rises less than this per run counts as level.
const LEVEL: f64 = 0.02;
/// Two planes folded by less than this are one surface, degrees.
const ONE_SURFACE: f64 = 1.5;
/// Ends nearer than this are one, feet.
const SAME_END: f64 = 1e-5;
/// Shorter edges are not listed, feet.
const SHORTEST: f64 = 1e-6;

/// What lies on one side of a piece of edge.
#[derive(Clone, Copy, Debug)]
pub(super) enum Beside {
    /// A face: its place among all faces, its plane.
    Face {
        face: usize,
        key: PlaneKey,
        plane: Plane,
    },
    /// A vertical plane over an end leg with that unit normal into its body.
    Upright {
        key: PlaneKey,
        inward: Vec2,
        end: End,
    },
    /// The open air.
    Air { key: PlaneKey },
}

/// A straight piece of edge and what lies beside it.
#[derive(Clone, Copy, Debug)]
pub(super) struct Piece {
    pub from: Vec3,
    pub to: Vec3,
    pub left: Beside,
    pub right: Beside,
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

impl Beside {
    fn key(&self) -> PlaneKey {
        match self {
            Beside::Face { key, .. } | Beside::Upright { key, .. } | Beside::Air { key } => *key,
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
            (
                Beside::Face {
                    face: a,
                    key: key_a,
                    plane: left,
                },
                Beside::Face {
                    face: b,
                    key: key_b,
                    plane: right,
                },
            ) => (
                self.between_faces([left, right], [*key_a, *key_b])?,
                vec![*a, *b],
            ),
            (Beside::Face { face, .. }, Beside::Upright { inward, end, .. }) => {
                (self.at_upright(self.leftward(), *inward, *end), vec![*face])
            }
            (Beside::Upright { inward, end, .. }, Beside::Face { face, .. }) => (
                self.at_upright(-self.leftward(), *inward, *end),
                vec![*face],
            ),
            (Beside::Face { face, .. }, Beside::Air { .. })
            | (Beside::Air { .. }, Beside::Face { face, .. }) => (EdgeKind::Eave, vec![*face]),
            (
                Beside::Upright { .. } | Beside::Air { .. },
                Beside::Upright { .. } | Beside::Air { .. },
            ) => return None,
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
        let run = (self.to - self.from).xy().norm();
        is_level((self.to.z - self.from.z).abs(), run)
    }

    /// Normal to its way in plan, to the left.
    fn leftward(&self) -> Vec2 {
        let way = (self.to - self.from).xy();
        Vec2::new(-way.y, way.x)
    }

    fn between_faces(&self, planes: [&Plane; 2], keys: [PlaneKey; 2]) -> Option<EdgeKind> {
        if planes[0].fold(planes[1]) < ONE_SURFACE {
            return None;
        }
        if let [
            PlaneKey::Slope(body, leg, _),
            PlaneKey::Slope(other_body, other_leg, _),
        ] = keys
            && (body, leg) == (other_body, other_leg)
        {
            return Some(EdgeKind::PitchBreak);
        }
        // Going left, the left plane falls below the right one: the surface is the lower of both.
        let falls_away = (planes[0].gradient - planes[1].gradient).dot(&self.leftward()) < 0.0;
        Some(match (falls_away, self.is_level()) {
            (true, true) => EdgeKind::Ridge,
            (true, false) => EdgeKind::Hip,
            (false, _) => EdgeKind::Valley,
        })
    }

    /// A face that ends at an upright plane: free over the end's own leg, against it where the
    /// face lies behind it.
    fn at_upright(&self, toward_face: Vec2, inward: Vec2, end: End) -> EdgeKind {
        let behind = inward.dot(&toward_face) < 0.0;
        match (end, behind, self.is_level()) {
            (End::Gable, false, _) => EdgeKind::Rake,
            (End::Gable | End::Wall, _, true) => EdgeKind::HeadWall,
            (End::Gable | End::Wall, _, false) => EdgeKind::SideWall,
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
    edges.sort_by(|a, b| {
        (a.kind, &a.faces)
            .cmp(&(b.kind, &b.faces))
            .then_with(|| a.from[0].total_cmp(&b.from[0]))
            .then_with(|| a.from[1].total_cmp(&b.from[1]))
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
        length: (to - from).norm(),
        from: from.into(),
        to: to.into(),
        faces: piece.faces,
    }
}
