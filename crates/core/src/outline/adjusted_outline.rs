//! What an adjustment returns: corners with their covariance, figures, suspects and gaps.

use super::closure::Closure;
use super::figures::{Corner, LegFigure, ReadingFigure, sigma_of_corner};
use super::suspects::Suspects;
use super::wanted::{Lack, Part};
use crate::survey::Point;
use nalgebra::{DMatrix, Matrix2};

/// One adjusted outline of n corners and n legs.
#[derive(Clone, Debug)]
pub struct Outline {
    /// The n corners. `None` if no reading determines the corner.
    pub corners: Vec<Option<Corner>>,
    /// Covariance of the corners, 2n x 2n, sq ft (x0 y0 x1 ..). The datum, corner 0, has zero rows
    /// unless the body is placed from another one; an undetermined corner has rows of NaN.
    pub covariance: DMatrix<f64>,
    /// One figure per leg.
    pub legs: Vec<LegFigure>,
    /// One figure per reading, in the order of the survey.
    pub readings: Vec<ReadingFigure>,
    /// Readings that the others contradict.
    pub suspects: Suspects,
    /// Misclosure and its verdict. `None` if the corners were given as known.
    pub closure: Option<Closure>,
    /// Lengths that no reading determines, each with the readings that would.
    pub lacks: Vec<Lack>,
    /// Rigid groups of corners; empty if the outline is one group.
    pub parts: Vec<Part>,
    /// Factor on the usual standard deviation of a reading, estimated from repeated readings.
    pub roughness: f64,
    /// Weighted sum of squared residuals.
    pub chi2: f64,
    /// Observations, directions of legs included, less unknowns.
    pub degrees_of_freedom: usize,
}

impl Outline {
    /// Shifts every corner by `by`, feet, and adds the 2 x 2 covariance of the shift, sq ft.
    pub(crate) fn shift(&mut self, by: Point, covariance: &Matrix2<f64>) {
        let q = &mut self.covariance;
        for i in 0..q.nrows() {
            for j in 0..q.ncols() {
                q[(i, j)] += covariance[(i % 2, j % 2)];
            }
        }
        for (k, corner) in self.corners.iter_mut().enumerate() {
            if let Some(corner) = corner {
                corner.at.x += by.x;
                corner.at.y += by.y;
                corner.sigma = sigma_of_corner(&self.covariance, k);
            }
        }
    }
}
