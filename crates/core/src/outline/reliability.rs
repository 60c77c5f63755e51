//! How far a figure can be trusted, and what would go unnoticed.

use super::net::{Adjusted, Observed};
use super::observe::leg_of;
use super::{LegFigure, ReadingFigure};
use crate::survey::Body;

/// A reading with less than this share of a slip in its own residual is checked by nothing.
pub const UNPROVED: f64 = 0.05;

/// A reading with more than this share of a slip in its own residual is checked; with less, weakly.
pub const WELL_CHECKED: f64 = 0.3;

/// Shift of the test value that is found in 4 of 5 cases when 1 in 1,000 sound readings may be
/// accused (Baarda 1968, from memory).
const NOTICED: f64 = 4.13;

impl Observed {
    /// Residual over its own standard deviation (Baarda's w); none where nothing checks it.
    #[must_use]
    pub fn test(&self) -> Option<f64> {
        (self.redundancy >= UNPROVED).then(|| self.residual / (self.sigma * self.redundancy.sqrt()))
    }

    /// Smallest slip that would be noticed; none where nothing checks it.
    #[must_use]
    pub fn smallest_slip(&self) -> Option<f64> {
        (self.redundancy >= UNPROVED).then(|| NOTICED * self.sigma / self.redundancy.sqrt())
    }
}

/// One figure a reading, in the order of the survey. `order[k]`: the reading behind observation k.
pub(crate) fn reading_figures(order: &[usize], adjusted: &Adjusted) -> Vec<ReadingFigure> {
    let mut figures: Vec<(usize, ReadingFigure)> = order
        .iter()
        .zip(&adjusted.observed)
        .map(|(&reading, o)| {
            let figure = ReadingFigure {
                residual: o.residual,
                redundancy: o.redundancy,
                test: o.test(),
                smallest_slip: o.smallest_slip(),
            };
            (reading, figure)
        })
        .collect();
    figures.sort_by_key(|(reading, _)| *reading);
    figures.into_iter().map(|(_, figure)| figure).collect()
}

/// Length of a leg with its spread; redundancy and smallest slip where exactly one reading made it.
pub(crate) fn leg_figure(
    body: &Body,
    leg: usize,
    adjusted: &Adjusted,
    readings: &[ReadingFigure],
) -> LegFigure {
    let corners = adjusted.places.len();
    let end = (leg + 1) % corners;
    let (from, to) = (adjusted.places[leg], adjusted.places[end]);
    let length = (to.x - from.x).hypot(to.y - from.y);
    let mut made_by = body
        .readings
        .iter()
        .zip(readings)
        .filter(|(reading, _)| leg_of(reading.span, corners) == Some(leg));
    let first = made_by.next();
    let only = match made_by.next() {
        None => first.map(|(_, figure)| figure),
        Some(_) => None,
    };
    let variance = if length > 0.0 {
        let u = [(to.x - from.x) / length, (to.y - from.y) / length];
        let part = |s: usize, t: usize| {
            let q = &adjusted.covariance;
            let (i, j) = (2 * s, 2 * t);
            u[0] * (u[0] * q[(i, j)] + u[1] * q[(i, j + 1)])
                + u[1] * (u[0] * q[(i + 1, j)] + u[1] * q[(i + 1, j + 1)])
        };
        part(leg, leg) + part(end, end) - part(leg, end) - part(end, leg)
    } else {
        0.0
    };
    LegFigure {
        length: Some(length),
        sigma: Some(variance.max(0.0).sqrt()),
        redundancy: only.map(|figure| figure.redundancy),
        smallest_slip: only.and_then(|figure| figure.smallest_slip),
        worked_out: first.is_none(),
    }
}

/// Greater half axis of a corner's error ellipse, feet.
pub(crate) fn sigma_of_corner(covariance: &nalgebra::DMatrix<f64>, corner: usize) -> f64 {
    let k = 2 * corner;
    let (xx, yy, xy) = (
        covariance[(k, k)],
        covariance[(k + 1, k + 1)],
        covariance[(k, k + 1)],
    );
    let greater = 0.5 * (xx + yy) + (0.5 * (xx - yy)).hypot(xy);
    greater.max(0.0).sqrt()
}
