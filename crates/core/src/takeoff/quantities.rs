//! The shapes of a takeoff. A number's unit stands in its name: `_in` inches, `_ft` feet, `_lb`
//! pounds, `_sqin` square inches, `_percent` per cent.

use super::{Cause, OrderItem, Pack, Unit};
use crate::units::Area;
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
    pub cautions: Vec<super::TakeoffCaution>,
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
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct NotShingled {
    /// Its index in the roof.
    #[serde(skip)]
    pub face: usize,
    /// Name of its body.
    pub body: String,
    /// The leg from which it rises.
    pub leg: usize,
    /// Its area.
    pub area: Area,
}

/// What is laid on one face.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Courses {
    /// Its index in the roof.
    #[serde(skip)]
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
    pub run_ft: f64,
    /// Pieces and parts of pieces that lie there in the end.
    pub pieces_laid: u64,
    /// Pieces taken from a pack.
    pub new_pieces: u64,
    /// Off-cuts used again.
    pub reused: u64,
    /// New pieces at their exposure, over the net area, less one.
    pub waste_percent: f64,
}

/// What is laid in all.
#[derive(Clone, Debug, PartialEq, Serialize)]
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
    pub waste_percent: f64,
    /// The same with whole packs.
    pub ordered_waste_percent: f64,
}

/// One line of the order list.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct OrderLine {
    /// What.
    pub item: OrderItem,
    /// How much of it is needed, without the margin.
    pub needed: f64,
    /// In what that is counted.
    pub unit: Unit,
    /// Ordered on top.
    pub margin_percent: f64,
    /// How much a pack holds.
    pub pack_size: f64,
    /// In what it is bought.
    pub pack: Pack,
    /// Whole packs to buy.
    pub packs: u64,
    /// What is over of them.
    pub left_over: f64,
    /// What made the line.
    #[serde(skip)]
    pub because: Vec<Cause>,
}

/// The barrier against ice on one face with an eave.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct IceBarrier {
    /// Its index in the roof.
    #[serde(skip)]
    pub face: usize,
    /// Name of its body.
    pub body: String,
    /// The leg from which it rises.
    pub leg: usize,
    /// How far up the slope it must reach.
    pub up_slope_in: f64,
    /// Courses of it.
    pub courses: u64,
    /// Length of all its courses.
    pub length_ft: f64,
}

/// What is torn off, and how it is hauled. A weight is a mixture over how many layers there are,
/// each a lognormal: 10, 50 and 90 % are its quantiles.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct TearOff {
    /// Mean weight.
    pub mean_lb: f64,
    /// One standard deviation of the weight.
    pub sigma_lb: f64,
    /// One time in ten it is less.
    pub p10_lb: f64,
    /// As often less as more.
    pub p50_lb: f64,
    /// One time in ten it is more.
    pub p90_lb: f64,
    /// What fills a trailer first.
    pub limit: LoadLimit,
    /// Trailers of it at 10 %.
    pub loads_p10: f64,
    /// At 50 %.
    pub loads_p50: f64,
    /// At 90 %.
    pub loads_p90: f64,
    /// Whole loads by weight, at 90 %.
    pub loads_by_payload: u64,
    /// Whole loads by volume, at 90 %.
    pub loads_by_volume: u64,
    /// Loads to plan for: the greater.
    pub loads: u64,
    /// What made it.
    #[serde(skip)]
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
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Ventilation {
    /// Plan area of the bodies, overhangs with it.
    pub plan_area: Area,
    /// Square feet of plan to one of opening.
    pub ratio: f64,
    /// Opening asked for.
    pub required_sqin: f64,
    /// Of that near the ridge.
    pub upper_sqin: f64,
    /// Of that near the eaves.
    pub lower_sqin: f64,
    /// What ridge vents give.
    pub ridge_vent_sqin: f64,
    /// What lacks near the ridge.
    pub upper_short_sqin: f64,
    /// What made it.
    #[serde(skip)]
    pub because: Vec<Cause>,
}

/// Hours of work.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct LaborHours {
    /// Laying.
    pub lay_hours: f64,
    /// Stripping.
    pub strip_hours: f64,
    /// What made the hours of laying.
    #[serde(skip)]
    pub lay_because: Vec<Cause>,
    /// What made the hours of stripping.
    #[serde(skip)]
    pub strip_because: Vec<Cause>,
}

/// Squares by the three ways of billing.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Billing {
    /// Net area.
    pub net_squares: f64,
    /// Net area, hips and ridges as a strip a foot wide, eaves as one course more.
    pub accessory_squares: f64,
    /// Packs that are ordered, at their exposure.
    pub ordered_squares: f64,
    /// What made them.
    #[serde(skip)]
    pub because: Vec<Cause>,
}
