//! What the field book answers.

use crate::sentence::Sentence;
use eavebook_core::book::keypad::Slot;
use eavebook_core::book::kinds::{Followed, HowRead, TapeMarks, Thing};
use serde::{Deserialize, Serialize};
use ts_rs::TS;
use uuid::Uuid;

/// Something said aloud.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, TS)]
pub struct ClipView {
    /// Its entry.
    pub entry: Uuid,
    /// Its name in the photo folder: `/photo/{sha256}`.
    pub sha256: String,
    /// The thing in hand as it was said, where it can be read.
    pub read: Option<Thing>,
    /// "Leg 4, said 2:41 pm, this phone".
    pub words: String,
}

/// The keypad, the read-back and the corner pad.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, TS)]
pub struct PadView {
    /// The open keypad.
    pub open: Option<OpenPadView>,
    /// The reading just booked, until it is answered or another act begins.
    pub read_back: Option<ReadBackView>,
    /// The leg whose far corner is still to be tapped, from 1.
    pub corner_after: Option<u32>,
    /// Why the last key did nothing.
    pub refused: Option<Sentence>,
    /// "two 2s?", never in the way.
    pub double: Option<Sentence>,
}

/// The open keypad.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, TS)]
pub struct OpenPadView {
    /// What is being read.
    pub thing: Thing,
    /// By name: `leg 4`.
    pub name: String,
    /// In words: "Leg 4, back".
    pub title: String,
    /// Earlier values are out of sight.
    pub blind: bool,
    /// Presses so far: goes with the next one.
    pub press: u32,
    /// How the tape is marked.
    pub tape: TapeMarks,
    /// The slots in order.
    pub slots: Vec<SlotView>,
    /// How it is read.
    pub how: HowRead,
    /// What the tape follows.
    pub followed: Followed,
}

/// One slot of the keypad.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, TS)]
pub struct SlotView {
    /// Which.
    pub slot: Slot,
    /// What stands in it: digits, or `1/2`; empty when nothing does.
    pub typed: String,
    /// Unit beside it.
    pub unit: String,
    /// Where the next key goes.
    pub active: bool,
}

/// A reading just booked, read back.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, TS)]
pub struct ReadBackView {
    /// The reading.
    pub reading: Uuid,
    /// What was read: `leg 4`.
    pub thing: String,
    /// In words: "Leg 4, back".
    pub title: String,
    /// `42 ft 7 1/2 in`.
    pub value: String,
    /// "four two feet, seven and a half inches".
    pub spoken: String,
    /// `Right` was tapped.
    pub answered: bool,
    /// Another reading of the same thing differs by more than both can: a third is wanted.
    pub dispute: Option<Sentence>,
}

/// The two sums.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, TS)]
pub struct ClosureView {
    /// What to call it.
    pub state: ClosureWord,
    /// "Closes within 2 in." or "18 ft short along the front."
    pub words: Sentence,
    /// "Look again at leg 2 or leg 6." or what closure cannot see.
    pub more: Option<Sentence>,
    /// At most two, likeliest first.
    pub suspects: Vec<SuspectView>,
    /// There are others beside the two.
    pub or_another: bool,
}

/// What to call a closure.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, TS)]
pub enum ClosureWord {
    /// Corners are still to come.
    #[serde(rename = "open")]
    Open,
    /// Both sums within tolerance.
    #[serde(rename = "closes")]
    Closes,
    /// The turns close, the legs do not.
    #[serde(rename = "gap")]
    Gap,
    /// A leg was worked out: that is no check.
    #[serde(rename = "not checked")]
    NotChecked,
}

/// A reading that the others speak against.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, TS)]
pub struct SuspectView {
    /// `leg 2`.
    pub thing: String,
    /// "Leg 2": the name of its button.
    pub title: String,
    /// "swapped digits? If so it would have been 42 ft."
    pub why: Sentence,
}
