//! What to look at before a takeoff is used.

use chrono::{Datelike, NaiveDate};
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
    /// The code profile was read over a year before the day it is held against.
    OldCode {
        /// The day on which it was read.
        read: NaiveDate,
        /// The day against which it is old.
        on: NaiveDate,
    },
    /// The code profile was read after the day it is held against.
    CodeReadLater {
        /// The day on which it was read.
        read: NaiveDate,
        /// The day it is held against.
        on: NaiveDate,
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
            TakeoffCaution::OldCode { .. } => "old_code",
            TakeoffCaution::CodeReadLater { .. } => "code_read_later",
            TakeoffCaution::TooFlat { .. } => "too_flat",
        }
    }
}

impl TakeoffCaution {
    /// What the age of a code profile says, held against a day.
    #[must_use]
    pub fn age(read: NaiveDate, on: NaiveDate) -> Option<TakeoffCaution> {
        if read > on {
            return Some(TakeoffCaution::CodeReadLater { read, on });
        }
        (whole_months(read, on) >= 12).then_some(TakeoffCaution::OldCode { read, on })
    }
}

/// Returns the whole months from one day to a later one; 0 if the other is earlier.
#[must_use]
pub fn whole_months(from: NaiveDate, to: NaiveDate) -> u32 {
    let months = |day: NaiveDate| 12 * day.year() + day.month0().cast_signed();
    let whole = months(to) - months(from) - i32::from(to.day() < from.day());
    whole.max(0).unsigned_abs()
}

/// `2 years and 6 months`.
fn age_words(from: NaiveDate, to: NaiveDate) -> String {
    let months = whole_months(from, to);
    let said = |count: u32, one: &str| match count {
        1 => format!("1 {one}"),
        count => format!("{count} {one}s"),
    };
    match (months / 12, months % 12) {
        (0, months) => said(months, "month"),
        (years, 0) => said(years, "year"),
        (years, months) => format!("{} and {}", said(years, "year"), said(months, "month")),
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
            TakeoffCaution::OldCode { read, on } => write!(
                f,
                "The code profile was read on {read}, {} before {on}; rates of that age are as old. Ask the permit office which text is in force, and look at the prices again.",
                age_words(*read, *on)
            ),
            TakeoffCaution::CodeReadLater { read, on } => write!(
                f,
                "The code profile was read on {read}, after {on}: look which text was in force on that day."
            ),
            TakeoffCaution::TooFlat { body, leg } => write!(
                f,
                "The face over leg {leg} of {body} is too flat for shingles by the code profile: its covering is not counted. Ask what goes there.",
            ),
        }
    }
}
