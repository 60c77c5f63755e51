//! Parts of replies that two places or more have.

use crate::request::Request;
use eavebook_core::book::kinds::Thing;
use eavebook_core::check::State;
use serde::{Deserialize, Serialize};
use ts_rs::TS;
use uuid::Uuid;

/// A worked or read figure in words.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, TS)]
pub struct Figure {
    /// With its unit: `42 ft 7 1/2 in`, `2,013 sq ft`.
    pub words: String,
    /// Its ± with unit, where it was worked out: `± 35 sq ft`.
    pub give_or_take: Option<String>,
}

/// What leads on.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, TS)]
#[serde(tag = "next", rename_all = "snake_case")]
pub enum NextAct {
    /// Open the keypad for a thing.
    Read {
        /// Which.
        thing: Thing,
    },
    /// Tap the corner after a leg.
    Corner {
        /// The leg, from 1.
        after_leg: u32,
    },
    /// Look at the plan.
    Plan,
    /// Look at the photos of the walk round.
    WalkRound,
    /// Say who is here and what they allow.
    Arrive,
    /// Look at the papers and their copies.
    JobFile,
    /// Open the leaf of a thing on the plan.
    Open {
        /// `layers`, `pipe 1`.
        thing: String,
    },
}

/// A thing in a list: a leg, a tie, an edge.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, TS)]
pub struct ThingView {
    /// `leg 4`: `data-thing`.
    pub thing: String,
    /// The thing to ask for, where it can be read again.
    pub read: Option<Thing>,
    /// "Leg 4, back".
    pub title: String,
    /// How well it is known.
    pub state: State,
    /// The state in a word or two.
    pub state_word: String,
    /// Its value, read or worked out; `data-value` without the ±.
    pub value: Option<Figure>,
    /// A sentence: "read twice, meets leg 5 at an inside corner".
    pub about: String,
    /// All readings of it, newest first.
    pub story: Vec<StoryView>,
    /// Photos of it, the newest first, by their names in the photo folder: `/photo/{sha256}`.
    pub photos: Vec<String>,
}

/// One reading in a story.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, TS)]
pub struct StoryView {
    /// Its entry.
    pub entry: Uuid,
    /// `42 ft 7 1/2 in`.
    pub value: String,
    /// In force, or struck.
    pub state: State,
    /// The state in a word or two.
    pub state_word: String,
    /// "taped along the eave edge, 2:41 pm, this phone".
    pub about: String,
    /// It may be struck.
    pub may_strike: bool,
}

/// A size that is read on the keypad.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, TS)]
pub struct SizeView {
    /// The thing to ask for.
    pub thing: Thing,
    /// `width`.
    pub name: String,
    /// How well it is known.
    pub state: State,
    /// The size as read; `None` if it was not read.
    pub value: Option<Figure>,
}

/// A question that one tap answers.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, TS)]
pub struct AskView {
    /// "Layers at this edge".
    pub title: String,
    /// The answers.
    pub choices: Vec<ChoiceView>,
}

/// One answer.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, TS)]
pub struct ChoiceView {
    /// What its button says.
    pub name: String,
    /// It is what was said last.
    pub chosen: bool,
    /// The request that says it.
    pub says: Request,
    /// The thing whose leaf opens then: `pipe 2`.
    pub opens: Option<String>,
}
