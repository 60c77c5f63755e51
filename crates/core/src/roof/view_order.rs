//! Which of two pieces of a solid is painted first: the one that lies farther where both are seen.

use super::view::{Camera, dot, unit};

/// Pieces whose depths differ by less are beside each other, feet.
const DEEP: f64 = 1e-4;
/// A piece seen at a flatter slant than this sine is seen from its edge.
const EDGE_ON: f64 = 1e-6;

/// A flat piece as it falls on the picture.
pub(super) struct Sheet<P> {
    pub part: P,
    pub rings: Vec<Vec<[f64; 2]>>,
    pub light: f64,
    /// How near the viewer it lies: `near[0] + near[1] across + near[2] up`.
    near: [f64; 3],
    low: [f64; 2],
    high: [f64; 2],
}

impl<P> Sheet<P> {
    /// A flat piece by its rings in space, the outer one counter-clockwise from outside; none where
    /// its outside is turned away.
    pub fn seen(
        part: P,
        rings: &[Vec<[f64; 3]>],
        camera: &Camera,
        light: [f64; 3],
    ) -> Option<Sheet<P>> {
        let normal = normal(rings.first()?);
        let length = dot(normal, normal).sqrt();
        if dot(normal, camera.toward) <= EDGE_ON * length {
            return None;
        }
        let seen = |ring: &Vec<[f64; 3]>| -> Vec<[f64; 3]> {
            ring.iter().map(|place| camera.see(*place)).collect()
        };
        let seen: Vec<Vec<[f64; 3]>> = rings.iter().map(seen).collect();
        // In the picture's own axes the plane is n . place = n . first.
        let flat = self::normal(&seen[0]);
        let first = seen[0][0];
        let near = [
            dot(flat, first) / flat[2],
            -flat[0] / flat[2],
            -flat[1] / flat[2],
        ];
        let places = seen.iter().flatten();
        let bound = |axis: usize, pick: fn(f64, f64) -> f64, start: f64| {
            places.clone().map(|place| place[axis]).fold(start, pick)
        };
        Some(Sheet {
            part,
            light: dot(unit(normal), light).max(0.0),
            near,
            low: [0, 1].map(|axis| bound(axis, f64::min, f64::INFINITY)),
            high: [0, 1].map(|axis| bound(axis, f64::max, f64::NEG_INFINITY)),
            rings: seen
                .iter()
                .map(|ring| ring.iter().map(|&[x, y, _]| [x, y]).collect())
                .collect(),
        })
    }

    fn near(&self, [x, y]: [f64; 2]) -> f64 {
        self.near[0] + self.near[1] * x + self.near[2] * y
    }

    /// How much nearer this one lies than another where both are seen: the greatest difference of
    /// their depths there; 0 where they are nowhere one before the other.
    fn before(&self, other: &Sheet<P>) -> f64 {
        let apart = (0..2)
            .any(|axis| self.high[axis] <= other.low[axis] || other.high[axis] <= self.low[axis]);
        if apart {
            return 0.0;
        }
        let mut most = 0.0_f64;
        let mut ask = |place: [f64; 2]| {
            let nearer = self.near(place) - other.near(place);
            if nearer.abs() > most.abs() {
                most = nearer;
            }
        };
        for place in self.rings.iter().flatten() {
            if holds(&other.rings, *place) {
                ask(*place);
            }
        }
        for place in other.rings.iter().flatten() {
            if holds(&self.rings, *place) {
                ask(*place);
            }
        }
        for one in sides(&self.rings) {
            for two in sides(&other.rings) {
                if let Some(place) = crossing(one, two) {
                    ask(place);
                }
            }
        }
        if most.abs() > DEEP { most } else { 0.0 }
    }
}

/// Sheets in the order in which they are painted. Pieces that hide each other in a ring, which no
/// house has but by rounding, are taken the farthest first.
pub(super) fn painted<P>(sheets: Vec<Sheet<P>>) -> Vec<Sheet<P>> {
    let count = sheets.len();
    // For each sheet those that must be painted before it.
    let mut waits: Vec<Vec<usize>> = vec![Vec::new(); count];
    for one in 0..count {
        for two in one + 1..count {
            let nearer = sheets[one].before(&sheets[two]);
            if nearer > 0.0 {
                waits[one].push(two);
            } else if nearer < 0.0 {
                waits[two].push(one);
            }
        }
    }
    let middle = |sheet: &Sheet<P>| {
        sheet.near([
            (sheet.low[0] + sheet.high[0]) / 2.0,
            (sheet.low[1] + sheet.high[1]) / 2.0,
        ])
    };
    let mut done = vec![false; count];
    let mut order = Vec::with_capacity(count);
    while order.len() < count {
        let farthest = |places: &mut dyn Iterator<Item = usize>| {
            places.min_by(|a, b| middle(&sheets[*a]).total_cmp(&middle(&sheets[*b])))
        };
        let free = |place: &usize| !done[*place] && waits[*place].iter().all(|other| done[*other]);
        let next = farthest(&mut (0..count).filter(free))
            .or_else(|| farthest(&mut (0..count).filter(|place| !done[*place])));
        let Some(next) = next else { break };
        done[next] = true;
        order.push(next);
    }
    let mut sheets: Vec<Option<Sheet<P>>> = sheets.into_iter().map(Some).collect();
    order
        .into_iter()
        .filter_map(|place| sheets[place].take())
        .collect()
}

/// Newell's normal of a ring, twice its area long.
pub(super) fn normal(ring: &[[f64; 3]]) -> [f64; 3] {
    let mut sum = [0.0; 3];
    for (a, b) in ring.iter().zip(ring.iter().cycle().skip(1)) {
        sum[0] += (a[1] - b[1]) * (a[2] + b[2]);
        sum[1] += (a[2] - b[2]) * (a[0] + b[0]);
        sum[2] += (a[0] - b[0]) * (a[1] + b[1]);
    }
    sum
}

fn sides(rings: &[Vec<[f64; 2]>]) -> impl Iterator<Item = [[f64; 2]; 2]> {
    rings.iter().flat_map(|ring| {
        let next = ring.iter().cycle().skip(1);
        ring.iter().zip(next).map(|(a, b)| [*a, *b])
    })
}

/// Even-odd rule over all rings (Shimrat, Algorithm 112, 1962).
pub(super) fn holds(rings: &[Vec<[f64; 2]>], [x, y]: [f64; 2]) -> bool {
    let crossed = sides(rings).filter(|[a, b]| {
        (a[1] > y) != (b[1] > y) && x < a[0] + (y - a[1]) / (b[1] - a[1]) * (b[0] - a[0])
    });
    crossed.count() % 2 == 1
}

/// Where two segments cross within both.
fn crossing([a, b]: [[f64; 2]; 2], [c, d]: [[f64; 2]; 2]) -> Option<[f64; 2]> {
    let (rx, ry) = (b[0] - a[0], b[1] - a[1]);
    let (sx, sy) = (d[0] - c[0], d[1] - c[1]);
    let turn = rx * sy - ry * sx;
    if turn.abs() < 1e-9 {
        return None;
    }
    let (qx, qy) = (c[0] - a[0], c[1] - a[1]);
    let (t, u) = ((qx * sy - qy * sx) / turn, (qx * ry - qy * rx) / turn);
    let within = 0.0..=1.0;
    (within.contains(&t) && within.contains(&u)).then(|| [a[0] + t * rx, a[1] + t * ry])
}
