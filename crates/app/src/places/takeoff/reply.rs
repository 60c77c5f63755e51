//! What a screen is told of a takeoff: every figure in words, and what made it.

use crate::parts::reply::Figure;
use crate::sentence::Sentence;
use serde::{Deserialize, Serialize};
use ts_rs::TS;
use uuid::Uuid;

/// The takeoff of one job.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, TS)]
pub struct TakeoffView {
    /// Of which job.
    pub job: Uuid,
    /// Why there is nothing to take off, where there is not.
    pub lack: Option<LackView>,
    /// What nobody knows, with what it may cost.
    pub not_known: Vec<LackView>,
    /// What has work and no price.
    pub not_priced: Vec<LackView>,
    /// What to look at before any of it is used.
    pub cautions: Vec<Sentence>,
    /// The leaf, part by part.
    pub parts: Vec<TakeoffPart>,
    /// Rates changed for this job.
    pub changed: Vec<RateView>,
}

/// Something that lacks.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, TS)]
pub struct LackView {
    /// A sentence.
    pub words: Sentence,
    /// What it may cost: "$12,803.20 to $14,110.95".
    pub costs: Option<String>,
    /// The thing on the plan whose leaf says it: `layers`, `face 3`.
    pub opens: Option<ThingLink>,
    /// The rate that is blank.
    pub rate: Option<RateView>,
}

/// A thing that a button opens.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize, TS)]
pub struct ThingLink {
    /// `leg 4`.
    pub thing: String,
    /// "Leg 4, back".
    pub title: String,
}

/// One part of the leaf.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, TS)]
pub struct TakeoffPart {
    /// "Order list".
    pub name: String,
    /// What it comes to, in a sentence.
    pub words: Option<Sentence>,
    /// Loads against whole trailers.
    pub loads: Option<LoadBar>,
    /// Its lines.
    pub lines: Vec<TakeoffLine>,
}

/// One line, which opens to what made it.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, TS)]
pub struct TakeoffLine {
    /// Names it within its part: `field`, `materials`.
    pub key: String,
    /// "Starter".
    pub name: String,
    /// "30 packs", "$1,035.00".
    pub value: Figure,
    /// What rounding leaves over: "0.4 pack over".
    pub spare: Option<String>,
    /// "not priced", "billed so".
    pub word: Option<String>,
    /// Where it begins and ends as shares of the whole, where it is a step of the price.
    pub step: Option<[f64; 2]>,
    /// How it was worked out, in words.
    pub formula: String,
    /// Rates it was worked out with.
    pub rates: Vec<RateView>,
    /// Notes of the code profile it was worked out with: "ice barrier, required: yes".
    pub notes: Vec<String>,
    /// Things that made it, each opening its readings.
    pub things: Vec<ThingLink>,
    /// Lines of which it is the sum.
    // Named by hand: asked for what a line is made of, the writer of types would never end.
    #[ts(type = "Array<TakeoffLine>")]
    pub lines: Vec<TakeoffLine>,
}

/// Loads of tear-off beside whole trailers, as shares of the bar.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, TS)]
pub struct LoadBar {
    /// One time in ten it is less; as often less as more; one time in ten it is more.
    pub at: [f64; 3],
    /// Where each whole load ends.
    pub whole: Vec<f64>,
    /// What stands at the bar's end: "2 loads".
    pub end: String,
}

/// One rate of the firm.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, TS)]
pub struct RateView {
    /// The path of its key: `field.price`.
    pub key: String,
    /// "Field, price".
    pub name: String,
    /// As typed; empty where it is blank.
    pub value: String,
    /// The firm's own, where it was changed for this job.
    pub was: Option<String>,
    /// The entry that changed it.
    pub entry: Option<Uuid>,
    /// The words it may be, where it is one of a few.
    pub choices: Vec<String>,
}
