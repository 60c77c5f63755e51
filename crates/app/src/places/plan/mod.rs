//! The plan: faces, edges, slopes, items on the roof, and the drawings.

pub mod captured;
pub mod drawn;
pub mod faces;
pub mod handle;
pub mod hold;
pub mod items;
pub mod on_roof;
pub mod reply;
pub mod request;
pub mod roof_observed;
pub mod sight;
pub mod sketch;
pub mod slopes;
pub mod solid;
pub mod solid_reply;
pub mod totals;
