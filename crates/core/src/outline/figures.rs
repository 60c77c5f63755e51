//! Figures of an adjusted outline: its corners, its legs and the readings behind them.

use super::net::{Adjusted, Observed};
use super::observe::leg_of;
use crate::survey::{Body, Point};
use crate::units::{Figure, Length};

/// Below this redundancy a reading is unproved: next to nothing of a slip shows in its residual.
pub const UNPROVED: f64 = 0.05;

/// From this redundancy on a reading is well checked; below it, weakly.
pub const WELL_CHECKED: f64 = 0.3;

/// Shift of a standardized residual that is detected with power 0.8 at a significance of 0.001
/// (Baarda 1968, from memory).
const NONCENTRALITY: f64 = 4.13;

/// One adjusted corner.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Corner {
    /// Position in plan, feet.
    pub at: Point,
    /// Semi-major axis of the error ellipse at one standard deviation.
    pub sigma: Length,
}

/// Figures of one leg after the adjustment.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct LegFigure {
    /// Adjusted length. `None` if no reading determines it.
    pub length: Option<Figure<Length>>,
    /// Redundancy of its reading, 0 to 1. `None` unless exactly one reading spans the leg.
    pub redundancy: Option<f64>,
    /// Smallest slip in its reading that would be detected. `None` as for `redundancy`, or if no other
    /// reading checks it.
    pub smallest_slip: Option<Length>,
    /// No reading spans the leg: its length follows from the others.
    pub worked_out: bool,
}

impl LegFigure {
    /// Returns the figure of a leg of unknown length.
    pub(crate) fn unknown() -> LegFigure {
        LegFigure {
            length: None,
            redundancy: None,
            smallest_slip: None,
            worked_out: true,
        }
    }
}

/// Figures of one reading after the adjustment.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ReadingFigure {
    /// Recorded less adjusted value.
    pub residual: Length,
    /// Redundancy: the share of a slip that shows in the residual, 0 to 1.
    pub redundancy: f64,
    /// Standardized residual (Baarda's w). `None` if no other reading checks this one.
    pub test: Option<f64>,
    /// Smallest slip that would be detected. `None` if no other reading checks this one.
    pub smallest_slip: Option<Length>,
}

/// How well the other readings check one reading.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Checked {
    /// A slip would not show: the redundancy is below [`UNPROVED`].
    Nothing,
    /// A small part of a slip would show: the redundancy is below [`WELL_CHECKED`].
    Weakly,
    /// A good part of a slip would show.
    Well,
}

impl std::fmt::Display for Checked {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        f.write_str(match self {
            Checked::Nothing => "nothing checks this",
            Checked::Weakly => "weakly checked",
            Checked::Well => "checked",
        })
    }
}

impl ReadingFigure {
    /// Returns how well the other readings check this one.
    #[must_use]
    pub fn checked(&self) -> Checked {
        if self.is_unproved() {
            Checked::Nothing
        } else if self.redundancy < WELL_CHECKED {
            Checked::Weakly
        } else {
            Checked::Well
        }
    }

    /// Returns whether no other reading checks this one.
    #[must_use]
    pub fn is_unproved(&self) -> bool {
        self.redundancy < UNPROVED
    }
}

impl Observed {
    /// Returns the residual over its own standard deviation (Baarda's w). `None` if the redundancy is
    /// below [`UNPROVED`].
    #[must_use]
    pub fn standardized_residual(&self) -> Option<f64> {
        (self.redundancy >= UNPROVED).then(|| self.residual / (self.sigma * self.redundancy.sqrt()))
    }

    /// Returns the smallest error that would be detected, in the unit of the observation. `None` if the
    /// redundancy is below [`UNPROVED`].
    #[must_use]
    pub fn smallest_slip(&self) -> Option<f64> {
        (self.redundancy >= UNPROVED).then(|| NONCENTRALITY * self.sigma / self.redundancy.sqrt())
    }
}

/// Returns one figure per reading, in the order of the survey. `order[k]`: index of the reading behind
/// observation k.
pub(super) fn reading_figures(order: &[usize], adjusted: &Adjusted) -> Vec<ReadingFigure> {
    let mut figures: Vec<(usize, ReadingFigure)> = order
        .iter()
        .zip(&adjusted.observed)
        .map(|(&reading, observed)| {
            let figure = ReadingFigure {
                residual: Length::feet(observed.residual),
                redundancy: observed.redundancy,
                test: observed.standardized_residual(),
                smallest_slip: observed.smallest_slip().map(Length::feet),
            };
            (reading, figure)
        })
        .collect();
    figures.sort_by_key(|(reading, _)| *reading);
    figures.into_iter().map(|(_, figure)| figure).collect()
}

/// Returns the figure of a leg. Its redundancy and smallest slip are those of its only reading.
pub(super) fn leg_figure(
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
        length: Some(Figure {
            value: Length::feet(length),
            sigma: Length::feet(variance.max(0.0).sqrt()),
        }),
        redundancy: only.map(|figure| figure.redundancy),
        smallest_slip: only.and_then(|figure| figure.smallest_slip),
        worked_out: first.is_none(),
    }
}

/// Returns the semi-major axis of a corner's error ellipse. `covariance`: 2n x 2n, sq ft.
pub(super) fn sigma_of_corner(covariance: &nalgebra::DMatrix<f64>, corner: usize) -> Length {
    let k = 2 * corner;
    let (xx, yy, xy) = (
        covariance[(k, k)],
        covariance[(k + 1, k + 1)],
        covariance[(k, k + 1)],
    );
    let greater = 0.5 * (xx + yy) + (0.5 * (xx - yy)).hypot(xy);
    Length::feet(greater.max(0.0).sqrt())
}
