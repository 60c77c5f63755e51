//! The planes that the pieces of a roof lie in.

use super::plan::{Climb, End, Leg, Plan, Vec2};
use super::sweep::Vec3;

/// One plane of roof: height is `level + gradient . place`.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Plane {
    pub gradient: Vec2,
    pub level: f64,
}

/// What bounds or carries a piece of edge, told apart by plane: legs in one line that rise alike
/// share one.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub(super) enum PlaneKey {
    /// A slope: body, first leg in its line, band.
    Slope(usize, usize, usize),
    /// The vertical plane over an end: body, first leg in its line.
    Vertical(usize, usize),
    /// The open air past a leg: body, first leg in its line.
    Air(usize, usize),
    /// The level at which a body's boxed eave begins.
    EaveLevel(usize),
}

impl PlaneKey {
    /// Two slopes of one leg, or of legs in one line.
    pub fn same_leg(&self, other: &PlaneKey) -> bool {
        matches!(
            (self, other),
            (PlaneKey::Slope(body, leg, _), PlaneKey::Slope(other_body, other_leg, _))
                if (body, leg) == (other_body, other_leg)
        )
    }
}

/// Sine and offset (feet) under which two legs lie in one line.
const ONE_LINE: (f64, f64) = (1e-9, 1e-6);

impl Plane {
    /// The plane through a leg's foot, or through the break below one of its upper slopes.
    /// In the plan's own place: from its origin, above its eave.
    pub fn new(leg: &Leg, band: usize) -> Plane {
        let gradient = leg.gradient(band);
        // Where the slope begins: run in from the leg, height above the eave.
        let (mut run, mut base) = (0.0, 0.0);
        for below in 0..band {
            let top = leg.top(below);
            run += (top - base) * leg.speed(below);
            base = top;
        }
        Plane {
            gradient,
            level: base - gradient.dot(&(leg.from + leg.inward * run)),
        }
    }

    /// The same plane seen from where its own place lies at `origin` and `height`.
    pub fn moved(&self, origin: Vec2, height: f64) -> Plane {
        Plane {
            gradient: self.gradient,
            level: self.level + height - self.gradient.dot(&origin),
        }
    }

    /// Its height over a place.
    pub fn height(&self, place: Vec2) -> f64 {
        self.level + self.gradient.dot(&place)
    }

    /// Area on the slope over area in plan.
    pub fn factor(&self) -> f64 {
        (1.0 + self.gradient.norm_squared()).sqrt()
    }

    /// Angle between two planes, degrees.
    pub fn fold(&self, other: &Plane) -> f64 {
        let [one, two] =
            [self, other].map(|plane| Vec3::new(-plane.gradient.x, -plane.gradient.y, 1.0));
        one.angle(&two).to_degrees()
    }
}

/// For each leg the first one that lies in the same line, faces the same way and rises alike.
pub(super) fn first_in_line(plan: &Plan) -> Vec<usize> {
    (0..plan.legs.len())
        .map(|leg| {
            let this = &plan.legs[leg];
            (0..leg)
                .find(|&other| {
                    let other = &plan.legs[other];
                    this.along.dot(&other.along) > 0.0
                        && this.along.perp(&other.along).abs() < ONE_LINE.0
                        && other.inward.dot(&(this.from - other.from)).abs() < ONE_LINE.1
                        && this.climb == other.climb
                })
                .unwrap_or(leg)
        })
        .collect()
}

/// Whether a leg is an end, and which.
pub(super) fn end_of(leg: &Leg) -> Option<End> {
    match leg.climb {
        Climb::Stands(end) => Some(end),
        Climb::Slopes(_) => None,
    }
}
