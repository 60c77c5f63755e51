//! What the walk round a house shows: photos by what they show, what is wanted, the short lists.

use eavebook_core::book::kinds::{Found, PhotoDistance, PhotoPlace, WalkTarget};
use serde::{Deserialize, Serialize};
use ts_rs::TS;
use uuid::Uuid;

/// The walk round a house.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, TS)]
pub struct WalkView {
    /// Where the front lies was said by the compass: sides can be guessed.
    pub knows_front: bool,
    /// Each part of the house, in the order of the strip.
    pub parts: Vec<WalkPart>,
    /// Photos of which nothing tells what they show: `photo 3`.
    pub unplaced: Vec<String>,
    /// Photos out of sight: `photo 3`.
    pub set_aside: Vec<String>,
    /// What else is looked for.
    pub looks: Vec<LookView>,
}

/// One part of the house.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, TS)]
pub struct WalkPart {
    /// Which.
    pub place: PhotoPlace,
    /// Its name: `Front`.
    pub title: String,
    /// Its photos, the odd ones first: `photo 3`.
    pub photos: Vec<String>,
    /// Those of them that are guessed: what `Confirm all` says.
    pub guessed: Vec<Uuid>,
    /// The shots wanted and not there.
    pub wanted: Vec<WantedShot>,
}

/// A shot that is wanted.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, TS)]
pub struct WantedShot {
    /// From how far.
    pub distance: PhotoDistance,
    /// "Front: close, with the tape in the plane of the thing".
    pub words: String,
}

/// One of the short list.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, TS)]
pub struct LookView {
    /// What.
    pub what: WalkTarget,
    /// "Vents".
    pub title: String,
    /// What came of looking.
    pub found: Found,
    /// Whether it is counted.
    pub counted: bool,
    /// How many, where somebody counted.
    pub count: u32,
}

/// What is known of what a photo shows.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, TS)]
#[serde(rename_all = "snake_case")]
pub enum PhotoState {
    /// A person said so.
    Confirmed,
    /// It is guessed.
    Guess,
    /// Nothing tells.
    NotLooked,
}

/// One photo kept.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, TS)]
pub struct PhotoView {
    /// `photo 3`.
    pub thing: String,
    /// Its name in the photo folder.
    pub sha256: String,
    /// The thing it was taken of: `leg 4`.
    pub of: Option<String>,
    /// "Leg 4, 2:41 pm".
    pub caption: String,
    /// Its entry.
    pub entry: Uuid,
    /// What is known of what it shows.
    pub state: PhotoState,
    /// "Back side", "Back side?", "Back or Left side?".
    pub words: String,
    /// What it shows, said or guessed.
    pub place: Option<PhotoPlace>,
    /// What else it may show as well.
    pub or: Option<PhotoPlace>,
    /// From how far, where somebody said.
    pub distance: Option<PhotoDistance>,
    /// No packet holds it.
    pub private: bool,
    /// Out of sight.
    pub set_aside: bool,
}
