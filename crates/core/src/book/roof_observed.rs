//! What was seen on the roof and what the firm charges for this job: bodies of their kinds of
//! entry. Sizes are no part of them: a size is a reading like any other.

use super::thing::{ItemKind, Thing};
use serde::{Deserialize, Serialize};

/// Body of `penetration`: something stands out of a face.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct PenetrationAdded {
    /// What it is.
    pub item: ItemKind,
    /// Its number among those of its kind, from 1.
    pub number: u32,
    /// The leg from which its face rises, from 1.
    pub leg: u32,
    /// Whether a saddle stands behind it; none where nobody said, or none is asked.
    #[serde(default)]
    pub saddle: Option<SaddleObserved>,
}

impl PenetrationAdded {
    /// What it is, as a thing.
    #[must_use]
    pub fn thing(&self) -> Thing {
        Thing::Item {
            item: self.item,
            number: self.number,
        }
    }
}

/// What was seen of a saddle behind a chimney.
#[cfg_attr(feature = "typescript", derive(ts_rs::TS))]
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum SaddleObserved {
    /// One stands there.
    Yes,
    /// None stands there.
    No,
    /// Nobody could see.
    NotSeen,
}

/// Body of `covering`: what lies on the roof now, as seen at one place.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct CoveringObserved {
    /// How many layers; none where only the kind was seen.
    pub layers: Option<u32>,
    /// What it is, in the words of the firm's rates: `strip shingle`.
    #[serde(default)]
    pub kind: Option<String>,
    /// The leg at whose edge it was seen, from 1.
    #[serde(default)]
    pub leg: Option<u32>,
}

/// Body of `deck`: what the covering is nailed to, as seen at one place.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct DeckObserved {
    /// Planks or sheets.
    pub kind: DeckKind,
    /// The leg at whose edge it was seen, from 1.
    #[serde(default)]
    pub leg: Option<u32>,
}

/// What a deck is made of.
#[cfg_attr(feature = "typescript", derive(ts_rs::TS))]
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum DeckKind {
    /// Boards with or without a gap.
    Plank,
    /// Sheets edge to edge.
    Sheet,
}

impl DeckKind {
    /// In a word: `plank`.
    #[must_use]
    pub fn word(self) -> &'static str {
        match self {
            DeckKind::Plank => "plank",
            DeckKind::Sheet => "sheet",
        }
    }
}

/// Body of `roof_seen`: what was seen of the roof over a leg, from wherever one stood. It is compared
/// with the computed roof and changes nothing of it.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct RoofObserved {
    /// The leg, from 1.
    pub leg: u32,
    /// What was seen over it.
    pub over: ObservedOverLeg,
}

/// What was seen over a leg.
#[cfg_attr(feature = "typescript", derive(ts_rs::TS))]
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(tag = "seen", rename_all = "snake_case")]
pub enum ObservedOverLeg {
    /// A vertical end.
    Gable,
    /// A slope.
    Slope,
    /// So many faces, one above or beside the other.
    Faces {
        /// How many.
        count: u32,
    },
}

impl ObservedOverLeg {
    /// In words: `a gable`, `2 faces`.
    #[must_use]
    pub fn words(self) -> String {
        match self {
            ObservedOverLeg::Gable => "a gable".to_owned(),
            ObservedOverLeg::Slope => "a slope".to_owned(),
            ObservedOverLeg::Faces { count: 1 } => "1 face".to_owned(),
            ObservedOverLeg::Faces { count } => format!("{count} faces"),
        }
    }
}

/// Body of `rate`: one rate of the firm, changed for this job alone.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct RateSet {
    /// The path of its key in the rates: `field.price`.
    pub key: String,
    /// Its value as typed; empty: blank, so that what it prices is not priced.
    pub value: String,
}
