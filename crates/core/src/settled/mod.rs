//! The house between the steps: outlines adjusted, pitches settled, shapes to raise, totals.
//!
//! These are the values that one step hands to the next. They call no step.

mod body;
mod cross_covariance;
mod shape;
mod totals;

pub use body::SolvedBody;
pub use cross_covariance::{CrossCovariance, put_in_place};
pub use shape::{Ground, RoofUnavailable, shapes};
pub use totals::{Totals, total};
