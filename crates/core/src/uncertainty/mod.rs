//! How the spread of readings and pitches is carried to areas and lengths, by their covariance.
//!
//! Functions here take the house after the adjustment ([`crate::settled`]) and know no survey file,
//! takeoff or price.

mod alternative;
mod area;
mod lengths;
mod moves;
mod shares;
mod span_row;
mod steeper;

pub use alternative::AlternativeTopology;
pub use area::{AreaVariance, Gain, variance_of};
pub use lengths::{LengthSpread, RaisedHouse, length_spread};
pub use moves::{MOVE_DEG, MOVE_FT, unsure_pitches, with_corner, with_slope};
pub use shares::{Share, UncertaintySource, shares};
pub use span_row::SpanRow;
pub use steeper::{SteeperWhenUnsure, steeper_when_unsure};
