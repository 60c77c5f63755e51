//! Least squares: the readings of one body to its corners.

use super::closure::{self, Closure, Tolerance};
use super::lack::Freedom;
use super::net::{
    Adjusted, Held, Net, NetError, Observation, Row, Station, adjust_net, places_of_net,
};
use super::nominal::{Nominal, unit_vector};
use super::refuse::{NoOutline, refuse};
use super::reliability::{leg_figure, reading_figures, sigma_of_corner};
use super::slips::SlipPriors;
use super::suspects::{Suspects, suspects};
use super::{Corner, LegFigure, Outline};
use crate::survey::{Body, Point, Reading, Sketch, Span};
use crate::units::Angle;
use nalgebra::DMatrix;

/// What a judgement of readings rests on beside the readings.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Settings {
    /// How often which slip is made.
    pub slips: SlipPriors,
    /// When a sum closes.
    pub tolerance: Tolerance,
}

/// One standard deviation of a leg's end seen by a stated overhang, feet.
const OVERHANG_SIGMA: f64 = 0.1;

/// Adjusts the outline of one body by weighted least squares and says what the readings speak
/// against, with the usual settings.
///
/// Corner 0 is the datum; every leg runs in its nominal direction with a spread of `turn_sigma` over
/// the root of 2, so a turn has `turn_sigma`. An `overall` is a projection on the nominal direction
/// of its leg: who tapes one follows the house, not the slant of one short leg. A wall with its two
/// overhangs is one observation of the leg, the overhangs adding 0.1 ft each to its spread.
///
/// Nothing that no reading determines is given a number, and nothing is mended: a slip is no error,
/// see [`Outline::suspects`].
///
/// # Errors
/// [`NoOutline`] if the sketch is no outline or a reading names what the outline does not have.
/// # Source
/// Rows as in [`super::net`]; tests and smallest slips after Baarda (1968), from memory.
pub fn adjust(body: &Body) -> Result<Outline, NoOutline> {
    adjust_with(body, &Settings::default())
}

/// [`adjust`] with settings of one's own.
///
/// # Errors
/// As [`adjust`].
pub fn adjust_with(body: &Body, settings: &Settings) -> Result<Outline, NoOutline> {
    refuse(body)?;
    match &body.outline {
        Sketch::Known(corners) => compare_with_known(body, corners, settings),
        Sketch::Turned {
            start,
            heading,
            turns,
            turn_sigma,
        } => {
            let shape = Nominal::of_turns(turns);
            let sigma = turn_sigma.in_radians() / std::f64::consts::SQRT_2;
            let mut outline = adjust_turned(body, &shape, sigma, settings)?;
            place(&mut outline, *start, *heading);
            Ok(outline)
        }
    }
}

/// The leg that a reading spans from end to end.
pub(crate) fn leg_of(span: Span, corners: usize) -> Option<usize> {
    match span {
        Span::Leg(leg) | Span::WallOfLeg { leg, .. } => Some(leg),
        Span::Tie(from, to) if (from + 1) % corners == to => Some(from),
        Span::Tie(from, to) if (to + 1) % corners == from => Some(to),
        Span::Tie(..) | Span::Overall { .. } => None,
    }
}

/// What a reading says of its span, feet: a wall is taken out to the eaves.
pub(crate) fn span_length(reading: &Reading) -> f64 {
    match reading.span {
        Span::WallOfLeg { overhangs, .. } => overhangs
            .iter()
            .fold(reading.value.in_feet(), |sum, o| sum + o.in_feet()),
        Span::Leg(_) | Span::Tie(..) | Span::Overall { .. } => reading.value.in_feet(),
    }
}

/// One standard deviation of a reading as a statement about its span, feet.
fn span_sigma(reading: &Reading) -> f64 {
    let value = reading.value.in_feet();
    let tape = match reading.sigma {
        Some(sigma) => sigma.in_feet(),
        None => default_sigma(value),
    };
    match reading.span {
        Span::WallOfLeg { .. } => tape.hypot(OVERHANG_SIGMA).hypot(OVERHANG_SIGMA),
        Span::Leg(_) | Span::Tie(..) | Span::Overall { .. } => tape,
    }
}

/// One standard deviation of a taped length that states none, feet: sighting down a gutter and the
/// tape itself.
#[must_use]
pub fn default_sigma(feet: f64) -> f64 {
    0.18_f64.hypot(0.0005 * feet)
}

/// Readings as observations, in an order that does not depend on theirs.
fn observe(body: &Body, axes: &[[f64; 2]]) -> (Vec<usize>, Vec<Observation>) {
    let corners = axes.len();
    let mut order: Vec<usize> = (0..body.readings.len()).collect();
    order.sort_by(|&a, &b| {
        let (a, b) = (&body.readings[a], &body.readings[b]);
        span_key(a.span)
            .cmp(&span_key(b.span))
            .then(span_length(a).total_cmp(&span_length(b)))
            .then(span_sigma(a).total_cmp(&span_sigma(b)))
            .then(a.id.cmp(&b.id))
    });
    let observations = order
        .iter()
        .map(|&k| {
            let reading = &body.readings[k];
            let row = match reading.span {
                Span::Leg(leg) | Span::WallOfLeg { leg, .. } => Row::Distance {
                    from: leg,
                    to: (leg + 1) % corners,
                },
                Span::Tie(from, to) => Row::Distance { from, to },
                Span::Overall {
                    from,
                    to,
                    along_leg,
                } => Row::Projection {
                    from,
                    to,
                    axis: axes[along_leg],
                },
            };
            Observation {
                row,
                value: span_length(reading),
                sigma: span_sigma(reading),
            }
        })
        .collect();
    (order, observations)
}

fn span_key(span: Span) -> (u8, usize, usize, usize) {
    match span {
        Span::Leg(leg) => (0, leg, 0, 0),
        Span::WallOfLeg { leg, .. } => (1, leg, 0, 0),
        Span::Tie(from, to) => (2, from, to, 0),
        Span::Overall {
            from,
            to,
            along_leg,
        } => (3, from, to, along_leg),
    }
}

/// The adjustment in the frame of leg 0: corner 0 at the origin, leg 0 along the first axis.
fn adjust_turned(
    body: &Body,
    shape: &Nominal,
    direction_sigma: f64,
    settings: &Settings,
) -> Result<Outline, NoOutline> {
    let (order, observations) = observe(body, &shape.units);
    let read = mean_lengths(body, shape.legs());
    let closure = closure::close(&read, shape, &settings.tolerance);
    let Some(typical) = typical_length(&read, &observations) else {
        return Ok(nothing_known(shape.legs(), closure));
    };
    let apart = |_| NoOutline::TooFarApart {
        body: body.id.clone(),
    };
    let known = Known {
        shape,
        read: &read,
        typical,
        direction_sigma,
    };
    let start = known.straight_start(&observations).map_err(apart)?;
    let freedom = Freedom::of(
        shape,
        &read.iter().map(Option::is_some).collect::<Vec<bool>>(),
        order.iter().map(|&k| body.readings[k].span),
        &start,
    );
    let net = |legs| known.net(&observations, &start, &freedom, legs);
    let adjusted = match adjust_net(&net(Legs::Bent)) {
        Ok(adjusted) if known.runs_forward(&adjusted.places) => adjusted,
        _ => adjust_net(&net(Legs::Straight)).map_err(apart)?,
    };
    Ok(Outline {
        closure: Some(closure),
        ..judge(body, shape, &order, &adjusted, &freedom, settings)
    })
}

/// Mean of the readings of each leg, feet; none where there is none.
pub(crate) fn mean_lengths(body: &Body, corners: usize) -> Vec<Option<f64>> {
    let mut sums = vec![(0.0, 0.0); corners];
    let mut lengths: Vec<(usize, f64)> = body
        .readings
        .iter()
        .filter_map(|r| Some((leg_of(r.span, corners)?, span_length(r))))
        .collect();
    lengths.sort_by(|a, b| a.0.cmp(&b.0).then(a.1.total_cmp(&b.1)));
    for (leg, length) in lengths {
        sums[leg].0 += length;
        sums[leg].1 += 1.0;
    }
    sums.into_iter()
        .map(|(sum, count)| (count > 0.0).then(|| sum / count))
        .collect()
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
    fn straight_start(&self, readings: &[Observation]) -> Result<Vec<Point>, NetError> {
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
            net.observations.push(Observation {
                row: along(shape, leg),
                value: length,
                sigma: match self.read[leg] {
                    Some(length) => default_sigma(length),
                    None => self.typical,
                },
            });
            net.observations
                .push(straight(shape, leg, length, self.direction_sigma));
        }
        let overalls = readings
            .iter()
            .filter(|o| matches!(o.row, Row::Projection { .. }));
        net.observations.extend(overalls.cloned());
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
                    value: shape.directions[leg],
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
fn held(corner: usize) -> Held {
    if corner == 0 { Held::Fixed } else { Held::Free }
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

/// The figures of an adjusted net.
fn judge(
    body: &Body,
    shape: &Nominal,
    order: &[usize],
    adjusted: &Adjusted,
    freedom: &Freedom,
    settings: &Settings,
) -> Outline {
    let corners = shape.legs();
    let readings = reading_figures(order, adjusted);
    let mut covariance = adjusted.covariance.clone();
    let mut placed = Vec::with_capacity(corners);
    for corner in 0..corners {
        if freedom.leaves_corner_open(shape, corner) {
            for k in [2 * corner, 2 * corner + 1] {
                covariance.row_mut(k).fill(f64::NAN);
                covariance.column_mut(k).fill(f64::NAN);
            }
            placed.push(None);
        } else {
            placed.push(Some(Corner {
                at: adjusted.places[corner],
                sigma: sigma_of_corner(&adjusted.covariance, corner),
            }));
        }
    }
    let legs = (0..corners)
        .map(|leg| {
            let mut figure = leg_figure(body, leg, adjusted, &readings);
            if freedom.leaves_leg_open(leg) {
                figure.length = None;
                figure.sigma = None;
            }
            figure
        })
        .collect();
    Outline {
        corners: placed,
        covariance,
        legs,
        suspects: suspects(body, order, adjusted, &settings.slips),
        readings,
        closure: None,
        chi2: adjusted.chi2,
        degrees_of_freedom: adjusted.degrees_of_freedom,
    }
}

/// Not one length was read: only the datum has a place.
fn nothing_known(corners: usize, closure: Closure) -> Outline {
    let mut covariance = DMatrix::from_element(2 * corners, 2 * corners, f64::NAN);
    covariance.view_mut((0, 0), (2, 2)).fill(0.0);
    let mut placed = vec![None; corners];
    placed[0] = Some(Corner {
        at: Point { x: 0.0, y: 0.0 },
        sigma: 0.0,
    });
    Outline {
        corners: placed,
        covariance,
        legs: vec![LegFigure::unknown(); corners],
        readings: Vec::new(),
        suspects: Suspects::nothing_speaks(),
        closure: Some(closure),
        chi2: 0.0,
        degrees_of_freedom: 0,
    }
}

/// Corners known from elsewhere: nothing is adjusted, readings are compared.
fn compare_with_known(
    body: &Body,
    corners: &[Point],
    settings: &Settings,
) -> Result<Outline, NoOutline> {
    let count = corners.len();
    let axes: Vec<[f64; 2]> = (0..count)
        .map(|leg| {
            let (a, b) = (corners[leg], corners[(leg + 1) % count]);
            let length = (b.x - a.x).hypot(b.y - a.y);
            if length > 0.0 {
                [(b.x - a.x) / length, (b.y - a.y) / length]
            } else {
                [0.0, 0.0]
            }
        })
        .collect();
    let (order, observations) = observe(body, &axes);
    let net = Net {
        stations: corners
            .iter()
            .map(|at| Station {
                at: *at,
                held: Held::Fixed,
            })
            .collect(),
        observations,
    };
    let adjusted = adjust_net(&net).map_err(|_| NoOutline::TooFarApart {
        body: body.id.clone(),
    })?;
    let readings = reading_figures(&order, &adjusted);
    Ok(Outline {
        corners: corners
            .iter()
            .map(|at| {
                Some(Corner {
                    at: *at,
                    sigma: 0.0,
                })
            })
            .collect(),
        legs: (0..count)
            .map(|leg| LegFigure {
                worked_out: false,
                ..leg_figure(body, leg, &adjusted, &readings)
            })
            .collect(),
        suspects: suspects(body, &order, &adjusted, &settings.slips),
        readings,
        closure: None,
        chi2: adjusted.chi2,
        degrees_of_freedom: adjusted.degrees_of_freedom,
        covariance: adjusted.covariance,
    })
}

/// Turns and moves an outline from the frame of leg 0 to where it stands.
fn place(outline: &mut Outline, start: Point, heading: Angle) {
    let [cos, sin] = unit_vector(heading.in_degrees());
    for corner in outline.corners.iter_mut().flatten() {
        let Point { x, y } = corner.at;
        corner.at = Point {
            x: start.x + cos * x - sin * y,
            y: start.y + sin * x + cos * y,
        };
    }
    let q = &mut outline.covariance;
    for k in (0..q.nrows()).step_by(2) {
        for j in 0..q.ncols() {
            let (x, y) = (q[(k, j)], q[(k + 1, j)]);
            q[(k, j)] = cos * x - sin * y;
            q[(k + 1, j)] = sin * x + cos * y;
        }
    }
    for k in (0..q.ncols()).step_by(2) {
        for i in 0..q.nrows() {
            let (x, y) = (q[(i, k)], q[(i, k + 1)]);
            q[(i, k)] = cos * x - sin * y;
            q[(i, k + 1)] = sin * x + cos * y;
        }
    }
}
