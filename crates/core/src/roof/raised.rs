//! One body with its roof: what its sweep left, as faces and pieces of edge in the survey's place.

use super::edges::{FaceAt, LegAt, LineAt, Neighbor, Piece, Stop};
use super::plan::{self, Climb, Plan, Vec2};
use super::planes::{Plane, PlaneKey, end_of, first_in_line};
use super::slivers::{Sliver, without_slivers};
use super::sweep::{Side, Sweep, Vec3, point};
use super::wavefront::sweep;
use super::{BodyShape, Face, RaiseError, RoofCaution};
use crate::units::{Area, Length, Pitch};

/// Sine of the turn from which a corner counts as an inside corner.
const INSIDE: f64 = 1e-6;

/// One body with its roof, in its plan's own place.
pub(super) struct Raised {
    pub plan: Plan,
    pub sweep: Sweep,
    pub first_in_line: Vec<usize>,
    /// Strips that were given to the slope beside them.
    pub thin: Vec<Sliver>,
}

/// A face and its place in the sweep.
pub(super) struct Numbered {
    pub swept: usize,
    pub face: Face,
}

impl Raised {
    pub fn new(shape: &BodyShape) -> Result<Raised, RaiseError> {
        let plan = Plan::new(shape)?;
        let swept = sweep(&plan)?;
        // Corners that are known stand where they are said to stand, and so does what is between.
        let (sweep, thin) = match shape.nominal_directions {
            Some(_) => without_slivers(&plan, swept),
            None => (swept, Vec::new()),
        };
        let first_in_line = first_in_line(&plan);
        Ok(Raised {
            plan,
            sweep,
            first_in_line,
            thin,
        })
    }

    /// A place of the sweep where the survey has it.
    pub fn settle(&self, place: Vec3) -> Vec3 {
        place
            + Vec3::new(
                self.plan.origin.x,
                self.plan.origin.y,
                self.plan.eave_height,
            )
    }

    /// The faces, by leg as given, band, then least place along the leg.
    pub fn faces(&self, body: usize) -> Vec<Numbered> {
        let mut order: Vec<usize> = (0..self.sweep.faces.len()).collect();
        let least = |face: usize| {
            let swept = &self.sweep.faces[face];
            let along = self.plan.legs[swept.leg].along;
            let places = swept.ring.iter().map(|place| along.dot(&place.xy()));
            places.fold(f64::INFINITY, f64::min)
        };
        order.sort_by(|&a, &b| {
            let key = |face: usize| {
                let swept = &self.sweep.faces[face];
                (self.plan.legs[swept.leg].number, swept.band)
            };
            key(a)
                .cmp(&key(b))
                .then_with(|| least(a).total_cmp(&least(b)))
        });
        order
            .into_iter()
            .map(|swept| Numbered {
                swept,
                face: self.face(body, swept),
            })
            .collect()
    }

    /// One swept face as it is where no other body meets it.
    pub fn face(&self, body: usize, swept: usize) -> Face {
        let swept = &self.sweep.faces[swept];
        let leg = &self.plan.legs[swept.leg];
        let plane = Plane::new(leg, swept.band);
        let ring: Vec<Vec2> = swept.ring.iter().map(|place| place.xy()).collect();
        let plan_area = plan::twice_area(&ring) / 2.0;
        let bands = match &leg.climb {
            Climb::Stands(_) => 1,
            Climb::Slopes(slopes) => slopes.len(),
        };
        Face {
            body,
            leg: leg.number,
            band: (bands > 1).then_some(swept.band),
            pitch: Pitch::rise_in_12(12.0 * plane.gradient.norm()),
            plan_area: Area::square_feet(plan_area),
            area: Area::square_feet(plan_area * plane.factor()),
            polygon: swept
                .ring
                .iter()
                .map(|&place| point(self.settle(place)))
                .collect(),
            holes: Vec::new(),
        }
    }

    /// The creases of the sweep with what lies beside them.
    pub fn pieces(&self, body: usize, faces: &[Numbered]) -> Vec<Piece> {
        let mut place_of = vec![0; faces.len()];
        for (place, numbered) in faces.iter().enumerate() {
            place_of[numbered.swept] = place;
        }
        let beside = |side: Side| match side {
            Side::Face(swept) => Neighbor::Face(self.face_at(body, swept, place_of[swept])),
            Side::End(leg) | Side::Air(leg) => Neighbor::Line(self.line_at(body, leg)),
        };
        self.sweep
            .creases
            .iter()
            .map(|crease| Piece {
                from: self.settle(crease.from),
                to: self.settle(crease.to),
                left: beside(crease.left),
                right: beside(crease.right),
                seam: crease.seam,
            })
            .collect()
    }

    /// A swept face that stands at `face` among all faces. Its plane is in the survey's place.
    pub fn face_at(&self, body: usize, swept: usize, face: usize) -> FaceAt {
        let swept = &self.sweep.faces[swept];
        let plane = Plane::new(&self.plan.legs[swept.leg], swept.band);
        FaceAt {
            face,
            at: LegAt {
                body,
                leg: swept.leg,
            },
            key: PlaneKey::Slope(body, self.first_in_line[swept.leg], swept.band),
            plane: plane.moved(self.plan.origin, self.plan.eave_height),
        }
    }

    /// The line of a leg, as what ends a face there.
    pub fn line_at(&self, body: usize, leg: usize) -> LineAt {
        let (key, stop) = match end_of(&self.plan.legs[leg]) {
            Some(end) => (
                PlaneKey::Vertical(body, self.first_in_line[leg]),
                Stop::End(end),
            ),
            None => (PlaneKey::Air(body, self.first_in_line[leg]), Stop::Eave),
        };
        LineAt {
            key,
            stop,
            leg: Some((LegAt { body, leg }, self.plan.legs[leg].inward)),
        }
    }

    /// Strips that were too thin to build.
    pub fn thin_strips(&self) -> impl Iterator<Item = RoofCaution> {
        self.thin.iter().map(|strip| RoofCaution::Sliver {
            body: self.plan.body.clone(),
            leg: strip.leg,
            taken_by: strip.taken_by,
            width: Length::feet(strip.width),
            length: Length::feet(strip.length),
        })
    }

    /// Gables at an inside corner beside a slope.
    pub fn inside_gables(&self) -> Vec<RoofCaution> {
        let count = self.plan.legs.len();
        let is_gable = |leg: usize| end_of(&self.plan.legs[leg]) == Some(plan::End::Gable);
        let mut legs: Vec<usize> = (0..count)
            .flat_map(|leg| {
                let next = (leg + 1) % count;
                let turn = self.plan.legs[leg].along.perp(&self.plan.legs[next].along);
                let gable = match (is_gable(leg), is_gable(next)) {
                    (true, false) => Some(leg),
                    (false, true) => Some(next),
                    (true, true) | (false, false) => None,
                };
                gable.filter(|_| turn < -INSIDE)
            })
            .map(|leg| self.plan.legs[leg].number)
            .collect();
        legs.sort_unstable();
        legs.dedup();
        legs.into_iter()
            .map(|leg| RoofCaution::GableAtInsideCorner {
                body: self.plan.body.clone(),
                leg,
            })
            .collect()
    }
}
