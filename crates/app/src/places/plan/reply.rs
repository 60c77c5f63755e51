//! What the plan answers.

use crate::parts::reply::{AskView, ChoiceView, Figure, SizeView, ThingView};
use crate::places::plan::solid_reply::SolidView;
use crate::sentence::Sentence;
use eavebook_core::book::kinds::EndKind;
use serde::{Deserialize, Serialize};
use std::collections::BTreeMap;
use ts_rs::TS;
use uuid::Uuid;

/// A reply of the plan that is not the job.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, TS)]
#[serde(tag = "reply", rename_all = "snake_case")]
pub enum PlanReply {
    /// How still a phone is held.
    Hold(HoldView),
    /// The plan of one job, drawn.
    Plan(Box<PlanDrawn>),
    /// The roof of one job as a solid.
    Solid(Box<SolidView>),
}

/// The plan as a leaf of the screen shows it; the lists beside it hold the same.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, TS)]
pub struct PlanDrawn {
    /// Which job.
    pub job: Uuid,
    /// The text of an SVG element with its title and what it shows in words; none while the line is
    /// open.
    pub svg: Option<String>,
    /// Its height, px of the page.
    pub height: f64,
    /// What a thing of the list of edges is called on it: `leg 2` is `r2a 16' 9", r2b 16' 9"`.
    pub edges: BTreeMap<String, String>,
    /// How many edges and faces had no room for their names.
    pub left_off: u32,
}

/// An item: its state, the sizes asked of it, what can be said of it by one tap.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, TS)]
pub struct ItemView {
    /// `pipe 1`, its state, its sizes as value, all that was noted of it as story.
    #[serde(flatten)]
    pub item: ThingView,
    /// Sizes asked of it, each read on the keypad.
    pub sizes: Vec<SizeView>,
    /// What can be said of it by one tap.
    pub asks: Vec<AskView>,
}

/// The sketch of the outline, in feet: x to the right, y up the sheet; the walker's side is at the
/// foot.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, TS)]
pub struct PlanView {
    /// Every line.
    pub lines: Vec<LineView>,
    /// From the last corner to the start, while open.
    pub to_close: Option<[[f64; 2]; 2]>,
    /// Where the walker stands.
    pub walker: Option<[f64; 2]>,
}

/// One line of the plan.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, TS)]
pub struct LineView {
    /// `leg 4`, `tie 2-5`.
    pub thing: String,
    /// What is drawn.
    pub kind: LineKind,
    /// Ends, feet.
    pub from: [f64; 2],
    /// The other end.
    pub to: [f64; 2],
    /// Its length in words.
    pub label: Option<String>,
    /// Not read: drawn dashed.
    pub worked_out: bool,
    /// The readings speak against it: double line, and the word.
    pub suspect: bool,
    /// The keypad is open for it.
    pub in_hand: bool,
}

/// A kind of line.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, TS)]
#[serde(rename_all = "snake_case")]
pub enum LineKind {
    /// A side of the outline.
    Leg,
    /// A check length between two corners.
    Tie,
}

/// One face.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, TS)]
pub struct FaceView {
    /// `face 2`, its state, its area as value, its pitches as story.
    #[serde(flatten)]
    pub face: ThingView,
    /// The leg from which it rises, from 1.
    pub leg: u32,
    /// Slope, gable or wall; `None` if it was not recorded.
    pub end: Option<EndKind>,
    /// "6 in 12, 26.6°"; `None` without a reading.
    pub pitch: Option<Figure>,
    /// The last slope read at it, as the region `Pitch` shows it.
    pub captured: Option<CapturedView>,
    /// Slopes booked in the job so far: goes with the next one that is captured.
    pub slopes_before: u32,
    /// Faces whose pitch may be taken as the same: (leg, name).
    pub same_as: Vec<(u32, String)>,
    /// What can be added on it.
    pub add: Vec<ChoiceView>,
    /// Sizes read at its edge: its overhang.
    pub sizes: Vec<SizeView>,
    /// What can be said of its edge by one tap.
    pub asks: Vec<AskView>,
    /// What was seen over its leg, beside what is computed.
    pub seen: SeenView,
}

/// What was seen of the roof from a face's leg, beside the computed one.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, TS)]
pub struct SeenView {
    /// What can be said by one tap.
    pub asks: Vec<AskView>,
    /// What comes of what was said, a sentence each.
    pub judged: Vec<Sentence>,
}

/// A slope just read.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, TS)]
pub struct CapturedView {
    /// `26.6°`; of a phone laid both ways the mean.
    pub degrees: String,
    /// "6.0 in 12, near 6 in 12".
    pub in_12: String,
    /// It was a phone laid one way: turned end for end it would show what the phone adds.
    pub one_way: bool,
    /// "The two ways differ by 1.2°: this phone reads 0.6° high, and their mean is free of it."
    pub zero_error: Option<Sentence>,
    /// What a slope marked on a photo is good for; none of a slope read otherwise.
    pub sighted: Option<Sentence>,
    /// As it is spoken: "two six point six degrees".
    pub spoken: String,
}

/// How still a phone is held.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, TS)]
pub struct HoldView {
    /// `26.6°`; `None` without a sample of the tilt.
    pub degrees: Option<String>,
    /// What to do with it.
    pub hold: HoldWord,
    /// The same in words: "Hold still."
    pub words: Sentence,
}

/// How a phone is held.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, TS)]
#[serde(rename_all = "snake_case")]
pub enum HoldWord {
    /// Two seconds are not over.
    Begun,
    /// The looks scatter, or creep.
    Moving,
    /// Still for two seconds: captured without a touch.
    Still,
    /// Exactly level all the time: the sensor does not feel the tilt.
    Nothing,
}

/// One total.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, TS)]
pub struct TotalView {
    /// "Roof area", "Ridge".
    pub name: String,
    /// With its ±.
    pub value: Figure,
    /// What made it: things, in words.
    pub because: Vec<String>,
}
