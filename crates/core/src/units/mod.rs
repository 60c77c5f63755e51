//! Lengths, angles, pitches, areas and money as types; tape text to value and back.
//!
//! A [`Tape`] keeps a reading exactly: its text, and feet, inches and fraction as integers or feet
//! and meters as decimals. Only its [`Length`] is a binary fraction, so text to value to text never
//! drifts.

mod angle;
mod area;
mod figure;
mod length;
pub mod measure;
mod money;
mod point;
mod tape;
mod tape_error;
mod tape_reader;
mod weight;
mod words;

pub use angle::{Angle, Pitch};
pub use area::Area;
pub use figure::Figure;
pub use length::{Length, RoundTo};
pub use measure::Measure;
pub use money::{Money, MoneyRefusal};
pub use point::Point3;
pub use tape::{Inches, Marks, Tape};
pub use tape_error::{TapeError, TapeRefusal};
pub use weight::Weight;
pub(crate) use words::quotable;
