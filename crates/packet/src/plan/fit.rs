//! Room on the plan for what is written on it: nothing lies over anything else.

use super::Look;

/// Size of letters on the plan.
pub const SIZE: f64 = 13.0;
/// Between a line and what is written along it.
const CLEAR: f64 = 5.0;

/// A rectangle about a middle, turned.
#[derive(Clone, Copy)]
pub struct Box {
    at: [f64; 2],
    half: [f64; 2],
    /// Along its first side.
    along: [f64; 2],
}

impl Box {
    /// About a segment, so wide to both sides.
    pub fn along(ends: [[f64; 2]; 2], half_width: f64) -> Box {
        let [a, b] = ends;
        Box {
            at: [(a[0] + b[0]) / 2.0, (a[1] + b[1]) / 2.0],
            half: [length(ends) / 2.0, half_width],
            along: unit([b[0] - a[0], b[1] - a[1]]),
        }
    }

    /// With level sides.
    pub fn upright(at: [f64; 2], width: f64, height: f64) -> Box {
        Box {
            at,
            half: [width / 2.0, height / 2.0],
            along: [1.0, 0.0],
        }
    }

    fn corners(&self) -> [[f64; 2]; 4] {
        let [x, y] = self.along;
        [[1.0, 1.0], [1.0, -1.0], [-1.0, -1.0], [-1.0, 1.0]].map(|[s, t]| {
            let (s, t) = (s * self.half[0], t * self.half[1]);
            [self.at[0] + s * x - t * y, self.at[1] + s * y + t * x]
        })
    }

    /// Whether two lie over each other: no line parts them (separating axis theorem).
    fn overlaps(&self, other: &Box) -> bool {
        let axes = [self.along, turn(self.along), other.along, turn(other.along)];
        axes.iter().all(|axis| {
            let span = |one: &Box| {
                let on = one.corners().map(|at| at[0] * axis[0] + at[1] * axis[1]);
                let least = on.iter().copied().fold(f64::INFINITY, f64::min);
                (least, on.iter().copied().fold(f64::NEG_INFINITY, f64::max))
            };
            let ((a, b), (c, d)) = (span(self), span(other));
            a < d && c < b
        })
    }
}

/// What is taken of a sheet.
pub struct Fit {
    width: f64,
    height: f64,
    taken: Vec<Box>,
}

impl Fit {
    pub fn new(width: f64, height: f64) -> Fit {
        Fit {
            width,
            height,
            taken: Vec::new(),
        }
    }

    /// Takes room whatever lies there.
    pub fn take(&mut self, room: Box) {
        self.taken.push(room);
    }

    fn try_take(&mut self, room: Box) -> bool {
        let on_sheet = room.corners().iter().all(|[x, y]| {
            (2.0..self.width - 2.0).contains(x) && (2.0..self.height - 2.0).contains(y)
        });
        if !on_sheet || self.taken.iter().any(|other| other.overlaps(&room)) {
            return false;
        }
        self.taken.push(room);
        true
    }

    /// Room for words along a line, outside it first: where, and how turned.
    pub fn beside(
        &mut self,
        words: &str,
        ends: [[f64; 2]; 2],
        out: [f64; 2],
    ) -> Option<([f64; 2], f64)> {
        let [a, b] = ends;
        let mut along = unit([b[0] - a[0], b[1] - a[1]]);
        // Read from the foot of the sheet or from its right.
        if along[0] < -1e-9 || (along[0].abs() <= 1e-9 && along[1] > 0.0) {
            along = along.map(|part| -part);
        }
        let width = width_of(words, Look::Edge);
        let away = SIZE / 2.0 + CLEAR;
        for side in [1.0, -1.0] {
            for share in [0.5, 0.35, 0.65, 0.22, 0.78] {
                let at = [0, 1]
                    .map(|axis| a[axis] + (b[axis] - a[axis]) * share + out[axis] * away * side);
                let room = Box {
                    at,
                    half: [width / 2.0, SIZE / 2.0],
                    along,
                };
                if self.try_take(room) {
                    return Some((at, along[1].atan2(along[0]).to_degrees()));
                }
            }
        }
        None
    }

    /// Level room as near as can be to a place.
    pub fn near(&mut self, width: f64, height: f64, place: [f64; 2]) -> Option<[f64; 2]> {
        let steps = [0.0, 14.0, -14.0, 28.0, -28.0, 42.0, -42.0];
        for down in steps {
            for right in steps {
                let at = [place[0] + right * 1.4, place[1] + down];
                if self.try_take(Box::upright(at, width, height)) {
                    return Some(at);
                }
            }
        }
        None
    }
}

/// How wide words are, by the mean width of the letters of the two fonts.
pub fn width_of(words: &str, look: Look) -> f64 {
    let letter = match look {
        Look::Edge => 0.61,
        Look::Face | Look::Side => 0.6,
    };
    words.chars().count() as f64 * letter * SIZE + 4.0
}

pub fn length([a, b]: [[f64; 2]; 2]) -> f64 {
    (b[0] - a[0]).hypot(b[1] - a[1])
}

pub fn unit([x, y]: [f64; 2]) -> [f64; 2] {
    let length = x.hypot(y);
    if length > 0.0 {
        [x / length, y / length]
    } else {
        [1.0, 0.0]
    }
}

fn turn([x, y]: [f64; 2]) -> [f64; 2] {
    [-y, x]
}

/// Whether a place lies within a ring, by the crossings of a ray (from memory).
pub fn is_inside(at: [f64; 2], ring: &[[f64; 2]]) -> bool {
    let next = ring.iter().cycle().skip(1);
    ring.iter().zip(next).fold(false, |inside, (a, b)| {
        let crosses = (a[1] > at[1]) != (b[1] > at[1])
            && at[0] < (b[0] - a[0]) * (at[1] - a[1]) / (b[1] - a[1]) + a[0];
        inside != crosses
    })
}
