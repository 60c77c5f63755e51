//! Which parts of an edge lie under a higher roof.

use super::house::FaceToDraw;
use crate::units::Point3;

/// A roof is above another where it is higher by more than this, feet.
const HIGHER: f64 = 0.01;
/// How far to both sides of an edge it is asked what is above, feet.
const ASIDE: f64 = 5e-3;
/// Shorter stretches are not told apart, feet.
const SHORTEST: f64 = 0.05;

/// A face as a plane over its rings.
pub(super) struct Above<'a> {
    rings: &'a [Vec<Point3>],
    /// Height is `plane[0] + plane[1] x + plane[2] y`.
    plane: [f64; 3],
    low: [f64; 2],
    high: [f64; 2],
}

impl<'a> Above<'a> {
    pub fn new(face: &'a FaceToDraw) -> Option<Above<'a>> {
        let ring = face.rings.first()?;
        let first = ring.first()?.in_feet();
        let next = ring.iter().cycle().skip(1);
        let normal = ring.iter().zip(next).fold([0.0; 3], |sum, (a, b)| {
            let (a, b) = (a.in_feet(), b.in_feet());
            [
                sum[0] + (a[1] - b[1]) * (a[2] + b[2]),
                sum[1] + (a[2] - b[2]) * (a[0] + b[0]),
                sum[2] + (a[0] - b[0]) * (a[1] + b[1]),
            ]
        });
        let bound = |axis: usize, pick: fn(f64, f64) -> f64, start: f64| {
            ring.iter().map(|at| at.in_feet()[axis]).fold(start, pick)
        };
        let slope = [0, 1].map(|axis| -normal[axis] / normal[2]);
        slope.iter().all(|part| part.is_finite()).then_some(Above {
            rings: &face.rings,
            plane: [
                first[2] - slope[0] * first[0] - slope[1] * first[1],
                slope[0],
                slope[1],
            ],
            low: [0, 1].map(|axis| bound(axis, f64::min, f64::INFINITY)),
            high: [0, 1].map(|axis| bound(axis, f64::max, f64::NEG_INFINITY)),
        })
    }

    /// Whether it hides a place: x, y, height.
    fn hides(&self, [x, y, height]: [f64; 3]) -> bool {
        let apart = (0..2).any(|axis| {
            let at = [x, y][axis];
            at < self.low[axis] || at > self.high[axis]
        });
        !apart
            && self.plane[0] + self.plane[1] * x + self.plane[2] * y > height + HIGHER
            && within(self.rings, [x, y])
    }
}

/// Whether a place in plan lies within rings: the outer one and no hole (even-odd rule).
pub(super) fn within(rings: &[Vec<Point3>], [x, y]: [f64; 2]) -> bool {
    let sides = rings
        .iter()
        .flat_map(|ring| ring.iter().zip(ring.iter().cycle().skip(1)));
    let crossed = sides.filter(|(a, b)| {
        let (a, b) = (a.in_feet(), b.in_feet());
        (a[1] > y) != (b[1] > y) && x < a[0] + (y - a[1]) / (b[1] - a[1]) * (b[0] - a[0])
    });
    crossed.count() % 2 == 1
}

/// Whether a place is under any of these.
pub(super) fn is_under(above: &[Above], place: [f64; 3]) -> bool {
    above.iter().any(|face| face.hides(place))
}

/// An edge in stretches by shares of it from 0 to 1, and whether each lies under a higher roof.
pub(super) fn stretches(above: &[Above], ends: [Point3; 2]) -> Vec<([f64; 2], bool)> {
    let [a, b] = ends.map(Point3::in_feet);
    let (dx, dy) = (b[0] - a[0], b[1] - a[1]);
    let length = dx.hypot(dy);
    let mut cuts = vec![0.0, 1.0];
    let near = above.iter().filter(|face| {
        (0..2).all(|axis| {
            a[axis].min(b[axis]) <= face.high[axis] && a[axis].max(b[axis]) >= face.low[axis]
        })
    });
    for ring in near.flat_map(|face| face.rings) {
        for (p, q) in ring.iter().zip(ring.iter().cycle().skip(1)) {
            cuts.extend(crossed([a, b], [p.in_feet(), q.in_feet()]));
        }
    }
    cuts.sort_by(f64::total_cmp);
    let mut found: Vec<([f64; 2], bool)> = Vec::new();
    for cut in cuts.windows(2) {
        if (cut[1] - cut[0]) * length <= SHORTEST && cut[1] - cut[0] < 1.0 {
            if let Some((span, _)) = found.last_mut() {
                span[1] = cut[1];
            }
            continue;
        }
        let middle = f64::midpoint(cut[0], cut[1]);
        let at = [0, 1, 2].map(|axis| a[axis] + (b[axis] - a[axis]) * middle);
        let step = if length > 0.0 { ASIDE / length } else { 0.0 };
        let hidden = [1.0, -1.0].iter().all(|side| {
            let beside = [at[0] - dy * step * side, at[1] + dx * step * side, at[2]];
            is_under(above, beside)
        });
        match found.last_mut() {
            Some((span, before)) if *before == hidden => span[1] = cut[1],
            Some(_) | None => {
                let from = found.last().map_or(0.0, |(span, _)| span[1]);
                found.push(([from, cut[1]], hidden));
            }
        }
    }
    if found.is_empty() {
        found.push(([0.0, 1.0], false));
    }
    found
}

/// Where on the first segment, as a share of it, the second one crosses it in plan.
fn crossed([a, b]: [[f64; 3]; 2], [c, d]: [[f64; 3]; 2]) -> Option<f64> {
    let (rx, ry) = (b[0] - a[0], b[1] - a[1]);
    let (sx, sy) = (d[0] - c[0], d[1] - c[1]);
    let turn = rx * sy - ry * sx;
    let (qx, qy) = (c[0] - a[0], c[1] - a[1]);
    let (t, u) = ((qx * sy - qy * sx) / turn, (qx * ry - qy * rx) / turn);
    ((0.0..=1.0).contains(&t) && (0.0..=1.0).contains(&u)).then_some(t)
}
