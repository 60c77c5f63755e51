//! Where a strip of a face is more than air: the shadow that a course throws along the eave.

use super::slope::Uv;

/// Heights that are no height, inches.
const NO_HEIGHT: f64 = 1e-6;
/// Places along the eave that are one place, inches.
const ONE_PLACE: f64 = 1e-7;

/// A face in its own plane, less what is cut out of it.
#[derive(Clone, Debug, Default)]
pub(super) struct Region {
    /// Outer ring first, then holes; even-odd.
    pub rings: Vec<Vec<Uv>>,
    /// Openings that are cut out.
    pub cuts: Vec<Cut>,
}

/// An opening that is cut out, inches.
#[derive(Clone, Copy, Debug)]
pub(super) struct Cut {
    /// Left and right.
    pub u: [f64; 2],
    /// Lower and upper.
    pub v: [f64; 2],
}

impl Region {
    /// The same region seen in a mirror: right is left.
    pub fn mirrored(&self) -> Region {
        let mirror = |ring: &Vec<Uv>| ring.iter().map(|[u, v]| [-u, *v]).collect();
        Region {
            rings: self.rings.iter().map(mirror).collect(),
            cuts: self
                .cuts
                .iter()
                .map(|cut| Cut {
                    u: [-cut.u[1], -cut.u[0]],
                    v: cut.v,
                })
                .collect(),
        }
    }

    /// Least and greatest of one axis over the outer ring.
    pub fn extent(&self, axis: usize) -> [f64; 2] {
        let mut extent = [f64::INFINITY, f64::NEG_INFINITY];
        for place in self.rings.first().into_iter().flatten() {
            extent = [extent[0].min(place[axis]), extent[1].max(place[axis])];
        }
        extent
    }

    /// How many corners it has, openings with them.
    pub fn corners(&self) -> usize {
        self.rings.iter().map(Vec::len).sum::<usize>() + 4 * self.cuts.len()
    }

    /// Intervals of u, left to right and apart, over which the region has height between two v.
    pub fn shadow(&self, [low, high]: [f64; 2]) -> Vec<[f64; 2]> {
        let mut breaks = Vec::new();
        for [a, b] in self.sides() {
            breaks.push(a[0]);
            for v in [low, high] {
                if (a[1] - v) * (b[1] - v) < 0.0 {
                    breaks.push(a[0] + (b[0] - a[0]) * (v - a[1]) / (b[1] - a[1]));
                }
            }
        }
        breaks.extend(self.cuts.iter().flat_map(|cut| cut.u));
        breaks.sort_by(f64::total_cmp);
        let mut shadow: Vec<[f64; 2]> = Vec::new();
        let mut crossed = Vec::new();
        for pair in breaks.windows(2) {
            let [from, to] = [pair[0], pair[1]];
            if to - from < ONE_PLACE
                || !self.has_height(f64::midpoint(from, to), [low, high], &mut crossed)
            {
                continue;
            }
            match shadow.last_mut() {
                Some(last) if from - last[1] < NO_HEIGHT => last[1] = to,
                Some(_) | None => shadow.push([from, to]),
            }
        }
        shadow
    }

    fn sides(&self) -> impl Iterator<Item = [Uv; 2]> {
        self.rings.iter().flat_map(|ring| {
            ring.iter()
                .zip(ring.iter().cycle().skip(1))
                .map(|(a, b)| [*a, *b])
        })
    }

    /// Whether the upright line at u meets the region between two v.
    fn has_height(&self, u: f64, [low, high]: [f64; 2], crossed: &mut Vec<f64>) -> bool {
        crossed.clear();
        for [a, b] in self.sides() {
            if (a[0] > u) != (b[0] > u) {
                crossed.push(a[1] + (b[1] - a[1]) * (u - a[0]) / (b[0] - a[0]));
            }
        }
        crossed.sort_by(f64::total_cmp);
        crossed.as_chunks::<2>().0.iter().any(|[from, to]| {
            let piece = [from.max(low), to.min(high)];
            piece[1] - piece[0] > NO_HEIGHT && self.left_of(u, piece) > NO_HEIGHT
        })
    }

    /// The height that cuts leave of a piece of the upright line at u.
    fn left_of(&self, u: f64, [low, high]: [f64; 2]) -> f64 {
        let mut cut: Vec<[f64; 2]> = self
            .cuts
            .iter()
            .filter(|cut| cut.u[0] < u && u < cut.u[1])
            .map(|cut| [cut.v[0].max(low), cut.v[1].min(high)])
            .filter(|[from, to]| from < to)
            .collect();
        cut.sort_by(|a, b| a[0].total_cmp(&b[0]));
        let (mut left, mut at) = (0.0, low);
        for [from, to] in cut {
            left += (from - at).max(0.0);
            at = at.max(to);
        }
        left + (high - at).max(0.0)
    }
}
