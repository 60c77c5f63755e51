//! The shapes of a price.

use crate::takeoff::{Cause, OrderItem, Pack, Ranged, Unlisted};
use crate::units::measure::SquareInch;
use crate::units::{Area, Measure, Money};
use rust_decimal::Decimal;
use serde::{Serialize, Serializer};
use std::fmt;

/// A price with its lines.
#[derive(Clone, Debug, PartialEq)]
pub struct Price {
    /// Every line, blank ones too.
    pub lines: Vec<PriceLine>,
    /// Sum of the lines of materials.
    pub materials: Money,
    /// Sum of the lines of labour.
    pub labor: Money,
    /// Sum of the lines of disposal.
    pub disposal: Money,
    /// Sum of the allowances, for what nobody could see.
    pub allowances: Money,
    /// Sum of the fixed amounts.
    pub fixed: Money,
    /// Tax on materials.
    pub tax: Money,
    /// What the job costs the firm.
    pub cost: Money,
    /// The total less the cost.
    pub profit: Money,
    /// What the customer pays.
    pub total: Money,
    /// The total if the roof is as small as it is one time in ten.
    pub low: Money,
    /// The total if the roof is as large as it is one time in ten.
    pub high: Money,
    /// What has work and no price, so that the total is without it.
    pub not_priced: Vec<NotPriced>,
    /// What nobody could know, and the totals it would come to; `low` and `high` are without it.
    pub unknowns: Vec<Unknown>,
    /// What made the total: its lines, tax, profit and way of billing.
    pub because: Vec<Cause>,
}

/// One line of a price.
#[derive(Clone, Debug, PartialEq)]
pub struct PriceLine {
    /// In which sum it stands.
    pub part: Part,
    /// What.
    pub item: PriceItem,
    /// How many of its unit.
    pub quantity: Decimal,
    /// In what it is counted.
    pub unit: PriceUnit,
    /// One of it; none: the price was left blank and the line is not priced.
    pub unit_price: Option<Money>,
    /// Quantity times unit price, half a cent up; none where there is no unit price.
    pub amount: Option<Money>,
    /// What made the line.
    pub because: Vec<Cause>,
}

/// In which sum a line stands.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize)]
#[serde(rename_all = "lowercase")]
pub enum Part {
    /// Goods.
    Materials,
    /// Hours.
    #[serde(rename = "labour")]
    Labor,
    /// Dumping and hauling.
    Disposal,
    /// For what nobody could see.
    Allowances,
    /// In every price.
    Fixed,
}

/// What a line of a price is for.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum PriceItem {
    /// A line of the order list.
    Ordered(OrderItem),
    /// Laying sheets of deck.
    DeckSheetLabor,
    /// Laying.
    Lay,
    /// Stripping.
    Strip,
    /// Dumping.
    Tip,
    /// Hauling.
    Trip,
    /// A fixed amount, by its name in the rates.
    Fixed(String),
}

impl fmt::Display for PriceItem {
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        out.write_str(match self {
            PriceItem::Ordered(item) => return item.fmt(out),
            PriceItem::DeckSheetLabor => "deck sheet labour",
            PriceItem::Lay => "lay",
            PriceItem::Strip => "strip",
            PriceItem::Tip => "tip",
            PriceItem::Trip => "trip",
            PriceItem::Fixed(name) => name,
        })
    }
}

impl Serialize for PriceItem {
    fn serialize<S: Serializer>(&self, into: S) -> Result<S::Ok, S::Error> {
        into.collect_str(self)
    }
}

/// In what a line of a price is counted.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "lowercase")]
pub enum PriceUnit {
    /// Hours.
    Hour,
    /// Tons of 2,000 lb.
    Ton,
    /// Loads.
    Load,
    /// Once.
    Each,
    /// As it is bought.
    #[serde(untagged)]
    Bought(Pack),
}

impl PriceUnit {
    /// As it is written: `roll`, `hour`.
    #[must_use]
    pub fn name(self) -> &'static str {
        match self {
            PriceUnit::Bought(pack) => pack.name(),
            PriceUnit::Hour => "hour",
            PriceUnit::Ton => "ton",
            PriceUnit::Load => "load",
            PriceUnit::Each => "each",
        }
    }
}

/// Something that has work and no price.
#[derive(Clone, Debug, PartialEq)]
pub enum NotPriced {
    /// A line whose price was left blank.
    Line {
        /// Its index among the lines.
        line: usize,
        /// Its item.
        item: PriceItem,
    },
    /// The price of a square was left blank, and squares are what is billed.
    Square,
    /// A face too flat for shingles, whose covering nobody priced.
    TooFlat {
        /// Name of its body.
        body: String,
        /// The leg from which it rises.
        leg: usize,
        /// Its area.
        area: Area,
    },
    /// Vents near the ridge that the code profile asks for and no line gives.
    VentShort {
        /// What lacks, square inches.
        area: Measure<SquareInch>,
    },
    /// Something that is counted and for which the rates have no line.
    Unlisted(Unlisted),
}

impl NotPriced {
    /// A word for the kind, by which a program or another language finds its own.
    #[must_use]
    pub fn code(&self) -> &'static str {
        match self {
            NotPriced::Line { .. } => "blank_price",
            NotPriced::Square => "blank_square_price",
            NotPriced::TooFlat { .. } => "too_flat",
            NotPriced::VentShort { .. } => "vent_short",
            NotPriced::Unlisted(Unlisted::Saddle { .. }) => "saddle",
            NotPriced::Unlisted(Unlisted::Penetrations { .. }) => "penetration",
        }
    }
}

impl fmt::Display for NotPriced {
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            NotPriced::Line { item, .. } => {
                write!(out, "{item}: its price is blank in the rates. Fill it in.")
            }
            NotPriced::Square => out.write_str(
                "squares: the price of a square is blank in the rates, and squares are billed. Fill it in.",
            ),
            NotPriced::TooFlat { body, leg, area } => write!(
                out,
                "{} over leg {leg} of {body}, too flat for shingles: price what goes there.",
                area.words()
            ),
            NotPriced::VentShort { area } => write!(
                out,
                "{:.0} sq in of vents near the ridge, which the code profile asks for beyond the ridge vent: price them.",
                area.value()
            ),
            NotPriced::Unlisted(Unlisted::Saddle { .. }) => out.write_str(
                "a saddle behind a chimney over 30 in wide: price it.",
            ),
            NotPriced::Unlisted(Unlisted::Penetrations { what, penetrations }) => {
                let (s, them) = match penetrations.len() {
                    1 => ("", "it"),
                    _ => ("s", "them"),
                };
                write!(
                    out,
                    "{} {what}{s}, counted and without a line in the rates: price {them}.",
                    penetrations.len()
                )
            }
        }
    }
}

/// Something nobody could know, and the totals it would come to.
#[derive(Clone, Debug, PartialEq)]
pub struct Unknown {
    /// What.
    pub of: Ranged,
    /// The total at its lower end.
    pub low: Money,
    /// The total at its upper end.
    pub high: Money,
}

impl Unknown {
    /// What, in a word.
    #[must_use]
    pub fn name(&self) -> &'static str {
        match self.of {
            Ranged::Area => "area",
            Ranged::Layers => "layers",
            Ranged::Deck => "deck",
        }
    }

    /// Why it is not known, and how it gets known.
    #[must_use]
    pub fn words(&self) -> &'static str {
        match self.of {
            Ranged::Area => "the roof is as small or as large as it is one time in ten",
            Ranged::Layers => {
                "nobody counted the layers: lift an edge, and one of the two totals falls away"
            }
            Ranged::Deck => {
                "nobody saw the deck: sheets at the lower total, planks that want sheets over all of them at the upper"
            }
        }
    }
}
