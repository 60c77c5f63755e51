//! Walls that rise past a roof: along an end leg they make its edges head walls and side walls.

use super::edges::Known;
use super::plan::{Climb, Plan, Vec2};
use super::sweep::Vec3;
use super::{EdgeKind, RoofCaution};
use crate::survey::WallSegment;

/// A wall this near to an end leg stands along it, feet.
const ALONG: f64 = 0.1;
/// Sine of the angle under which it counts as parallel to the leg.
const PARALLEL: f64 = 0.02;
/// Shortest stretch of wall that counts, feet.
const STRETCH: f64 = 1e-6;

/// A stretch of wall along an end leg.
struct Stretch {
    from: Vec2,
    along: Vec2,
    length: f64,
    top: f64,
}

/// The stretches along end legs, and a caution for each wall that stands along none.
fn stretches(plans: &[&Plan], walls: &[WallSegment]) -> (Vec<Stretch>, Vec<RoofCaution>) {
    let mut found = Vec::new();
    let mut cautions = Vec::new();
    for (wall, segment) in walls.iter().enumerate() {
        let [from, to] = [segment.from, segment.to].map(|end| Vec2::new(end.x, end.y));
        let run = to - from;
        let stands = plans.iter().any(|plan| {
            plan.legs.iter().any(|leg| {
                let start = leg.from + plan.origin;
                let off = |end: Vec2| leg.inward.dot(&(end - start)).abs();
                let [s, e] = [from, to].map(|end| leg.along.dot(&(end - start)));
                matches!(leg.climb, Climb::Stands(_))
                    && leg.along.perp(&run).abs() <= PARALLEL * run.norm()
                    && off(nearest_within(from, to, start, leg.along, leg.length)) <= ALONG
                    && s.max(e).min(leg.length) - s.min(e).max(0.0) > ALONG
            })
        });
        if stands && run.norm() > 0.0 {
            found.push(Stretch {
                from,
                along: run.normalize(),
                length: run.norm(),
                top: segment.top.in_feet(),
            });
        } else {
            cautions.push(RoofCaution::IdleWall { wall });
        }
    }
    (found, cautions)
}

/// The place on the wall beside the middle of the leg.
fn nearest_within(from: Vec2, to: Vec2, start: Vec2, along: Vec2, length: f64) -> Vec2 {
    super::plan::nearest_on(from, to, start + along * (length / 2.0))
}

/// Makes the rakes that lie along a wall, below its top, head walls and side walls.
pub(super) fn against(
    plans: &[&Plan],
    walls: &[WallSegment],
    known: Vec<Known>,
) -> (Vec<Known>, Vec<RoofCaution>) {
    let (found, cautions) = stretches(plans, walls);
    let mut open = known;
    for wall in &found {
        open = open
            .into_iter()
            .flat_map(|piece| {
                if piece.kind == EdgeKind::Rake {
                    wall.split(piece)
                } else {
                    vec![piece]
                }
            })
            .collect();
    }
    (open, cautions)
}

impl Stretch {
    /// The piece in up to three: before the wall or above it, along it, after it.
    fn split(&self, piece: Known) -> Vec<Known> {
        let off = |end: Vec3| self.along.perp(&(end.xy() - self.from)).abs();
        if off(piece.from) > ALONG || off(piece.to) > ALONG {
            return vec![piece];
        }
        // Where along the piece, 0 to 1, the wall stands and is higher.
        let (mut begin, mut finish) = (0.0_f64, 1.0_f64);
        let place = |end: Vec3| self.along.dot(&(end.xy() - self.from));
        for (at_from, at_to) in [
            (place(piece.from), place(piece.to)),
            (
                self.length - place(piece.from),
                self.length - place(piece.to),
            ),
            (self.top - piece.from.z, self.top - piece.to.z),
        ] {
            if at_from < 0.0 && at_to < 0.0 {
                return vec![piece];
            }
            let crossing = at_from / (at_from - at_to);
            if at_from < 0.0 {
                begin = begin.max(crossing);
            }
            if at_to < 0.0 {
                finish = finish.min(crossing);
            }
        }
        let length = (piece.to - piece.from).norm();
        if (finish - begin) * length <= STRETCH {
            return vec![piece];
        }
        let at = |share: f64| piece.from + (piece.to - piece.from) * share;
        let rise = (piece.to.z - piece.from.z).abs();
        let run = (piece.to - piece.from).xy().norm();
        let kind = if super::edges::is_level(rise, run) {
            EdgeKind::HeadWall
        } else {
            EdgeKind::SideWall
        };
        let part = |kind: EdgeKind, from: f64, to: f64| Known {
            kind,
            from: at(from),
            to: at(to),
            ..piece.clone()
        };
        let mut parts = vec![part(kind, begin, finish)];
        if begin * length > STRETCH {
            parts.push(part(EdgeKind::Rake, 0.0, begin));
        }
        if (1.0 - finish) * length > STRETCH {
            parts.push(part(EdgeKind::Rake, finish, 1.0));
        }
        parts
    }
}
