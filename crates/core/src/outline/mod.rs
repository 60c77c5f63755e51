//! Readings to adjusted corners, their covariance, suspects and unproved readings.

use crate::survey::Point;
use nalgebra::DMatrix;

/// One adjusted outline.
#[derive(Clone, Debug)]
pub struct Outline {
    /// Where each corner lies; none where no reading says so.
    pub corners: Vec<Option<Corner>>,
    /// Covariance of the corners, 2n x 2n sq ft (x0 y0 x1 ..); the datum corner 0 has zero rows.
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
    /// Smallest slip that would be noticed, feet; none where nothing checks it.
    pub smallest_slip: Option<f64>,
}

impl ReadingFigure {
    /// No other reading checks this one.
    #[must_use]
    pub fn is_unproved(&self) -> bool {
        self.redundancy < 0.05
    }
}

/// What the readings speak against, all kinds of slip together.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Suspects {
    /// Chance that nothing is wrong.
    pub nothing_wrong: f64,
    /// Fewest readings whose chance reaches 90 % of the rest, likeliest first; empty when the
    /// chance that nothing is wrong is one half or more.
    pub named: Vec<Suspect>,
}

/// A reading that the others speak against.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Suspect {
    /// Index of the reading in the survey.
    pub reading: usize,
    /// Likeliest kind of slip.
    pub kind: SlipKind,
    /// What it would have been, if this was the slip; feet.
    pub likely_value: f64,
    /// Chance of this reading, all kinds together.
    pub probability: f64,
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

/// How the two sums of an outline come out.
#[derive(Clone, Debug, PartialEq)]
pub struct Closure {
    /// Misclosure along leg 0, feet.
    pub along: f64,
    /// Misclosure square to leg 0, feet.
    pub across: f64,
    /// What to call it.
    pub state: ClosureState,
    /// The same in words.
    pub words: String,
}

/// What to call a closure.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum ClosureState {
    /// Corners are still to come.
    Open,
    /// Both sums within tolerance.
    Closes,
    /// The turns close, the legs do not.
    Gap,
    /// A leg was worked out from the others: that is no check.
    NotChecked,
}
