//! How well a slope is known: at how many places it was read, and whether they agree.

use super::standing::{Standing, State};
use crate::book::fold::BookedPitch;
use crate::book::kinds::{EndKind, PitchRead, Thing};
use crate::book::names::end_of;
use crate::pitch::{SettledPitch, SettledRise};
use crate::units::Pitch;

/// Two readings of a slope that differ by no more than this agree: the odd place on a roof is the
/// larger doubt (our judgement).
const SLOPES_AGREE_DEG: f64 = 1.5;

impl<'a> Standing<'a> {
    /// Slopes booked at a leg, from 1, and in force.
    #[must_use]
    pub fn slopes_in_force(&self, leg: u32) -> Vec<&'a BookedPitch> {
        let here = self.book.pitches.iter().filter(|pitch| pitch.leg == leg);
        here.filter(|pitch| pitch.struck.is_none()).collect()
    }

    /// The slope over a leg, from 1, as it was settled; none where there is none, or several.
    #[must_use]
    pub fn settled_slope(&self, leg: u32) -> Option<&'a SettledPitch> {
        let rises = &self.bodies.first()?.rises;
        match rises.get((leg as usize).checked_sub(1)?)? {
            SettledRise::Slope(pitch) => Some(pitch),
            SettledRise::Unknown
            | SettledRise::Bands(_)
            | SettledRise::Gable
            | SettledRise::Wall => None,
        }
    }

    /// How well the slope over a leg is known, from 1.
    #[must_use]
    pub fn slope_state(&self, leg: u32) -> State {
        state(self, leg)
    }
}

fn state(standing: &Standing, leg: u32) -> State {
    if end_of(standing.book, leg) != EndKind::Sloped {
        // What rises there was seen, and has no figure but that of its leg.
        return standing.state(&Thing::Leg { leg });
    }
    let in_force = standing.slopes_in_force(leg);
    let not_got = matches!(
        in_force.last().map(|pitch| &pitch.read),
        Some(PitchRead::NotGot)
    );
    let told = in_force
        .iter()
        .any(|pitch| matches!(pitch.read, PitchRead::Number { .. }));
    // A phone both ways round is one position: its mean is free of the phone's zero error.
    let positions = positions(&in_force);
    let least = positions.iter().copied().fold(f64::INFINITY, f64::min);
    let most = positions.iter().copied().fold(f64::NEG_INFINITY, f64::max);
    let state = match positions.len() {
        0 if not_got => State::CannotGet,
        0 if told => State::ReadOnce,
        0 if standing.settled_slope(leg).is_some() => State::WorkedOut,
        0 => State::NotLooked,
        1 => State::ReadOnce,
        _ if most - least > SLOPES_AGREE_DEG => State::Suspect,
        _ if standing.has_photo(&Thing::Slope { leg }) => State::Proved,
        _ => State::Agreed,
    };
    standing.at_desk(state, in_force.iter().map(|pitch| pitch.entry))
}

/// Degrees of a slope that was read on the roof; none where it was told or taken over.
#[must_use]
pub fn degrees(read: &PitchRead) -> Option<f64> {
    match read {
        PitchRead::Phone { degrees, .. } | PitchRead::Sighted { degrees, .. } => Some(*degrees),
        PitchRead::LevelAndTape { run_in, rise_in } => Some(
            Pitch::rise_in_12(12.0 * rise_in / run_in)
                .angle()
                .in_degrees(),
        ),
        PitchRead::Number { .. } | PitchRead::SameAs { .. } | PitchRead::NotGot => None,
    }
}

/// Degrees of each position that was read, a forward and the next reversed reading as their mean.
#[must_use]
pub fn positions(pitches: &[&BookedPitch]) -> Vec<f64> {
    let mut values = Vec::new();
    let mut forward: Option<f64> = None;
    for pitch in pitches {
        match &pitch.read {
            PitchRead::Phone {
                degrees,
                reversed: false,
            } => {
                values.extend(forward.replace(*degrees));
            }
            PitchRead::Phone {
                degrees,
                reversed: true,
            } => {
                let first = forward.take();
                values.push(first.map_or(*degrees, |first| (first + degrees) / 2.0));
            }
            PitchRead::Number { .. }
            | PitchRead::LevelAndTape { .. }
            | PitchRead::Sighted { .. }
            | PitchRead::SameAs { .. }
            | PitchRead::NotGot => values.extend(degrees(&pitch.read)),
        }
    }
    values.extend(forward);
    values
}
