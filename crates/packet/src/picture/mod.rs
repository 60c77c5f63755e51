//! What a picture file says of itself: what it is, what the camera wrote into it, whether it can
//! be shown. First bytes decide, never the name. What the camera wrote is a second witness: the
//! program's own time and heading at the shutter stand apart from it.

mod camera_data;
mod heif;
mod kind;
mod moment;
mod square;
mod told;

pub use camera_data::{CameraData, Direction, OffsetFrom, Position};
pub use kind::PictureKind;
pub use square::squares;
pub use told::{Outcome, Told, tell};

/// The longest file that is looked into: 200 MiB.
pub const LONGEST_FILE: u64 = 200 * 1024 * 1024;
