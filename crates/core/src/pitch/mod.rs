//! Readings of a slope to the pitch of a face, with chances: how sure, and what else it may be.

mod chances;
mod likelihood;
mod settle;
mod trade;

pub use chances::{PitchChances, weigh};
pub use settle::{SettledPitch, SettledRise, settle};
