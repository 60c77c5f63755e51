//! A phone held still on a slope, and the slope that it is booked as.

use crate::answer::Answer;
use crate::open_job::OpenJob;
use crate::places::plan::reply::{HoldView, HoldWord};
use crate::places::plan::request::TiltSample;
use crate::places::plan::slopes;
use crate::refusal::{Refusal, RequestRefusal};
use crate::sentence::sentence;
use eavebook_core::book::kinds::PitchRead;
use eavebook_core::pitch::{Hold, SteadyTilt, TiltReading, hold};
use eavebook_core::units::Angle;
use eavebook_store::Store;
use uuid::Uuid;

/// How still it is held, in words. Nothing is booked.
#[must_use]
pub fn view(looks: &[TiltSample]) -> HoldView {
    let held = weighed(looks);
    let (word, code, en) = match held.map(|held| held.hold) {
        None | Some(Hold::Begun) => (HoldWord::Begun, "hold_begun", "Hold it still."),
        Some(Hold::Moving) => (
            HoldWord::Moving,
            "hold_moving",
            "It moves. Hold it still, or Capture the mean.",
        ),
        Some(Hold::Still) => (HoldWord::Still, "hold_still", "Still."),
        Some(Hold::Nothing) => (
            HoldWord::Nothing,
            "hold_nothing",
            "Exactly 0° all the time: this sensor does not feel the tilt. Read it by level and tape.",
        ),
    };
    HoldView {
        degrees: held.map(|held| format!("{:.1}°", held.slope.in_degrees())),
        hold: word,
        words: sentence(code, en.to_owned()),
    }
}

fn weighed(looks: &[TiltSample]) -> Option<SteadyTilt> {
    let looks: Vec<TiltReading> = looks
        .iter()
        .map(|look| TiltReading {
            at_ms: look.at_ms,
            tilt: Angle::degrees(look.beta),
        })
        .collect();
    hold(&looks)
}

/// What a phone on a slope captured.
pub struct Captured {
    /// The leg from which the face rises, from 1.
    pub leg: u32,
    /// Looks at the tilt, the oldest first.
    pub looks: Vec<TiltSample>,
    /// Turned end for end since the one before.
    pub reversed: bool,
    /// Slopes booked before it.
    pub after: u32,
}

/// Books the mean of the last two seconds, held still or not: each way the phone lay is a reading
/// of its own, as it was read. `after` makes the same request said twice one reading, and two
/// places that read alike two.
///
/// # Errors
/// `NoJob`, `NoLeg`, `NoTilt`, `NoSlope`.
pub fn capture(book: &mut Store, job: Uuid, captured: &Captured) -> Result<Answer, Refusal> {
    let opened = OpenJob::read(book, job)?;
    opened.check_leg(captured.leg)?;
    let held = weighed(&captured.looks).filter(|held| held.hold != Hold::Nothing);
    let held = held.ok_or(RequestRefusal::NoTilt)?;
    let since = opened.book.pitches.iter().skip(captured.after as usize);
    let read = PitchRead::Phone {
        // To the hundredth: finer than any phone tells.
        degrees: (held.slope.in_degrees() * 100.0).round() / 100.0,
        reversed: captured.reversed,
    };
    let mut mine = since.filter(|pitch| pitch.device == opened.device);
    if !mine.any(|pitch| pitch.leg == captured.leg && pitch.read == read) {
        slopes::book_pitch(&opened, book, captured.leg, read)?;
    }
    Ok(Answer::Job(job))
}
