//! Lengths, angles, pitch, areas and money as types; tape text to value and back.

mod angle;
mod area;
mod length;

pub use angle::{Angle, Pitch};
pub use area::Area;
pub use length::Length;
