//! Figures that stay in the unit in which a file of rates or a supplier writes them.

use super::Length;
use serde::{Deserialize, Serialize};
use std::fmt;
use std::marker::PhantomData;

/// A figure in the unit `U` in which the trade writes it, kept digit for digit.
///
/// A file of rates holds inches, feet and per cents side by side. A figure that is read and written
/// back in its own unit keeps its last digit; one that is turned into feet and back may not.
#[derive(Clone, Copy, PartialEq, PartialOrd, Serialize, Deserialize)]
#[serde(transparent)]
pub struct Measure<U> {
    value: f64,
    #[serde(skip)]
    unit: PhantomData<U>,
}

impl<U> Measure<U> {
    /// From a figure in its unit.
    #[must_use]
    pub const fn new(value: f64) -> Measure<U> {
        let unit = PhantomData;
        Measure { value, unit }
    }

    /// Returns the figure in its unit.
    #[must_use]
    pub const fn value(self) -> f64 {
        self.value
    }
}

impl Measure<Inch> {
    /// Returns the figure as a length.
    #[must_use]
    pub fn length(self) -> Length {
        Length::inches(self.value)
    }
}

impl<U> fmt::Debug for Measure<U> {
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        self.value.fmt(out)
    }
}

/// Lists the units that a [`Measure`] may have.
macro_rules! units {
    ($( $(#[$doc:meta])* $unit:ident ; )+) => {
        $(
            $(#[$doc])*
            #[derive(Clone, Copy, Debug, PartialEq, PartialOrd)]
            pub enum $unit {}
        )+
    };
}

units! {
    /// An inch.
    Inch;
    /// A square inch, as the free area of vents is counted.
    SquareInch;
    /// A square inch of free area in a foot of vent.
    SquareInchPerFoot;
    /// A cubic yard.
    CubicYard;
    /// A pound a square foot.
    PoundPerSquareFoot;
    /// A pound a cubic yard.
    PoundPerCubicYard;
    /// A hundredth part.
    Percent;
    /// The chance of an event, 0 to 1.
    Chance;
    /// A factor without a unit.
    Factor;
    /// Square feet of plan for one square foot of opening.
    PlanPerOpening;
    /// An hour of work.
    Hour;
    /// A load of a trailer.
    Load;
    /// A piece, such as a shingle.
    Piece;
    /// A nail.
    Nail;
    /// A nail in a pound of them.
    NailPerPound;
}
