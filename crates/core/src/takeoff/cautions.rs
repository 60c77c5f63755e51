//! What to look at before a takeoff is used.

use std::fmt;

/// Something to look at. Its `Display` is a sentence; [`TakeoffCaution::code`] names the kind.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum TakeoffCaution {
    /// Rates were not given.
    DemoRates,
    /// A code profile was not given.
    DemoCode,
    /// A leg whose overhang nobody measured, where ice barrier is counted.
    OverhangNotGiven {
        /// Name of the body.
        body: String,
        /// The leg.
        leg: usize,
    },
    /// Nobody lifted an edge to count the layers.
    LayersNotGiven,
    /// Pieces stacked on a roof, and what a trailer carries.
    Loads,
    /// The code profile was read long ago, or after the day it is held against.
    CodeAge {
        /// In words.
        words: String,
    },
    /// A face is too flat for shingles.
    TooFlat {
        /// Name of the body.
        body: String,
        /// The leg.
        leg: usize,
    },
}

impl TakeoffCaution {
    /// A word for the kind of caution, by which a program or another language finds its own.
    #[must_use]
    pub fn code(&self) -> &'static str {
        match self {
            TakeoffCaution::DemoRates => "demo_rates",
            TakeoffCaution::DemoCode => "demo_code",
            TakeoffCaution::OverhangNotGiven { .. } => "overhang_not_given",
            TakeoffCaution::LayersNotGiven => "layers_not_given",
            TakeoffCaution::Loads => "loads",
            TakeoffCaution::CodeAge { .. } => "code_age",
            TakeoffCaution::TooFlat { .. } => "too_flat",
        }
    }
}

impl fmt::Display for TakeoffCaution {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            TakeoffCaution::DemoRates => f.write_str(
                "The rates are the pretend ones that come with the program: every figure is invented. Give your own before anybody sees a price.",
            ),
            TakeoffCaution::DemoCode => f.write_str(
                "The code profile is the pretend one that comes with the program. Ask the permit office which text is in force, and write down what it says.",
            ),
            TakeoffCaution::OverhangNotGiven { body, leg } => write!(
                f,
                "The overhang at leg {leg} of {body} was not given: the ice barrier there is counted with the one of the rates. Measure it.",
            ),
            TakeoffCaution::LayersNotGiven => f.write_str(
                "How many layers lie there was not given: weight, loads and hours of stripping run over one, two and three. Lift an edge and count them.",
            ),
            TakeoffCaution::Loads => f.write_str(
                "Weights are estimates. What a trailer may carry comes from a scale, never from a plate; bundles stacked on a roof load it in one place: whether it bears them is a qualified person's word.",
            ),
            TakeoffCaution::CodeAge { words } => f.write_str(words),
            TakeoffCaution::TooFlat { body, leg } => write!(
                f,
                "The face over leg {leg} of {body} is too flat for shingles by the code profile: its covering is not counted. Ask what goes there.",
            ),
        }
    }
}
