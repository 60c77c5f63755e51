//! Bodies of the entries for photos and sound clips. The files are named by their SHA-256.

use super::photo_facts::{PhotoDistance, PhotoPlace};
use super::thing::Thing;
use serde::{Deserialize, Serialize};

/// Body of `photo`.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct PhotoTaken {
    /// SHA-256 of the file, 64 hex digits: its name in the photo folder.
    pub sha256: String,
    /// Size of the file, bytes.
    pub size: u64,
    /// Media type of the file: `image/jpeg`.
    pub media: String,
    /// The thing in hand when it was taken; `None` if no thing was in hand.
    pub of: Option<Thing>,
    /// Where the file is from.
    pub from: PhotoFrom,
    /// Direction of the back camera at the shutter, degrees clockwise from the device's north.
    /// `None` if the device has no compass, or for a file added later.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub heading: Option<f64>,
    /// Tilt of the phone at the shutter. `None` if the device has no such sensor, or for a file
    /// added later.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub tilt: Option<TiltFelt>,
    /// The part of the house that was chosen before the shutter; `None` if nothing was chosen.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub place: Option<PhotoPlace>,
    /// The distance that was chosen before the shutter; `None` if nothing was chosen.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub distance: Option<PhotoDistance>,
}

/// Tilt of a phone at the shutter, as its sensors report it.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub struct TiltFelt {
    /// Rotation about the axis across the screen, degrees (W3C Device Orientation).
    pub beta: f64,
    /// Rotation about the axis up the screen, degrees.
    pub gamma: f64,
    /// Rotation of the screen's content from the phone's own upright: 0, 90, 180 or 270 degrees
    /// (W3C Screen Orientation).
    pub screen: f64,
}

/// Where a photo is from.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum PhotoFrom {
    /// The camera of this device, at the shutter.
    Camera,
    /// A file added later.
    File,
}

/// Body of `clip`: a recorded remark. A person types its content later; the strike that removes
/// the clip from the waiting list gives that as its reason.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct ClipTaken {
    /// SHA-256 of the file, 64 hex digits: its name in the photo folder.
    pub sha256: String,
    /// Size of the file, bytes.
    pub size: u64,
    /// Media type of the file: `audio/webm`.
    pub media: String,
    /// The thing in hand when it was recorded; `None` if no thing was in hand.
    pub of: Option<Thing>,
}
