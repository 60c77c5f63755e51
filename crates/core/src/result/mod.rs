//! The result of a survey as JSON: what `eavebook solve` prints.
//!
//! Lengths are feet, areas square feet, angles degrees. What cannot be known is null; a part that
//! nothing here computes is absent.

mod because;
mod body;
mod caution;
mod file;
mod price;
mod takeoff;

pub use file::{ResultFile, result};
