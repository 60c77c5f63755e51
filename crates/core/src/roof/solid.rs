//! A body as a solid: below its roof, within its wall line down to the ground, and within its
//! eaves from eave height up.

use super::edges::LegAt;
use super::plan::Vec2;
use super::planes::Plane;
use super::raised::Raised;
use super::sweep::Side;

/// Heights this near are one plane, feet.
const ONE_PLANE: f64 = 1e-9;

/// A straight piece in plan.
pub(super) type Segment = [Vec2; 2];

/// One face of one body before the others are looked at, in the survey's place.
pub(super) struct Slab {
    pub body: usize,
    /// Its place in the body's sweep.
    pub swept: usize,
    pub ring: Vec<Vec2>,
    pub plane: Plane,
    pub bounds: Bounds,
}

/// One body as a solid.
pub(super) struct Solid {
    pub body: usize,
    pub slabs: Vec<Slab>,
    /// Where its roof ends in plan, and over which leg.
    pub feet: Vec<(Segment, LegAt)>,
    /// The outline moved in by each leg's overhang.
    wall_line: Vec<Vec2>,
    /// Its pieces, where the overhang is more than nothing.
    pub walls: Vec<(Segment, LegAt)>,
    pub eave: f64,
    pub bounds: Bounds,
}

/// The least rectangle along the axes.
#[derive(Clone, Copy, Debug)]
pub(super) struct Bounds {
    low: Vec2,
    high: Vec2,
}

impl Bounds {
    pub fn around(places: &[Vec2]) -> Bounds {
        let mut bounds = Bounds {
            low: Vec2::repeat(f64::INFINITY),
            high: Vec2::repeat(f64::NEG_INFINITY),
        };
        for place in places {
            bounds.low = bounds.low.inf(place);
            bounds.high = bounds.high.sup(place);
        }
        bounds
    }

    /// The same with a margin all round.
    pub fn wider(&self, margin: f64) -> Bounds {
        Bounds {
            low: self.low - Vec2::repeat(margin),
            high: self.high + Vec2::repeat(margin),
        }
    }

    /// What lies in both.
    pub fn common(&self, other: &Bounds) -> Option<Bounds> {
        self.meets(other).then(|| Bounds {
            low: self.low.sup(&other.low),
            high: self.high.inf(&other.high),
        })
    }

    pub fn meets(&self, other: &Bounds) -> bool {
        self.low.x <= other.high.x
            && other.low.x <= self.high.x
            && self.low.y <= other.high.y
            && other.low.y <= self.high.y
    }

    pub fn holds(&self, place: Vec2) -> bool {
        place.x >= self.low.x
            && place.x <= self.high.x
            && place.y >= self.low.y
            && place.y <= self.high.y
    }

    /// The part of the line `level + gradient . place = 0` that may lie within.
    pub fn chord(&self, level: f64, gradient: Vec2) -> Option<Segment> {
        let steep = gradient.norm();
        if steep <= ONE_PLANE {
            return None;
        }
        let middle = (self.low + self.high) / 2.0;
        let reach = (self.high - self.low).norm() / 2.0;
        let off = (level + gradient.dot(&middle)) / steep;
        if off.abs() > reach {
            return None;
        }
        let foot = middle - gradient * (off / steep);
        let along = Vec2::new(-gradient.y, gradient.x) * (reach / steep);
        Some([foot - along, foot + along])
    }
}

impl Slab {
    pub fn holds(&self, place: Vec2) -> bool {
        self.bounds.holds(place) && winds_round(&self.ring, place)
    }
}

impl Solid {
    pub fn new(body: usize, raised: &Raised) -> Solid {
        let origin = raised.plan.origin;
        let slabs: Vec<Slab> = (0..raised.sweep.faces.len())
            .map(|swept| {
                let ring: Vec<Vec2> = raised.sweep.faces[swept]
                    .ring
                    .iter()
                    .map(|place| place.xy() + origin)
                    .collect();
                Slab {
                    body,
                    swept,
                    bounds: Bounds::around(&ring),
                    ring,
                    plane: raised.face_at(body, swept, swept).plane,
                }
            })
            .collect();
        let feet = raised
            .sweep
            .creases
            .iter()
            .filter_map(|crease| {
                let leg = match (crease.left, crease.right) {
                    (Side::Face(_), Side::End(leg) | Side::Air(leg))
                    | (Side::End(leg) | Side::Air(leg), Side::Face(_)) => leg,
                    (Side::Face(_) | Side::End(_) | Side::Air(_), _) => return None,
                };
                let piece = [crease.from, crease.to].map(|end| end.xy() + origin);
                Some((piece, LegAt { body, leg }))
            })
            .collect();
        let (wall_line, walls) = wall_line(body, raised);
        let corners: Vec<Vec2> = slabs.iter().flat_map(|slab| slab.ring.clone()).collect();
        Solid {
            body,
            slabs,
            feet,
            wall_line,
            walls,
            eave: raised.plan.eave_height,
            bounds: Bounds::around(&corners),
        }
    }

    /// Height of its roof over a place; none outside its eaves.
    fn height(&self, place: Vec2) -> Option<f64> {
        if !self.bounds.holds(place) {
            return None;
        }
        self.slabs
            .iter()
            .find(|slab| slab.holds(place))
            .map(|slab| slab.plane.height(place))
    }

    /// Whether a face at this height of another body lies inside it. Of equal planes the body
    /// entered first keeps the area.
    pub fn hides(&self, place: Vec2, height: f64, body: usize) -> bool {
        let least = if self.body < body {
            height - ONE_PLANE
        } else {
            height + ONE_PLANE
        };
        self.stands_above(place, least, height)
    }

    /// Whether it stands higher than `least` over a place and is there at `height`.
    pub fn stands_above(&self, place: Vec2, least: f64, height: f64) -> bool {
        self.height(place).is_some_and(|top| top > least)
            && (height >= self.eave || winds_round(&self.wall_line, place))
    }
}

/// The outline moved in by each leg's overhang: its corners, and its pieces where it was moved.
fn wall_line(body: usize, raised: &Raised) -> (Vec<Vec2>, Vec<(Segment, LegAt)>) {
    let plan = &raised.plan;
    let count = plan.legs.len();
    let mut corners = Vec::with_capacity(count);
    // Where each leg's wall begins and ends.
    let mut ends = vec![[Vec2::zeros(); 2]; count];
    for place in 0..count {
        let (leg, after) = (&plan.legs[place], plan.next(place));
        let corner = after.from + plan.origin;
        let sine = leg.along.perp(&after.along);
        let (last, first) = if sine.abs() > 1e-6 {
            let meet = corner + (after.along * leg.overhang - leg.along * after.overhang) / sine;
            (meet, meet)
        } else {
            (
                corner + leg.inward * leg.overhang,
                corner + after.inward * after.overhang,
            )
        };
        corners.push(last);
        if (first - last).norm() > 0.0 {
            corners.push(first);
        }
        ends[place][1] = last;
        ends[(place + 1) % count][0] = first;
    }
    let moved = plan.legs.iter().any(|leg| leg.overhang.abs() > 0.0);
    let walls = (0..count)
        .filter(|_| moved)
        .map(|leg| (ends[leg], LegAt { body, leg }))
        .collect();
    (corners, walls)
}

/// Whether a ring winds round a place counter-clockwise. A place on an edge between two rings is
/// in one of them.
pub(super) fn winds_round(ring: &[Vec2], place: Vec2) -> bool {
    let mut winding = 0;
    for corner in 0..ring.len() {
        let (a, b) = (ring[corner], ring[(corner + 1) % ring.len()]);
        let side = (b - a).perp(&(place - a));
        if a.y <= place.y && b.y > place.y && side > 0.0 {
            winding += 1;
        } else if a.y > place.y && b.y <= place.y && side < 0.0 {
            winding -= 1;
        }
    }
    winding > 0
}
