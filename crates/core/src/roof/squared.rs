//! The outline as it was meant: legs that were seen parallel made parallel, legs that were seen in
//! one line put in one line.
//!
//! Two legs a hair out of line make a strip of roof a hair wide and tens of feet long, so the hips
//! and valleys of an outline as taped jump with every tenth of a foot. The areas do not: each leg
//! is turned about its middle and legs are joined at their mean by length, which leaves the area
//! as it was to first order.

use super::plan::Vec2;
use nalgebra::DMatrix;

/// Directions that differ by less are one nominal direction, degrees.
const SAME_DIRECTION: f64 = 0.01;
/// Legs of one direction this near to one line were meant in one line, feet.
const IN_LINE: f64 = 0.3;
/// An outline whose corners would move farther is left as it is, feet.
const FARTHEST_MOVE: f64 = 1.0;
/// Shorter legs are not left behind, feet.
const SHORTEST: f64 = 0.02;
/// Step of the differences that say how the squared corners follow the taped ones, feet.
const STEP: f64 = 1e-3;

/// What is squared in one outline: decided once, so that a small move of a corner cannot change it.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Squaring {
    /// For each leg the legs that run along the same axis, itself included.
    parallel: Vec<Vec<usize>>,
    /// Groups of legs that share one line; each leg is in one.
    in_line: Vec<Vec<usize>>,
}

/// The line of one leg: the places with `normal . place = offset`.
#[derive(Clone, Copy)]
struct Line {
    along: Vec2,
    offset: f64,
    length: f64,
}

/// Which legs may share a line.
#[derive(Clone, Copy, PartialEq)]
enum Sharing {
    /// All that lie near to one line.
    Near,
    /// Only legs that follow each other without a turn.
    Following,
}

impl Squaring {
    /// What to square; nothing where that would move a corner by more than a foot or leave a leg
    /// without length.
    ///
    /// `nominal`: direction of each leg in degrees as seen, one a leg.
    pub fn decide(corners: &[Vec2], nominal: &[f64]) -> Option<Squaring> {
        let sound = |squaring: &Squaring| {
            let moved = squaring.apply(corners);
            let count = corners.len();
            (0..count).all(|corner| {
                let next = (corner + 1) % count;
                let run = moved[next] - moved[corner];
                (moved[corner] - corners[corner]).norm() <= FARTHEST_MOVE
                    && run.dot(&(corners[next] - corners[corner])) > 0.0
                    && run.norm() >= SHORTEST
            })
        };
        if nominal.len() != corners.len() || nominal.iter().any(|turn| !turn.is_finite()) {
            return None;
        }
        let parallel: Vec<Vec<usize>> = nominal
            .iter()
            .map(|&this| {
                (0..nominal.len())
                    .filter(|&other| turned(this, nominal[other], 180.0) < SAME_DIRECTION)
                    .collect()
            })
            .collect();
        [Sharing::Near, Sharing::Following]
            .into_iter()
            .map(|sharing| Squaring {
                in_line: in_line(&lines(corners, &parallel), nominal, sharing),
                parallel: parallel.clone(),
            })
            .find(sound)
    }

    /// The squared corners.
    pub fn apply(&self, corners: &[Vec2]) -> Vec<Vec2> {
        let count = corners.len();
        let mut lines = lines(corners, &self.parallel);
        for group in &self.in_line {
            let length: f64 = group.iter().map(|&leg| lines[leg].length).sum();
            let moment = |leg: &usize| lines[*leg].length * lines[*leg].offset;
            let offset = group.iter().map(moment).sum::<f64>() / length;
            for &leg in group {
                lines[leg].offset = offset;
            }
        }
        (0..count)
            .map(|corner| {
                let before = &lines[(corner + count - 1) % count];
                meet(before, &lines[corner], corners[corner])
            })
            .collect()
    }

    /// How the squared corners follow the taped ones: 2n x 2n, x0 y0 x1 .. both ways.
    pub fn jacobian(&self, corners: &[Vec2]) -> DMatrix<f64> {
        let size = 2 * corners.len();
        let mut jacobian = DMatrix::zeros(size, size);
        for column in 0..size {
            let moved = |step: f64| {
                let mut corners = corners.to_vec();
                corners[column / 2][column % 2] += step;
                self.apply(&corners)
            };
            let (ahead, back) = (moved(STEP), moved(-STEP));
            for row in 0..size {
                let run = ahead[row / 2][row % 2] - back[row / 2][row % 2];
                jacobian[(row, column)] = run / (2.0 * STEP);
            }
        }
        jacobian
    }
}

/// One line a leg, through its middle; legs of one axis share their mean direction by length.
fn lines(corners: &[Vec2], parallel: &[Vec<usize>]) -> Vec<Line> {
    let count = corners.len();
    let run = |leg: usize| corners[(leg + 1) % count] - corners[leg];
    (0..count)
        .map(|leg| {
            // Legs that run the other way count turned about.
            let along = parallel[leg]
                .iter()
                .map(|&other| run(other) * run(other).dot(&run(leg)).signum())
                .sum::<Vec2>()
                .normalize();
            let middle = (corners[leg] + corners[(leg + 1) % count]) / 2.0;
            Line {
                along,
                offset: along.perp(&middle),
                length: run(leg).norm(),
            }
        })
        .collect()
}

/// Groups of legs of one direction that lie in one line or near to one.
fn in_line(lines: &[Line], nominal: &[f64], sharing: Sharing) -> Vec<Vec<usize>> {
    let count = lines.len();
    let mut order: Vec<usize> = (0..count).collect();
    order.sort_by(|&a, &b| lines[a].offset.total_cmp(&lines[b].offset));
    let mut groups: Vec<Vec<usize>> = Vec::new();
    for leg in order {
        let joins = |group: &Vec<usize>| {
            let one_way = turned(nominal[group[0]], nominal[leg], 360.0) < SAME_DIRECTION;
            let near = sharing == Sharing::Near
                && lines[leg].offset - lines[group[0]].offset <= IN_LINE
                && !group.iter().any(|&other| steps(lines, other, leg));
            let follows = group
                .iter()
                .any(|&other| (other + 1) % count == leg || (leg + 1) % count == other);
            one_way && (near || follows)
        };
        match groups.iter_mut().find(|group| joins(group)) {
            Some(group) => group.push(leg),
            None => groups.push(vec![leg]),
        }
    }
    groups
}

/// Whether one short leg stands between two legs: a step that was seen is kept.
fn steps(lines: &[Line], one: usize, other: usize) -> bool {
    let count = lines.len();
    let between = if (one + 2) % count == other {
        (one + 1) % count
    } else if (other + 2) % count == one {
        (other + 1) % count
    } else {
        return false;
    };
    lines[between].length <= 2.0 * IN_LINE
}

/// Where two lines meet; on the first nearest to `corner` where they are one line.
fn meet(before: &Line, after: &Line, corner: Vec2) -> Vec2 {
    let sine = before.along.perp(&after.along);
    if sine.abs() < SAME_DIRECTION.to_radians() {
        let normal = Vec2::new(-before.along.y, before.along.x);
        return corner + normal * (before.offset - normal.dot(&corner));
    }
    (after.along * before.offset - before.along * after.offset) / sine
}

/// How far apart two directions are, degrees, where `whole` degrees come to the same.
fn turned(one: f64, other: f64, whole: f64) -> f64 {
    let apart = (one - other).rem_euclid(whole);
    apart.min(whole - apart)
}
