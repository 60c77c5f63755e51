//! Every edge as a line in the hand of its kind.

use super::hidden::{Above, stretches, within};
use super::house::{EdgeToDraw, FaceToDraw, Hand, House};
use super::room::{Room, turn, way};
use crate::roof::EdgeKind;
use crate::survey::Point;
use crate::units::Point3;

/// One edge on the sheet: x to the right, y down.
#[derive(Clone, Debug, PartialEq)]
pub struct Line {
    /// Its name; none in the key.
    pub name: Option<String>,
    /// What it is; none for a leg without a roof.
    pub kind: Option<EdgeKind>,
    /// How its length came about.
    pub hand: Hand,
    /// Its ends.
    pub ends: [[f64; 2]; 2],
    /// Away from the house, or toward the wall; one unit long.
    pub out: [f64; 2],
    /// It from end to end, once.
    pub pieces: Vec<Piece>,
}

/// A stretch of a line.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Piece {
    /// Its ends.
    pub ends: [[f64; 2]; 2],
    /// Whether one would see it from above.
    pub sight: Sight,
}

/// Whether a stretch is seen from above.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Sight {
    /// In the open.
    Visible,
    /// Under a higher roof.
    Hidden,
}

/// How far a wall's line is moved into its face where a higher eave runs over it, points.
const UNDER_AN_EAVE: f64 = 11.0;
/// Lines this near in plan are one over the other, feet.
const ONE_OVER_THE_OTHER: f64 = 0.1;

impl Line {
    /// How far from its middle it is drawn: toward its outside, and away from it.
    #[must_use]
    pub fn reach(&self) -> [f64; 2] {
        match (self.hand, self.kind) {
            (Hand::Suspect, _) => [3.5, 3.5],
            (_, Some(EdgeKind::Eave)) => [4.5, 1.3],
            (_, Some(EdgeKind::Rake) | None) => [1.3, 1.3],
            (_, Some(EdgeKind::Ridge)) => [4.0, 4.0],
            (_, Some(EdgeKind::Valley)) => [2.0, 2.0],
            (_, Some(EdgeKind::SideWall | EdgeKind::HeadWall)) => [6.5, 0.8],
            (_, Some(EdgeKind::Hip | EdgeKind::PitchBreak)) => [0.8, 0.8],
        }
    }

    /// What it takes of the sheet.
    pub(super) fn room(&self) -> Room {
        Room::beside(self.ends, self.out, self.reach())
    }
}

/// On the rim of a roof, or a leg: what is written of it stands outside.
pub(super) fn on_rim(kind: Option<EdgeKind>) -> bool {
    matches!(kind, None | Some(EdgeKind::Eave | EdgeKind::Rake))
}

fn is_wall(kind: Option<EdgeKind>) -> bool {
    matches!(kind, Some(EdgeKind::SideWall | EdgeKind::HeadWall))
}

/// The lines of a house; `place` is where a place in plan lies on the sheet.
pub(super) fn lines(
    house: &House,
    above: &[Above],
    place: impl Fn([f64; 2]) -> [f64; 2],
) -> Vec<Line> {
    let line = |edge: &EdgeToDraw| {
        let plan = edge.ends.map(in_plan);
        let out = outward(house, edge);
        // On the sheet y runs down.
        let out = [out[0], -out[1]];
        let under = is_wall(edge.kind) && house.edges.iter().any(|other| runs_over(other, edge));
        let aside = if under { -UNDER_AN_EAVE } else { 0.0 };
        let at = |share: f64| {
            let [a, b] = plan;
            let on = place([0, 1].map(|axis| a[axis] + (b[axis] - a[axis]) * share));
            [0, 1].map(|axis| on[axis] + out[axis] * aside)
        };
        let pieces = stretches(above, edge.ends).into_iter();
        Line {
            name: Some(edge.name.clone()),
            kind: edge.kind,
            hand: edge.hand,
            ends: [at(0.0), at(1.0)],
            out,
            pieces: pieces
                .map(|([from, to], hidden)| Piece {
                    ends: [at(from), at(to)],
                    sight: if hidden {
                        Sight::Hidden
                    } else {
                        Sight::Visible
                    },
                })
                .collect(),
        }
    };
    house.edges.iter().map(line).collect()
}

fn in_plan(end: Point3) -> [f64; 2] {
    let [x, y, _] = end.in_feet();
    [x, y]
}

/// A unit step in plan across an edge to its outside; to its right where it has none.
fn outward(house: &House, edge: &EdgeToDraw) -> [f64; 2] {
    const ASIDE: f64 = 0.02;
    let [a, b] = edge.ends.map(in_plan);
    let [x, y] = turn(way([a, b]));
    let right = [-x, -y];
    let own = edge.faces.first().and_then(|face| house.faces.get(*face));
    let on_ground = |&Point { x, y }: &Point| Point3::feet([x, y, 0.0]);
    let outline: Vec<Vec<Point3>> = vec![house.outline.iter().map(on_ground).collect()];
    let rings = match own {
        Some(FaceToDraw { rings, .. }) if on_rim(edge.kind) || is_wall(edge.kind) => rings,
        None if on_rim(edge.kind) => &outline,
        Some(_) | None => return right,
    };
    let held = |side: f64| {
        let shares = [0.5, 0.3, 0.7];
        let held = shares.iter().filter(|share| {
            let at = [0, 1]
                .map(|axis| a[axis] + (b[axis] - a[axis]) * **share + right[axis] * ASIDE * side);
            within(rings, at)
        });
        held.count()
    };
    if held(1.0) > held(-1.0) {
        right.map(|part| -part)
    } else {
        right
    }
}

/// Whether a higher rim runs over a wall's edge, the two in one line in plan.
fn runs_over(rim: &EdgeToDraw, wall: &EdgeToDraw) -> bool {
    if !on_rim(rim.kind) {
        return false;
    }
    let [a, b] = rim.ends.map(in_plan);
    let along = way([a, b]);
    let places = wall.ends.map(in_plan).map(|end| {
        let from = [end[0] - a[0], end[1] - a[1]];
        let on = from[0] * along[0] + from[1] * along[1];
        let off = from[1] * along[0] - from[0] * along[1];
        (on, off.abs())
    });
    let long = (b[0] - a[0]) * along[0] + (b[1] - a[1]) * along[1];
    let [one, other] = places.map(|(on, _)| on);
    places.iter().all(|(_, off)| *off < ONE_OVER_THE_OTHER)
        && one.max(other).min(long) - one.min(other).max(0.0) > ONE_OVER_THE_OTHER
}
