//! A net of stations in plan, adjusted by weighted least squares.
//!
//! Everything that can be observed comes down to one of a few rows. The outline of a roof is such a
//! net; so is any textbook traverse, trilateration or (with [`Row::Linear`]) level net.

use super::envelope::Envelope;
use crate::survey::Point;
use nalgebra::{DMatrix, DVector};
use smallvec::{SmallVec, smallvec};
use std::f64::consts::{PI, TAU};

/// One station of a net.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Station {
    /// Where it lies, or a first guess.
    pub at: Point,
    /// Whether the adjustment may move it.
    pub held: StationFixity,
}

/// Whether the adjustment may move a station.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum StationFixity {
    /// It stays where it is.
    Fixed,
    /// Its place is unknown.
    Free,
}

/// What was observed between stations, named by their index. Lengths are in the unit of the
/// stations, angles in radians, left (counter-clockwise) positive.
#[derive(Clone, Debug, PartialEq)]
pub enum Row {
    /// Straight distance between two stations.
    Distance {
        /// One end.
        from: usize,
        /// The other end.
        to: usize,
    },
    /// Direction of a line from the first axis. An azimuth `a`, clockwise from north, with x east
    /// and y north, is the direction `90 degrees - a`.
    Direction {
        /// Where it is seen from.
        from: usize,
        /// What is seen.
        to: usize,
    },
    /// Angle at one station from a second to a third.
    Angle {
        /// Where it is turned.
        at: usize,
        /// Where it begins.
        from: usize,
        /// Where it ends.
        to: usize,
    },
    /// Span of two stations along a given direction, whatever its sign.
    Projection {
        /// One end.
        from: usize,
        /// The other end.
        to: usize,
        /// Unit vector of the direction.
        axis: [f64; 2],
    },
    /// A sum of coordinates: (station, factors of its x and y).
    Linear(Vec<(usize, [f64; 2])>),
}

/// One observation.
#[derive(Clone, Debug, PartialEq)]
pub struct Observation {
    /// What was observed.
    pub row: Row,
    /// What it came to.
    pub value: f64,
    /// One standard deviation, above 0.
    pub sigma: f64,
}

/// A net to be adjusted.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Net {
    /// Its stations.
    pub stations: Vec<Station>,
    /// What was observed.
    pub observations: Vec<Observation>,
}

/// An adjusted net.
#[derive(Clone, Debug)]
pub struct Adjusted {
    /// Where every station lies.
    pub places: Vec<Point>,
    /// Covariance of all stations, 2n x 2n (x0 y0 x1 ..); fixed ones have zero rows.
    pub covariance: DMatrix<f64>,
    /// One figure an observation, in the order of the net.
    pub observed: Vec<Observed>,
    /// Weighted sum of squared residuals.
    pub chi2: f64,
    /// Observations beyond what the free stations need.
    pub degrees_of_freedom: usize,
}

/// What became of one observation.
#[derive(Clone, Debug, PartialEq)]
pub struct Observed {
    /// Observed less adjusted.
    pub residual: f64,
    /// Its standard deviation as given.
    pub sigma: f64,
    /// Share of a slip that shows in the residual, 0 to 1.
    pub redundancy: f64,
    /// Derivative of the adjusted value by the stations it touches.
    gradient: Gradient,
}

/// Derivative by the coordinates of the stations touched: three at most, but for a sum of coordinates.
type Gradient = SmallVec<[(usize, [f64; 2]); 3]>;

/// Why a net has no adjustment.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
pub enum NetError {
    /// Observations leave a station free to move.
    #[error("nothing holds station {station} of the net: observe it from another one, or fix it")]
    Loose {
        /// The first station that can move.
        station: usize,
    },
    /// An observation has no usable value or spread.
    #[error(
        "observation {observation} of the net has no finite value with a spread above 0: give both"
    )]
    NotANumber {
        /// Which.
        observation: usize,
    },
    /// An observation names a station that does not exist.
    #[error("observation {observation} of the net names station {station}, which it does not have")]
    NoSuchStation {
        /// Which.
        observation: usize,
        /// The station named.
        station: usize,
    },
}

/// Rounds of Gauss-Newton before the best so far is taken.
const MOST_ROUNDS: usize = 60;
/// A pivot this small beside its diagonal is rounding noise.
const LOOSE_PIVOT: f64 = 1e-13;

/// Adjusts a net: Gauss-Newton on the dense normal matrix, each step halved until the weighted sum
/// of squares falls. Observations without correlation; weights are one over sigma squared.
///
/// # Errors
/// [`NetError`] if an observation is no number or names no station, or if the net is singular: a
/// singular net never yields a number.
/// # Source
/// Mikhail and Gracie, Analysis and Adjustment of Survey Measurements (1981), from memory; tested
/// against printed examples of Ghilani, Adjustment Computations, 5th ed. (2010).
pub fn adjust_net(net: &Net) -> Result<Adjusted, NetError> {
    check(net)?;
    let unknowns = Unknowns::new(net);
    let (places, chi2) = settle(net, &unknowns)?;
    finish(net, places, chi2, &unknowns)
}

/// Only the places of [`adjust_net`], without their covariance.
///
/// # Errors
/// As [`adjust_net`].
pub fn places_of_net(net: &Net) -> Result<Vec<Point>, NetError> {
    check(net)?;
    Ok(settle(net, &Unknowns::new(net))?.0)
}

fn settle(net: &Net, unknowns: &Unknowns) -> Result<(Vec<Point>, f64), NetError> {
    let mut places: Vec<Point> = net.stations.iter().map(|s| s.at).collect();
    let mut chi2 = sum_of_squares(net, &places);
    for _ in 0..MOST_ROUNDS {
        if unknowns.count == 0 {
            break;
        }
        let (normal, right) = normal_equations(net, &places, unknowns);
        let step = factor(normal, unknowns)?.solve(&right);
        let reach = places
            .iter()
            .fold(1.0_f64, |m, p| m.max(p.x.abs()).max(p.y.abs()));
        let longest = step.amax();
        // So near the bottom the sum of squares is flat to its last digit and says nothing.
        let (next, next_chi2) = if longest < 1e-6 * reach {
            let next = unknowns.moved(&places, &step, 1.0);
            let next_chi2 = sum_of_squares(net, &next);
            (next, next_chi2)
        } else if let Some(better) = shorten_until_better(net, &places, unknowns, &step, chi2) {
            better
        } else {
            break;
        };
        places = next;
        chi2 = next_chi2;
        if longest < 1e-12 * reach {
            break;
        }
    }
    Ok((places, chi2))
}

fn check(net: &Net) -> Result<(), NetError> {
    for (observation, o) in net.observations.iter().enumerate() {
        if !(o.value.is_finite() && o.sigma.is_finite() && o.sigma > 0.0) {
            return Err(NetError::NotANumber { observation });
        }
        let outside = touched(&o.row)
            .into_iter()
            .find(|&s| s >= net.stations.len());
        if let Some(station) = outside {
            return Err(NetError::NoSuchStation {
                observation,
                station,
            });
        }
    }
    Ok(())
}

fn touched(row: &Row) -> Vec<usize> {
    match row {
        Row::Distance { from, to }
        | Row::Direction { from, to }
        | Row::Projection { from, to, .. } => vec![*from, *to],
        Row::Angle { at, from, to } => vec![*at, *from, *to],
        Row::Linear(terms) => terms.iter().map(|(station, _)| *station).collect(),
    }
}

/// Where each station's two coordinates stand among the unknowns.
struct Unknowns {
    first: Vec<Option<usize>>,
    count: usize,
}

impl Unknowns {
    fn new(net: &Net) -> Unknowns {
        let mut count = 0;
        let first = net
            .stations
            .iter()
            .map(|s| match s.held {
                StationFixity::Fixed => None,
                StationFixity::Free => {
                    count += 2;
                    Some(count - 2)
                }
            })
            .collect();
        Unknowns { first, count }
    }

    /// The refusal of a net in which this unknown is free.
    fn loose(&self, unknown: usize) -> NetError {
        let holds = |first: &Option<usize>| first.is_some_and(|k| k == unknown || k + 1 == unknown);
        NetError::Loose {
            station: self.first.iter().position(holds).unwrap_or_default(),
        }
    }

    /// The stations moved by a share of a step.
    fn moved(&self, places: &[Point], step: &DVector<f64>, share: f64) -> Vec<Point> {
        places
            .iter()
            .zip(&self.first)
            .map(|(p, first)| match first {
                Some(k) => Point {
                    x: p.x + share * step[*k],
                    y: p.y + share * step[*k + 1],
                },
                None => *p,
            })
            .collect()
    }
}

/// The residual (observed less computed) and the gradient of the computed value.
fn compare(o: &Observation, places: &[Point]) -> (f64, Gradient) {
    let (computed, gradient) = compute(&o.row, places);
    let residual = match o.row {
        Row::Direction { .. } | Row::Angle { .. } => wrap(o.value - computed),
        Row::Distance { .. } | Row::Projection { .. } | Row::Linear(_) => o.value - computed,
    };
    (residual, gradient)
}

fn compute(row: &Row, places: &[Point]) -> (f64, Gradient) {
    match row {
        Row::Distance { from, to } => {
            let (dx, dy) = between(places, *from, *to);
            let length = dx.hypot(dy);
            let (ux, uy) = if length > 0.0 {
                (dx / length, dy / length)
            } else {
                (0.0, 0.0)
            };
            (length, smallvec![(*from, [-ux, -uy]), (*to, [ux, uy])])
        }
        Row::Direction { from, to } => {
            let (angle, g) = direction(places, *from, *to);
            (angle, smallvec![(*from, [-g[0], -g[1]]), (*to, g)])
        }
        Row::Angle { at, from, to } => {
            let (begin, b) = direction(places, *at, *from);
            let (end, e) = direction(places, *at, *to);
            let here = [b[0] - e[0], b[1] - e[1]];
            (
                end - begin,
                smallvec![(*at, here), (*from, [-b[0], -b[1]]), (*to, e)],
            )
        }
        Row::Projection { from, to, axis } => {
            let (dx, dy) = between(places, *from, *to);
            let along = dx * axis[0] + dy * axis[1];
            let sign = if along < 0.0 { -1.0 } else { 1.0 };
            let g = [sign * axis[0], sign * axis[1]];
            (along.abs(), smallvec![(*from, [-g[0], -g[1]]), (*to, g)])
        }
        Row::Linear(terms) => {
            let sum = terms
                .iter()
                .map(|(s, f)| f[0] * places[*s].x + f[1] * places[*s].y)
                .sum();
            (sum, terms.iter().copied().collect())
        }
    }
}

fn between(places: &[Point], from: usize, to: usize) -> (f64, f64) {
    (places[to].x - places[from].x, places[to].y - places[from].y)
}

/// Direction of a line and its gradient by the far end.
fn direction(places: &[Point], from: usize, to: usize) -> (f64, [f64; 2]) {
    let (dx, dy) = between(places, from, to);
    let square = dx * dx + dy * dy;
    if square > 0.0 {
        (dy.atan2(dx), [-dy / square, dx / square])
    } else {
        (0.0, [0.0, 0.0])
    }
}

/// Into -pi .. pi.
fn wrap(angle: f64) -> f64 {
    let turned = angle.rem_euclid(TAU);
    if turned > PI { turned - TAU } else { turned }
}

fn sum_of_squares(net: &Net, places: &[Point]) -> f64 {
    net.observations
        .iter()
        .map(|o| (compare(o, places).0 / o.sigma).powi(2))
        .sum()
}

fn normal_equations(
    net: &Net,
    places: &[Point],
    unknowns: &Unknowns,
) -> (DMatrix<f64>, DVector<f64>) {
    let mut normal = DMatrix::zeros(unknowns.count, unknowns.count);
    let mut right = DVector::zeros(unknowns.count);
    for o in &net.observations {
        let (residual, gradient) = compare(o, places);
        let weight = 1.0 / (o.sigma * o.sigma);
        for (s, a) in &gradient {
            let Some(i) = unknowns.first[*s] else {
                continue;
            };
            let [x, y] = [weight * a[0], weight * a[1]];
            right[i] += x * residual;
            right[i + 1] += y * residual;
            for (t, b) in &gradient {
                if let Some(j) = unknowns.first[*t] {
                    normal[(i, j)] += x * b[0];
                    normal[(i, j + 1)] += x * b[1];
                    normal[(i + 1, j)] += y * b[0];
                    normal[(i + 1, j + 1)] += y * b[1];
                }
            }
        }
    }
    (normal, right)
}

fn factor(normal: DMatrix<f64>, unknowns: &Unknowns) -> Result<Envelope, NetError> {
    let diagonal = normal.diagonal();
    let is_loose = |k: usize, pivot: f64| {
        let holds = pivot > LOOSE_PIVOT * diagonal[k];
        !holds
    };
    let Some(factor) = Envelope::factor(&normal) else {
        return Err(unknowns.loose(first_loose(normal, is_loose)));
    };
    let loose = factor
        .pivots()
        .enumerate()
        .find(|(k, pivot)| is_loose(*k, *pivot));
    match loose {
        Some((k, _)) => Err(unknowns.loose(k)),
        None => Ok(factor),
    }
}

/// The first unknown that the ones before it leave without a pivot.
fn first_loose(mut normal: DMatrix<f64>, is_loose: impl Fn(usize, f64) -> bool) -> usize {
    let count = normal.nrows();
    for k in 0..count {
        let pivot = normal[(k, k)];
        if is_loose(k, pivot) {
            return k;
        }
        for i in k + 1..count {
            let share = normal[(i, k)] / pivot;
            for j in k + 1..count {
                let taken = share * normal[(k, j)];
                normal[(i, j)] -= taken;
            }
        }
    }
    count - 1
}

/// Halves the step until the sum of squares falls; none if it will not.
fn shorten_until_better(
    net: &Net,
    places: &[Point],
    unknowns: &Unknowns,
    step: &DVector<f64>,
    chi2: f64,
) -> Option<(Vec<Point>, f64)> {
    (0..30).find_map(|halvings| {
        let next = unknowns.moved(places, step, 0.5_f64.powi(halvings));
        let next_chi2 = sum_of_squares(net, &next);
        (next_chi2 <= chi2).then_some((next, next_chi2))
    })
}

fn finish(
    net: &Net,
    places: Vec<Point>,
    chi2: f64,
    unknowns: &Unknowns,
) -> Result<Adjusted, NetError> {
    let cofactors = if unknowns.count == 0 {
        DMatrix::zeros(0, 0)
    } else {
        factor(normal_equations(net, &places, unknowns).0, unknowns)?.inverse()
    };
    let size = 2 * places.len();
    let mut covariance = DMatrix::zeros(size, size);
    for (s, first) in unknowns.first.iter().enumerate() {
        for (t, other) in unknowns.first.iter().enumerate() {
            if let (Some(i), Some(j)) = (first, other) {
                for (a, b) in [(0, 0), (0, 1), (1, 0), (1, 1)] {
                    covariance[(2 * s + a, 2 * t + b)] =
                        0.5 * (cofactors[(i + a, j + b)] + cofactors[(j + b, i + a)]);
                }
            }
        }
    }
    let observed = net
        .observations
        .iter()
        .map(|o| {
            let (residual, gradient) = compare(o, &places);
            let explained = quadratic(&covariance, &gradient, &gradient) / (o.sigma * o.sigma);
            Observed {
                residual,
                sigma: o.sigma,
                redundancy: (1.0 - explained).clamp(0.0, 1.0),
                gradient,
            }
        })
        .collect();
    Ok(Adjusted {
        places,
        covariance,
        observed,
        chi2,
        degrees_of_freedom: net.observations.len().saturating_sub(unknowns.count),
    })
}

/// `a' Q b` over the stations that both touch.
fn quadratic(covariance: &DMatrix<f64>, a: &Gradient, b: &Gradient) -> f64 {
    let mut sum = 0.0;
    for (s, f) in a {
        for (t, g) in b {
            let (i, j) = (2 * s, 2 * t);
            sum += f[0] * (covariance[(i, j)] * g[0] + covariance[(i, j + 1)] * g[1])
                + f[1] * (covariance[(i + 1, j)] * g[0] + covariance[(i + 1, j + 1)] * g[1]);
        }
    }
    sum
}

impl Adjusted {
    /// Covariance of the residuals of two observations.
    #[must_use]
    pub fn residual_covariance(&self, one: usize, other: usize) -> f64 {
        let (a, b) = (&self.observed[one], &self.observed[other]);
        -quadratic(&self.covariance, &a.gradient, &b.gradient)
    }

    /// Correlation of the test values of two observations, -1 to 1; none where one of them is
    /// checked by nothing. Near 1 in size the tests cannot tell the two apart.
    #[must_use]
    pub fn correlation(&self, one: usize, other: usize) -> Option<f64> {
        let (a, b) = (&self.observed[one], &self.observed[other]);
        let spread = |o: &Observed| o.sigma * o.redundancy.sqrt();
        let scale = spread(a) * spread(b);
        let apart = self.residual_covariance(one, other);
        (scale > 1e-9 * a.sigma * b.sigma).then(|| (apart / scale).clamp(-1.0, 1.0))
    }
}
