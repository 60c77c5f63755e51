//! Amounts of goods, each in the unit in which it is counted.

use crate::units::measure::Piece;
use crate::units::{Area, Length, Measure, Weight};
use serde::Serialize;

/// An amount of goods: what a line of the order list needs, what one pack holds.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Quantity {
    /// So many pieces; a pack may hold a part of one.
    Pieces(Measure<Piece>),
    /// A length of goods that run along edges.
    Length(Length),
    /// An area of goods that cover faces.
    Area(Area),
    /// A weight of nails.
    Weight(Weight),
}

/// The unit of a [`Quantity`], as results and papers write it.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
pub enum Unit {
    /// Pieces.
    #[serde(rename = "piece")]
    Piece,
    /// Feet.
    #[serde(rename = "ft")]
    Feet,
    /// Square feet.
    #[serde(rename = "sq ft")]
    SquareFeet,
    /// Pounds.
    #[serde(rename = "lb")]
    Pounds,
}

impl Unit {
    /// Returns its name in results: `sq ft`.
    #[must_use]
    pub fn name(self) -> &'static str {
        match self {
            Unit::Piece => "piece",
            Unit::Feet => "ft",
            Unit::SquareFeet => "sq ft",
            Unit::Pounds => "lb",
        }
    }

    /// Returns an amount in this unit.
    #[must_use]
    pub const fn quantity(self, amount: f64) -> Quantity {
        match self {
            Unit::Piece => Quantity::Pieces(Measure::new(amount)),
            Unit::Feet => Quantity::Length(Length::feet(amount)),
            Unit::SquareFeet => Quantity::Area(Area::square_feet(amount)),
            Unit::Pounds => Quantity::Weight(Weight::pounds(amount)),
        }
    }
}

impl Quantity {
    /// Returns the unit in which it is counted.
    #[must_use]
    pub const fn unit(self) -> Unit {
        match self {
            Quantity::Pieces(_) => Unit::Piece,
            Quantity::Length(_) => Unit::Feet,
            Quantity::Area(_) => Unit::SquareFeet,
            Quantity::Weight(_) => Unit::Pounds,
        }
    }

    /// Returns the amount in its own unit: pieces, feet, square feet or pounds.
    #[must_use]
    pub const fn amount(self) -> f64 {
        match self {
            Quantity::Pieces(pieces) => pieces.value(),
            Quantity::Length(length) => length.in_feet(),
            Quantity::Area(area) => area.in_square_feet(),
            Quantity::Weight(weight) => weight.in_pounds(),
        }
    }
}
