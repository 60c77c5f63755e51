use super::ClosureMessage;
use crate::{En, Format};
use eavebook_core::outline::{Checked, LastLeg, Miss, Sense, Side, SlipKind, Way};
use eavebook_core::units::Length;

pub(super) fn text(message: &ClosureMessage, f: &En) -> String {
    match message {
        ClosureMessage::NoLegs => "No leg is read yet. Start at any outside corner.".to_owned(),
        ClosureMessage::ToClose { along, across } => format!(
            "To close: {} along, {} across.",
            left(*along, f),
            left(*across, f)
        ),
        ClosureMessage::Closes { within } => format!("Closes within {}.", f.length(*within)),
        ClosureMessage::Gap {
            along,
            across,
            last_leg,
        } => match last_leg {
            LastLeg::Known => format!("{}.", misses(*along, *across, f)),
            LastLeg::Perhaps => format!(
                "If this was the last leg, it is {}.",
                misses(*along, *across, f)
            ),
        },
        ClosureMessage::NotChecked { worked_out } => worked_out_text(worked_out.n, f),
        ClosureMessage::NotCheckedAndGap {
            worked_out,
            along,
            across,
        } => format!(
            "{} {}.",
            worked_out_text(worked_out.n, f),
            misses(*along, *across, f)
        ),
        ClosureMessage::ReadAgain { things, or_another } => {
            let mut names: Vec<String> = things.iter().map(|thing| f.thing(thing)).collect();
            if *or_another {
                names.push("another".to_owned());
            }
            format!("Read {} again.", f.or(&names))
        }
        ClosureMessage::SwappedDigits { legs } => {
            format!("Swapped digits in {}?", f.or(&leg_names(legs, f)))
        }
        ClosureMessage::LegMissing { as_long_as } => format!(
            "The gap is as long as {}. Is a leg missing, or a corner turned the wrong way?",
            f.or(&leg_names(as_long_as, f))
        ),
        ClosureMessage::TurnedWrongWay { legs } => format!(
            "The gap is twice {}. Does it run the other way?",
            f.or(&leg_names(legs, f))
        ),
        ClosureMessage::DroppedTen => "Ten feet dropped or added?".to_owned(),
        ClosureMessage::FullTape { length } => {
            format!("A full tape of {} forgotten?", f.length(*length))
        }
        ClosureMessage::ReadOneAlong { legs } => match legs.as_slice() {
            [] => "Read a leg along the gap again.".to_owned(),
            [..] => format!("Read {} again.", f.or(&leg_names(legs, f))),
        },
        ClosureMessage::UnseenPair { pairs } => unseen_pair(pairs),
        ClosureMessage::UnseenTape => {
            "Closing does not show a wrong unit or a stretched tape on every reading.".to_owned()
        }
        ClosureMessage::UnseenOverhang => {
            "Closing does not show an overhang left out all round.".to_owned()
        }
        ClosureMessage::UnseenSquare => "Closing does not show walls out of square.".to_owned(),
        ClosureMessage::Slip { kind, likely } => match likely {
            None => slip(*kind).to_owned(),
            Some(likely) => format!("{} If so, it was {}.", slip(*kind), f.length(*likely)),
        },
        ClosureMessage::Lacking {
            way,
            side,
            legs,
            readings,
            overall,
        } => lacking((*way, *side), legs, *readings, *overall, f),
        ClosureMessage::Group {
            corners: [first, last],
            along,
            across,
        } => format!(
            "Corners {first} to {last} are fixed to each other only: {} along, {} across.",
            f.length(*along),
            f.length(*across)
        ),
        ClosureMessage::LooseCorner { corner } => {
            format!("Corner {corner} is not fixed to any other corner.")
        }
        ClosureMessage::CheckedBy { checked } => match checked {
            Checked::Nothing => "No other reading checks this one.",
            Checked::Weakly => "The other readings check this one weakly.",
            Checked::Well => "The other readings check this one.",
        }
        .to_owned(),
    }
}

fn left(length: Option<Length>, f: &En) -> String {
    length.map_or_else(|| "an unread length".to_owned(), |length| f.length(length))
}

fn misses(along: Option<Miss>, across: Option<Miss>, f: &En) -> String {
    let part = |miss: Miss| {
        let sense = match miss.sense {
            Sense::Short => "short",
            Sense::Long => "long",
        };
        format!("{} {sense}", f.length(miss.by))
    };
    match (along, across) {
        (Some(along), Some(across)) => {
            format!(
                "{} along the front and {} across it",
                part(along),
                part(across)
            )
        }
        (Some(along), None) => format!("{} along the front", part(along)),
        (None, Some(across)) => format!("{} across the front", part(across)),
        (None, None) => "within the tolerance".to_owned(),
    }
}

fn worked_out_text(legs: u64, f: &En) -> String {
    if legs == 1 {
        "Not checked: 1 leg is worked out from the others.".to_owned()
    } else {
        format!(
            "Not checked: {} legs are worked out from the others.",
            f.number(legs as f64, 0)
        )
    }
}

fn leg_names(legs: &[u32], f: &En) -> Vec<String> {
    legs.iter().map(|leg| f.leg(*leg)).collect()
}

fn unseen_pair(pairs: &[[u32; 2]]) -> String {
    let of_pair = match pairs {
        [] => return "Closing does not show the same slip on two legs of a pair.".to_owned(),
        [[a, b]] => format!("legs {a} and {b}"),
        [[a, b], [c, d]] => format!("legs {a} and {b}, or {c} and {d}"),
        [[a, b], [c, d], ..] => format!("legs {a} and {b}, {c} and {d}, or others"),
    };
    format!("Closing does not show the same slip on both legs of a pair ({of_pair}).")
}

fn slip(kind: SlipKind) -> &'static str {
    match kind {
        SlipKind::Tens => "A tens digit wrong?",
        SlipKind::OneFoot => "A foot more or less?",
        SlipKind::Transposed => "Swapped digits?",
        SlipKind::InchesForTenths => "Tenths taken for inches?",
        SlipKind::Overhang => "An overhang left out?",
        SlipKind::Reversed => "The tape read from its other end?",
        SlipKind::Other => "Something else?",
    }
}

fn lacking(
    (way, side): (Way, Option<Side>),
    legs: &[u32],
    readings: u32,
    overall: Option<[u32; 2]>,
    f: &En,
) -> String {
    let wing = match side {
        None => "the house",
        Some(Side::Front) => "the front wing",
        Some(Side::Back) => "the back wing",
        Some(Side::Left) => "the left wing",
        Some(Side::Right) => "the right wing",
    };
    let unknown = match way {
        Way::Wide => format!("The width of {wing} is not known."),
        Way::Deep => format!("The depth of {wing} is not known."),
        Way::Slanting => format!("The slanting legs of {wing} are not known."),
    };
    let mut read = if readings == 1 {
        f.or(&leg_names(legs, f))
    } else {
        let names: Vec<String> = legs.iter().map(u32::to_string).collect();
        format!("{readings} of legs {}", f.and(&names))
    };
    if let Some([from, to]) = overall {
        read.push_str(&format!(
            ", or the overall from corner {from} to corner {to}"
        ));
    }
    format!("{unknown} Read {read}.")
}
