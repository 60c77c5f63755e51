//! What the fronts leave behind: faces as stacks of strips, and the creases between them.

use super::plan::{Plan, Vec2};
use crate::units::Point3;
use nalgebra::Vector3;

/// A place in space: feet in plan from the plan's origin, height above the eave.
pub(super) type Vec3 = Vector3<f64>;

/// The point at such a place.
pub(super) fn point(place: Vec3) -> Point3 {
    Point3::feet(place.into())
}

/// A place in plan lifted to a height.
pub(super) fn lift(at: Vec2, height: f64) -> Vec3 {
    Vec3::new(at.x, at.y, height)
}

/// What lies on one side of a crease. Legs by their place in the [`Plan`].
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub(super) enum Side {
    /// A face, by its place in [`Sweep::faces`].
    Face(usize),
    /// The vertical plane over an end leg.
    End(usize),
    /// The open air past a leg.
    Air(usize),
}

/// A straight piece between two faces, or between a face and what ends it.
#[derive(Clone, Copy, Debug)]
pub(super) struct Crease {
    pub from: Vec3,
    pub to: Vec3,
    /// What lies left of the way from `from` to `to`, seen from above.
    pub left: Side,
    pub right: Side,
    /// The way to judge it by where the two faces do not quite meet: along or across a strip that
    /// was too thin to build. The same side lies to its left.
    pub seam: Option<Vec3>,
}

/// A face as swept: one slope of one leg.
#[derive(Clone, Debug)]
pub(super) struct SweptFace {
    pub leg: usize,
    pub band: usize,
    /// Counter-clockwise in plan.
    pub ring: Vec<Vec3>,
}

/// All that the fronts of one body leave behind.
#[derive(Clone, Debug, Default)]
pub(super) struct Sweep {
    pub faces: Vec<SweptFace>,
    pub creases: Vec<Crease>,
}

/// What one piece of a front has swept so far: two chains of places, upward, and the pieces into
/// which it was cut.
#[derive(Clone, Debug)]
struct Strip {
    leg: usize,
    band: usize,
    side: Side,
    left: Vec<Vec3>,
    right: Vec<Vec3>,
    children: Vec<usize>,
}

/// The book of a sweep while it runs.
#[derive(Clone, Debug, Default)]
pub(super) struct Strips {
    strips: Vec<Strip>,
    /// The first strip of each face.
    roots: Vec<usize>,
    creases: Vec<Crease>,
}

impl Strips {
    /// A front begins over a leg, or its next slope begins: a new face unless the leg is an end.
    pub fn begin(&mut self, plan: &Plan, leg: usize, band: usize, ends: [Vec3; 2]) -> usize {
        let side = if plan.legs[leg].speed(band) > 0.0 {
            self.roots.push(self.strips.len());
            Side::Face(self.roots.len() - 1)
        } else {
            Side::End(leg)
        };
        self.strips.push(Strip {
            leg,
            band,
            side,
            left: vec![ends[0]],
            right: vec![ends[1]],
            children: Vec::new(),
        });
        self.strips.len() - 1
    }

    /// A front is cut at a place: its two parts, left and right.
    pub fn cut(&mut self, strip: usize, ends: [Vec3; 2], place: Vec3) -> [usize; 2] {
        let parts = [[ends[0], place], [place, ends[1]]].map(|[left, right]| {
            let old = &self.strips[strip];
            let part = Strip {
                leg: old.leg,
                band: old.band,
                side: old.side,
                left: vec![left],
                right: vec![right],
                children: Vec::new(),
            };
            self.strips.push(part);
            self.strips.len() - 1
        });
        let old = &mut self.strips[strip];
        old.left.push(ends[0]);
        old.right.push(ends[1]);
        old.children.extend(parts);
        parts
    }

    pub fn leg(&self, strip: usize) -> usize {
        self.strips[strip].leg
    }

    pub fn band(&self, strip: usize) -> usize {
        self.strips[strip].band
    }

    pub fn side(&self, strip: usize) -> Side {
        self.strips[strip].side
    }

    /// The left end of a front has come to a place where its way bends or ends.
    pub fn left_end_at(&mut self, strip: usize, place: Vec3) {
        self.strips[strip].left.push(place);
    }

    /// The right end of a front has come to a place where its way bends or ends.
    pub fn right_end_at(&mut self, strip: usize, place: Vec3) {
        self.strips[strip].right.push(place);
    }

    pub fn crease(&mut self, crease: Crease) {
        self.creases.push(crease);
    }

    /// Faces and creases, once every front has ended.
    pub fn close(self) -> Sweep {
        let faces = self
            .roots
            .iter()
            .map(|&root| SweptFace {
                leg: self.strips[root].leg,
                band: self.strips[root].band,
                ring: self.ring(root),
            })
            .collect();
        Sweep {
            faces,
            creases: self.creases,
        }
    }

    /// Up the right chain, over the parts from right to left, down the left chain.
    fn ring(&self, root: usize) -> Vec<Vec3> {
        enum Step {
            Enter(usize),
            Leave(usize),
        }
        let mut ring: Vec<Vec3> = Vec::new();
        let mut steps = vec![Step::Enter(root)];
        while let Some(step) = steps.pop() {
            match step {
                Step::Enter(strip) => {
                    ring.extend(&self.strips[strip].right);
                    steps.push(Step::Leave(strip));
                    // The last pushed is walked first: the right part.
                    steps.extend(
                        self.strips[strip]
                            .children
                            .iter()
                            .map(|&part| Step::Enter(part)),
                    );
                }
                Step::Leave(strip) => ring.extend(self.strips[strip].left.iter().rev()),
            }
        }
        tidy(ring)
    }
}

/// Places nearer than this are one, feet.
const SAME: f64 = 1e-9;
/// A place this near to the line between its neighbours is no corner, feet.
const STRAIGHT: f64 = 1e-9;

/// Drops repeated places and places on a straight run.
pub(super) fn tidy(ring: Vec<Vec3>) -> Vec<Vec3> {
    let mut kept: Vec<Vec3> = Vec::with_capacity(ring.len());
    for place in ring {
        if kept.last().is_none_or(|last| (place - last).norm() > SAME) {
            kept.push(place);
        }
    }
    while kept.len() > 1 && (kept[kept.len() - 1] - kept[0]).norm() <= SAME {
        kept.pop();
    }
    let mut place = 0;
    while place < kept.len() && kept.len() > 3 {
        let before = kept[(place + kept.len() - 1) % kept.len()];
        let after = kept[(place + 1) % kept.len()];
        let run = after - before;
        let off = run.cross(&(kept[place] - before)).norm();
        let between = (kept[place] - before).dot(&(after - kept[place])) >= 0.0;
        if between && off <= STRAIGHT * run.norm() {
            kept.remove(place);
            place = place.saturating_sub(1);
        } else {
            place += 1;
        }
    }
    kept
}
