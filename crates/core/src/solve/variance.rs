//! Where the uncertainty of the roof's area comes from, and what another look would take off it.

use super::SolvedBody;
use crate::pitch::SettledRise;
use crate::roof::Gradient;
use nalgebra::{DMatrix, DVector};

/// The variance of the area, split into what can be looked at again.
///
/// The roof's combinatorics are taken as fixed; slopes that share readings are one unknown.
#[derive(Clone, Debug, Default)]
pub struct AreaVariance {
    outlines: Vec<OutlineShare>,
    slopes: Vec<SlopeShare>,
}

/// How a span changes with the corners of its body: one corner along a unit vector, another
/// against it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct SpanRow {
    /// The corner at its end.
    pub to: usize,
    /// The corner at its start.
    pub from: usize,
    /// From start to end.
    pub along: [f64; 2],
}

impl SpanRow {
    /// The four that are not zero among the 2n derivatives by corner.
    fn parts(&self) -> [(usize, f64); 4] {
        let [x, y] = self.along;
        let (from, to) = (2 * self.from, 2 * self.to);
        [(from, -x), (from + 1, -y), (to, x), (to + 1, y)]
    }
}

#[derive(Clone, Debug)]
struct OutlineShare {
    /// Covariance of the corners times the change of area by corner, sq ft times ft.
    pull: DVector<f64>,
    covariance: DMatrix<f64>,
    variance: f64,
}

/// One slope unknown.
#[derive(Clone, Debug)]
struct SlopeShare {
    body: usize,
    read_at: usize,
    /// Change of area by a degree of slope, sq ft.
    per_degree: f64,
    sigma_degrees: f64,
}

impl AreaVariance {
    /// Of bodies by how the area of their roof follows them.
    pub(super) fn of(bodies: &[SolvedBody], area: &Gradient) -> AreaVariance {
        let outlines = bodies
            .iter()
            .zip(&area.corners)
            .map(|(body, by_corner)| outline_share(body, by_corner))
            .collect();
        let mut slopes: Vec<SlopeShare> = Vec::new();
        for (k, (body, by_leg)) in bodies.iter().zip(&area.slopes).enumerate() {
            for (rise, per_degree) in body.rises.iter().zip(by_leg) {
                let SettledRise::Slope(pitch) = rise else {
                    continue;
                };
                match slopes
                    .iter_mut()
                    .find(|share| share.body == k && share.read_at == pitch.read_at)
                {
                    Some(share) => share.per_degree += per_degree,
                    None => slopes.push(SlopeShare {
                        body: k,
                        read_at: pitch.read_at,
                        per_degree: *per_degree,
                        sigma_degrees: pitch.sigma.in_degrees(),
                    }),
                }
            }
        }
        AreaVariance { outlines, slopes }
    }

    /// Variance of the area, sq ft squared.
    #[must_use]
    pub fn total(&self) -> f64 {
        let outlines: f64 = self.outlines.iter().map(|share| share.variance).sum();
        let slopes: f64 = self
            .slopes
            .iter()
            .map(|share| (share.per_degree * share.sigma_degrees).powi(2))
            .sum();
        outlines + slopes
    }

    /// What one more reading of a body would take off the variance, sq ft squared; `sigma` is its
    /// own spread, feet. None where there is no roof.
    #[must_use]
    pub fn gain_of_reading(&self, body: usize, span: &SpanRow, sigma: f64) -> Option<f64> {
        let share = self.outlines.get(body)?;
        let parts = span.parts();
        let mut before = 0.0;
        let mut pulled = 0.0;
        for (k, a) in parts {
            pulled += a * share.pull.get(k)?;
            for (l, b) in parts {
                before += a * b * share.covariance.get((k, l))?;
            }
        }
        Some(pulled.powi(2) / (sigma * sigma + before))
    }

    /// What one more look with the given spread in degrees at the slope read at a leg would take
    /// off the variance, sq ft squared.
    #[must_use]
    pub fn gain_of_look(&self, body: usize, read_at: usize, sigma: f64) -> Option<f64> {
        let share = self
            .slopes
            .iter()
            .find(|share| share.body == body && share.read_at == read_at)?;
        let before = share.sigma_degrees.powi(2);
        Some((share.per_degree * before).powi(2) / (sigma * sigma + before))
    }
}

fn outline_share(body: &SolvedBody, by_corner: &DVector<f64>) -> OutlineShare {
    let covariance = body.outline.covariance.clone();
    let pull = &covariance * by_corner;
    OutlineShare {
        variance: by_corner.dot(&pull).max(0.0),
        pull,
        covariance,
    }
}
