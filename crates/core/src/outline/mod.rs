//! Readings to adjusted corners, their covariance, suspects and unproved readings.
//!
//! [`walk()`] turns legs and corner taps into a shape, [`adjust()`] the readings of a body into an
//! [`Outline`]. The least squares underneath stand in [`net`] and know nothing of houses.

use crate::survey::Point;
use nalgebra::DMatrix;

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
mod slips;
mod suspects;
mod walk;
mod words;

pub use adjust::{Settings, adjust, adjust_with};
pub use closure::{Closure, ClosureState, Tolerance};
pub use nominal::{Nominal, WayRound, unit_vector};
pub use observe::default_sigma;
pub use refuse::{MOST_CORNERS, NoOutline};
pub use reliability::UNPROVED;
pub use slips::SlipPriors;
pub use suspects::{Suspect, Suspects};
pub use walk::{DrawnLeg, DrawnLength, LegLength, Round, Walk, WalkedLeg, walk};
pub use words::{ClosureWords, GapHint, LastLeg, Miss, Sense, Unseen};

/// One adjusted outline.
#[derive(Clone, Debug)]
pub struct Outline {
    /// Where each corner lies; none where no reading says so.
    pub corners: Vec<Option<Corner>>,
    /// Covariance of the corners, 2n x 2n sq ft (x0 y0 x1 ..); the datum corner 0 has zero rows,
    /// corners without a place have rows of NaN.
    pub covariance: DMatrix<f64>,
    /// One figure a leg.
    pub legs: Vec<LegFigure>,
    /// One figure a reading, in the order of the survey.
    pub readings: Vec<ReadingFigure>,
    /// What the readings speak against.
    pub suspects: Suspects,
    /// How the two sums come out; none where the outline is known, not read.
    pub closure: Option<Closure>,
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

impl ReadingFigure {
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
