//! Labels in Spanish.

pub(super) mod packet;
pub(super) mod paper;
pub(super) mod state;
