//! What a firm charges, what its goods measure and how it lays them.

use super::text;
use super::work::{Labor, Pricing, TearOffRates, Trailer};
use crate::units::measure::{Inch, Nail, NailPerPound, Percent, Piece, SquareInchPerFoot};
use crate::units::{Area, Length, Measure, Money, Weight};
use serde::{Deserialize, Serialize};
use std::collections::BTreeMap;

/// Everything a takeoff and a price take from the firm, table by table, key for key as the file
/// writes them. The unit of a figure stands in its name: `_in` inches, `_ft` feet, `_sqft` square
/// feet, `_lb` pounds, `_psf` pounds a square foot, `_cuyd` cubic yards, `_percent` per cent.
///
/// A price that is `None` was left blank: what it would price is named as not priced.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Rates {
    /// The pieces that cover the roof.
    pub field: Field,
    /// The strip under the lowest course.
    pub starter: Starter,
    /// Pieces over hips and ridges.
    pub cap: Cap,
    /// Vents along ridges.
    pub ridge_vent: RidgeVent,
    /// Valleys, open over metal or closed.
    pub valley: Valley,
    /// The barrier against ice along eaves.
    pub ice_barrier: IceBarrierRates,
    /// Underlayment.
    pub underlayment: Underlayment,
    /// Metal at eaves and rakes.
    pub edge_metal: EdgeMetal,
    /// Flashing course by course beside a wall or an opening.
    pub step_flashing: StepFlashing,
    /// Flashing before and behind an opening, and under a head wall.
    pub apron_flashing: ApronFlashing,
    /// Flashing at the foot of a side wall.
    pub kick_out: KickOut,
    /// Nails.
    pub nails: Nails,
    /// Boots of pipes, masts and flues.
    pub boots: Boots,
    /// Sheets for the deck.
    pub deck: DeckRates,
    /// Weights of what is torn off.
    pub tear_off: TearOffRates,
    /// What hauls it.
    pub trailer: Trailer,
    /// Hours.
    #[serde(rename = "labour")]
    pub labor: Labor,
    /// Tax, profit, disposal and the way of billing.
    pub price: Pricing,
}

/// The pieces that cover the roof.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Field {
    /// Length of one piece.
    pub piece_in: Measure<Inch>,
    /// Full height of a piece, butt to head.
    pub height_in: Measure<Inch>,
    /// Height of it that shows.
    pub exposure_in: Measure<Inch>,
    /// Pieces in a pack.
    pub per_pack: Measure<Piece>,
    /// Joints of course k start `(k mod steps) * stagger_in` from the anchor.
    pub stagger_in: Measure<Inch>,
    /// Courses after which the bond repeats.
    pub steps: u32,
    /// Side of the chalked bond line.
    pub anchor: Anchor,
    /// How far an off-cut may travel.
    pub pool: Pool,
    /// The shortest off-cut that is kept.
    pub least_off_cut_in: Measure<Inch>,
    /// Openings smaller than this are laid through.
    pub deduct_from_sqft: Area,
    /// Nails a piece.
    pub nails: Measure<Nail>,
    /// Ordered on top.
    pub margin_percent: Measure<Percent>,
    /// A pack.
    #[serde(with = "text::price")]
    pub price: Option<Money>,
}

/// From which side of a face its joints are counted, seen from outside with the eave below.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "lowercase")]
pub enum Anchor {
    /// The left side.
    Left,
    /// The right side.
    Right,
}

/// How far an off-cut may travel.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "lowercase")]
pub enum Pool {
    /// Nowhere: every cut piece is a new one.
    None,
    /// To later courses of its face.
    Face,
    /// To every later course of the roof.
    Roof,
}

/// The strip under the lowest course.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Starter {
    /// Length that a pack covers.
    pub pack_ft: Length,
    /// Whether it runs up the rakes too.
    pub rakes: bool,
    /// Ordered on top.
    pub margin_percent: Measure<Percent>,
    /// A pack.
    #[serde(with = "text::price")]
    pub price: Option<Money>,
}

/// Pieces over hips and ridges.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Cap {
    /// Length of a piece that shows.
    pub exposure_in: Measure<Inch>,
    /// Pieces in a pack.
    pub per_pack: Measure<Piece>,
    /// Nails a piece.
    pub nails: Measure<Nail>,
    /// Ordered on top.
    pub margin_percent: Measure<Percent>,
    /// A pack.
    #[serde(with = "text::price")]
    pub price: Option<Money>,
}

/// Vents along ridges.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields, rename_all = "snake_case")]
pub struct RidgeVent {
    /// Whether ridges are vented.
    #[serde(rename = "use")]
    pub used: bool,
    /// Left uncut at each end of a ridge.
    pub set_back_ft: Length,
    /// Length of a stick.
    pub stick_ft: Length,
    /// Net free area a foot.
    pub nfa_sqin_per_ft: Measure<SquareInchPerFoot>,
    /// Ordered on top.
    pub margin_percent: Measure<Percent>,
    /// A stick.
    #[serde(with = "text::price")]
    pub price: Option<Money>,
}

/// Valleys.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Valley {
    /// How a valley is made.
    pub kind: ValleyKind,
    /// Closed: how far the face of lower slope runs past the line.
    pub past_in: Measure<Inch>,
    /// Metal: added to each valley for trimming both ends.
    pub extra_ft: Length,
    /// Length of a roll of metal.
    pub roll_ft: Length,
    /// Ordered on top.
    pub margin_percent: Measure<Percent>,
    /// A roll.
    #[serde(with = "text::price")]
    pub price: Option<Money>,
}

/// How a valley is made.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub enum ValleyKind {
    /// Both faces stop short of the line, metal between.
    #[serde(rename = "open metal")]
    OpenMetal,
    /// The face of lower slope runs past the line, the other is cut along it.
    #[serde(rename = "closed")]
    Closed,
}

/// The barrier against ice along eaves.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct IceBarrierRates {
    /// Width of a roll.
    pub width_in: Measure<Inch>,
    /// Lap of a course over the one below.
    pub lap_in: Measure<Inch>,
    /// Length of a roll.
    pub roll_ft: Length,
    /// Lap of a roll over the one before.
    pub end_lap_in: Measure<Inch>,
    /// Whether valleys get it too.
    pub valleys: bool,
    /// Used, with a caution, where a leg has no overhang.
    pub overhang_in: Measure<Inch>,
    /// Ordered on top.
    pub margin_percent: Measure<Percent>,
    /// A roll.
    #[serde(with = "text::price")]
    pub price: Option<Money>,
}

/// Underlayment.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Underlayment {
    /// What a roll covers, net of its laps.
    pub roll_sqft: Area,
    /// What it covers half-lapped.
    pub half_lap_sqft: Area,
    /// Ordered on top.
    pub margin_percent: Measure<Percent>,
    /// A roll.
    #[serde(with = "text::price")]
    pub price: Option<Money>,
}

/// Metal at eaves and rakes.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct EdgeMetal {
    /// Length of a stick.
    pub stick_ft: Length,
    /// Lap of a stick over the next.
    pub lap_in: Measure<Inch>,
    /// Ordered on top.
    pub margin_percent: Measure<Percent>,
    /// A stick at an eave.
    #[serde(with = "text::price")]
    pub eave_price: Option<Money>,
    /// A stick at a rake.
    #[serde(with = "text::price")]
    pub rake_price: Option<Money>,
}

/// Flashing course by course beside a wall or an opening.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct StepFlashing {
    /// Ordered on top.
    pub margin_percent: Measure<Percent>,
    /// Pieces in a pack.
    pub per_pack: Measure<Piece>,
    /// A pack.
    #[serde(with = "text::price")]
    pub price: Option<Money>,
}

/// Flashing before and behind an opening, and under a head wall.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct ApronFlashing {
    /// Length of a stick.
    pub stick_ft: Length,
    /// Lap of a stick over the next.
    pub lap_in: Measure<Inch>,
    /// Ordered on top.
    pub margin_percent: Measure<Percent>,
    /// A stick.
    #[serde(with = "text::price")]
    pub price: Option<Money>,
}

/// Flashing at the foot of a side wall.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct KickOut {
    /// A piece.
    #[serde(with = "text::price")]
    pub price: Option<Money>,
}

/// Nails.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Nails {
    /// Nails in a pound.
    pub per_lb: Measure<NailPerPound>,
    /// Pounds in a box.
    pub box_lb: Weight,
    /// A box.
    #[serde(with = "text::price")]
    pub price: Option<Money>,
}

/// Boots by kind, then by size in inches as text; a size not listed is priced at `other`.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Boots {
    /// Of pipes.
    #[serde(with = "text::prices")]
    pub pipe: BTreeMap<String, Option<Money>>,
    /// Of masts: split, since a mast cannot be lifted off.
    #[serde(with = "text::prices")]
    pub mast: BTreeMap<String, Option<Money>>,
    /// Of flues.
    #[serde(with = "text::prices")]
    pub flue: BTreeMap<String, Option<Money>>,
}

/// What a boot goes round.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum BootKind {
    /// A flue.
    Flue,
    /// A mast: its boot is split, since a mast cannot be lifted off.
    Mast,
    /// A vent pipe.
    Pipe,
}

impl BootKind {
    /// Its name in the rates and on the order list.
    #[must_use]
    pub fn name(self) -> &'static str {
        match self {
            BootKind::Flue => "flue",
            BootKind::Mast => "mast",
            BootKind::Pipe => "pipe",
        }
    }
}

impl Boots {
    /// Of one kind, by size.
    #[must_use]
    pub fn table(&self, kind: BootKind) -> &BTreeMap<String, Option<Money>> {
        match kind {
            BootKind::Flue => &self.flue,
            BootKind::Mast => &self.mast,
            BootKind::Pipe => &self.pipe,
        }
    }
}

/// Sheets for the deck.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct DeckRates {
    /// Area of a sheet.
    pub sheet_sqft: Area,
    /// Share of the area of a deck that nobody saw whole.
    pub allowance_percent: Measure<Percent>,
    /// Planks with wider gaps are laid over with sheets.
    pub overlay_over_gap_in: Measure<Inch>,
    /// Ordered on top.
    pub margin_percent: Measure<Percent>,
    /// A sheet.
    #[serde(with = "text::price")]
    pub price: Option<Money>,
    /// Laying a sheet.
    #[serde(with = "text::price")]
    #[serde(rename = "labour_price")]
    pub labor_price: Option<Money>,
}
