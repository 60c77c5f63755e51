//! The walk-round: photos of each side, and what else is looked for.

pub mod handle;
pub mod photos;
pub mod reply;
pub mod request;
pub mod view;
