//! Cleaning a loop of fronts as a polygon: near places are joined, the loop is pinched wherever it
//! touches itself, and what is left without area is a level ridge.

use super::plan::{Vec2, nearest_on};
use super::sweep::{Crease, lift};
use super::wavefront::{Fronts, NEAR};

/// A corner of a loop and the front that leaves it.
#[derive(Clone, Copy, Debug)]
pub(super) struct Corner {
    pub at: Vec2,
    /// Where its trace began.
    pub born: super::sweep::Vec3,
    /// The strip of the front from this corner to the next.
    pub strip: usize,
}

/// A loop of fronts at one height, counter-clockwise.
#[derive(Clone, Debug)]
pub(super) struct Front {
    pub height: f64,
    pub corners: Vec<Corner>,
}

/// What is known to have met at this height, whatever rounding says.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Contact {
    /// A front has no length left.
    Shrunk { side: usize },
    /// A corner lies on a front.
    Met { corner: usize, side: usize },
}

/// Where a loop touches itself.
enum Touch {
    /// Two corners in one place.
    Corners(usize, usize),
    /// A corner on the inside of a side.
    OnSide(usize, usize),
}

impl Front {
    /// The strip of the front that comes to a corner.
    pub fn strip_before(&self, corner: usize) -> usize {
        let count = self.corners.len();
        self.corners[(corner + count - 1) % count].strip
    }

    /// Turns the loop so that a corner stands first.
    fn begin_at(&mut self, corner: usize) {
        self.corners.rotate_left(corner);
    }

    /// A corner on a side that is not its own, or on another corner.
    fn touch(&self) -> Option<Touch> {
        let count = self.corners.len();
        (0..count).find_map(|corner| (0..count).find_map(|side| self.touch_at(corner, side, NEAR)))
    }

    fn touch_at(&self, corner: usize, side: usize, reach: f64) -> Option<Touch> {
        let count = self.corners.len();
        let end = (side + 1) % count;
        if corner == side || corner == end {
            return None;
        }
        let place = self.corners[corner].at;
        let (a, b) = (self.corners[side].at, self.corners[end].at);
        if (nearest_on(a, b, place) - place).norm() > reach {
            return None;
        }
        // Corners that follow each other are joined elsewhere.
        let follows = |other: usize| (corner + 1) % count == other || (other + 1) % count == corner;
        if (a - place).norm() <= NEAR {
            return (!follows(side)).then_some(Touch::Corners(corner, side));
        }
        if (b - place).norm() <= NEAR {
            return (!follows(end)).then_some(Touch::Corners(corner, end));
        }
        Some(Touch::OnSide(corner, side))
    }
}

impl Fronts<'_> {
    /// Cleans a loop at its height and gives the loops with area into which it falls.
    pub fn clean(&mut self, mut front: Front, contact: Option<Contact>) -> Vec<Front> {
        let mut open = match contact {
            Some(Contact::Shrunk { side }) => {
                self.join(&mut front, side);
                vec![front]
            }
            // A fast corner lands less exactly than places are told apart.
            Some(Contact::Met { corner, side }) => match front.touch_at(corner, side, 1e3 * NEAR) {
                Some(touch) => self.pinch(front, &touch),
                None => vec![front],
            },
            None => vec![front],
        };
        let mut clean = Vec::new();
        while let Some(mut front) = open.pop() {
            self.join_near(&mut front);
            match front.corners.len() {
                0 | 1 => {}
                2 => self.fold(&front),
                _ => match front.touch() {
                    Some(touch) => open.extend(self.pinch(front, &touch)),
                    None => clean.push(front),
                },
            }
        }
        clean
    }

    /// Ends the trace of a corner at a place: a crease between its two fronts, a bend in both.
    pub fn end_trace(&mut self, front: &Front, corner: usize, place: super::sweep::Vec3) {
        let (before, after) = (front.strip_before(corner), front.corners[corner].strip);
        self.strips.crease(Crease {
            from: front.corners[corner].born,
            to: place,
            left: self.strips.side(before),
            right: self.strips.side(after),
            seam: None,
        });
        self.strips.right_end_at(before, place);
        self.strips.left_end_at(after, place);
    }

    /// Joins every pair of following corners that lie in one place.
    fn join_near(&mut self, front: &mut Front) {
        let mut side = 0;
        while side < front.corners.len() && front.corners.len() > 1 {
            let end = (side + 1) % front.corners.len();
            if (front.corners[end].at - front.corners[side].at).norm() <= NEAR {
                self.join(front, side);
                side = side.saturating_sub(1);
            } else {
                side += 1;
            }
        }
    }

    /// Joins the two ends of a side: the side is gone.
    fn join(&mut self, front: &mut Front, side: usize) {
        let end = (side + 1) % front.corners.len();
        let at = (front.corners[side].at + front.corners[end].at) / 2.0;
        let place = lift(at, front.height);
        self.end_trace(front, side, place);
        self.end_trace(front, end, place);
        front.corners[end].at = at;
        front.corners[end].born = place;
        front.corners.remove(side);
    }

    /// Cuts a loop in two where it touches itself.
    fn pinch(&mut self, mut front: Front, touch: &Touch) -> Vec<Front> {
        let (first, other) = match touch {
            Touch::Corners(first, other) | Touch::OnSide(first, other) => (*first, *other),
        };
        let count = front.corners.len();
        front.begin_at(first);
        let other = (other + count - first) % count;
        let at = front.corners[0].at;
        let place = lift(at, front.height);
        self.end_trace(&front, 0, place);
        let corner = |strip: usize| Corner {
            at,
            born: place,
            strip,
        };
        let mut near = vec![corner(front.corners[0].strip)];
        let far_strip = match touch {
            Touch::Corners(..) => {
                self.end_trace(&front, other, place);
                near.extend(&front.corners[1..other]);
                front.corners[other].strip
            }
            Touch::OnSide(..) => {
                let ends = [other, (other + 1) % count]
                    .map(|end| lift(front.corners[end].at, front.height));
                let [left, right] = self.strips.cut(front.corners[other].strip, ends, place);
                near.extend(&front.corners[1..=other]);
                if let Some(last) = near.last_mut() {
                    last.strip = left;
                }
                right
            }
        };
        let mut far = vec![corner(far_strip)];
        far.extend(&front.corners[other + 1..]);
        [near, far]
            .map(|corners| Front {
                height: front.height,
                corners,
            })
            .into()
    }

    /// A loop of two fronts on one line: they meet along it.
    fn fold(&mut self, front: &Front) {
        let [a, b] = [0, 1].map(|corner| lift(front.corners[corner].at, front.height));
        self.end_trace(front, 0, a);
        self.end_trace(front, 1, b);
        self.strips.crease(Crease {
            from: a,
            to: b,
            left: self.strips.side(front.corners[1].strip),
            right: self.strips.side(front.corners[0].strip),
            seam: None,
        });
    }
}
