//! Causes of the core as messages. The core counts legs and corners from 0, messages from 1.

use super::ClosureMessage;
use crate::{Count, Noun};
use eavebook_core::outline::{ClosureWords, GapHint, Lack, Part, Unseen};
use eavebook_core::units::Length;

/// Returns the number of a leg or corner, from 1.
fn number(index: usize) -> u32 {
    u32::try_from(index).unwrap_or(u32::MAX).saturating_add(1)
}

fn numbers(indices: &[usize]) -> Vec<u32> {
    indices.iter().map(|index| number(*index)).collect()
}

impl From<&ClosureWords> for ClosureMessage {
    fn from(closure: &ClosureWords) -> ClosureMessage {
        match *closure {
            ClosureWords::ToClose { along, across } => ClosureMessage::ToClose { along, across },
            ClosureWords::Closes { within_inches } => ClosureMessage::Closes {
                within: Length::inches(f64::from(within_inches)),
            },
            ClosureWords::Gap {
                along,
                across,
                last_leg,
            } => ClosureMessage::Gap {
                along,
                across,
                last_leg,
            },
            ClosureWords::NotChecked {
                worked_out,
                along: None,
                across: None,
            } => ClosureMessage::NotChecked {
                worked_out: Count::new(worked_out, Noun::Leg),
            },
            ClosureWords::NotChecked {
                worked_out,
                along,
                across,
            } => ClosureMessage::NotCheckedAndGap {
                worked_out: Count::new(worked_out, Noun::Leg),
                along,
                across,
            },
        }
    }
}

impl From<&GapHint> for ClosureMessage {
    fn from(hint: &GapHint) -> ClosureMessage {
        match hint {
            GapHint::SwappedDigits { legs } => ClosureMessage::SwappedDigits {
                legs: numbers(legs),
            },
            GapHint::LegMissing { as_long_as } => ClosureMessage::LegMissing {
                as_long_as: numbers(as_long_as),
            },
            GapHint::TurnedWrongWay { legs } => ClosureMessage::TurnedWrongWay {
                legs: numbers(legs),
            },
            GapHint::DroppedTen => ClosureMessage::DroppedTen,
            GapHint::FullTape { length } => ClosureMessage::FullTape { length: *length },
            GapHint::ReadOneAgain { legs } => ClosureMessage::ReadOneAlong {
                legs: numbers(legs),
            },
        }
    }
}

impl From<&Unseen> for ClosureMessage {
    fn from(unseen: &Unseen) -> ClosureMessage {
        match unseen {
            Unseen::PairedSlip { pairs } => ClosureMessage::UnseenPair {
                pairs: pairs.iter().map(|pair| pair.map(number)).collect(),
            },
            Unseen::Tape => ClosureMessage::UnseenTape,
            Unseen::Overhang => ClosureMessage::UnseenOverhang,
            Unseen::OutOfSquare => ClosureMessage::UnseenSquare,
        }
    }
}

impl From<&Lack> for ClosureMessage {
    fn from(lack: &Lack) -> ClosureMessage {
        ClosureMessage::Lacking {
            way: lack.way,
            side: lack.side,
            legs: numbers(&lack.legs),
            readings: u32::try_from(lack.readings).unwrap_or(u32::MAX),
            overall: lack.overall.map(|(from, to, _)| [number(from), number(to)]),
        }
    }
}

impl From<&Part> for ClosureMessage {
    fn from(part: &Part) -> ClosureMessage {
        let [along, across] = part.sum.map(Length::abs);
        match part.corners.as_slice() {
            [first, .., last] => ClosureMessage::Group {
                corners: [number(*first), number(*last)],
                along,
                across,
            },
            [..] => ClosureMessage::LooseCorner {
                corner: number(part.corners.first().copied().unwrap_or_default()),
            },
        }
    }
}
