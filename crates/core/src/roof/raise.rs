//! Outlines and pitches to a roof.

use super::edges::{self, Beside, Piece};
use super::plan::{Climb, Plan, Vec2};
use super::planes::{Plane, PlaneKey, end_of, first_in_line};
use super::sweep::{Side, Sweep, Vec3};
use super::wavefront::sweep;
use super::{BodyShape, EdgeKind, Face, Roof, RoofCaution, RoofRefusal, plan, walls};
use crate::survey::WallSegment;
use crate::units::Pitch;

/// Sine of the turn from which a corner counts as an inside corner.
const INSIDE: f64 = 1e-6;

/// One body with its roof, in its plan's own place.
struct Raised {
    plan: Plan,
    sweep: Sweep,
    first_in_line: Vec<usize>,
}

/// Raises the roof over `bodies`: every pitched leg's slope rises inward until it meets another.
/// `walls` that stand along an end leg make its edges head walls and side walls.
///
/// Checked against an exact-arithmetic skeleton and against planes on scan lines.
///
/// # Errors
/// Names the body and leg that admit no roof, and what to do.
pub fn raise(bodies: &[BodyShape], walls: &[WallSegment]) -> Result<Roof, RoofRefusal> {
    let [shape] = bodies else {
        return Err(match bodies.len() {
            0 => RoofRefusal::NoBodies,
            bodies => RoofRefusal::NotJoined { bodies },
        });
    };
    let raised = Raised::new(shape)?;
    let faces = raised.faces(0);
    let known = raised
        .pieces(0, &faces)
        .iter()
        .filter_map(Piece::known)
        .collect();
    let (known, mut cautions) = walls::against(std::slice::from_ref(&raised.plan), walls, known);
    let edges = edges::join(known);
    cautions.extend(raised.inside_gables());
    cautions.extend(
        edges
            .iter()
            .filter(|edge| {
                edge.kind == EdgeKind::Valley && (edge.to[2] - edge.from[2]).abs() < LEVEL_VALLEY
            })
            .map(|edge| RoofCaution::LevelValley {
                from: edge.from,
                to: edge.to,
            }),
    );
    Ok(Roof {
        faces: faces.into_iter().map(|numbered| numbered.face).collect(),
        edges,
        cautions,
    })
}

/// A valley that rises less than this from end to end is level, feet.
const LEVEL_VALLEY: f64 = 1e-6;

/// A face and its place in the sweep.
struct Numbered {
    swept: usize,
    face: Face,
}

impl Raised {
    fn new(shape: &BodyShape) -> Result<Raised, RoofRefusal> {
        let plan = Plan::new(shape)?;
        let sweep = sweep(&plan)?;
        let first_in_line = first_in_line(&plan);
        Ok(Raised {
            plan,
            sweep,
            first_in_line,
        })
    }

    /// A place of the sweep where the survey has it.
    fn settle(&self, place: Vec3) -> Vec3 {
        place
            + Vec3::new(
                self.plan.origin.x,
                self.plan.origin.y,
                self.plan.eave_height,
            )
    }

    /// The faces, by leg as given, band, then least place along the leg.
    fn faces(&self, body: usize) -> Vec<Numbered> {
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

    fn face(&self, body: usize, swept: usize) -> Face {
        let swept = &self.sweep.faces[swept];
        let leg = &self.plan.legs[swept.leg];
        let plane = Plane::of(leg, swept.band);
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
            plan_area,
            area: plan_area * plane.factor(),
            polygon: swept
                .ring
                .iter()
                .map(|&place| self.settle(place).into())
                .collect(),
            holes: Vec::new(),
        }
    }

    /// The creases of the sweep with what lies beside them.
    fn pieces(&self, body: usize, faces: &[Numbered]) -> Vec<Piece> {
        let mut place_of = vec![0; faces.len()];
        for (place, numbered) in faces.iter().enumerate() {
            place_of[numbered.swept] = place;
        }
        let beside = |side: Side| match side {
            Side::Face(swept) => {
                let SweptAt { leg, band } = self.swept_at(swept);
                Beside::Face {
                    face: place_of[swept],
                    key: PlaneKey::Slope(body, self.first_in_line[leg], band),
                    plane: Plane::of(&self.plan.legs[leg], band),
                }
            }
            Side::End(leg) => match end_of(&self.plan.legs[leg]) {
                Some(end) => Beside::Upright {
                    key: PlaneKey::Vertical(body, self.first_in_line[leg]),
                    inward: self.plan.legs[leg].inward,
                    end,
                },
                None => Beside::Air {
                    key: PlaneKey::Air(body, self.first_in_line[leg]),
                },
            },
            Side::Air(leg) => Beside::Air {
                key: PlaneKey::Air(body, self.first_in_line[leg]),
            },
        };
        self.sweep
            .creases
            .iter()
            .map(|crease| Piece {
                from: self.settle(crease.from),
                to: self.settle(crease.to),
                left: beside(crease.left),
                right: beside(crease.right),
            })
            .collect()
    }

    fn swept_at(&self, swept: usize) -> SweptAt {
        let face = &self.sweep.faces[swept];
        SweptAt {
            leg: face.leg,
            band: face.band,
        }
    }

    /// Gables at an inside corner beside a slope.
    fn inside_gables(&self) -> Vec<RoofCaution> {
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

struct SweptAt {
    leg: usize,
    band: usize,
}
