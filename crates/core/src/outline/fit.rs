//! The corners that fit readings and directions best.

use super::lack::Freedom;
use super::net::{
    Adjusted, Net, NetError, Observation, Row, Station, StationFixity, adjust_net, places_of_net,
};
use super::nominal::Nominal;
use super::observe::{Readings, leg_of};
use crate::survey::{Point, Span};
use nalgebra::{Matrix2, Vector2};

/// What an outline is fitted to, in the frame of leg 0: corner 0 at the origin, leg 0 along the first
/// axis.
#[derive(Clone, Copy)]
pub(crate) struct Ground<'a> {
    pub shape: &'a Nominal,
    pub readings: &'a Readings,
    /// One standard deviation of a leg's direction, radians.
    pub direction_sigma: f64,
}

/// A fitted outline.
pub(crate) struct Fit {
    pub adjusted: Adjusted,
    /// What nothing determines.
    pub freedom: Freedom,
}

/// Fits the corners; none where not one length was read.
pub(crate) fn fit(ground: &Ground<'_>) -> Result<Option<Fit>, NetError> {
    fit_with(ground, &[])
}

/// One reading against all the others.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct LeaveOneOut {
    /// Weighted sum of squares of the others.
    pub rest: f64,
    /// Booked less what the others say, feet.
    pub off: f64,
    /// Variance of that difference were nothing wrong, sq ft.
    pub variance: f64,
}

impl LeaveOneOut {
    /// From the fit with the reading in it; none where the others say nothing about it. Exact as far
    /// as the net is linear: `off = v / r`, `variance = s^2 / r`.
    pub(crate) fn within(adjusted: &Adjusted, k: usize) -> Option<LeaveOneOut> {
        let o = &adjusted.observed[k];
        (o.redundancy > 1e-6).then(|| {
            let off = o.residual / o.redundancy;
            let variance = o.sigma * o.sigma / o.redundancy;
            LeaveOneOut {
                rest: (adjusted.chi2 - off * off / variance).max(0.0),
                off,
                variance,
            }
        })
    }

    /// From a fit without the reading. A slip of many feet bends the whole outline, and in the bent
    /// one the others seem to say something else.
    pub(crate) fn without(ground: &Ground<'_>, k: usize) -> Option<LeaveOneOut> {
        let fit = fit_with(ground, &[k]).ok()??;
        let weak = LeaveOneOut::within(&fit.adjusted, k)?;
        let (kept, given) = (
            ground.readings.observations[k].sigma,
            fit.adjusted.observed[k].sigma,
        );
        Some(LeaveOneOut {
            variance: weak.variance - given * given + kept * kept,
            ..weak
        })
    }
}

/// Two readings against all the others.
#[derive(Clone, Copy, Debug)]
pub(crate) struct LeaveTwoOut {
    /// Weighted sum of squares of the others.
    pub rest: f64,
    /// Booked less what the others say, feet.
    pub off: Vector2<f64>,
    /// Covariance of those differences were nothing wrong, sq ft.
    pub covariance: Matrix2<f64>,
}

impl LeaveTwoOut {
    /// From a fit without both; none where the others do not say both, or say them as one.
    pub(crate) fn without(ground: &Ground<'_>, pair: [usize; 2]) -> Option<LeaveTwoOut> {
        let fit = fit_with(ground, &pair).ok()??;
        let seen = pair.map(|k| &fit.adjusted.observed[k]);
        let given = Matrix2::from_diagonal(&Vector2::from(seen.map(|o| o.sigma * o.sigma)));
        let residual = Vector2::from(seen.map(|o| o.residual));
        // Of the residuals: what the readings' own spread leaves after the fit took its part.
        let apart = fit.adjusted.residual_covariance(pair[0], pair[1]);
        let left = Matrix2::new(
            given[(0, 0)] * seen[0].redundancy,
            apart,
            apart,
            given[(1, 1)] * seen[1].redundancy,
        );
        if left.determinant() < 1e-8 * given.determinant() {
            return None;
        }
        let inverse = left.try_inverse()?;
        let off = given * inverse * residual;
        let weak = given * inverse * given;
        let explained = (off.transpose() * weak.try_inverse()? * off)[(0, 0)];
        let kept = pair.map(|k| ground.readings.observations[k].sigma.powi(2));
        Some(LeaveTwoOut {
            rest: (fit.adjusted.chi2 - explained).max(0.0),
            off,
            covariance: weak - given + Matrix2::from_diagonal(&Vector2::from(kept)),
        })
    }
}

/// A reading left out keeps this many times its spread: enough to say nothing, and the net stands.
const LEFT_OUT: f64 = 1000.0;

pub(crate) fn fit_with(ground: &Ground<'_>, left_out: &[usize]) -> Result<Option<Fit>, NetError> {
    let Ground {
        shape,
        readings,
        direction_sigma,
    } = *ground;
    let mut observations = readings.observations.clone();
    for &k in left_out {
        observations[k].sigma *= LEFT_OUT;
        // With its sign: a leg that the others turn round is not as good as one that runs forward.
        if let Some(leg) = leg_of(readings.spans[k], shape.legs()) {
            observations[k].row = along(shape, leg);
        }
    }
    let read = readings.mean_lengths(shape.legs(), left_out);
    let Some(typical) = typical_length(&read, &observations) else {
        return Ok(None);
    };
    let known = Known {
        shape,
        read: &read,
        typical,
        direction_sigma,
    };
    let start = known.straight_start(&observations, &readings.spans)?;
    let held = readings.mean_lengths(shape.legs(), &[]);
    let freedom = Freedom::of(
        shape,
        &held.iter().map(Option::is_some).collect::<Vec<bool>>(),
        readings.spans.iter().copied(),
        &start,
    );
    let net = |legs| known.net(&observations, &start, &freedom, legs);
    let adjusted = match adjust_net(&net(Legs::Bent)) {
        Ok(adjusted) if known.runs_forward(&adjusted.places) => adjusted,
        _ => adjust_net(&net(Legs::Straight))?,
    };
    Ok(Some(Fit { adjusted, freedom }))
}

/// A length to begin with for legs that were not read.
fn typical_length(read: &[Option<f64>], observations: &[Observation]) -> Option<f64> {
    let mean = |lengths: Vec<f64>| {
        (!lengths.is_empty()).then(|| lengths.iter().sum::<f64>() / lengths.len() as f64)
    };
    mean(read.iter().flatten().copied().collect())
        .or_else(|| mean(observations.iter().map(|o| o.value).collect()))
}

/// What the first guess is made from.
struct Known<'a> {
    shape: &'a Nominal,
    /// Mean of the readings of each leg, feet.
    read: &'a [Option<f64>],
    /// A length for legs without one, feet.
    typical: f64,
    /// One standard deviation of a leg's direction, radians.
    direction_sigma: f64,
}

impl Known<'_> {
    /// Corners with every leg in its nominal direction and each sum closed: where Gauss-Newton
    /// begins. Linear, so it comes out from anywhere; ties wait until it is known how they run.
    fn straight_start(
        &self,
        readings: &[Observation],
        spans: &[Span],
    ) -> Result<Vec<Point>, NetError> {
        let shape = self.shape;
        let mut net = Net::default();
        let (mut x, mut y) = (0.0, 0.0);
        for leg in 0..shape.legs() {
            net.stations.push(Station {
                at: Point { x, y },
                held: held(leg),
            });
            let length = self.read[leg].unwrap_or(self.typical);
            x += length * shape.units[leg][0];
            y += length * shape.units[leg][1];
            if self.read[leg].is_none() {
                net.observations.push(Observation {
                    row: along(shape, leg),
                    value: length,
                    sigma: self.typical,
                });
            }
            net.observations
                .push(straight(shape, leg, length, self.direction_sigma));
        }
        for (reading, span) in readings.iter().zip(spans) {
            let row = match leg_of(*span, shape.legs()) {
                Some(leg) => along(shape, leg),
                None if matches!(span, Span::Overall { .. }) => reading.row.clone(),
                None => continue,
            };
            net.observations.push(Observation {
                row,
                ..reading.clone()
            });
        }
        places_of_net(&net)
    }

    /// Whether every leg still runs its way, for a good part of its reading.
    fn runs_forward(&self, places: &[Point]) -> bool {
        (0..self.shape.legs()).all(|leg| {
            let to = self.shape.end_of(leg);
            let forward = stretch(places, leg, to, self.shape.units[leg]);
            self.read[leg].is_none_or(|length| forward > 0.5 * SQUEEZED * length)
        })
    }

    /// All readings, all directions, and a weak hold on what nothing determines, so that the rest
    /// can be solved; the hold pulls at nothing else.
    fn net(&self, readings: &[Observation], start: &[Point], freedom: &Freedom, legs: Legs) -> Net {
        let shape = self.shape;
        let mut observations = readings.to_vec();
        for leg in 0..shape.legs() {
            let (from, to) = (leg, shape.end_of(leg));
            let forward = stretch(start, from, to, shape.units[leg]);
            let length = self.read[leg].unwrap_or(forward.max(0.02 * self.typical));
            observations.push(match legs {
                Legs::Bent if forward > SQUEEZED * length => Observation {
                    row: Row::Direction { from, to },
                    value: shape.directions[leg].in_radians(),
                    sigma: self.direction_sigma,
                },
                Legs::Bent | Legs::Straight => straight(shape, leg, length, self.direction_sigma),
            });
        }
        for mode in &freedom.modes {
            let mut terms = Vec::new();
            let mut value = 0.0;
            for (leg, part) in mode.iter().enumerate() {
                let (from, to) = (leg, shape.end_of(leg));
                let f = [part * shape.units[leg][0], part * shape.units[leg][1]];
                value += stretch(start, from, to, f);
                terms.push((from, [-f[0], -f[1]]));
                terms.push((to, f));
            }
            observations.push(Observation {
                row: Row::Linear(terms),
                value,
                sigma: self.typical,
            });
        }
        let stations = start.iter().enumerate().map(|(corner, at)| Station {
            at: *at,
            held: held(corner),
        });
        Net {
            stations: stations.collect(),
            observations,
        }
    }
}

/// How the nominal direction of a leg is observed.
#[derive(Clone, Copy)]
enum Legs {
    /// As an angle.
    Bent,
    /// As a sideways shift: where a slip squeezes a leg to nothing, it has no direction to speak of.
    Straight,
}

/// A leg shorter than this part of its reading is squeezed.
const SQUEEZED: f64 = 0.5;

/// Corner 0 is the datum.
fn held(corner: usize) -> StationFixity {
    if corner == 0 {
        StationFixity::Fixed
    } else {
        StationFixity::Free
    }
}

/// How far one corner lies from another along a vector.
fn stretch(places: &[Point], from: usize, to: usize, along: [f64; 2]) -> f64 {
    (places[to].x - places[from].x) * along[0] + (places[to].y - places[from].y) * along[1]
}

/// The length of a leg in its nominal direction.
fn along(shape: &Nominal, leg: usize) -> Row {
    let u = shape.units[leg];
    Row::Linear(vec![(leg, [-u[0], -u[1]]), (shape.end_of(leg), u)])
}

/// A leg's nominal direction as a sideways shift of its far end: the straight-line form of
/// [`Row::Direction`], which does not mind a leg of no length.
fn straight(shape: &Nominal, leg: usize, length: f64, direction_sigma: f64) -> Observation {
    let [x, y] = shape.units[leg];
    Observation {
        row: Row::Linear(vec![(leg, [y, -x]), (shape.end_of(leg), [-y, x])]),
        value: 0.0,
        sigma: direction_sigma * length,
    }
}
