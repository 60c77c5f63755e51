//! Roofs over other readings as likely as those that were booked.
//!
//! Near a change of shape a derivative says nothing: a tenth of a foot makes a hip and a valley of
//! many feet, or none. So corners and slopes are drawn from their spread, the same draws each
//! time, and the roof is raised over each (Metropolis and Ulam, *The Monte Carlo method*, 1949).
//! Only what the derivative does not foresee is taken from the draws: where it foresees all, the
//! spread is its own.

use super::moves::{turn_slopes, unsure_pitches};
use crate::roof::{BodyShape, EdgeKind, Roof, raise};
use crate::settled::SolvedBody;
use crate::survey::Survey;
use crate::units::Length;
use nalgebra::{DMatrix, DVector};
use std::collections::BTreeMap;

/// How many roofs are raised: a root mean square of so many has a spread of 6 % of its own.
const DRAWS: usize = 128;
/// Ways in which corners are unsure by a smaller share of the largest variance are rounding.
const LEAST_VARIANCE: f64 = 1e-9;
/// A length farther than this from what was foreseen belongs to another shape, feet..
const ANOTHER_SHAPE: f64 = 2.0;
/// .. and farther than this share of the change that was foreseen.
const ANOTHER_SHARE: f64 = 0.5;

/// All edges of one kind together in another shape that the readings allow.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct AlternativeTopology {
    /// What they are.
    pub kind: EdgeKind,
    /// Their length as drawn.
    pub drawn: Length,
    /// Their length in the other shape: the middle one of those that were met.
    pub other: Length,
    /// How much of what the readings allow is another shape, from 0 to 1.
    pub share: f64,
}

/// What moves of one body: feet by corner (x0 y0 x1 ..), degrees by where a slope was read.
pub(super) struct Moves {
    pub corners: DVector<f64>,
    pub slopes: BTreeMap<usize, f64>,
}

/// The length of one kind of edge on one likely roof, and what the derivative foresees for it.
pub(super) struct LikelyLength {
    pub length: f64,
    pub foreseen: f64,
}

/// Roofs over likely readings, with what was moved for each; none where nothing is unsure.
pub(super) fn likely_roofs(
    survey: &Survey,
    bodies: &[SolvedBody],
    shapes: &[BodyShape],
) -> Vec<(Vec<Moves>, Roof)> {
    let roots: Vec<DMatrix<f64>> = bodies.iter().map(root).collect();
    let unsure: Vec<BTreeMap<usize, f64>> = bodies
        .iter()
        .map(|body| unsure_pitches(&body.rises))
        .collect();
    let unknowns = roots.iter().map(DMatrix::ncols).sum::<usize>()
        + unsure.iter().map(BTreeMap::len).sum::<usize>();
    let draws = draws(unknowns);
    draws
        .row_iter()
        .filter(|_| unknowns > 0)
        .filter_map(|draw| {
            let mut chances = draw.iter().copied();
            let mut shapes = shapes.to_vec();
            let mut all = Vec::new();
            for (body, shape) in shapes.iter_mut().enumerate() {
                let by = chances.by_ref().take(roots[body].ncols());
                let by = DVector::from_iterator(roots[body].ncols(), by);
                let slopes = unsure[body].iter().zip(chances.by_ref());
                let moves = Moves {
                    corners: &roots[body] * by,
                    slopes: slopes
                        .map(|((read_at, sigma), chance)| (*read_at, sigma * chance))
                        .collect(),
                };
                moves.apply(shape, &bodies[body]);
                all.push(moves);
            }
            // Readings that admit no roof would have been read again.
            Some((all, raise(&shapes, &survey.walls).ok()?))
        })
        .collect()
}

/// One draw a row, one unknown a column, each with mean 0 and variance 1. Where they are many
/// enough they are made exactly uncorrelated, so that what is linear in them has its own spread.
fn draws(unknowns: usize) -> DMatrix<f64> {
    let mut chance = Chance(0);
    let draws = DMatrix::from_fn(DRAWS, unknowns, |_, _| chance.normal());
    if DRAWS < 2 * unknowns {
        return draws;
    }
    let moments = draws.transpose() * &draws / DRAWS as f64;
    let straightened = moments
        .cholesky()
        .and_then(|root| root.l().solve_lower_triangular(&draws.transpose()));
    straightened.map_or(draws, |straightened| straightened.transpose())
}

/// One standard deviation of the length of all edges of a kind, and what else it may be.
///
/// `variance`: by the derivative, square feet; none where the smallest move changes the shape.
pub(super) fn judge(
    kind: EdgeKind,
    as_drawn: f64,
    variance: Option<f64>,
    likely: &[LikelyLength],
) -> (Length, Option<AlternativeTopology>) {
    let mut apart: Vec<f64> = likely
        .iter()
        .filter(|one| {
            let foreseen = (one.foreseen - as_drawn).abs();
            (one.length - one.foreseen).abs() > ANOTHER_SHAPE.max(ANOTHER_SHARE * foreseen)
        })
        .map(|one| one.length)
        .collect();
    let count = likely.len().max(1) as f64;
    let mean = |of: &dyn Fn(&LikelyLength) -> f64| likely.iter().map(of).sum::<f64>() / count;
    let drawn = mean(&|one| (one.length - as_drawn).powi(2));
    // What the derivative says is exact; only what it does not foresee is left to the draws.
    let squares = variance.map_or(drawn, |variance| {
        let unforeseen = |one: &LikelyLength| {
            let off = one.length - one.foreseen;
            off * (off + 2.0 * (one.foreseen - as_drawn))
        };
        let squares = variance + mean(&unforeseen);
        if squares > 0.0 { squares } else { drawn }
    });
    apart.sort_by(f64::total_cmp);
    let picture = apart.get(apart.len() / 2).map(|other| AlternativeTopology {
        kind,
        drawn: Length::feet(as_drawn),
        other: Length::feet(*other),
        share: apart.len() as f64 / count,
    });
    (Length::feet(squares.max(0.0).sqrt()), picture)
}

/// A matrix whose product with its transpose is the covariance of a body's corners, one column for
/// each way in which they are unsure.
fn root(body: &SolvedBody) -> DMatrix<f64> {
    let parts = body.outline.covariance.clone().symmetric_eigen();
    let least = LEAST_VARIANCE * parts.eigenvalues.max();
    let columns: Vec<DVector<f64>> = (0..parts.eigenvalues.len())
        .filter(|&k| parts.eigenvalues[k] > least.max(0.0))
        .map(|k| parts.eigenvectors.column(k) * parts.eigenvalues[k].sqrt())
        .collect();
    if columns.is_empty() {
        return DMatrix::zeros(parts.eigenvalues.len(), 0);
    }
    DMatrix::from_columns(&columns)
}

impl Moves {
    fn apply(&self, shape: &mut BodyShape, solved: &SolvedBody) {
        for (corner, by) in shape
            .corners
            .iter_mut()
            .zip(self.corners.as_slice().chunks(2))
        {
            if let [x, y] = by {
                corner.x += x;
                corner.y += y;
            }
        }
        for (read_at, degrees) in &self.slopes {
            turn_slopes(shape, &solved.rises, (*read_at, *degrees));
        }
    }
}

/// Numbers that look like chance and are the same each time (Steele, Lea and Flood, *Fast
/// splittable pseudorandom number generators*, 2014).
struct Chance(u64);

impl Chance {
    /// Evenly spread from 0 to 1.
    fn even(&mut self) -> f64 {
        self.0 = self.0.wrapping_add(0x9e37_79b9_7f4a_7c15);
        let mut z = self.0;
        z = (z ^ (z >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
        z = (z ^ (z >> 27)).wrapping_mul(0x94d0_49bb_1331_11eb);
        ((z ^ (z >> 31)) >> 11) as f64 / (1_u64 << 53) as f64
    }

    /// Mean 0, standard deviation 1 (Box and Muller 1958).
    fn normal(&mut self) -> f64 {
        let radius = (-2.0 * (1.0 - self.even()).ln()).sqrt();
        radius * (std::f64::consts::TAU * self.even()).cos()
    }
}
