//! Corners given as known: a closed line that meets itself nowhere and encloses something.

use super::refusal::OutlineFault;
use crate::survey::Point;
use robust::{Coord, orient2d};

/// Two corners nearer than this are one, feet.
const ONE_PLACE: f64 = 0.01;
/// A corner this near a leg of which it is no end touches it, feet: rounding, not measuring.
const TOUCHES: f64 = 1e-6;

/// Refuses corners that are no outline. Either order of going round will do.
pub(super) fn check(corners: &[Point]) -> Result<(), OutlineFault> {
    let count = corners.len();
    if count < 3 {
        return Err(OutlineFault::TooFewCorners { corners: count });
    }
    let legs: Vec<[Point; 2]> = corners
        .iter()
        .copied()
        .zip(corners.iter().copied().cycle().skip(1))
        .map(|(from, to)| [from, to])
        .collect();
    for (leg, [from, to]) in legs.iter().enumerate() {
        let feet = distance(*from, *to);
        if feet < ONE_PLACE {
            let (first, second) = (leg, (leg + 1) % count);
            return Err(OutlineFault::CornersEqual { first, second });
        }
        if feet > crate::units::Length::LONGEST.in_feet() {
            return Err(OutlineFault::LegTooLong { leg, feet });
        }
    }
    if all_in_one_line(corners) {
        return Err(OutlineFault::WithoutArea);
    }
    for (first, one) in legs.iter().enumerate() {
        for (second, other) in legs.iter().enumerate().skip(first + 1) {
            let meets = if second == first + 1 {
                folds_back(*one, *other)
            } else if (second + 1) % count == first {
                folds_back(*other, *one)
            } else {
                crosses(*one, *other)
            };
            if meets {
                return Err(OutlineFault::CrossesItself { first, second });
            }
        }
    }
    Ok(())
}

fn distance(from: Point, to: Point) -> f64 {
    (to.x - from.x).hypot(to.y - from.y)
}

/// Twice the area to the left of `from` - `to` and `at`: its sign is exact.
fn side(from: Point, to: Point, at: Point) -> f64 {
    let coord = |point: Point| Coord {
        x: point.x,
        y: point.y,
    };
    orient2d(coord(from), coord(to), coord(at))
}

fn all_in_one_line(corners: &[Point]) -> bool {
    let Some(&first) = corners.first() else {
        return true;
    };
    let farther =
        |one: &&Point, other: &&Point| distance(first, **one).total_cmp(&distance(first, **other));
    let Some(&last) = corners.iter().max_by(farther) else {
        return true;
    };
    let length = distance(first, last);
    corners
        .iter()
        .all(|corner| side(first, last, *corner).abs() < ONE_PLACE * length)
}

/// The second of two legs in a row runs back over the first.
fn folds_back([from, corner]: [Point; 2], [_, to]: [Point; 2]) -> bool {
    let onward = (corner.x - from.x) * (to.x - corner.x) + (corner.y - from.y) * (to.y - corner.y);
    onward < 0.0 && (near(from, [corner, to]) || near(to, [from, corner]))
}

/// Two legs that share no corner have a point in common, or all but.
fn crosses(one: [Point; 2], other: [Point; 2]) -> bool {
    let apart = |[from, to]: [Point; 2], [a, b]: [Point; 2]| {
        let (at_a, at_b) = (side(from, to, a), side(from, to, b));
        (at_a > 0.0 && at_b > 0.0) || (at_a < 0.0 && at_b < 0.0)
    };
    let [a, b] = one;
    let [c, d] = other;
    let touch = near(a, other) || near(b, other) || near(c, one) || near(d, one);
    // Legs in one line meet only where an end of one lies on the other, which `touch` has seen.
    let in_line = side(a, b, c) == 0.0 && side(a, b, d) == 0.0;
    touch || !(in_line || apart(one, other) || apart(other, one))
}

/// Within [`TOUCHES`] of a leg.
fn near(at: Point, [from, to]: [Point; 2]) -> bool {
    let (dx, dy) = (to.x - from.x, to.y - from.y);
    let along = ((at.x - from.x) * dx + (at.y - from.y) * dy) / (dx * dx + dy * dy);
    let along = along.clamp(0.0, 1.0);
    let foot = Point {
        x: from.x + along * dx,
        y: from.y + along * dy,
    };
    distance(at, foot) < TOUCHES
}
