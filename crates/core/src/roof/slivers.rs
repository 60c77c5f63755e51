//! Strips of roof too thin to build: found, given to the slope beside them, and said.
//!
//! Two legs a hand's breadth out of line leave a strip of a third slope as narrow as that and tens
//! of feet long, which runs on between a hip and a valley. Whether it is there hangs on a tenth of
//! a foot, and its two edges come and go together. Nobody builds it: the slope beside it takes it,
//! and where that meets the slope on the other side is judged as if the strip had no width.

use super::edges::{ONE_SURFACE, is_level};
use super::plan::{Plan, Vec2};
use super::planes::Plane;
use super::sliver_transfer::transferred;
use super::solid::winds_round;
use super::sweep::{Side, Sweep, Vec3};

/// A strip as wide as this is built, feet.
const WIDE_ENOUGH: f64 = 0.25;
/// A shorter one is no strip, feet: four times as long as wide.
const SHORTEST: f64 = 4.0 * WIDE_ENOUGH;
/// Places nearer than this are one, feet.
const SAME: f64 = super::rings::SAME;

/// A strip that was not built. Legs by their numbers as given.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Sliver {
    pub leg: usize,
    /// The leg whose slope took it.
    pub taken_by: usize,
    /// Feet in plan.
    pub width: f64,
    pub length: f64,
}

/// A straight piece of what bounds a face, which lies to the left of it.
#[derive(Clone, Copy, Debug)]
pub(super) struct Bank {
    /// Its place among the creases.
    pub crease: usize,
    pub from: Vec3,
    pub to: Vec3,
    pub beyond: Side,
    /// See [`super::sweep::Crease::seam`], with the face to the left.
    pub seam: Option<Vec3>,
}

/// A strip of one face between two banks that run opposite ways.
#[derive(Clone, Copy, Debug)]
pub(super) struct Strip {
    /// The face, by its place in the sweep.
    pub face: usize,
    /// The face that takes it.
    pub taker: usize,
    /// The bank to the taker, then the one opposite.
    pub banks: [Bank; 2],
    /// Unit, along the first bank.
    pub axis: Vec2,
    /// Where along the axis it begins and ends.
    pub span: [f64; 2],
    /// At its widest, feet.
    pub width: f64,
}

/// The sweep without its thin strips, and what they were.
pub(super) fn without_slivers(plan: &Plan, mut sweep: Sweep) -> (Sweep, Vec<Sliver>) {
    let mut given = Vec::new();
    // Each round takes at least one crease away or is the last.
    for _ in 0..sweep.creases.len() {
        let mut strips: Vec<Strip> = (0..sweep.faces.len())
            .flat_map(|face| strips_of(plan, &sweep, face))
            .collect();
        strips.sort_by(|a, b| a.width.total_cmp(&b.width));
        let Some((strip, after)) = strips
            .into_iter()
            .find_map(|strip| Some((strip, transferred(plan, &sweep, &strip)?)))
        else {
            break;
        };
        let number = |face: usize| plan.legs[sweep.faces[face].leg].number;
        given.push(Sliver {
            leg: number(strip.face),
            taken_by: number(strip.taker),
            width: strip.width,
            length: strip.span[1] - strip.span[0],
        });
        sweep = after;
    }
    (sweep, given)
}

/// What bounds a face, in no order.
pub(super) fn banks(sweep: &Sweep, face: usize) -> Vec<Bank> {
    let own = Side::Face(face);
    let bank = |(number, crease): (usize, &super::sweep::Crease)| {
        let (from, to, beyond, seam) = match (crease.left == own, crease.right == own) {
            (true, false) => (crease.from, crease.to, crease.right, crease.seam),
            (false, true) => (
                crease.to,
                crease.from,
                crease.left,
                crease.seam.map(|way| -way),
            ),
            (true, true) | (false, false) => return None,
        };
        Some(Bank {
            crease: number,
            from,
            to,
            beyond,
            seam,
        })
    };
    sweep.creases.iter().enumerate().filter_map(bank).collect()
}

/// The thin strips of one face.
fn strips_of(plan: &Plan, sweep: &Sweep, face: usize) -> Vec<Strip> {
    let sloped: Vec<(Bank, usize)> = banks(sweep, face)
        .into_iter()
        .filter_map(|bank| Some((bank, beyond_a_fold(plan, sweep, face, &bank)?)))
        .collect();
    let mut strips = Vec::new();
    for (place, one) in sloped.iter().enumerate() {
        for other in &sloped[place + 1..] {
            strips.extend(between(sweep, face, one, other));
        }
    }
    strips
}

/// The face beyond a hip or valley of a face; none beyond any other edge.
fn beyond_a_fold(plan: &Plan, sweep: &Sweep, face: usize, bank: &Bank) -> Option<usize> {
    let Side::Face(other) = bank.beyond else {
        return None;
    };
    let [(leg, plane), (beyond, falling)] = [face, other].map(|face| {
        let swept = &sweep.faces[face];
        (swept.leg, Plane::new(&plan.legs[swept.leg], swept.band))
    });
    let run = bank.to - bank.from;
    let sloped = !is_level(run.z.abs(), run.xy().norm());
    (bank.seam.is_none() && leg != beyond && sloped && plane.fold(&falling) >= ONE_SURFACE)
        .then_some(other)
}

/// The thin strip between two banks of a face, if there is one.
fn between(
    sweep: &Sweep,
    face: usize,
    (one, beyond_one): &(Bank, usize),
    (other, beyond_other): &(Bank, usize),
) -> Option<Strip> {
    let [way, back] = [one, other].map(|bank| (bank.to - bank.from).xy());
    if way.norm() <= SAME || back.norm() <= SAME || way.dot(&back) >= 0.0 {
        return None;
    }
    let axis = (way.normalize() - back.normalize()).normalize();
    let along = |place: Vec3| axis.dot(&place.xy());
    let span = [
        along(one.from).max(along(other.to)),
        along(one.to).min(along(other.from)),
    ];
    if span[1] - span[0] < SHORTEST {
        return None;
    }
    let ends = span.map(|at| [one, other].map(|bank| bank.at(axis, at)));
    let widths = ends.map(|[near, far]| axis.perp(&(far - near)));
    let width = widths[0].max(widths[1]);
    if widths[0].min(widths[1]) < -SAME || width <= SAME || width >= WIDE_ENOUGH {
        return None;
    }
    // Nothing else of the face's outline lies in it, and the face does.
    let ring: Vec<Vec2> = sweep.faces[face].ring.iter().map(Vec3::xy).collect();
    let [[a, b], [d, c]] = ends;
    let within = |place: &Vec2| {
        let at = axis.dot(place);
        let [near, far] = [one, other].map(|bank| axis.perp(&(place - bank.at(axis, at))));
        at > span[0] + SAME && at < span[1] - SAME && near > SAME && far < -SAME
    };
    if ring.iter().any(within) || !winds_round(&ring, (a + b + c + d) / 4.0) {
        return None;
    }
    let first_takes = takes(sweep, width, [(way, *beyond_one), (back, *beyond_other)]);
    let (axis, span, banks, taker) = if first_takes {
        (axis, span, [*one, *other], *beyond_one)
    } else {
        (-axis, [-span[1], -span[0]], [*other, *one], *beyond_other)
    };
    Some(Strip {
        face,
        taker,
        banks,
        axis,
        span,
        width,
    })
}

/// Whether the first of two slopes takes a strip between them: the one whose edge goes on farther
/// past it, so that what is left of the face keeps its edge; of equal ones the larger.
fn takes(sweep: &Sweep, width: f64, [(way, one), (back, other)]: [(Vec2, usize); 2]) -> bool {
    let longer = way.norm() - back.norm();
    if longer.abs() > 2.0 * width {
        return longer > 0.0;
    }
    let [area, against] = [one, other].map(|face| sweep.faces[face].plan_area());
    if (area - against).abs() > 1e-6 * area {
        return area > against;
    }
    sweep.faces[one].leg < sweep.faces[other].leg
}

impl Bank {
    /// Its place in plan at a place along an axis.
    pub fn at(&self, axis: Vec2, along: f64) -> Vec2 {
        let (from, way) = (self.from.xy(), (self.to - self.from).xy());
        from + way * ((along - axis.dot(&from)) / axis.dot(&way))
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::roof::wavefront::sweep;
    use crate::roof::{BodyShape, LegRise, Rise};
    use crate::survey::Point;
    use crate::units::{Length, Pitch};
    use proptest::prelude::*;

    /// A front in parts a hair out of line with a wing between each two, fronts and sides each at
    /// one pitch.
    fn house() -> impl Strategy<Value = BodyShape> {
        let wings = proptest::collection::vec((8.0..22.0, 6.0..20.0, -0.4..0.4), 1..4);
        (wings, 4.0..12.0, 4.0..12.0).prop_map(|(wings, front, side)| {
            let (mut x, mut y) = (0.0, 20.0);
            let mut corners = vec![[x, y]];
            for (width, depth, back) in wings {
                x += 18.0;
                corners.extend([[x, y], [x, y - depth], [x + width, y - depth]]);
                x += width;
                y = 20.0 + back;
                corners.push([x, y]);
            }
            x += 18.0;
            corners.extend([[x, y], [x, 56.0], [0.0, 56.0]]);
            let legs = (0..corners.len()).map(|leg| LegRise {
                rise: Rise::slope(Pitch::rise_in_12(if leg % 2 == 0 { front } else { side })),
                overhang: Length::ZERO,
            });
            BodyShape {
                id: "main".to_string(),
                legs: legs.collect(),
                corners: corners.into_iter().map(|[x, y]| Point { x, y }).collect(),
                nominal_directions: None,
                eave_height: Length::feet(9.0),
            }
        })
    }

    fn by_leg(sweep: &Sweep, legs: usize) -> Vec<f64> {
        let mut areas = vec![0.0; legs];
        for face in &sweep.faces {
            areas[face.leg] += face.plan_area();
        }
        areas
    }

    proptest! {
        #[test]
        fn no_more_area_changes_hands_than_the_strips_own(shape in house()) {
            let Ok(plan) = Plan::new(&shape) else { return Ok(()) };
            let Ok(built) = sweep(&plan) else { return Ok(()) };
            let legs = plan.legs.len();
            let before = by_leg(&built, legs);
            let (after, given) = without_slivers(&plan, built);
            let after = by_leg(&after, legs);
            let moved: f64 = before.iter().zip(&after).map(|(a, b)| (a - b).abs()).sum();
            // Each strip leaves one leg and comes to another, with a scrap at either end.
            let own = |strip: &Sliver| strip.width * (strip.length + 4.0 * strip.width);
            let strips: f64 = given.iter().map(own).sum();
            prop_assert!(moved <= 2.0 * strips + 1e-6, "{moved} of {strips}");
            let total = |areas: &[f64]| areas.iter().sum::<f64>();
            prop_assert!((total(&before) - total(&after)).abs() < 1e-6);
        }

        #[test]
        fn where_nothing_is_thin_nothing_changes(shape in house()) {
            let Ok(plan) = Plan::new(&shape) else { return Ok(()) };
            let Ok(built) = sweep(&plan) else { return Ok(()) };
            let (once, _) = without_slivers(&plan, built);
            let creases = once.creases.len();
            let areas = by_leg(&once, plan.legs.len());
            let (twice, given) = without_slivers(&plan, once);
            prop_assert_eq!(given, Vec::new());
            prop_assert_eq!(twice.creases.len(), creases);
            prop_assert_eq!(by_leg(&twice, plan.legs.len()), areas);
        }
    }
}
