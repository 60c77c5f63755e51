//! How unsure the areas are, from how unsure corners and slopes are.
//!
//! The shape is taken as settled and each face's area is differentiated: its boundary moves, and
//! its slope turns. A boundary between two planes moves by the difference of their heights over
//! the difference of their slopes; one along a leg moves with the leg. All of this is linear along
//! a straight piece, so length times the value at its middle is exact. From memory of the
//! transport theorem (Reynolds); checked against differences and against simulated readings.

use super::edges::{FaceAt, LegAt, LineAt, Neighbor, Piece};
use super::plan::Vec2;
use super::union::RoofUnion;
use super::{BodyShape, RaiseError};
use crate::units::{Angle, Area};
use nalgebra::{DMatrix, DVector};

/// Planes whose slopes differ by less are one: the cut between them is free.
const ONE_PLANE: f64 = 1e-6;

/// How a figure follows what was measured.
#[derive(Clone, Debug, PartialEq)]
pub struct Gradient {
    /// Per body, per foot of each corner: x0 y0 x1 ..
    pub corners: Vec<DVector<f64>>,
    /// Per body, per degree of each leg's slope; 0 for ends and for legs with pitch breaks.
    pub slopes: Vec<DVector<f64>>,
}

/// How the areas follow what was measured, sq ft.
#[derive(Clone, Debug, PartialEq)]
pub struct Spread {
    /// Of all faces together.
    pub area: Gradient,
    /// Of each face, in the order of the roof's faces.
    pub faces: Vec<Gradient>,
}

/// Slopes that one set of readings settles: they are wrong together.
#[derive(Clone, Debug, PartialEq)]
pub struct SlopeGroup {
    /// Body and leg of each.
    pub legs: Vec<(usize, usize)>,
    /// One standard deviation.
    pub sigma: Angle,
}

impl Gradient {
    /// One standard deviation of the figure.
    ///
    /// `covariances`: per body 2n x 2n, sq ft (x0 y0 x1 ..), none where its corners are known.
    /// Bodies and groups are independent of each other.
    #[must_use]
    pub fn sigma(&self, covariances: &[Option<DMatrix<f64>>], slopes: &[SlopeGroup]) -> Area {
        let from_corners: f64 = self
            .corners
            .iter()
            .zip(covariances)
            .filter_map(|(gradient, covariance)| {
                let covariance = covariance.as_ref()?;
                Some(gradient.dot(&(covariance * gradient)))
            })
            .sum();
        let from_slopes: f64 = slopes
            .iter()
            .map(|group| (self.of_group(group) * group.sigma.in_degrees()).powi(2))
            .sum();
        Area::square_feet((from_corners + from_slopes).max(0.0).sqrt())
    }

    /// How the figure follows a group of slopes that turn together, per degree.
    fn of_group(&self, group: &SlopeGroup) -> f64 {
        group
            .legs
            .iter()
            .map(|&(body, leg)| self.slopes[body][leg])
            .sum()
    }

    fn zero(joined: &RoofUnion) -> Gradient {
        let legs = joined.raised.iter().map(|raised| raised.plan.legs.len());
        Gradient {
            corners: legs.clone().map(|legs| DVector::zeros(2 * legs)).collect(),
            slopes: legs.map(DVector::zeros).collect(),
        }
    }
}

/// How the areas of the roof over `bodies` follow the corners as given and the slopes.
///
/// # Errors
/// Those of [`super::raise`].
pub fn spread(bodies: &[BodyShape]) -> Result<Spread, RaiseError> {
    let joined = RoofUnion::new(bodies)?;
    let mut faces = vec![Gradient::zero(&joined); joined.faces.len()];
    for piece in &joined.pieces {
        add_piece(&joined, piece, &mut faces);
    }
    for (face, gradient) in joined.faces.iter().zip(&mut faces) {
        add_turning(
            face.plan_area.in_square_feet(),
            face.pitch.angle(),
            gradient,
            (face.body, face.leg),
        );
    }
    for (body, raised) in joined.raised.iter().enumerate() {
        for face in &mut faces {
            for (leg, shape) in bodies[body].legs.iter().enumerate() {
                if !shape.rise.is_one_slope() {
                    face.slopes[body][leg] = 0.0;
                }
            }
        }
        if let Some(squared) = &raised.plan.squared {
            let jacobian = squared.squaring.jacobian(&squared.taped).transpose();
            for face in &mut faces {
                face.corners[body] = &jacobian * &face.corners[body];
            }
        }
    }
    let mut area = Gradient::zero(&joined);
    for face in &faces {
        for body in 0..bodies.len() {
            area.corners[body] += &face.corners[body];
            area.slopes[body] += &face.slopes[body];
        }
    }
    Ok(Spread { area, faces })
}

/// A face of one plan area grows as its slope steepens: the factor's change, per degree.
fn add_turning(plan_area: f64, slope: Angle, gradient: &mut Gradient, (body, leg): (usize, usize)) {
    let slope = slope.in_radians();
    gradient.slopes[body][leg] +=
        plan_area * slope.tan() / slope.cos() * std::f64::consts::PI / 180.0;
}

/// What one piece of boundary does to the faces beside it as it moves.
fn add_piece(joined: &RoofUnion, piece: &Piece, faces: &mut [Gradient]) {
    let way = (piece.to - piece.from).xy();
    let length = way.norm();
    if length <= 0.0 {
        return;
    }
    let middle = (piece.from + piece.to).xy() / 2.0;
    let leftward = Vec2::new(-way.y, way.x) / length;
    for (face, beyond, outward) in [
        (&piece.left, &piece.right, -leftward),
        (&piece.right, &piece.left, leftward),
    ] {
        let Neighbor::Face(face) = face else { continue };
        let mut moves = Moves {
            joined,
            gradient: &mut faces[face.face],
            middle,
        };
        // Area of the face for each foot that this piece moves outward.
        let gain = face.plane.factor() * length;
        match beyond {
            // Where a strip was left out the two do not meet, and neither moves the other.
            Neighbor::Face(_) if piece.seam.is_some() => {}
            Neighbor::Face(other) => {
                let apart = (face.plane.gradient - other.plane.gradient).dot(&outward);
                if apart.abs() > ONE_PLANE {
                    moves.with_height(other, gain / apart);
                    moves.with_height(face, -gain / apart);
                }
            }
            Neighbor::Line(LineAt {
                leg: Some((at, inward)),
                ..
            }) => moves.with_leg(*at, inward.dot(&outward).signum() * gain),
            Neighbor::Line(LineAt { leg: None, .. }) => {
                let apart = face.plane.gradient.dot(&outward);
                if apart.abs() > ONE_PLANE {
                    moves.with_height(face, -gain / apart);
                }
            }
        }
    }
}

/// The gradient of one face, at the middle of one piece of its boundary.
struct Moves<'a> {
    joined: &'a RoofUnion,
    gradient: &'a mut Gradient,
    middle: Vec2,
}

impl Moves<'_> {
    /// The area gains `gain` for each foot that a face's plane rises here.
    fn with_height(&mut self, face: &FaceAt, gain: f64) {
        let raised = &self.joined.raised[face.at.body];
        let leg = &raised.plan.legs[face.at.leg];
        let uphill = face.plane.gradient.norm();
        self.with_leg(face.at, -gain * uphill);
        let run = leg
            .inward
            .dot(&(self.middle - raised.plan.origin - leg.from));
        // Rise per degree: run / cos^2, with 1 / cos^2 = 1 + tan^2.
        let per_degree = run * (1.0 + uphill * uphill) * std::f64::consts::PI / 180.0;
        self.gradient.slopes[face.at.body][leg.number] += gain * per_degree;
    }

    /// The area gains `gain` for each foot that a leg moves inward here.
    fn with_leg(&mut self, at: LegAt, gain: f64) {
        let plan = &self.joined.raised[at.body].plan;
        let leg = &plan.legs[at.leg];
        let share = leg.along.dot(&(self.middle - plan.origin - leg.from)) / leg.length;
        let corners = &mut self.gradient.corners[at.body];
        for (corner, part) in [(leg.ends[0], 1.0 - share), (leg.ends[1], share)] {
            corners[2 * corner] += gain * part * leg.inward.x;
            corners[2 * corner + 1] += gain * part * leg.inward.y;
        }
    }
}
