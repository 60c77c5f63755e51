//! Least squares: the readings of one body to its corners.

use super::adjusted_outline::Outline;
use super::closure::{self, Closure, Tolerance};
use super::figures::{Corner, LegFigure, leg_figure, reading_figures, sigma_of_corner};
use super::fit::{Fit, Ground, LeaveOneOut, LeaveTwoOut, fit, fit_with};
use super::hypothesis::Others;
use super::lack::Freedom;
use super::net::{Net, Station, StationFixity, adjust_net};
use super::nominal::{Nominal, unit_vector};
use super::observe::Readings;
use super::refuse::{AdjustError, refuse};
use super::repeats::roughness;
use super::slips::SlipPriors;
use super::suspects::{Suspects, suspects};
use super::wanted::{lacks, parts};
use crate::survey::{Body, Point, Sketch};
use crate::units::{Angle, Length};
use nalgebra::DMatrix;

/// What a judgement of readings rests on beside the readings.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Settings {
    /// How often which slip is made.
    pub slips: SlipPriors,
    /// When a sum closes.
    pub tolerance: Tolerance,
}

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
/// [`AdjustError`] if the sketch is no outline or a reading names what the outline does not have.
/// # Source
/// Rows as in [`super::net`]; tests and smallest slips after Baarda (1968), from memory.
pub fn adjust(body: &Body) -> Result<Outline, AdjustError> {
    adjust_with(body, &Settings::default())
}

/// [`adjust`] with settings of one's own.
///
/// # Errors
/// As [`adjust`].
pub fn adjust_with(body: &Body, settings: &Settings) -> Result<Outline, AdjustError> {
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

/// The adjustment in the frame of leg 0: corner 0 at the origin, leg 0 along the first axis.
fn adjust_turned(
    body: &Body,
    shape: &Nominal,
    direction_sigma: f64,
    settings: &Settings,
) -> Result<Outline, AdjustError> {
    let roughness = roughness(body);
    let readings = Readings::new(body, &shape.units, roughness);
    let read = readings.mean_lengths(shape.legs(), &[]);
    let mut closure = closure::close(&read, shape, &settings.tolerance);
    closure.leave_out_checked_pairs(&body.readings);
    let ground = Ground {
        shape,
        readings: &readings,
        direction_sigma,
    };
    let fit = fit(&ground).map_err(|_| AdjustError::TooFarApart {
        body: body.id.clone(),
    })?;
    Ok(match fit {
        Some(fit) => Outline {
            closure: Some(closure),
            suspects: suspects(
                body,
                &readings.order,
                &fit.adjusted,
                &Refits(&ground),
                roughness,
                &settings.slips,
            ),
            lacks: lacks(shape, &fit.freedom, &read),
            parts: parts(shape, &fit.freedom, &fit.adjusted.places),
            roughness,
            ..figures(body, shape, &readings.order, &fit)
        },
        None => nothing_known(shape, closure),
    })
}

/// Fits of one outline without some of its readings.
struct Refits<'a>(&'a Ground<'a>);

impl Others for Refits<'_> {
    fn without(&self, k: usize) -> Option<LeaveOneOut> {
        LeaveOneOut::without(self.0, k)
    }

    fn rest_without(&self, k: usize) -> Option<Vec<Option<LeaveOneOut>>> {
        let fit = fit_with(self.0, &[k]).ok()??;
        let count = self.0.readings.observations.len();
        Some(
            (0..count)
                .map(|j| LeaveOneOut::within(&fit.adjusted, j))
                .collect(),
        )
    }

    fn without_both(&self, pair: [usize; 2]) -> Option<LeaveTwoOut> {
        LeaveTwoOut::without(self.0, pair)
    }
}

/// Corners that are known do not bend: every reading is against them alone.
struct NothingBends;

impl Others for NothingBends {
    fn without(&self, _: usize) -> Option<LeaveOneOut> {
        None
    }

    fn rest_without(&self, _: usize) -> Option<Vec<Option<LeaveOneOut>>> {
        None
    }

    fn without_both(&self, _: [usize; 2]) -> Option<LeaveTwoOut> {
        None
    }
}

/// The figures of an adjusted net.
fn figures(body: &Body, shape: &Nominal, order: &[usize], fit: &Fit) -> Outline {
    let Fit { adjusted, freedom } = fit;
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
            }
            figure
        })
        .collect();
    Outline {
        corners: placed,
        covariance,
        legs,
        suspects: Suspects::nothing_speaks(),
        readings,
        closure: None,
        lacks: Vec::new(),
        parts: Vec::new(),
        roughness: 1.0,
        chi2: adjusted.chi2,
        degrees_of_freedom: adjusted.degrees_of_freedom,
    }
}

/// Not one length was read: only the datum has a place.
fn nothing_known(shape: &Nominal, closure: Closure) -> Outline {
    let corners = shape.legs();
    let unread = vec![None; corners];
    let nowhere = vec![Point { x: 0.0, y: 0.0 }; corners];
    let freedom = Freedom::of(shape, &vec![false; corners], std::iter::empty(), &nowhere);
    let mut covariance = DMatrix::from_element(2 * corners, 2 * corners, f64::NAN);
    covariance.view_mut((0, 0), (2, 2)).fill(0.0);
    let mut placed = vec![None; corners];
    placed[0] = Some(Corner {
        at: Point { x: 0.0, y: 0.0 },
        sigma: Length::ZERO,
    });
    Outline {
        corners: placed,
        covariance,
        legs: vec![LegFigure::unknown(); corners],
        readings: Vec::new(),
        suspects: Suspects::nothing_speaks(),
        closure: Some(closure),
        lacks: lacks(shape, &freedom, &unread),
        parts: Vec::new(),
        roughness: 1.0,
        chi2: 0.0,
        degrees_of_freedom: 0,
    }
}

/// Corners known from elsewhere: nothing is adjusted, readings are compared.
fn compare_with_known(
    body: &Body,
    corners: &[Point],
    settings: &Settings,
) -> Result<Outline, AdjustError> {
    let count = corners.len();
    let roughness = roughness(body);
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
    let Readings {
        order,
        observations,
        ..
    } = Readings::new(body, &axes, roughness);
    let net = Net {
        stations: corners
            .iter()
            .map(|at| Station {
                at: *at,
                held: StationFixity::Fixed,
            })
            .collect(),
        observations,
    };
    let adjusted = adjust_net(&net).map_err(|_| AdjustError::TooFarApart {
        body: body.id.clone(),
    })?;
    let readings = reading_figures(&order, &adjusted);
    Ok(Outline {
        corners: corners
            .iter()
            .map(|at| {
                Some(Corner {
                    at: *at,
                    sigma: Length::ZERO,
                })
            })
            .collect(),
        legs: (0..count)
            .map(|leg| LegFigure {
                worked_out: false,
                ..leg_figure(body, leg, &adjusted, &readings)
            })
            .collect(),
        suspects: suspects(
            body,
            &order,
            &adjusted,
            &NothingBends,
            roughness,
            &settings.slips,
        ),
        readings,
        closure: None,
        lacks: Vec::new(),
        parts: Vec::new(),
        roughness,
        chi2: adjusted.chi2,
        degrees_of_freedom: adjusted.degrees_of_freedom,
        covariance: adjusted.covariance,
    })
}

/// Turns and moves an outline from the frame of leg 0 to where it stands.
fn place(outline: &mut Outline, start: Point, heading: Angle) {
    let [cos, sin] = unit_vector(heading);
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
