//! The row of steps: adjust, settle pitches, raise the roof, total, check; then, by the rates of a
//! firm and the notes of a permit office, take off and price.
//!
//! Each step is a function of the values before it and calls no other step. Only this module and
//! [`crate::job`] know all of them.

pub mod at_house;
mod compare;
mod priced;
mod solved;

pub use compare::{Comparison, Named, judge_seen};
pub use priced::{NotPriceable, Priced, take_off_and_price, take_off_and_price_as_meant};
pub use solved::{Solved, length_spread, solve, solve_over};
