//! What a firm says of weights, hours, tax and profit.

use super::text;
use crate::units::measure::{
    Chance, CubicYard, Factor, Hour, Percent, PoundPerCubicYard, PoundPerSquareFoot,
};
use crate::units::{Length, Measure, Money, Pitch, Weight};
use rust_decimal::Decimal;
use serde::{Deserialize, Serialize};
use std::collections::BTreeMap;

/// Least, likeliest and most.
pub type Triangle<U> = [Measure<U>; 3];

/// Weights of what is torn off.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct TearOffRates {
    /// Chance of one, two, three ... layers, where nobody counted them.
    pub layer_chance: Vec<Measure<Chance>>,
    /// Mass that a worn covering has lost.
    pub granule_loss_percent: Triangle<Percent>,
    /// More than this cannot have been lost.
    pub granule_ceiling_percent: Measure<Percent>,
    /// Water in it.
    pub wet_percent: Triangle<Percent>,
    /// Felt under it.
    pub felt_psf: Triangle<PoundPerSquareFoot>,
    /// The deck, where it goes too.
    pub deck_psf: Triangle<PoundPerSquareFoot>,
    /// Whether the deck goes too.
    pub remove_deck: bool,
    /// One layer of covering, by what it is; what is not listed weighs as `other`.
    pub covering_psf: BTreeMap<String, Triangle<PoundPerSquareFoot>>,
}

/// What hauls the tear-off.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Trailer {
    /// What it may carry: from a scale, never from a plate.
    pub payload_lb: Weight,
    /// What it holds.
    pub volume_cuyd: Measure<CubicYard>,
    /// Loose covering.
    pub density_lb_per_cuyd: Measure<PoundPerCubicYard>,
}

/// Hours of work.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Labor {
    /// An hour.
    #[serde(with = "text::price")]
    pub hour_price: Option<Money>,
    /// To lay a square.
    pub lay_hours: Measure<Hour>,
    /// To strip a square of one layer.
    pub strip_hours: Measure<Hour>,
    /// Rows of pitch (rise in 12) from which a factor holds, and the factor.
    pub steepness: Vec<(Pitch, Measure<Factor>)>,
    /// Rows of eave height (feet) from which a factor holds, and the factor.
    pub height: Vec<(Length, Measure<Factor>)>,
    /// Factor of stripping by the deck below; what is not listed counts as `other`.
    pub strip_deck: BTreeMap<String, Measure<Factor>>,
}

/// Tax, profit, disposal and the way of billing.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Pricing {
    /// On materials.
    #[serde(with = "text::percent")]
    pub tax_percent: Decimal,
    /// What the profit is a share of.
    pub method: ProfitMethod,
    /// The profit.
    #[serde(with = "text::percent")]
    pub profit_percent: Decimal,
    /// Dumping a ton.
    #[serde(with = "text::price")]
    pub tip_per_ton: Option<Money>,
    /// Hauling a load.
    #[serde(with = "text::price")]
    pub trip: Option<Money>,
    /// Amounts that are in every price, by name.
    #[serde(with = "text::fixed")]
    pub fixed: Vec<(String, Option<Money>)>,
    /// What is billed.
    pub billing: BillingBy,
    /// A square, for the two ways that bill by the square.
    #[serde(with = "text::price")]
    pub square_price: Option<Money>,
}

/// What the profit is a share of.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "lowercase")]
pub enum ProfitMethod {
    /// Of the price.
    Margin,
    /// Of the cost.
    Markup,
}

/// What is billed.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub enum BillingBy {
    /// Squares of net area at one price.
    #[serde(rename = "net area")]
    NetArea,
    /// Squares of net area with hips, ridges and eaves as area, at one price.
    #[serde(rename = "net and accessories")]
    NetAndAccessories,
    /// What is ordered and done, with profit.
    #[serde(rename = "ordered packs")]
    OrderedPacks,
}
