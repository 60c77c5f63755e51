//! What a picture file says of itself: what it is, what the camera wrote into it, whether it can
//! be shown. First bytes decide, never the name. What the camera wrote is a second witness: the
//! program's own time and heading at the shutter stand apart from it.

mod camera_data;
mod heif;
mod kind;
mod metadata;
mod moment;
mod square;

pub use camera_data::{CameraData, Direction, OffsetFrom, Position};
pub use kind::PictureKind;
pub use metadata::{Outcome, PictureMetadata, read_metadata};
pub use square::squares;

/// The longest file that is looked into: 200 MiB.
pub const LONGEST_FILE: u64 = 200 * 1024 * 1024;
