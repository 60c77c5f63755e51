//! Labels in English.

pub(super) mod packet;
pub(super) mod paper;
pub(super) mod state;
