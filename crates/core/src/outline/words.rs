//! What is said of a closure: typed, so that another language can say it too; `Display` is English.

use crate::units::Length;
use std::fmt::{self, Display, Formatter};

/// A closure as a sentence.
#[derive(Clone, Debug, PartialEq)]
pub enum ClosureWords {
    /// Corners are still to come: what is left to walk.
    ToClose {
        /// Along leg 0; none where a leg in that direction is not read.
        along: Option<Length>,
        /// Square to leg 0; none likewise.
        across: Option<Length>,
    },
    /// Both sums within tolerance.
    Closes {
        /// Whole inches that hold the gap.
        within_inches: u32,
    },
    /// The turns close, the legs do not.
    Gap {
        /// Along the front, where that sum misses.
        along: Option<Miss>,
        /// From the front into the depth, where that sum misses.
        across: Option<Miss>,
        /// Whether the last leg is known to be the last.
        last_leg: LastLeg,
    },
    /// Legs were worked out from the others.
    NotChecked {
        /// How many.
        worked_out: usize,
        /// A sum that misses all the same.
        along: Option<Miss>,
        /// A sum that misses all the same.
        across: Option<Miss>,
    },
}

/// By how much a sum misses.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Miss {
    /// Above 0.
    pub by: Length,
    /// Which way.
    pub sense: Sense,
}

/// Which way a sum misses, seen from the first leg of it: short where the legs that run its way
/// come to less than those that run back.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Sense {
    /// Too little.
    Short,
    /// Too much.
    Long,
}

/// Whether the last leg is known to be the last.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum LastLeg {
    /// The corners say so.
    Known,
    /// It only may be.
    Perhaps,
}

/// What a gap of its size often comes from. Legs are counted from 0, as in the survey.
#[derive(Clone, Debug, PartialEq)]
pub enum GapHint {
    /// Turning the digits of one of these legs would close the sum.
    SwappedDigits {
        /// Which.
        legs: Vec<usize>,
    },
    /// The gap is as long as a leg: one like it may be missing, or turned the wrong way.
    LegMissing {
        /// Legs of that length.
        as_long_as: Vec<usize>,
    },
    /// The gap is twice a leg: it may run the other way.
    TurnedWrongWay {
        /// Which.
        legs: Vec<usize>,
    },
    /// The gap is ten feet.
    DroppedTen,
    /// The gap is a full tape.
    FullTape {
        /// Length of the tape.
        length: Length,
    },
    /// Legs that run along the gap: one of them is to be read again.
    ReadOneAgain {
        /// Which.
        legs: Vec<usize>,
    },
}

/// What a closed sum says nothing about.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Unseen {
    /// The same slip on both legs of a pair.
    PairedSlip {
        /// Pairs of legs that only closing checks, the longest first.
        pairs: Vec<[usize; 2]>,
    },
    /// A short hook, a stretched tape, or one wrong unit on every reading.
    Tape,
    /// An overhang left out all round.
    Overhang,
    /// Walls out of square.
    OutOfSquare,
}

impl Unseen {
    /// Everything.
    #[must_use]
    pub fn all(pairs: Vec<[usize; 2]>) -> Vec<Unseen> {
        vec![
            Unseen::PairedSlip { pairs },
            Unseen::Tape,
            Unseen::Overhang,
            Unseen::OutOfSquare,
        ]
    }

    /// In words, with the first leg counted from this number.
    #[must_use]
    pub fn words(&self, first: usize) -> String {
        let said = match self {
            Unseen::PairedSlip { pairs } => {
                let pair = |[a, b]: &[usize; 2]| format!("{} and {}", a + first, b + first);
                return match pairs.as_slice() {
                    [] => "the same slip on every reading of a pair".to_owned(),
                    [only] => format!("the same slip on both legs of a pair (legs {})", pair(only)),
                    [one, other] => format!(
                        "the same slip on both legs of a pair (legs {}, or {})",
                        pair(one),
                        pair(other)
                    ),
                    [one, other, ..] => format!(
                        "the same slip on both legs of a pair (legs {}, {} or others)",
                        pair(one),
                        pair(other)
                    ),
                };
            }
            Unseen::Tape => "one wrong unit or a stretched tape on every reading",
            Unseen::Overhang => "an overhang left out all round",
            Unseen::OutOfSquare => "walls out of square",
        };
        said.to_owned()
    }
}

impl Display for ClosureWords {
    fn fmt(&self, f: &mut Formatter<'_>) -> fmt::Result {
        match self {
            ClosureWords::ToClose { along, across } => {
                let part = |length: &Option<Length>| match length {
                    Some(length) => feet_and_inches(*length),
                    None => "an unread length".to_owned(),
                };
                write!(
                    f,
                    "To close: {} along, {} across.",
                    part(along),
                    part(across)
                )
            }
            ClosureWords::Closes { within_inches } => {
                write!(f, "Closes within {within_inches} in.")
            }
            ClosureWords::Gap {
                along,
                across,
                last_leg,
            } => {
                let misses = misses(*along, *across);
                match last_leg {
                    LastLeg::Known => write!(f, "{misses}."),
                    LastLeg::Perhaps => write!(f, "If this was the last leg, it is {misses}."),
                }
            }
            ClosureWords::NotChecked {
                worked_out,
                along,
                across,
            } => {
                match worked_out {
                    1 => write!(f, "Not checked: a leg is worked out from the others.")?,
                    n => write!(f, "Not checked: {n} legs are worked out from the others.")?,
                }
                if along.is_some() || across.is_some() {
                    write!(f, " {}.", misses(*along, *across))?;
                }
                Ok(())
            }
        }
    }
}

fn misses(along: Option<Miss>, across: Option<Miss>) -> String {
    let part = |miss: Miss, where_: &str| {
        let sense = match miss.sense {
            Sense::Short => "short",
            Sense::Long => "long",
        };
        format!("{} {sense} {where_}", feet_and_inches(miss.by))
    };
    match (along, across) {
        (Some(along), Some(across)) => format!(
            "{} and {}",
            part(along, "along the front"),
            part(across, "across it")
        ),
        (Some(along), None) => part(along, "along the front"),
        (None, Some(across)) => part(across, "across the front"),
        (None, None) => "within the tolerance".to_owned(),
    }
}

impl Display for GapHint {
    fn fmt(&self, f: &mut Formatter<'_>) -> fmt::Result {
        match self {
            GapHint::SwappedDigits { .. } => write!(f, "Swapped digits?"),
            GapHint::LegMissing { .. } => {
                write!(f, "As long as a leg: one missing, or turned the wrong way?")
            }
            GapHint::TurnedWrongWay { .. } => write!(f, "Twice a leg: turned the wrong way?"),
            GapHint::DroppedTen => write!(f, "Ten feet dropped or added?"),
            GapHint::FullTape { length } => {
                write!(f, "A full tape of {} forgotten?", feet_and_inches(*length))
            }
            GapHint::ReadOneAgain { .. } => write!(f, "Read one of the legs along it again."),
        }
    }
}

impl Display for Unseen {
    fn fmt(&self, f: &mut Formatter<'_>) -> fmt::Result {
        f.write_str(&self.words(0))
    }
}

/// To the whole inch: `18 ft`, `18 ft 2 in`, `2 in`, `0`.
fn feet_and_inches(length: Length) -> String {
    let inches = length.in_inches().abs().round();
    let (feet, rest) = ((inches / 12.0).floor(), inches % 12.0);
    match (feet >= 1.0, rest >= 1.0) {
        (true, true) => format!("{feet:.0} ft {rest:.0} in"),
        (true, false) => format!("{feet:.0} ft"),
        (false, true) => format!("{rest:.0} in"),
        (false, false) => "0".to_owned(),
    }
}
