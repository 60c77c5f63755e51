//! Readings to adjusted corners, their covariance, suspects and unproved readings.
//!
//! [`walk()`] turns legs and corner taps into a shape, [`adjust()`] the readings of a body into an
//! [`Outline`]. The least squares underneath stand in [`net`] and know nothing of houses.

mod adjust;
mod adjusted_outline;
mod closure;
mod envelope;
mod figures;
mod fit;
mod hypothesis;
mod lack;
pub mod net;
mod nominal;
mod observe;
mod refuse;
mod repeats;
mod slips;
mod suspects;
mod two_slips;
mod walk;
mod wanted;
mod words;

pub use adjust::{Settings, adjust, adjust_with};
pub use adjusted_outline::Outline;
pub use closure::{Closure, ClosureState, Tolerance};
pub use figures::{Checked, Corner, LegFigure, ReadingFigure, UNPROVED, WELL_CHECKED};
pub use nominal::{Nominal, WayRound, unit_vector};
pub use observe::{default_sigma, span_sigma};
pub use refuse::{AdjustError, MOST_CORNERS};
pub use slips::{SlipKind, SlipPriors};
pub use suspects::{Possible, Suspect, Suspects};
pub use walk::{DrawnLeg, DrawnLength, LegLength, Round, Walk, WalkedLeg, walk};
pub use wanted::{Lack, Part, Side, Way};
pub use words::{ClosureWords, GapHint, LastLeg, Miss, Sense, Unseen};
