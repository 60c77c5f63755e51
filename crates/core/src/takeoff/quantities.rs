//! The shapes of a takeoff.

use super::because::Cause;
use super::cautions::TakeoffCaution;
use super::item::{OrderItem, Pack};
use super::quantity::Quantity;
use crate::units::measure::{Hour, Inch, Load, Percent, PlanPerOpening, SquareInch};
use crate::units::{Area, Length, Measure, Weight};
use serde::Serialize;

/// Quantities from a roof.
#[derive(Clone, Debug, PartialEq)]
pub struct Takeoff {
    /// Area that is shingled: faces less the openings that are cut out of them.
    pub net_area: Area,
    /// Faces too flat for shingles.
    pub not_shingled: Vec<NotShingled>,
    /// What is laid, one a shingled face.
    pub courses: Vec<Courses>,
    /// What is laid in all.
    pub laid: Laid,
    /// What to buy, in the order of [`OrderItem`].
    pub order: Vec<OrderLine>,
    /// The barrier against ice, one a face with an eave; empty where none is asked for.
    pub ice_barrier: Vec<IceBarrier>,
    /// What is torn off, and how it is hauled.
    pub tear_off: TearOff,
    /// Air under the roof.
    pub ventilation: Ventilation,
    /// Hours of work.
    pub labor: LaborHours,
    /// Squares by the three ways of billing.
    pub billing: Billing,
    /// What is counted and has no line of its own.
    pub unlisted: Vec<Unlisted>,
    /// Whether the whole deck is laid over with sheets, since nails would miss its planks.
    pub deck_overlay: bool,
    /// What to look at.
    pub cautions: Vec<TakeoffCaution>,
    /// The same takeoff at the ends of what is not known, which has no ranges of its own.
    pub ranges: Vec<Range>,
}

/// Something that is counted and for which the rates have no line.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Unlisted {
    /// A saddle behind a wide chimney.
    Saddle {
        /// Index of the chimney among the penetrations.
        penetration: usize,
    },
    /// Penetrations of one kind.
    Penetrations {
        /// What they are: `box vent`.
        what: &'static str,
        /// Their indices.
        penetrations: Vec<usize>,
    },
}

/// A takeoff at both ends of something that is not known.
#[derive(Clone, Debug, PartialEq)]
pub struct Range {
    /// What is not known.
    pub of: Ranged,
    /// At its lower end.
    pub low: Takeoff,
    /// At its upper end.
    pub high: Takeoff,
}

/// Something that is not known.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Ranged {
    /// The area of the roof, from its 10 to its 90 %.
    Area,
    /// How many layers lie there, from 10 to 90 % of their chances.
    Layers,
    /// What the covering is nailed to: sheets, or planks so far apart that all is laid over.
    Deck,
}

/// A face too flat for shingles: felt and tear-off count it, courses do not.
#[derive(Clone, Debug, PartialEq)]
pub struct NotShingled {
    /// Its index in the roof.
    pub face: usize,
    /// Name of its body.
    pub body: String,
    /// The leg from which it rises.
    pub leg: usize,
    /// Its area.
    pub area: Area,
}

/// What is laid on one face.
#[derive(Clone, Debug, PartialEq)]
pub struct Courses {
    /// Its index in the roof.
    pub face: usize,
    /// Name of its body.
    pub body: String,
    /// The leg from which it rises.
    pub leg: usize,
    /// Its area less the openings that are cut out.
    pub net_area: Area,
    /// Courses up the face.
    pub courses: u64,
    /// Length of all courses, each as far as its pieces reach.
    pub run: Length,
    /// Pieces and parts of pieces that lie there in the end.
    pub pieces_laid: u64,
    /// Pieces taken from a pack.
    pub new_pieces: u64,
    /// Off-cuts used again.
    pub reused: u64,
    /// New pieces at their exposure, over the net area, less one.
    pub waste: Measure<Percent>,
}

/// What is laid in all.
#[derive(Clone, Debug, PartialEq)]
pub struct Laid {
    /// Pieces taken from a pack for courses.
    pub new_pieces: u64,
    /// Pieces that run past closed valleys.
    pub valley_pieces: u64,
    /// Pieces and parts of pieces that lie there in the end.
    pub pieces_laid: u64,
    /// Off-cuts used again.
    pub reused: u64,
    /// Pieces at their exposure over the net area, less one. Starter, cap and metal are not in it.
    pub waste: Measure<Percent>,
    /// The same with whole packs.
    pub ordered_waste: Measure<Percent>,
}

/// One line of the order list.
#[derive(Clone, Debug, PartialEq)]
pub struct OrderLine {
    /// What.
    pub item: OrderItem,
    /// How much of it is needed, without the margin.
    pub needed: Quantity,
    /// Ordered on top.
    pub margin: Measure<Percent>,
    /// How much a pack holds.
    pub pack_size: Quantity,
    /// In what it is bought.
    pub pack: Pack,
    /// Whole packs to buy.
    pub packs: u64,
    /// The rest of the full packs, the margin with it.
    pub spare: Quantity,
    /// What made the line.
    pub because: Vec<Cause>,
}

/// The barrier against ice on one face with an eave.
#[derive(Clone, Debug, PartialEq)]
pub struct IceBarrier {
    /// Its index in the roof.
    pub face: usize,
    /// Name of its body.
    pub body: String,
    /// The leg from which it rises.
    pub leg: usize,
    /// How far up the slope it must reach.
    pub up_slope: Measure<Inch>,
    /// Courses of it.
    pub courses: u64,
    /// Length of all its courses.
    pub length: Length,
}

/// What is torn off, and how it is hauled. A weight is a mixture over how many layers there are,
/// each a lognormal: 10, 50 and 90 % are its quantiles.
#[derive(Clone, Debug, PartialEq)]
pub struct TearOff {
    /// Mean weight.
    pub mean: Weight,
    /// One standard deviation of the weight.
    pub sigma: Weight,
    /// One time in ten it is less.
    pub p10: Weight,
    /// As often less as more.
    pub p50: Weight,
    /// One time in ten it is more.
    pub p90: Weight,
    /// What fills a trailer first.
    pub limit: LoadLimit,
    /// Trailers of it at 10 %.
    pub loads_p10: Measure<Load>,
    /// At 50 %.
    pub loads_p50: Measure<Load>,
    /// At 90 %.
    pub loads_p90: Measure<Load>,
    /// Whole loads by weight, at 90 %.
    pub loads_by_payload: u64,
    /// Whole loads by volume, at 90 %.
    pub loads_by_volume: u64,
    /// Loads to plan for: the greater.
    pub loads: u64,
    /// What made it.
    pub because: Vec<Cause>,
}

/// What fills a trailer first.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "lowercase")]
pub enum LoadLimit {
    /// What it may carry.
    Payload,
    /// What it holds.
    Volume,
}

/// Air under the roof, by the notes that somebody read: never a word of law.
#[derive(Clone, Debug, PartialEq)]
pub struct Ventilation {
    /// Plan area of the bodies, overhangs with it.
    pub plan_area: Area,
    /// Square feet of plan to one of opening.
    pub ratio: Measure<PlanPerOpening>,
    /// Opening asked for.
    pub required: Measure<SquareInch>,
    /// Of that near the ridge.
    pub upper: Measure<SquareInch>,
    /// Of that near the eaves.
    pub lower: Measure<SquareInch>,
    /// What ridge vents give.
    pub ridge_vent: Measure<SquareInch>,
    /// What lacks near the ridge.
    pub upper_short: Measure<SquareInch>,
    /// What made it.
    pub because: Vec<Cause>,
}

/// Hours of work.
#[derive(Clone, Debug, PartialEq)]
pub struct LaborHours {
    /// Laying.
    pub lay_hours: Measure<Hour>,
    /// Stripping.
    pub strip_hours: Measure<Hour>,
    /// What made the hours of laying.
    pub lay_because: Vec<Cause>,
    /// What made the hours of stripping.
    pub strip_because: Vec<Cause>,
}

/// Squares by the three ways of billing.
#[derive(Clone, Debug, PartialEq)]
pub struct Billing {
    /// Net area.
    pub net: Area,
    /// Net area, hips and ridges as a strip a foot wide, eaves as one course more.
    pub net_and_accessories: Area,
    /// Packs that are ordered, at their exposure.
    pub ordered: Area,
    /// What made them.
    pub because: Vec<Cause>,
}
