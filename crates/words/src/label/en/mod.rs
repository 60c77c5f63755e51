//! Labels in English.

pub(super) mod state;
