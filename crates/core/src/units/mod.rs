//! Lengths, angles, pitch, areas and money as types; tape text to value and back.
//!
//! A [`Tape`] keeps what was read: its text, and feet, inches and fraction as whole numbers or
//! feet and metres as decimals. Only its [`Length`] is a binary fraction, so text to value to text
//! never drifts.

mod angle;
mod area;
mod figure;
mod length;
pub mod measure;
mod money;
mod point;
mod spoken;
mod spoken_es;
mod tape;
mod tape_reader;
mod tape_refusal;
mod weight;
mod words;

pub use angle::{Angle, Pitch};
pub use area::Area;
pub use figure::Figure;
pub use length::{Length, RoundTo};
pub use measure::Measure;
pub use money::{Money, MoneyRefusal};
pub use point::Point3;
pub use spoken::{Tongue, degrees_spoken};
pub use tape::{Inches, Marks, Tape};
pub use tape_refusal::{TapeFault, TapeRefusal};
pub use weight::Weight;
pub(crate) use words::quotable;
