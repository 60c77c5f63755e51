//! Readings to adjusted corners, their covariance, suspects and unproved readings.
//!
//! [`walk()`] turns legs and corner taps into a shape, [`adjust()`] the readings of a body into an
//! [`Outline`]. The least squares underneath stand in [`net`] and know nothing of houses.

use crate::survey::Point;
use nalgebra::{DMatrix, Matrix2};

mod adjust;
mod closure;
mod envelope;
mod fit;
mod lack;
pub mod net;
mod nominal;
mod observe;
mod refuse;
mod reliability;
mod repeats;
mod slips;
mod suspects;
mod two_slips;
mod walk;
mod wanted;
mod words;

pub use adjust::{Settings, adjust, adjust_with};
pub use closure::{Closure, ClosureState, Tolerance};
pub use nominal::{Nominal, WayRound, unit_vector};
pub use observe::{default_sigma, span_sigma};
pub use refuse::{AdjustError, MOST_CORNERS};
pub use reliability::{UNPROVED, WELL_CHECKED};
pub use slips::SlipPriors;
pub use suspects::{Possible, Suspect, Suspects};
pub use walk::{DrawnLeg, DrawnLength, LegLength, Round, Walk, WalkedLeg, walk};
pub use wanted::{Lack, Part, Side, Way};
pub use words::{ClosureWords, GapHint, LastLeg, Miss, Sense, Unseen};

/// One adjusted outline.
#[derive(Clone, Debug)]
pub struct Outline {
    /// Where each corner lies; none where no reading says so.
    pub corners: Vec<Option<Corner>>,
    /// Covariance of the corners, 2n x 2n sq ft (x0 y0 x1 ..); the datum corner 0 has zero rows unless
    /// the body was found from another, corners without a place have rows of NaN.
    pub covariance: DMatrix<f64>,
    /// One figure a leg.
    pub legs: Vec<LegFigure>,
    /// One figure a reading, in the order of the survey.
    pub readings: Vec<ReadingFigure>,
    /// What the readings speak against.
    pub suspects: Suspects,
    /// How the two sums come out; none where the outline is known, not read.
    pub closure: Option<Closure>,
    /// What no reading says, each with what would say it.
    pub lacks: Vec<Lack>,
    /// Corners that hang together, where the outline falls apart; empty where it does not.
    pub parts: Vec<Part>,
    /// How rough the work of this crew was, by its own repeats: the factor that the usual spread of
    /// readings that state none was given.
    pub roughness: f64,
    /// Weighted sum of squared residuals.
    pub chi2: f64,
    /// Readings and directions beyond what the corners need.
    pub degrees_of_freedom: usize,
}

/// One adjusted corner.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Corner {
    /// Feet in plan.
    pub at: Point,
    /// Greater half axis of the error ellipse at one standard deviation, feet.
    pub sigma: f64,
}

/// What is known of one leg after the adjustment.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct LegFigure {
    /// Adjusted length, feet; none where nothing says.
    pub length: Option<f64>,
    /// One standard deviation, feet.
    pub sigma: Option<f64>,
    /// Redundancy of its reading, 0 to 1; none unless exactly one reading made it.
    pub redundancy: Option<f64>,
    /// Smallest slip in its reading that would be noticed, feet.
    pub smallest_slip: Option<f64>,
    /// No reading spans it: worked out from the others.
    pub worked_out: bool,
}

/// What is known of one reading after the adjustment.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ReadingFigure {
    /// Booked less adjusted, feet.
    pub residual: f64,
    /// Share of a slip that shows in its residual, 0 to 1.
    pub redundancy: f64,
    /// Residual over its own standard deviation; none where nothing checks it.
    pub test: Option<f64>,
    /// Smallest slip that would be noticed, feet; none where nothing checks it.
    pub smallest_slip: Option<f64>,
}

impl Outline {
    /// The outline moved as a whole, its place unsure by itself.
    pub(crate) fn put(&mut self, by: Point, unsure: &Matrix2<f64>) {
        let q = &mut self.covariance;
        for i in 0..q.nrows() {
            for j in 0..q.ncols() {
                q[(i, j)] += unsure[(i % 2, j % 2)];
            }
        }
        for (k, corner) in self.corners.iter_mut().enumerate() {
            if let Some(corner) = corner {
                corner.at.x += by.x;
                corner.at.y += by.y;
                corner.sigma = reliability::sigma_of_corner(&self.covariance, k);
            }
        }
    }
}

/// How far the others check a reading.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Checked {
    /// A slip in it shows in nothing.
    Nothing,
    /// Little of a slip in it shows.
    Weakly,
    /// A good part of a slip in it shows.
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
    /// How far the others check this one.
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

    /// No other reading checks this one.
    #[must_use]
    pub fn is_unproved(&self) -> bool {
        self.redundancy < UNPROVED
    }
}

impl LegFigure {
    /// Nothing says how long it is.
    pub(crate) fn unknown() -> LegFigure {
        LegFigure {
            length: None,
            sigma: None,
            redundancy: None,
            smallest_slip: None,
            worked_out: true,
        }
    }
}

/// A kind of slip.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum SlipKind {
    /// A tens digit wrong.
    Tens,
    /// One foot more or less.
    OneFoot,
    /// Two digits turned.
    Transposed,
    /// Tenths booked as inches, or inches as tenths.
    InchesForTenths,
    /// One or both overhangs left out.
    Overhang,
    /// Tape read from its other end.
    Reversed,
    /// None of the known kinds.
    Other,
}
