//! All bodies together: the faces that are seen from above, and the pieces of edge around them.

use super::edges::{LineAt, Neighbor, Piece, Stop};
use super::overlay::{ASKED, Bound, Line, VisiblePart, cuts, seen};
use super::plan::Vec2;
use super::planes::{Plane, PlaneKey};
use super::raised::Raised;
use super::solid::{Bounds, Solid, winds_round};
use super::sweep::{Side, Vec3, lift, point, tidy};
use super::{BodyShape, Face, RaiseError};
use crate::units::{Area, Point3};

/// Most bodies of one roof: each is looked at with all others near it.
const MOST_BODIES: usize = 60;
/// How far beside an edge it is asked what lies there, feet.
const BESIDE: f64 = 1e-5;
/// Faces that differ by less than this at an edge meet there; a body higher by more stands above
/// it, feet. Wider than what the steepest slope rises over [`BESIDE`].
const MEETS: f64 = 1e-4;

/// The faces of all bodies and what bounds them.
pub(super) struct RoofUnion {
    pub raised: Vec<Raised>,
    /// By body, leg, band, then least place along the leg.
    pub faces: Vec<Face>,
    pub pieces: Vec<Piece>,
}

impl RoofUnion {
    /// Raises each body and takes out what lies inside another.
    pub fn new(bodies: &[BodyShape]) -> Result<RoofUnion, RaiseError> {
        if bodies.is_empty() {
            return Err(RaiseError::NoBodies);
        }
        if bodies.len() > MOST_BODIES {
            return Err(RaiseError::TooManyBodies {
                bodies: bodies.len(),
                most: MOST_BODIES,
            });
        }
        let raised = bodies
            .iter()
            .map(Raised::new)
            .collect::<Result<Vec<_>, _>>()?;
        if let [alone] = raised.as_slice() {
            let faces = alone.faces(0);
            let pieces = alone.pieces(0, &faces);
            return Ok(RoofUnion {
                faces: faces.into_iter().map(|numbered| numbered.face).collect(),
                pieces,
                raised,
            });
        }
        let solids: Vec<Solid> = raised
            .iter()
            .enumerate()
            .map(|(body, raised)| Solid::new(body, raised))
            .collect();
        let mut parts = Vec::new();
        for solid in &solids {
            for slab in &solid.slabs {
                let body = &raised[slab.body];
                let found = seen(slab, body, &solids).ok_or_else(|| RaiseError::LostTrack {
                    body: body.plan.body.clone(),
                    leg: body.plan.legs[body.sweep.faces[slab.swept].leg].number,
                })?;
                parts.extend(found.into_iter().map(|seen| Part::new(seen, body)));
            }
        }
        parts.sort_by(|a, b| a.order.cmp(&b.order).then(a.least.total_cmp(&b.least)));
        let pieces = Edges {
            raised: &raised,
            solids: &solids,
            parts: &parts,
        }
        .pieces();
        Ok(RoofUnion {
            faces: parts.into_iter().map(|part| part.face).collect(),
            pieces,
            raised,
        })
    }
}

/// One seen part of a face, as a face of the roof.
struct Part {
    /// Body, leg as given, band.
    order: (usize, usize, usize),
    /// Least place along the leg.
    least: f64,
    seen: VisiblePart,
    plane: Plane,
    bounds: Bounds,
    face: Face,
}

impl Part {
    fn new(seen: VisiblePart, raised: &Raised) -> Part {
        let swept = &raised.sweep.faces[seen.swept];
        let along = raised.plan.legs[swept.leg].along;
        let plane = raised.face_at(seen.body, seen.swept, 0).plane;
        let corners: Vec<Vec2> = seen.rings[0].iter().map(|bound| bound.from).collect();
        let mut rings = seen.rings.iter().map(|ring| {
            let lifted = ring
                .iter()
                .map(|bound| lift(bound.from, plane.height(bound.from)));
            tidy(lifted.collect())
                .into_iter()
                .map(point)
                .collect::<Vec<Point3>>()
        });
        let mut face = raised.face(seen.body, seen.swept);
        face.polygon = rings.next().unwrap_or_default();
        face.holes = rings.collect();
        face.plan_area = Area::square_feet(seen.area);
        face.area = Area::square_feet(seen.area * plane.factor());
        Part {
            order: (seen.body, face.leg, swept.band),
            least: corners
                .iter()
                .map(|corner| along.dot(corner))
                .fold(f64::INFINITY, f64::min),
            bounds: Bounds::around(&corners),
            seen,
            plane,
            face,
        }
    }

    fn holds(&self, place: Vec2) -> bool {
        let winds = |ring: &Vec<Bound>| {
            let corners: Vec<Vec2> = ring.iter().map(|bound| bound.from).collect();
            winds_round(&corners, place)
        };
        // A hole runs clockwise: turned about it winds round what it takes out.
        let winds_back = |ring: &Vec<Bound>| {
            let corners: Vec<Vec2> = ring.iter().rev().map(|bound| bound.from).collect();
            winds_round(&corners, place)
        };
        self.bounds.holds(place)
            && winds(&self.seen.rings[0])
            && !self.seen.rings[1..].iter().any(winds_back)
    }
}

/// What is needed to say what lies beyond a piece around a seen part.
struct Edges<'a> {
    raised: &'a [Raised],
    solids: &'a [Solid],
    parts: &'a [Part],
}

impl Edges<'_> {
    fn pieces(&self) -> Vec<Piece> {
        let mut pieces = Vec::new();
        for (number, part) in self.parts.iter().enumerate() {
            for bound in part.seen.rings.iter().flatten() {
                // Neighbours may begin or end along it.
                let reach = Bounds::around(&[bound.from, bound.to]).wider(BESIDE);
                let others = self
                    .parts
                    .iter()
                    .enumerate()
                    .filter(|(other, part)| *other != number && part.bounds.meets(&reach))
                    .flat_map(|(_, part)| part.seen.rings.iter().flatten())
                    .map(|bound| [bound.from, bound.to]);
                for ends in cuts([bound.from, bound.to], others, usize::MAX).windows(2) {
                    pieces.extend(self.piece(number, [ends[0], ends[1]], bound.line));
                }
            }
        }
        pieces
    }

    /// One piece around a part; none where its neighbour of lower number gives it.
    fn piece(&self, number: usize, [from, to]: [Vec2; 2], line: Line) -> Option<Piece> {
        let part = &self.parts[number];
        let lifted = |end: Vec2| -> Vec3 { lift(end, part.plane.height(end)) };
        let way = to - from;
        let length = way.norm();
        let middle = from + way * ASKED;
        let height = part.plane.height(middle);
        let aside = Vec2::new(way.y, -way.x) * (BESIDE.min(length / 8.0) / length);
        let (within, beyond) = (middle - aside, middle + aside);
        let neighbor = self.parts.iter().position(|other| {
            // One that goes on below, under an eave that just touches it, does not end here.
            let meets = (other.plane.height(middle) - height).abs() < MEETS;
            (meets || is_across_seam(part, line, other))
                && other.holds(beyond)
                && !other.holds(within)
        });
        let right = match neighbor {
            Some(other) if other < number => return None,
            Some(other) => self.face(other),
            None => Neighbor::Line(self.line(part, line, beyond, height)),
        };
        Some(Piece {
            from: lifted(from),
            to: lifted(to),
            left: self.face(number),
            right,
            seam: match line {
                Line::Own(_, seam) => seam,
                Line::Meets(..) | Line::Foot(_) | Line::EaveLevel(_) => None,
            },
        })
    }

    fn face(&self, number: usize) -> Neighbor {
        let seen = &self.parts[number].seen;
        Neighbor::Face(self.raised[seen.body].face_at(seen.body, seen.swept, number))
    }

    /// What a part ends at where no face goes on.
    fn line(&self, part: &Part, line: Line, beyond: Vec2, height: f64) -> LineAt {
        let body = part.seen.body;
        let stands_higher = self
            .solids
            .iter()
            .any(|solid| solid.body != body && solid.stands_above(beyond, height + MEETS, height));
        let along = match line {
            Line::Own(Side::End(leg) | Side::Air(leg), _) => self.raised[body].line_at(body, leg),
            Line::Foot(at) => self.raised[at.body].line_at(at.body, at.leg),
            Line::Own(Side::Face(_), _) => LineAt {
                key: PlaneKey::EaveLevel(body),
                stop: Stop::Higher,
                leg: None,
            },
            Line::Meets(other, _) | Line::EaveLevel(other) => LineAt {
                key: PlaneKey::EaveLevel(other),
                stop: Stop::Higher,
                leg: None,
            },
        };
        let own = matches!(line, Line::Own(..));
        LineAt {
            stop: if stands_higher || !own {
                Stop::Higher
            } else {
                along.stop
            },
            ..along
        }
    }
}

/// Whether another part is the face of the same body beyond a line where the two do not quite meet.
fn is_across_seam(part: &Part, line: Line, other: &Part) -> bool {
    matches!(line, Line::Own(Side::Face(beyond), Some(_))
        if other.seen.body == part.seen.body && other.seen.swept == beyond)
}
