//! What a person says of photos: which part of the house they show, from how far, and who may see
//! them. The last word about each stands.

use super::house_side::HouseSide;
use serde::{Deserialize, Serialize};
use uuid::Uuid;

/// Body of `photo_said`: one word about one photo or more.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct PhotoFacts {
    /// Entries of the photos.
    pub photos: Vec<Uuid>,
    /// What was said of them.
    pub word: PhotoWord,
}

/// One word about a photo.
#[cfg_attr(feature = "typescript", derive(ts_rs::TS))]
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(tag = "word", rename_all = "snake_case")]
pub enum PhotoWord {
    /// What it shows.
    Shows {
        /// Which part of the house.
        place: PhotoPlace,
    },
    /// From how far.
    From {
        /// Which of the three.
        distance: PhotoDistance,
    },
    /// It shows a face, a plate, a room or a neighbour's yard: no packet holds it.
    Private {
        /// It is so.
        on: bool,
    },
    /// Out of sight; it stays on the disk.
    SetAside {
        /// It is so.
        on: bool,
    },
}

/// What a photo of a walk round a house shows.
#[cfg_attr(feature = "typescript", derive(ts_rs::TS))]
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum PhotoPlace {
    /// The front.
    Front,
    /// On the right of who faces the front.
    Right,
    /// Behind.
    Back,
    /// On the left of who faces the front.
    Left,
    /// The roof itself.
    Roof,
    /// Under it: attic, soffit, rooms.
    Under,
    /// The ground: driveway, bin, wires, plants.
    Ground,
}

impl PhotoPlace {
    /// All of them, in the order of the strip.
    pub const ALL: [PhotoPlace; 7] = [
        PhotoPlace::Front,
        PhotoPlace::Right,
        PhotoPlace::Back,
        PhotoPlace::Left,
        PhotoPlace::Roof,
        PhotoPlace::Under,
        PhotoPlace::Ground,
    ];

    /// In a word: `Front`.
    #[must_use]
    pub fn title(self) -> &'static str {
        match self {
            PhotoPlace::Front => "Front",
            PhotoPlace::Right => "Right",
            PhotoPlace::Back => "Back",
            PhotoPlace::Left => "Left",
            PhotoPlace::Roof => "Roof",
            PhotoPlace::Under => "Under",
            PhotoPlace::Ground => "Ground",
        }
    }

    /// Whether it is one of the four sides.
    #[must_use]
    pub fn is_side(self) -> bool {
        self.side().is_some()
    }

    /// The side that it is, where it is one.
    #[must_use]
    pub fn side(self) -> Option<HouseSide> {
        match self {
            PhotoPlace::Front => Some(HouseSide::Front),
            PhotoPlace::Right => Some(HouseSide::Right),
            PhotoPlace::Back => Some(HouseSide::Back),
            PhotoPlace::Left => Some(HouseSide::Left),
            PhotoPlace::Roof | PhotoPlace::Under | PhotoPlace::Ground => None,
        }
    }
}

impl From<HouseSide> for PhotoPlace {
    fn from(side: HouseSide) -> PhotoPlace {
        match side {
            HouseSide::Front => PhotoPlace::Front,
            HouseSide::Right => PhotoPlace::Right,
            HouseSide::Back => PhotoPlace::Back,
            HouseSide::Left => PhotoPlace::Left,
        }
    }
}

/// From how far a photo was taken: an overall view, one that leads to the thing, and the thing
/// itself with a scale (general practice of evidence photographs).
#[cfg_attr(feature = "typescript", derive(ts_rs::TS))]
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum PhotoDistance {
    /// All of the side.
    Whole,
    /// Part of it.
    Middle,
    /// One thing, with the tape in its plane.
    Close,
}

impl PhotoDistance {
    /// All three, from afar.
    pub const ALL: [PhotoDistance; 3] = [
        PhotoDistance::Whole,
        PhotoDistance::Middle,
        PhotoDistance::Close,
    ];

    /// In a few words: `close with tape`.
    #[must_use]
    pub fn word(self) -> &'static str {
        match self {
            PhotoDistance::Whole => "whole",
            PhotoDistance::Middle => "middle",
            PhotoDistance::Close => "close with tape",
        }
    }
}
