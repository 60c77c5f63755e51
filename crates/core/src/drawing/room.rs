//! Room on a sheet for what is written on it: nothing lies over anything else.

/// How large a plan is drawn.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Sheet {
    /// Its width, points.
    pub width: f64,
    /// The greatest height of the house with what is written around it; its foot comes to that.
    pub tallest: f64,
    /// Size of its letters.
    pub letters: f64,
    /// Size to which they may shrink where that leaves fewer parts without a name.
    pub smallest: f64,
    /// No letter is smaller than this: figures of slopes, numbers and the foot are small elsewhere.
    pub least: f64,
}

impl Sheet {
    /// As wide as a page.
    pub const PAPER: Sheet = Sheet {
        width: 720.0,
        tallest: 560.0,
        letters: 13.0,
        smallest: 10.4,
        least: 0.0,
    };
    /// As wide as a small phone.
    pub const PHONE: Sheet = Sheet {
        width: 320.0,
        tallest: 360.0,
        letters: 11.0,
        smallest: 11.0,
        least: 0.0,
    };
}

impl Sheet {
    /// Letters by a share of the others.
    pub(super) fn small(&self, share: f64) -> f64 {
        (self.letters * share).max(self.least)
    }
}

/// A rectangle about a middle, turned.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Room {
    corners: [[f64; 2]; 4],
    along: [f64; 2],
    low: [f64; 2],
    high: [f64; 2],
}

impl Room {
    /// So wide and high about a place, its first side along a unit way.
    #[must_use]
    pub fn turned(at: [f64; 2], [width, height]: [f64; 2], along: [f64; 2]) -> Room {
        let [x, y] = along;
        let corners = [[1.0, 1.0], [1.0, -1.0], [-1.0, -1.0], [-1.0, 1.0]].map(|[s, t]| {
            let (s, t) = (s * width / 2.0, t * height / 2.0);
            [at[0] + s * x - t * y, at[1] + s * y + t * x]
        });
        let bound = |axis: usize, pick: fn(f64, f64) -> f64, start: f64| {
            corners.iter().map(|at| at[axis]).fold(start, pick)
        };
        Room {
            corners,
            along,
            low: [0, 1].map(|axis| bound(axis, f64::min, f64::INFINITY)),
            high: [0, 1].map(|axis| bound(axis, f64::max, f64::NEG_INFINITY)),
        }
    }

    /// With level sides.
    #[must_use]
    pub fn level(at: [f64; 2], size: [f64; 2]) -> Room {
        Room::turned(at, size, [1.0, 0.0])
    }

    /// Along a segment, so far to its two sides: toward `out`, and away from it.
    #[must_use]
    pub fn beside([a, b]: [[f64; 2]; 2], out: [f64; 2], [far, near]: [f64; 2]) -> Room {
        let shift = (far - near) / 2.0;
        let middle = [0, 1].map(|axis| f64::midpoint(a[axis], b[axis]) + out[axis] * shift);
        Room::turned(middle, [length([a, b]), far + near], way([a, b]))
    }

    /// Its corners in order.
    #[must_use]
    pub fn corners(&self) -> [[f64; 2]; 4] {
        self.corners
    }

    /// Whether two lie over each other: no line parts them (separating axis theorem).
    #[must_use]
    pub fn overlaps(&self, other: &Room) -> bool {
        let near = (0..2)
            .all(|axis| self.low[axis] < other.high[axis] && other.low[axis] < self.high[axis]);
        let axes = [self.along, turn(self.along), other.along, turn(other.along)];
        near && axes.iter().all(|axis| {
            let span = |one: &Room| {
                let on = one.corners.map(|at| at[0] * axis[0] + at[1] * axis[1]);
                let least = on.iter().copied().fold(f64::INFINITY, f64::min);
                (least, on.iter().copied().fold(f64::NEG_INFINITY, f64::max))
            };
            let ((a, b), (c, d)) = (span(self), span(other));
            a < d && c < b
        })
    }
}

/// What is taken of a sheet.
pub(super) struct Taken {
    size: [f64; 2],
    lines: Vec<Room>,
    words: Vec<Room>,
}

/// Left free at the rim of the sheet.
const RIM: f64 = 2.0;

impl Taken {
    pub fn new(size: [f64; 2]) -> Taken {
        Taken {
            size,
            lines: Vec::new(),
            words: Vec::new(),
        }
    }

    /// Takes room for a line, whatever lies there.
    pub fn draw(&mut self, room: Room) {
        self.lines.push(room);
    }

    /// Takes room for what is written, whatever lies there.
    pub fn write(&mut self, room: Room) {
        self.words.push(room);
    }

    /// Whether a room on the sheet has no line in it, and the one about it, which may be wider, no
    /// words.
    pub fn is_free(&self, room: &Room, about: &Room) -> bool {
        let on_sheet =
            (0..2).all(|axis| room.low[axis] >= RIM && room.high[axis] <= self.size[axis] - RIM);
        on_sheet
            && !self.lines.iter().any(|line| line.overlaps(room))
            && !self.words.iter().any(|words| words.overlaps(about))
    }
}

pub(super) fn length([a, b]: [[f64; 2]; 2]) -> f64 {
    (b[0] - a[0]).hypot(b[1] - a[1])
}

/// The unit way of a segment; to the right where it has no length.
pub(super) fn way([a, b]: [[f64; 2]; 2]) -> [f64; 2] {
    unit([b[0] - a[0], b[1] - a[1]])
}

pub(super) fn unit([x, y]: [f64; 2]) -> [f64; 2] {
    let length = x.hypot(y);
    if length > 0.0 {
        [x / length, y / length]
    } else {
        [1.0, 0.0]
    }
}

pub(super) fn turn([x, y]: [f64; 2]) -> [f64; 2] {
    [-y, x]
}
