//! Bodies found from a corner of another are moved to where that corner came out, and are as unsure
//! as that corner and the way from it.

use super::body::SolvedBody;
use crate::outline::Outline;
use crate::survey::{Body, Point};
use nalgebra::{DMatrix, DVector, Matrix2};
use std::collections::BTreeMap;

/// How the corners of bodies that were found from one another go together.
///
/// The place of a body has no other witness than the corner it was found from, so adjusting both at
/// once comes to the same corners; what it adds is that they move together.
#[derive(Clone, Debug, Default)]
pub struct CrossCovariance {
    /// Covariance of the corners of two bodies, the later placed first, sq ft.
    pairs: BTreeMap<(usize, usize), DMatrix<f64>>,
}

impl CrossCovariance {
    /// Covariance of coordinate `i` of one body and `j` of another, sq ft.
    #[must_use]
    pub fn between(&self, (one, i): (usize, usize), (other, j): (usize, usize)) -> f64 {
        let straight = self
            .pairs
            .get(&(one, other))
            .and_then(|block| block.get((i, j)));
        let turned = || {
            self.pairs
                .get(&(other, one))
                .and_then(|block| block.get((j, i)))
        };
        straight.or_else(turned).copied().unwrap_or(0.0)
    }

    /// Whether two bodies go together.
    #[must_use]
    pub fn binds(&self, one: usize, other: usize) -> bool {
        self.pairs.contains_key(&(one, other)) || self.pairs.contains_key(&(other, one))
    }

    /// Covariance of all corners times the change of a figure by corner, per body.
    pub(crate) fn pull(
        &self,
        bodies: &[SolvedBody],
        by_corner: &[DVector<f64>],
    ) -> Vec<DVector<f64>> {
        let mut pull: Vec<DVector<f64>> = bodies
            .iter()
            .zip(by_corner)
            .map(|(body, gradient)| &body.outline.covariance * gradient)
            .collect();
        for ((one, other), block) in &self.pairs {
            pull[*one] += block * &by_corner[*other];
            pull[*other] += block.tr_mul(&by_corner[*one]);
        }
        pull
    }

    /// Variance that the corners give a figure, by how it changes with them.
    pub(crate) fn variance(&self, bodies: &[SolvedBody], by_corner: &[DVector<f64>]) -> f64 {
        // A figure often touches few corners of many.
        let touched: Vec<Vec<(usize, f64)>> = by_corner
            .iter()
            .map(|gradient| {
                let parts = gradient.iter().copied().enumerate();
                parts.filter(|(_, part)| part.abs() > 0.0).collect()
            })
            .collect();
        let own: f64 = bodies
            .iter()
            .zip(&touched)
            .map(|(body, parts)| sum_over(parts, parts, &body.outline.covariance))
            .sum();
        let across: f64 = self
            .pairs
            .iter()
            .map(|((one, other), block)| 2.0 * sum_over(&touched[*one], &touched[*other], block))
            .sum();
        (own + across).max(0.0)
    }
}

fn sum_over(one: &[(usize, f64)], other: &[(usize, f64)], covariance: &DMatrix<f64>) -> f64 {
    let row = |i: usize| -> f64 { other.iter().map(|(j, b)| b * covariance[(i, *j)]).sum() };
    one.iter().map(|(i, a)| a * row(*i)).sum()
}

/// Moves each body whose place is given from another body.
///
/// A body found from one that is not in the survey, or in a circle, stays where its sketch starts.
pub fn put_in_place(bodies: &[Body], outlines: &mut [Outline]) -> CrossCovariance {
    let mut together = CrossCovariance::default();
    let mut in_place: Vec<bool> = bodies
        .iter()
        .map(|body| body.placed_from.is_none())
        .collect();
    // Each round places at least one body, or nothing more can be placed.
    for _ in bodies {
        for (k, body) in bodies.iter().enumerate() {
            let Some(from) = body.placed_from.as_ref().filter(|_| !in_place[k]) else {
                continue;
            };
            let Some(other) = bodies.iter().position(|other| other.id == from.body) else {
                continue;
            };
            if !in_place[other] {
                continue;
            }
            in_place[k] = true;
            let here = outlines[k].corners.first().copied().flatten();
            let there = outlines[other].corners.get(from.corner).copied().flatten();
            if let (Some(here), Some(there)) = (here, there) {
                let by = Point {
                    x: there.at.x + from.offset.x - here.at.x,
                    y: there.at.y + from.offset.y - here.at.y,
                };
                let offset = Matrix2::identity() * from.sigma.in_feet().powi(2);
                let corner = 2 * from.corner;
                let unsure = outlines[other]
                    .covariance
                    .fixed_view::<2, 2>(corner, corner)
                    + offset;
                go_along(&mut together, outlines, (k, other), from.corner);
                outlines[k].shift(by, &unsure);
            }
        }
    }
    together
}

/// Body `k` goes along with a corner of another body, and so with all that this one goes along with.
fn go_along(
    together: &mut CrossCovariance,
    outlines: &[Outline],
    (k, other): (usize, usize),
    corner: usize,
) {
    let size = |body: usize| outlines[body].covariance.nrows();
    for (body, outline) in outlines.iter().enumerate().filter(|(body, _)| *body != k) {
        let of_corner = |axis: usize, j: usize| {
            let row = 2 * corner + axis;
            if body == other {
                outline.covariance[(row, j)]
            } else {
                together.between((other, row), (body, j))
            }
        };
        let block = DMatrix::from_fn(size(k), size(body), |i, j| of_corner(i % 2, j));
        if block.iter().any(|part| part.abs() > 0.0) {
            together.pairs.insert((k, body), block);
        }
    }
}
