//! Labels in Spanish.

pub(super) mod state;
