//! A face in its own plane: inches to the right and up the slope, seen from outside with the eave
//! below.

use crate::roof::Face;
use crate::survey::Point;
use crate::units::Point3;

/// A place on a face, inches: to the right, up the slope.
pub(super) type Uv = [f64; 2];

/// How a face lies in space.
#[derive(Clone, Copy, Debug)]
pub(super) struct Slope {
    /// The way up, in plan.
    up: [f64; 2],
    /// Length on the slope over length in plan.
    pub factor: f64,
    /// A corner, to which other places are held.
    corner: [f64; 3],
}

impl Slope {
    pub fn from_face(face: &Face) -> Slope {
        let (x, y) = normal_in_plan(&face.polygon);
        let length = x.hypot(y);
        let up = if length < 1e-9 || face.pitch.in_12() < 1e-9 {
            [0.0, 1.0]
        } else {
            [-x / length, -y / length]
        };
        Slope {
            up,
            factor: face.pitch.slope_factor(),
            corner: face.polygon.first().copied().unwrap_or_default().in_feet(),
        }
    }

    /// A place in space that lies on the face.
    pub fn place(&self, [x, y, z]: [f64; 3]) -> Uv {
        let [up_x, up_y] = self.up;
        let run = x * up_x + y * up_y;
        let rise = (self.factor * self.factor - 1.0).max(0.0).sqrt();
        let right = x * up_y - y * up_x;
        [12.0 * right, 12.0 * (run + z * rise) / self.factor]
    }

    /// A place in plan, dropped on the face.
    pub fn drop(&self, at: Point) -> Uv {
        let [up_x, up_y] = self.up;
        let run = (at.x - self.corner[0]) * up_x + (at.y - self.corner[1]) * up_y;
        let [_, v] = self.place(self.corner);
        [
            12.0 * (at.x * up_y - at.y * up_x),
            v + 12.0 * run * self.factor,
        ]
    }
}

/// The part in plan of the upward normal of a ring (Newell's method: Sutherland, Sproull and
/// Schumacker 1974), its length free.
fn normal_in_plan(ring: &[Point3]) -> (f64, f64) {
    let (mut x, mut y, mut z) = (0.0, 0.0, 0.0);
    for (a, b) in ring.iter().zip(ring.iter().cycle().skip(1)) {
        let (a, b) = (a.in_feet(), b.in_feet());
        x += (a[1] - b[1]) * (a[2] + b[2]);
        y += (a[2] - b[2]) * (a[0] + b[0]);
        z += (a[0] - b[0]) * (a[1] + b[1]);
    }
    if z < 0.0 { (-x, -y) } else { (x, y) }
}

/// The middle of a ring by area; of one without area the middle of its corners.
pub(super) fn middle(ring: &[Uv]) -> Uv {
    let (mut area, mut u, mut v) = (0.0, 0.0, 0.0);
    let from = ring.first().copied().unwrap_or_default();
    for (a, b) in ring.iter().zip(ring.iter().cycle().skip(1)) {
        let (a, b) = (
            [a[0] - from[0], a[1] - from[1]],
            [b[0] - from[0], b[1] - from[1]],
        );
        let cross = a[0] * b[1] - b[0] * a[1];
        area += cross;
        u += (a[0] + b[0]) * cross;
        v += (a[1] + b[1]) * cross;
    }
    if area.abs() < 1e-6 {
        let count = ring.len().max(1) as f64;
        let sum = |axis: usize| ring.iter().map(|place| place[axis]).sum::<f64>() / count;
        return [sum(0), sum(1)];
    }
    [from[0] + u / (3.0 * area), from[1] + v / (3.0 * area)]
}
