//! Where the uncertainty of the roof's area comes from, and what another look would take off it.

use super::span_row::SpanRow;
use crate::outline::span_sigma;
use crate::pitch::SettledRise;
use crate::roof::Gradient;
use crate::settled::{CrossCovariance, SolvedBody};
use crate::survey::{Body, Point};
use crate::units::Length;
use nalgebra::{DMatrix, DVector};

/// The variance of the area, split into what can be looked at again.
///
/// The roof's combinatorics are taken as fixed; slopes that share readings are one unknown.
#[derive(Clone, Debug, Default)]
pub struct AreaVariance {
    outlines: Vec<OutlineShare>,
    slopes: Vec<SlopeShare>,
}

#[derive(Clone, Debug)]
struct OutlineShare {
    /// Covariance of the corners times the change of area by corner, sq ft times ft.
    pull: DVector<f64>,
    covariance: DMatrix<f64>,
    variance: f64,
    /// What the corners would do, were a slip that may have been made put right.
    mended: Vec<Mended>,
}

/// The corners without a slip that may have been made.
#[derive(Clone, Debug)]
struct Mended {
    chance: f64,
    /// Change of the corners, feet.
    moves: DVector<f64>,
    /// Change of the area, sq ft.
    area: f64,
}

/// One slope unknown.
#[derive(Clone, Debug)]
pub(super) struct SlopeShare {
    pub(super) body: usize,
    pub(super) read_at: usize,
    /// Change of area by a degree of slope, sq ft.
    per_degree: f64,
    sigma_degrees: f64,
}

/// What one more reading would do.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Gain {
    /// What it would take off the variance of the area if nothing is wrong, sq ft squared.
    pub variance: f64,
    /// What it may be expected to take off the doubt in the area, which besides its variance holds
    /// the slips that may have been made; sq ft squared. The same while nobody is suspected.
    pub doubt: f64,
    /// How well it would tell the suspects apart, 0 to 1: the part of what it may say that depends on
    /// who of them it was. 0 while nobody is suspected.
    pub separates: f64,
}

/// Returns the variance of a figure by its change with corners and pitches.
#[must_use]
pub fn variance_of(bodies: &[SolvedBody], together: &CrossCovariance, figure: &Gradient) -> f64 {
    let slopes: f64 = slope_shares(bodies, figure)
        .iter()
        .map(SlopeShare::variance)
        .sum();
    together.variance(bodies, &figure.corners) + slopes
}

impl SlopeShare {
    pub(super) fn variance(&self) -> f64 {
        (self.per_degree * self.sigma_degrees).powi(2)
    }
}

fn slope_shares(bodies: &[SolvedBody], area: &Gradient) -> Vec<SlopeShare> {
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
    slopes
}

impl AreaVariance {
    /// Returns the variance of an area by its change with corners and pitches.
    #[must_use]
    pub fn from_gradient(
        bodies: &[Body],
        solved: &[SolvedBody],
        together: &CrossCovariance,
        area: &Gradient,
    ) -> AreaVariance {
        let pulls = together.pull(solved, &area.corners);
        let outlines = bodies
            .iter()
            .zip(solved)
            .zip(pulls.into_iter().zip(&area.corners))
            .map(|((body, solved), (pull, by_corner))| OutlineShare {
                variance: by_corner.dot(&pull),
                mended: mended(body, solved, &pull),
                covariance: solved.outline.covariance.clone(),
                pull,
            })
            .collect();
        AreaVariance {
            outlines,
            slopes: slope_shares(solved, area),
        }
    }

    /// Of the area in plan, for want of a roof: moving corner i changes the area by
    /// `(y_(i+1) - y_(i-1), x_(i-1) - x_(i+1)) / 2`. Nothing while a corner is not known.
    #[must_use]
    pub fn in_plan(
        bodies: &[Body],
        solved: &[SolvedBody],
        together: &CrossCovariance,
    ) -> AreaVariance {
        let by_corner = |body: &SolvedBody| {
            let corners = body.outline.corners.iter().map(|c| Some((*c)?.at));
            corners
                .collect::<Option<Vec<Point>>>()
                .map(|c| plan_gradient(&c))
        };
        let corners: Option<Vec<DVector<f64>>> = solved.iter().map(by_corner).collect();
        corners.map_or_else(AreaVariance::default, |corners| {
            let slopes = vec![DVector::zeros(0); solved.len()];
            AreaVariance::from_gradient(bodies, solved, together, &Gradient { corners, slopes })
        })
    }

    /// Variance of the area, sq ft squared.
    #[must_use]
    pub fn total(&self) -> f64 {
        let outlines: f64 = self.outlines.iter().map(|share| share.variance).sum();
        let slopes: f64 = self.slopes.iter().map(SlopeShare::variance).sum();
        outlines.max(0.0) + slopes
    }

    /// The slopes that are unknown, each with its variance.
    pub(super) fn slopes(&self) -> &[SlopeShare] {
        &self.slopes
    }

    /// Change of the area when one reading of a body reads a foot more; `sigma` is its own spread,
    /// feet. None where there is no area.
    #[must_use]
    pub fn per_foot(&self, body: usize, span: &SpanRow, sigma: f64) -> Option<f64> {
        let share = self.outlines.get(body)?;
        Some(span.times(&share.pull) / (sigma * sigma))
    }

    /// What one more reading of a body would do; `sigma` is its own spread, feet. None where there
    /// is no area.
    #[must_use]
    pub fn gain_of_reading(&self, body: usize, span: &SpanRow, sigma: f64) -> Option<Gain> {
        let share = self.outlines.get(body)?;
        let pulled = span.times(&share.pull);
        let before = span.times(&span.carried(&share.covariance));
        let expected = sigma * sigma + before;
        let said: Vec<(f64, f64, f64)> = share
            .mended
            .iter()
            .map(|mended| (mended.chance, span.times(&mended.moves), mended.area))
            .collect();
        let mean = |of: &dyn Fn(&(f64, f64, f64)) -> f64| -> f64 {
            said.iter().map(|said| said.0 * of(said)).sum()
        };
        let (reads, area) = (mean(&|s| s.1), mean(&|s| s.2));
        let depends = (mean(&|s| s.1 * s.1) - reads * reads).max(0.0);
        let goes_with = mean(&|s| s.1 * s.2) - reads * area;
        Some(Gain {
            variance: pulled.powi(2) / expected,
            doubt: (pulled + goes_with).powi(2) / (expected + depends),
            separates: depends / (expected + depends),
        })
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

/// What the corners of a body would do without each slip that may have been made. A reading that was
/// `slip` too long has pushed them by `Q a slip / s^2`.
fn mended(body: &Body, solved: &SolvedBody, pull: &DVector<f64>) -> Vec<Mended> {
    let outline = &solved.outline;
    if outline.suspects.named.is_empty() {
        return Vec::new();
    }
    let mend = |slips: &[(usize, Length)], chance: f64| {
        let mut moves = DVector::zeros(outline.covariance.nrows());
        let mut area = 0.0;
        for (reading, slip) in slips {
            let reading = body.readings.get(*reading)?;
            let row = SpanRow::new(reading.span, body, solved)?;
            let by = -slip.in_feet() / span_sigma(reading, outline.roughness).in_feet().powi(2);
            moves.axpy(by, &row.carried(&outline.covariance), 1.0);
            area += by * row.times(pull);
        }
        Some(Mended {
            chance,
            moves,
            area,
        })
    };
    let possible = &outline.suspects.possible;
    let slips = possible
        .iter()
        .filter_map(|possible| mend(&possible.slips, possible.chance));
    slips.collect()
}

fn plan_gradient(corners: &[Point]) -> DVector<f64> {
    let n = corners.len();
    let around = |i: usize| (corners[(i + n - 1) % n], corners[(i + 1) % n]);
    let twice: f64 = (0..n)
        .map(|i| corners[i].x * (around(i).1.y - around(i).0.y))
        .sum();
    let sign = if twice < 0.0 { -0.5 } else { 0.5 };
    DVector::from_iterator(
        2 * n,
        (0..n).flat_map(|i| {
            let (before, after) = around(i);
            [sign * (after.y - before.y), sign * (before.x - after.x)]
        }),
    )
}
