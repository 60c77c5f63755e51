//! Readings of a slope to the pitch of a face, with chances: how sure, and what else it may be.

mod chances;
mod footing;
mod hold;
mod likelihood;
mod looks;
mod settle;
mod tilt;
mod trade;

pub use chances::{PitchChances, weigh};
pub use footing::{Footing, Unevenness, zero_jumps};
pub use hold::{Hold, MOST_CREEP, MOST_SPREAD, SteadyTilt, TiltReading, WINDOW_MS, hold};
pub use settle::{SettledPitch, SettledRise, settle};
pub use tilt::{MOST_SIDEWAYS, NoTilt, Tilt};
